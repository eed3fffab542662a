// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The rows of a figure: name, its bar on the scale of all, the numbers, a remark where there is one. Bars and
// table are one, so that the eye need not look a name up twice.

#include "app/places/figures/figure_sheet.h"
#include "app/widgets/painted_parts.h"

#include <QWidget>

#include <vector>

namespace holdfast::app {

class FigureRows : public QWidget, public PaintedParts {
    Q_OBJECT

public:
    explicit FigureRows(QWidget* parent = nullptr);

    void show(const FigureSheet& sheet);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

    // The first part is the head.
    Roles partRoles() const override { return {QAccessible::List, QAccessible::ListItem}; }
    int partCount() const override;
    QString partName(int part) const override;
    QRect partBox(int part) const override;
    int currentPart() const override { return -1; }
    void moveToPart(int) override {}
    void pressPart(int) override {}

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    // Where the columns are, from the widths of what is in them.
    struct Columns {
        qreal names = 0; // width
        qreal bars = 0;  // left end, and width
        qreal barsWide = 0;
        std::vector<qreal> ends; // right end of each number
    };
    Columns columns() const;
    bool hasBars() const;
    void setHeightToRows();
    qreal rowTop(int row, qreal namesWide) const;
    void paintHead(QPainter& painter, const Columns& at) const;
    void paintRow(QPainter& painter, const FigureRow& row, qreal top, const Columns& at) const;
    void paintBar(QPainter& painter, const FigureBar& bar, const QRectF& room) const;

    FigureSheet m_sheet;
};

} // namespace holdfast::app
