// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/paper_making.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/desk/shop_with_order.h"
#include "app/papers/bag_tag.h"
#include "app/papers/care_card_paper.h"
#include "app/papers/claim_ticket.h"
#include "app/papers/day_sheet.h"
#include "app/papers/roll_label.h"
#include "app/papers/test_paper.h"

#include <QCoreApplication>

#include <memory>
#include <utility>

namespace holdfast::app {

namespace {

struct PaperMaking {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PaperMaking)
};

Error noPaper(const QString& why) {
    return plainError(plain(why));
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

Result<PaperErrand> orderErrand(const std::shared_ptr<const ReckonedShop>& reckoned, PaperName name,
                                const Matter& matter) {
    const ReckonedShop& shop = *reckoned;
    const Order& order = shop.facts.orders.at(*matter.order);
    const auto named = [&](const std::vector<const Garment*>& garments) {
        return garments.size() == 1 ? garmentNumber(shop.facts, *garments.front())
                                    : QString::number(order.number);
    };
    if (name == PaperName::ClaimTicket) {
        if (order.state == OrderState::Cancelled)
            return noPaper(
                PaperMaking::tr("Order %1 is cancelled: it has no claim ticket.").arg(order.number));
        return PaperErrand{PaperMaking::tr("Claim ticket %1").arg(order.number),
                           [reckoned, id = order.id] { return std::vector{claimTicket(*reckoned, id)}; }};
    }
    if (name == PaperName::CareCards) {
        const auto garments = pressedGarments(shop, order.id);
        if (garments.empty())
            return noPaper(
                PaperMaking::tr("Nothing of order %1 is pressed yet: a care card says from when it "
                                "may be washed.")
                    .arg(order.number));
        return ofGarments(reckoned, garments,
                          garments.size() == 1 ? PaperMaking::tr("Care card %1").arg(named(garments))
                                               : PaperMaking::tr("Care cards %1").arg(named(garments)),
                          careCardPaper, PaperUse::Sheets);
    }
    const auto garments = garmentsHere(shop, order.id);
    if (garments.empty())
        return noPaper(PaperMaking::tr("No garment of order %1 is here any more.").arg(order.number));
    return ofGarments(reckoned, garments,
                      garments.size() == 1 ? PaperMaking::tr("Bag tag %1").arg(named(garments))
                                           : PaperMaking::tr("Bag tags %1").arg(named(garments)),
                      bagTag, PaperUse::Labels);
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

Result<PaperErrand> paperErrand(ShopDesk& desk, PaperName name, const Matter& matter) {
    if (name == PaperName::TestLabel || name == PaperName::TestSheet)
        return testErrand(name);
    const bool isOfOrder = name != PaperName::DaySheet && name != PaperName::RollLabel;
    if (isOfOrder) {
        const auto shop = matter.order ? shopWithOrder(desk, *matter.order) : nullptr;
        if (!shop)
            return noPaper(PaperMaking::tr("The order is no longer there."));
        return orderErrand(shop, name, matter);
    }
    if (desk.awaitsClimate())
        return noPaper(PaperMaking::tr("The climate readings are still being read, and film may be held by "
                                       "them. Print it in a moment."));
    const std::shared_ptr<const ReckonedShop> shop = desk.shop();
    if (name == PaperName::DaySheet)
        return PaperErrand{PaperMaking::tr("Day sheet %1").arg(words(isoDate(shop->now.today()))),
                           [shop] { return daySheet(*shop); }, PaperUse::Sheets};
    const FilmRoll* roll = matter.roll ? shop->facts.rolls.find(*matter.roll) : nullptr;
    if (!roll)
        return noPaper(PaperMaking::tr("The roll is no longer there."));
    return PaperErrand{PaperMaking::tr("Roll label %1").arg(words(roll->label())),
                       [shop, id = roll->id] { return std::vector{labelOfRoll(*shop, id)}; }};
}

} // namespace holdfast::app
