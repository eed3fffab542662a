// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the list of the order book shows, page by page: orders of the file that match, and among all of them
// also those that were undone, each where its day or its promise puts it.

#include "app/desk/shop_desk.h"
#include "db/tables/order_book.h"
#include "db/tables/undone_orders.h"

#include <optional>
#include <vector>

namespace holdfast::app {

enum class BookFilter { Open, Held, Owing, CameBack, All };

class OrderPages {
public:
    explicit OrderPages(ShopDesk& desk)
        : m_desk(desk) {}

    // Begins again from the first page.
    void look(const QString& typed, BookFilter filter, db::OrderSort sort);
    // At most `most` more lines; fewer mean the end.
    std::vector<db::OrderLine> next(int most);

    // Orders that match, under All: how many of them, and how many of those were handed over.
    struct UnderAll {
        std::int64_t orders = 0;
        std::int64_t handedOver = 0;
    };
    UnderAll countUnderAll();
    std::vector<OrderId> held();
    std::vector<OrderId> cameBack(); // of which something that came back waits for an answer

private:
    std::vector<db::OrderLine> fromFile(db::Connection& connection, int most);
    bool comesBefore(const db::OrderLine& one, const db::OrderLine& other) const;

    ShopDesk& m_desk;
    std::optional<db::OrderQuery> m_wanted; // that search; none where the file could not be read
    BookFilter m_filter = BookFilter::Open;
    db::OrderSort m_sort = db::OrderSort::Newest;
    int m_readFromFile = 0;
    std::vector<db::OrderLine> m_undone; // that match and are still to come
};

} // namespace holdfast::app
