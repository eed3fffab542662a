// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/order_book/order_view.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/desk/shop_with_order.h"
#include "core/shop/care_of_garment.h"
#include "db/journal/built_upon.h"
#include "db/tables/claims.h"
#include "db/tables/invoices.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kHistoryShown = 400;

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

OrderHistory historyOf(ShopDesk& desk, OrderId order) {
    auto history = desk.file().read([&](db::Connection& connection) {
        OrderHistory read;
        read.entries = desk.file().history(order, kHistoryShown);
        read.isBuiltUpon = db::builtUpon(connection, read.entries);
        return read;
    });
    return history.ok() ? std::move(*history) : OrderHistory{};
}

std::optional<OrderView> viewOrder(ShopDesk& desk, OrderId order) {
    OrderView view{shopWithOrder(desk, order), order, {}, {}, {}};
    if (!view.shop)
        return std::nullopt;
    view.history = historyOf(desk, order);
    auto claims =
        desk.file().read([&](db::Connection& connection) { return db::claimsOf(connection, order); });
    if (claims.ok())
        view.claims = std::move(*claims);
    auto invoices =
        desk.file().read([&](db::Connection& connection) { return db::invoicesOf(connection, order); });
    if (invoices.ok())
        view.invoices = std::move(*invoices);
    return view;
}

std::vector<CareText> careTexts(const OrderView& view, const std::vector<const Garment*>& garments) {
    std::vector<CareText> texts;
    for (const Garment* garment : garments) {
        const CareCard card = careOf(*view.shop, *garment);
        CareText text{garmentNumber(view.shop->facts, *garment), words(card.firstWash), {}};
        for (const CareLine& line : card.lines)
            text.lines << words(line.words);
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
