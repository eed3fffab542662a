// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One line of a web shop's file as the garment that it asks for.

#include "core/orders/order_file.h"
#include "core/shop/reckoned_shop.h"
#include "db/csv/import_row.h"
#include "db/csv/order_file_reading.h"

#include <map>
#include <optional>
#include <string>

namespace holdfast::db {

inline constexpr std::int64_t kMostCopies = 200; // as many as an order may have garments

// What a line says of its order: the same on each of its lines, or nothing.
struct SaidOfOrder {
    std::string customer;
    std::string phone;
    std::string paid;
    std::optional<LocalDate> wanted;
    std::string note;
};

class OrderLineReader {
public:
    // `likes` are the garments that items are like, as drafts without ids. All outlive it.
    OrderLineReader(const OrderFileNaming& naming, const std::map<GarmentId, GarmentDraft>& likes,
                    const ReckonedShop& shop, const Letter& letter);

    // What is wrong is in `row`; then the line has no garment.
    FiledLine read(ImportRow& row);
    SaidOfOrder saidOfOrder(ImportRow& row) const;
    // Empty: there is no such column.
    std::string heading(OrderColumn column) const;
    // "yes" is all of it.
    Money paid(ImportRow& row, const std::string& written, Money total) const;

private:
    std::optional<GarmentDraft> garmentOf(ImportRow& row, FiledLine& line);
    void chooseSize(ImportRow& row, GarmentDraft& garment, const BlankStyle& style) const;
    void chooseColour(ImportRow& row, GarmentDraft& garment, const BlankStyle& style) const;
    void putWording(ImportRow& row, GarmentDraft& garment, FiledLine& line) const;
    void setPrice(ImportRow& row, GarmentDraft& garment) const;
    std::string text(const ImportRow& row, OrderColumn column) const;
    std::optional<LocalDate> day(ImportRow& row) const;

    const OrderFileNaming& m_naming;
    const std::map<GarmentId, GarmentDraft>& m_likes;
    const ReckonedShop& m_shop;
    const Letter& m_letter;
};

} // namespace holdfast::db
