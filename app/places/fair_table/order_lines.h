// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The garments of the order with their prices, as the lines of a bill; the one at hand with each of its
// decals and what it adds. Up and Down choose, Delete removes, + and − change how many, Ctrl with Up or Down
// changes what lies over what. The line at hand shows Delete on a cap, which can be pressed as well.

#include "app/places/fair_table/fair_table_model.h"

#include <QAbstractListModel>
#include <QListView>
#include <QStyledItemDelegate>

namespace holdfast::app {

struct OrderLineShown {
    enum class Kind { Garment, Blank, Decal, Copies, Bill, Tax };
    Kind kind = Kind::Garment;
    std::size_t garment = 0;
    std::size_t decal = 0; // of a line of the bill, its place there
    QString text;
    QString amount;
    bool isEmpty = false; // nothing is chosen: there is nothing to remove

    bool operator==(const OrderLineShown&) const = default;
};

class OrderLinesModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    void show(std::vector<OrderLineShown> lines);
    const OrderLineShown& line(int row) const { return m_lines[static_cast<std::size_t>(row)]; }

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

private:
    std::vector<OrderLineShown> m_lines;
};

std::vector<OrderLineShown> linesOf(const TableDraft& draft, const TableSums& sums, const ShopFacts& facts);

class OrderLineDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    using QStyledItemDelegate::QStyledItemDelegate;
    static QRect removeRect(const QRect& row); // of the cap and what a finger meets around it
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

class OrderLines : public QListView {
    Q_OBJECT

public:
    explicit OrderLines(FairTableModel& model, QWidget* parent = nullptr);

    void refresh();
    void setFewest(int lines); // that are seen in any case
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

private:
    void remove(const OrderLineShown& line);
    void changeCopies(const OrderLineShown& line, int by);

    FairTableModel& m_table;
    OrderLinesModel* m_lines = nullptr;
    bool m_isRefreshing = false;
    std::optional<std::size_t> m_billAt; // the line of the bill that is chosen; none: a garment's
    int m_fewest = 2;
};

} // namespace holdfast::app
