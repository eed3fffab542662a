// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The grid of a style with its head row: colours scroll up and down below the heads, sizes sideways where
// there are more than the room shows.

#include "app/places/blank_rail/rail_grid.h"

class QScrollBar;

namespace holdfast::app {

class VerticalScroll;

class RailTable : public QWidget {
    Q_OBJECT

public:
    explicit RailTable(QWidget* parent = nullptr);

    void show(const StyleRail* rail, const std::map<RailSpot, std::int64_t>& inWash);
    RailGrid* grid() const { return m_grid; }
    // All rows at once: whoever holds the table scrolls it.
    void setWhole(bool isWhole);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void layColumns();
    void shiftTo(qreal shift);

    RailHeads* m_heads = nullptr;
    VerticalScroll* m_scroll = nullptr;
    RailGrid* m_grid = nullptr;
    QScrollBar* m_sideways = nullptr;
    RailColumns m_columns;
    bool m_isWhole = false;
};

} // namespace holdfast::app
