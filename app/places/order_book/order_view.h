// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One order whole, open or closed, with everything reckoned of it.

#include "app/desk/shop_desk.h"
#include "core/quality/claim.h"

#include <QString>
#include <QStringList>

#include <memory>
#include <optional>
#include <set>
#include <vector>

namespace holdfast::app {

struct OrderHistory {
    std::vector<db::HistoryEntry> entries; // newest first
    std::set<EntryId> isBuiltUpon;         // by later ones: they cannot be undone alone
};
OrderHistory historyOf(ShopDesk& desk, OrderId order);

struct OrderView {
    std::shared_ptr<const ReckonedShop> shop;
    OrderId id;
    OrderHistory history;
    std::vector<Claim> claims;     // what came back, oldest first
    std::vector<Invoice> invoices; // and credit notes, oldest first

    const Order& order() const { return shop->facts.orders.at(id); }
    std::vector<const Garment*> garments() const { return shop->facts.garmentsOf(id); }
    // Garments that can be handed over now.
    std::vector<const Garment*> pressed() const;
};

// None where the order is not in the file (it was undone) or the file cannot be read.
std::optional<OrderView> viewOrder(ShopDesk& desk, OrderId order);

// The care text of the whole order as it is handed over: garments with the same card are together.
struct CareText {
    QString heading; // "418-a, 418-b"
    QString firstWash;
    QStringList lines;
};
std::vector<CareText> careTexts(const OrderView& view, const std::vector<const Garment*>& garments);
QString asPlainText(const OrderView& view, const std::vector<CareText>& texts);

} // namespace holdfast::app
