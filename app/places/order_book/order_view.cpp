#include "app/places/order_book/order_view.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "db/tables/claims.h"
#include "db/tables/facts.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace holdfast::app {

namespace {

constexpr int kHistoryShown = 400;

// An order that is closed is not in the reckoned shop: it is read alone. Climate has no say in it any more.
std::shared_ptr<const ReckonedShop> readAlone(ShopDesk& desk, OrderId order) {
    const auto facts = desk.file().read([&](db::Connection& connection) {
        const std::array only{order};
        return db::loadFactsOf(connection, only);
    });
    if (!facts.ok() || !facts->orders.find(order))
        return nullptr;
    ClimateReckoner reckoner;
    return reckonShop(*facts, {}, {}, reckoner, desk.now());
}

} // namespace

std::vector<const Garment*> OrderView::pressed() const {
    std::vector<const Garment*> ready;
    for (const Garment* garment : garments()) {
        const Stage stage = shop->of(garment->id).stage;
        if (stage == Stage::Resting || stage == Stage::Ready)
            ready.push_back(garment);
    }
    return ready;
}

std::optional<OrderView> viewOrder(ShopDesk& desk, OrderId order) {
    OrderView view{desk.shop(), order, {}, {}};
    if (!view.shop->facts.orders.find(order))
        view.shop = readAlone(desk, order);
    if (!view.shop)
        return std::nullopt;
    auto history =
        desk.file().read([&](db::Connection&) { return desk.file().history(order, kHistoryShown); });
    if (history.ok())
        view.history = std::move(*history);
    auto claims =
        desk.file().read([&](db::Connection& connection) { return db::claimsOf(connection, order); });
    if (claims.ok())
        view.claims = std::move(*claims);
    return view;
}

CareCard careCardOf(const OrderView& view, const Garment& garment) {
    const ShopFacts& facts = view.shop->facts;
    const BlankStyle& style = facts.styleOf(garment);
    std::vector<const Film*> films;
    for (const Decal& decal : garment.decals)
        films.push_back(&facts.films.at(decal.film));

    std::optional<LocalTime> washFrom;
    std::optional<LocalTime> betterFrom;
    if (const auto pressedAt = view.shop->of(garment.id).progress.pressedAt) {
        const LocalTime pressed = view.shop->now.toLocal(*pressedAt);
        washFrom = pressed + facts.settings.restBeforeWash;
        betterFrom = pressed + facts.settings.betterRest;
    }
    return careCard(style.label ? std::optional{style.label->care} : std::nullopt, films, washFrom,
                    betterFrom);
}

std::vector<CareText> careTexts(const OrderView& view, const std::vector<const Garment*>& garments) {
    std::vector<CareText> texts;
    for (const Garment* garment : garments) {
        const CareCard card = careCardOf(view, *garment);
        CareText text{garmentNumber(view.shop->facts, *garment), words(card.firstWash), {}};
        for (const std::string& line : card.lines)
            text.lines << words(line);
        const auto same = std::ranges::find_if(texts, [&](const CareText& each) {
            return each.firstWash == text.firstWash && each.lines == text.lines;
        });
        if (same != texts.end())
            same->heading += QStringLiteral(", ") + text.heading;
        else
            texts.push_back(std::move(text));
    }
    return texts;
}

QString asPlainText(const OrderView& view, const std::vector<CareText>& texts) {
    QStringList lines{QCoreApplication::translate("OrderBook", "%1, order %2")
                          .arg(words(view.shop->facts.settings.shopName))
                          .arg(view.order().number)};
    for (const CareText& text : texts) {
        lines << QString() << text.heading << text.firstWash;
        lines << text.lines;
    }
    return lines.join(u'\n') + u'\n';
}

} // namespace holdfast::app
