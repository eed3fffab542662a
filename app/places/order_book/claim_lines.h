// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What came back of an order, newest first: the garment, what was wrong, when it was reported, and what was
// done about it. One stop for Tab; ↑↓ move, Enter says what was done.

#include "app/places/order_book/order_view.h"
#include "app/widgets/painted_lines.h"

namespace holdfast::app {

class ClaimLines : public PaintedLines {
    Q_OBJECT

public:
    explicit ClaimLines(QWidget* parent = nullptr);

    void show(const OrderView& view);

signals:
    void answerAsked(holdfast::ClaimId claim);

protected:
    int lineCount() const override { return static_cast<int>(m_lines.size()); }
    int heightOf(int line) const override { return at(line).height; }
    void paintOne(QPainter& painter, int line, const QRectF& box, bool isCurrent) override;
    QString spokenLine(int line) const override;
    bool isOnButton(int line, const QRectF& box, const QPointF& at) const override;
    void doWhatItOffers(int line) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Line {
        ClaimId claim;
        QString what;   // "418-b, Heron: cracked after 3 washes"
        QString told;   // "reported Thu 12 Nov · left side"
        QString answer; // "pressed again, Fri 13 Nov"; empty: nothing was done yet
        int height = 0;
    };
    const Line& at(int line) const { return m_lines[static_cast<std::size_t>(line)]; }
    int heightOf(const QString& text, bool isStrong) const;
    void layLines();

    std::vector<Line> m_lines;
};

} // namespace holdfast::app
