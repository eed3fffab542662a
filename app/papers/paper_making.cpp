// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/paper_making.h"

#include "app/desk/figures_beside.h"
#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/desk/invoice_words.h"
#include "app/desk/shop_with_order.h"
#include "app/papers/bag_tag.h"
#include "app/papers/buying_list.h"
#include "app/papers/care_card_paper.h"
#include "app/papers/claim_ticket.h"
#include "app/papers/day_sheet.h"
#include "app/papers/invoice_paper.h"
#include "app/papers/quotation_paper.h"
#include "app/papers/roll_label.h"
#include "app/papers/test_paper.h"

#include "core/orders/invoicing.h"
#include "db/tables/invoices.h"

#include <QCoreApplication>

#include <algorithm>
#include <memory>
#include <utility>

namespace holdfast::app {

namespace {

struct PaperMaking {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PaperMaking)
};

Error noPaper(const QString& why) {
    return plainError(inWindow(why));
}

PaperErrand testErrand(PaperName name) {
    const PaperUse use = name == PaperName::TestLabel ? PaperUse::Labels : PaperUse::Sheets;
    return {use == PaperUse::Labels ? PaperMaking::tr("Test label") : PaperMaking::tr("Test sheet"),
            [use] { return std::vector{testPaper(use)}; }, use};
}

using PaperOfGarment = Paper (*)(const ReckonedShop&, GarmentId);

PaperErrand ofGarments(std::shared_ptr<const ReckonedShop> shop, const std::vector<const Garment*>& garments,
                       const QString& title, PaperOfGarment paper, PaperUse use) {
    return {title,
            [shop = std::move(shop), garments, paper] {
                std::vector<Paper> papers;
                for (const Garment* garment : garments)
                    papers.push_back(paper(*shop, garment->id));
                return papers;
            },
            use};
}

Result<PaperErrand> claimTicketErrand(const std::shared_ptr<const ReckonedShop>& shop, const Order& order) {
    if (order.state == OrderState::Cancelled)
        return noPaper(PaperMaking::tr("Order %1 is cancelled: it has no claim ticket.").arg(order.number));
    return PaperErrand{PaperMaking::tr("Claim ticket %1").arg(order.number),
                       [shop, id = order.id] { return std::vector{claimTicket(*shop, id)}; }};
}

// "418-b", or the order's number where it is of several.
QString named(const ReckonedShop& shop, const Order& order, const std::vector<const Garment*>& garments) {
    return garments.size() == 1 ? garmentNumber(shop.facts, *garments.front())
                                : QString::number(order.number);
}

Result<PaperErrand> careCardsErrand(const std::shared_ptr<const ReckonedShop>& shop, const Order& order) {
    const auto garments = pressedGarments(*shop, order.id);
    if (garments.empty())
        return noPaper(PaperMaking::tr("Nothing of order %1 is pressed yet: a care card says from when it "
                                       "may be washed.")
                           .arg(order.number));
    const QString name = named(*shop, order, garments);
    return ofGarments(
        shop, garments,
        PaperMaking::tr("Care card %1|Care cards %1", nullptr, howMany(garments.size())).arg(name),
        careCardPaper, PaperUse::Sheets);
}

Result<PaperErrand> bagTagsErrand(const std::shared_ptr<const ReckonedShop>& shop, const Order& order) {
    const auto garments = garmentsHere(*shop, order.id);
    if (garments.empty())
        return noPaper(PaperMaking::tr("No garment of order %1 is here now.").arg(order.number));
    const QString name = named(*shop, order, garments);
    return ofGarments(shop, garments,
                      PaperMaking::tr("Bag tag %1|Bag tags %1", nullptr, howMany(garments.size())).arg(name),
                      bagTag, PaperUse::Labels);
}

Result<PaperErrand> quotationErrand(const std::shared_ptr<const ReckonedShop>& shop, const Order& order) {
    if (order.state != OrderState::Quoted)
        return noPaper(PaperMaking::tr("Order %1 is not a quotation.").arg(order.number));
    return PaperErrand{PaperMaking::tr("Quotation %1").arg(order.number),
                       [shop, id = order.id] { return quotationPapers(*shop, id); }, PaperUse::Sheets};
}

Result<PaperErrand> receiptErrand(ShopDesk& desk, const std::shared_ptr<const ReckonedShop>& shop,
                                  const Order& order) {
    if (order.paid <= Money{})
        return noPaper(
            PaperMaking::tr("Nothing is paid on order %1: there is no receipt.").arg(order.number));
    auto moves =
        desk.file().read([&](db::Connection& connection) { return db::moneyOf(connection, order.id); });
    if (!moves.ok())
        return moves.error();
    return PaperErrand{
        PaperMaking::tr("Receipt %1").arg(order.number),
        [shop, id = order.id, moves = std::move(*moves)] { return receiptPapers(*shop, id, moves); },
        PaperUse::Sheets};
}

// The one named, else the one in force, else the latest.
Result<PaperErrand> invoiceErrand(ShopDesk& desk, const SlipTarget& matter) {
    const auto all = desk.file().read([&](db::Connection& connection) {
        return db::invoicesOf(connection, matter.order.value_or(OrderId{}));
    });
    if (!all.ok())
        return all.error();
    if (all->empty())
        return noPaper(PaperMaking::tr("The order has no invoice."));
    const Invoice* wanted = invoiceInForce(*all);
    if (!wanted)
        wanted = &all->back();
    if (matter.invoice)
        if (const auto named = std::ranges::find(*all, *matter.invoice, &Invoice::id); named != all->end())
            wanted = &*named;
    return PaperErrand{invoiceTitle(*wanted),
                       [invoice = *wanted, all = *all] { return invoicePapers(invoice, all); },
                       PaperUse::Sheets};
}

using ErrandOfOrder = Result<PaperErrand> (*)(const std::shared_ptr<const ReckonedShop>&, const Order&);

Result<PaperErrand> ofOrder(ShopDesk& desk, const SlipTarget& matter, ErrandOfOrder errand) {
    const auto shop = matter.order ? shopWithOrder(desk, *matter.order) : nullptr;
    if (!shop)
        return noPaper(PaperMaking::tr("The order is no longer there."));
    return errand(shop, shop->facts.orders.at(*matter.order));
}

QString climateIsAwaited() {
    return PaperMaking::tr(
        "The climate readings are still being read, and film may be held by them. Print it "
        "in a moment.");
}

using ErrandOfShop = Result<PaperErrand> (*)(const std::shared_ptr<const ReckonedShop>&, const SlipTarget&);

// Of what is reckoned from the climate of the storage places.
Result<PaperErrand> ofShop(ShopDesk& desk, const SlipTarget& matter, ErrandOfShop errand) {
    if (desk.awaitsClimate())
        return noPaper(climateIsAwaited());
    return errand(desk.shop(), matter);
}

Result<PaperErrand> daySheetErrand(const std::shared_ptr<const ReckonedShop>& shop,
                                   const SlipTarget& /*matter*/) {
    return PaperErrand{PaperMaking::tr("Day sheet %1").arg(words(isoDate(shop->now.today()))),
                       [shop] { return daySheet(*shop); }, PaperUse::Sheets};
}

Result<PaperErrand> rollLabelErrand(const std::shared_ptr<const ReckonedShop>& shop,
                                    const SlipTarget& matter) {
    const FilmRoll* roll = matter.roll ? shop->facts.rolls.find(*matter.roll) : nullptr;
    if (!roll)
        return noPaper(PaperMaking::tr("The roll is no longer there."));
    return PaperErrand{PaperMaking::tr("Roll label %1").arg(words(roll->label())),
                       [shop, id = roll->id] { return std::vector{labelOfRoll(*shop, id)}; }};
}

// What is used is read where it is printed: that may take long.
PaperErrand buyingListErrand(ShopDesk& desk) {
    return PaperErrand{
        PaperMaking::tr("To buy %1").arg(words(isoDate(desk.now().today()))),
        [shop = desk.shop(),
         read = figuresReader(desk.file(), std::nullopt, desk.now())]() -> Result<std::vector<Paper>> {
            const auto figures = read();
            if (!figures.ok())
                return figures.error();
            return buyingList(*shop, whatToBuy(*shop, figures->blankUse, figures->nextFair, figures->bring));
        },
        PaperUse::Sheets};
}

} // namespace

