// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The orders of a customer, the newest first: number and state, when it was taken, what it came to, what was
// paid and is owed. One stop for Tab; ↑↓ move, Enter opens the order.

#include "app/desk/shop_desk.h"
#include "app/theme/type.h"
#include "app/widgets/painted_lines.h"
#include "db/tables/customer_page.h"

namespace holdfast::app {

class OrdersOfCustomer : public PaintedLines {
    Q_OBJECT

public:
    OrdersOfCustomer(ShopDesk& desk, const std::vector<db::OrderOfCustomer>& orders,
                     QWidget* parent = nullptr);

    // Words are wrapped: it is as narrow as the slip.
    QSize sizeHint() const override { return {kNarrowest, PaintedLines::sizeHint().height()}; }

signals:
    void orderAsked(holdfast::OrderId order);

protected:
    int lineCount() const override { return static_cast<int>(m_lines.size()); }
    int heightOf(int line) const override { return at(line).height; }
    void paintOne(QPainter& painter, int line, const QRectF& box, bool isCurrent) override;
    QString spokenLine(int line) const override;
    bool isOnButton(int, const QRectF&, const QPointF&) const override { return true; }
    void doWhatItOffers(int line) override;
    QString nameOf(int line) const override { return at(line).what; }
    void resizeEvent(QResizeEvent* event) override;

private:
    static constexpr int kNarrowest = 120;

    struct Line {
        OrderId order;
        QString what;  // "430, promised Fri 13 Nov"
        QString money; // "54.00, 20.00 paid, 34.00 owed"
        QString taken; // "taken Wed 11 Nov, 2 garments"
        bool isOwing = false;
        int height = 0;
    };
    const Line& at(int line) const { return m_lines[static_cast<std::size_t>(line)]; }
    int textHeight(const QString& text, Type type) const;
    void layLines();

    std::vector<Line> m_lines;
};

} // namespace holdfast::app
