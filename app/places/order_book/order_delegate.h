// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Paints a line of the order book, and the heads of its columns at the same places.

#include "app/places/order_book/order_model.h"

#include <QStyledItemDelegate>
#include <QWidget>

namespace holdfast::app {

// Where the columns are in a list of this width; names and places share what is left. A narrow list says
// where an order is on a second line.
struct OrderColumns {
    explicit OrderColumns(qreal width);
    bool isNarrow;
    qreal number, customer, garmentsRight, where, promised, owedRight;

    int rowHeight() const;
};

class OrderDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    explicit OrderDelegate(const OrderModel& model, QObject* parent = nullptr);

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    void paintWhere(QPainter& painter, const QRectF& room, const WhereWords& where) const;

    const OrderModel& m_model;
};

// The head row; a click on No. or Promised sorts by it, as Ctrl+P does.
class OrderHeads : public QWidget {
    Q_OBJECT

public:
    explicit OrderHeads(QWidget* parent = nullptr);

    void setSort(db::OrderSort sort);
    void setCurrencySign(const QString& sign);
    void setBarWidth(int width); // of the scroll bar next to the lines below

signals:
    void sortAsked(holdfast::db::OrderSort sort);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;

private:
    db::OrderSort m_sort = db::OrderSort::Newest;
    QString m_sign;
    int m_barWidth = 0;
};

} // namespace holdfast::app
