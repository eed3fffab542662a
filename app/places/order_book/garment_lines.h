// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The garments of one order: drawing, number, decals, price, where each is, and what frees one that is held.
// One stop for Tab; ↑↓ move, Enter frees.

#include "app/places/order_book/order_view.h"
#include "app/theme/tokens.h"
#include "app/widgets/painted_lines.h"

namespace holdfast::app {

class GarmentLines : public PaintedLines {
    Q_OBJECT

public:
    explicit GarmentLines(QWidget* parent = nullptr);

    void show(const OrderView& view);
    std::optional<GarmentId> current() const;
    void turnTo(GarmentId garment);

signals:
    void freeAsked(holdfast::FreeingAct act, holdfast::app::SlipTarget matter);

protected:
    int lineCount() const override { return static_cast<int>(m_lines.size()); }
    int heightOf(int line) const override;
    void paintOne(QPainter& painter, int line, const QRectF& box, bool isCurrent) override;
    QString spokenLine(int line) const override;
    bool isOnButton(int line, const QRectF& box, const QPointF& at) const override;
    void doWhatItOffers(int line) override;

private:
    struct Line {
        const Garment* garment;
        QString name, decals, price, where, whereIcon, free;
        Role whereInk;
        std::optional<FreeingAct> act;
        SlipTarget matter;
    };
    const Line& at(int line) const { return m_lines[static_cast<std::size_t>(line)]; }
    QRectF freeBox(int line, const QRectF& box) const;
    void paintButton(QPainter& painter, int line, const QRectF& box) const;

    std::optional<OrderView> m_view;
    std::vector<Line> m_lines;
};

} // namespace holdfast::app
