// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The grid of one style: a row for each colour, a column for each size, what is washed, unwashed, drying,
// reserved or short in each. Arrow keys move the cell; Enter or a double click opens what is in it. The head
// row is a widget of its own, so that it stays while rows scroll.

#include "app/places/blank_rail/rail_columns.h"
#include "app/places/blank_rail/rail_stock.h"
#include "app/widgets/painted_parts.h"

#include <QWidget>

#include <map>

namespace holdfast::app {

class RailHeads : public QWidget {
    Q_OBJECT

public:
    explicit RailHeads(QWidget* parent = nullptr);
    void show(const StyleRail* rail);
    void setColumns(const RailColumns& columns);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QStringList m_sizes;
    RailColumns m_columns;
};

class RailGrid : public QWidget, public PaintedParts {
    Q_OBJECT

public:
    explicit RailGrid(QWidget* parent = nullptr);

    // `inWash`: units of each spot that are already chosen for the wash.
    void show(const StyleRail* rail, const std::map<RailSpot, std::int64_t>& inWash);
    std::optional<RailSpot> current() const;
    void setCurrent(const RailSpot& spot);

    // As wide as what its cells say needs, shared out over `width`.
    RailColumns columnsIn(qreal width) const;
    void setColumns(const RailColumns& columns);
    // How far the sizes must be scrolled for the current one to be seen.
    qreal shiftForCurrent() const;
    void bringIntoView(); // the current row

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return {0, sizeHint().height()}; }

    // Its cells, row by row.
    Roles partRoles() const override { return {QAccessible::List, QAccessible::ListItem}; }
    int partCount() const override { return static_cast<int>(m_rows.size() * m_sizes.size()); }
    QString partName(int cell) const override;
    QRect partBox(int cell) const override;
    int currentPart() const override;
    void moveToPart(int cell) override;
    void pressPart(int) override { emit openAsked(); }

signals:
    void moved();
    void openAsked();
    void resized();
    void sidewaysAsked(int by); // px, by the wheel

protected:
    void resizeEvent(QResizeEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    QVariant inputMethodQuery(Qt::InputMethodQuery query) const override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    struct Row {
        Colour colour;
        std::vector<RailCount> cells;
        RailCount sum;
    };
    std::int64_t inWashAt(int row, int size) const;
    void paintSizes(QPainter& painter, int row, const QRectF& line) const;
    void paintColour(QPainter& painter, const QRectF& box, const Row& row) const;
    void paintSum(QPainter& painter, const QRectF& box, const RailCount& sum) const;
    void paintFrame(QPainter& painter) const;
    bool putCurrentAt(QPointF at);
    void move(int rows, int sizes);
    void say();
    int inRow() const { return static_cast<int>(m_sizes.size()); }

    BlankStyleId m_style;
    QString m_outline;
    std::vector<std::string> m_sizes;
    std::vector<Row> m_rows;
    std::map<RailSpot, std::int64_t> m_inWash;
    RailColumns m_columns;
    int m_row = 0;
    int m_size = 0;
};

} // namespace holdfast::app
