// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The lines of the order book, a page at a time: thin, over what the file finds.

#include "app/places/order_book/where_it_is.h"
#include "db/tables/order_book.h"

#include <QAbstractListModel>

#include <functional>
#include <memory>
#include <vector>

namespace holdfast::app {

// Role of what a person types to go to a line: "430 Odile Farrant".
inline constexpr int kNumberAndName = Qt::UserRole;

class OrderModel : public QAbstractListModel {
    Q_OBJECT

public:
    // The next lines, kPage of them; fewer mean the end.
    using Fetch = std::function<std::vector<db::OrderLine>()>;
    static constexpr int kPage = 200;

    using QAbstractListModel::QAbstractListModel;

    void show(std::shared_ptr<const ReckonedShop> shop, Fetch fetch);

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    bool canFetchMore(const QModelIndex& parent) const override;
    void fetchMore(const QModelIndex& parent) override;

    const db::OrderLine& line(int row) const { return m_lines[static_cast<std::size_t>(row)]; }
    WhereWords where(int row) const { return whereIsOrder(*m_shop, line(row)); }
    // The promised day; late where it is over and nothing was handed over.
    QString promisedWords(int row) const;
    Role promisedInk(int row) const;
    QString owedWords(int row) const;
    // The row of an order; −1 where no page fetched so far has it.
    int rowOf(OrderId order) const;

private:
    std::shared_ptr<const ReckonedShop> m_shop;
    Fetch m_fetch;
    std::vector<db::OrderLine> m_lines;
    bool m_isWhole = true;
};

} // namespace holdfast::app