std::vector<const Garment*> pressedGarments(const ReckonedShop& shop, OrderId order) {
    std::vector<const Garment*> garments = shop.facts.garmentsOf(order);
    std::erase_if(garments, [&](const Garment* garment) {
        const Stage stage = shop.of(garment->id).stage;
        return stage != Stage::Resting && stage != Stage::Ready && stage != Stage::HandedOver;
    });
    return garments;
}

std::vector<const Garment*> garmentsHere(const ReckonedShop& shop, OrderId order) {
    std::vector<const Garment*> garments = shop.facts.garmentsOf(order);
    std::erase_if(garments, [&](const Garment* garment) {
        const Stage stage = shop.of(garment->id).stage;
        return stage == Stage::HandedOver || stage == Stage::Cancelled;
    });
    return garments;
}

Result<PaperErrand> paperErrand(ShopDesk& desk, PaperName name, const SlipTarget& matter) {
    switch (name) {
    case PaperName::ClaimTicket:
        return ofOrder(desk, matter, claimTicketErrand);
    case PaperName::CareCards:
        return ofOrder(desk, matter, careCardsErrand);
    case PaperName::BagTags:
        return ofOrder(desk, matter, bagTagsErrand);
    case PaperName::Quotation:
        return ofOrder(desk, matter, quotationErrand);
    case PaperName::Receipt: {
        const auto shop = matter.order ? shopWithOrder(desk, *matter.order) : nullptr;
        return shop ? receiptErrand(desk, shop, shop->facts.orders.at(*matter.order))
                    : noPaper(PaperMaking::tr("The order is no longer there."));
    }
    case PaperName::Invoice:
        return invoiceErrand(desk, matter);
    case PaperName::DaySheet:
        return ofShop(desk, matter, daySheetErrand);
    case PaperName::RollLabel:
        return ofShop(desk, matter, rollLabelErrand);
    case PaperName::BuyingList:
        if (desk.awaitsClimate())
            return noPaper(climateIsAwaited());
        return buyingListErrand(desk);
    case PaperName::TestLabel:
    case PaperName::TestSheet:
        break;
    }
    return testErrand(name);
}

} // namespace holdfast::app
