// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/blank_rail/rail_table.h"

#include "app/places/blank_rail/rail_cell.h"
#include "app/widgets/vertical_scroll.h"

#include <QBoxLayout>
#include <QEvent>
#include <QScrollBar>
#include <QTimer>

#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kFewestRows = 2;

} // namespace

RailTable::RailTable(QWidget* parent)
    : QWidget(parent)
    , m_heads(new RailHeads)
    , m_scroll(new VerticalScroll)
    , m_grid(new RailGrid)
    , m_sideways(new QScrollBar(Qt::Horizontal)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_heads);
    m_scroll->column()->addWidget(m_grid);
    m_scroll->column()->addStretch(1);
    column->addWidget(m_scroll, 1);
    m_sideways->setObjectName(QStringLiteral("railSideways"));
    m_sideways->setFocusPolicy(Qt::NoFocus);
    column->addWidget(m_sideways);
    setWhole(false);
    m_scroll->viewport()->installEventFilter(this);
    connect(m_sideways, &QScrollBar::valueChanged, this, &RailTable::shiftTo);
    connect(m_grid, &RailGrid::resized, this, &RailTable::layColumns);
    connect(m_grid, &RailGrid::sidewaysAsked, this,
            [this](int by) { m_sideways->setValue(m_sideways->value() - by); });
    connect(m_grid, &RailGrid::moved, this,
            [this] { m_sideways->setValue(static_cast<int>(std::lround(m_grid->shiftForCurrent()))); });
}

void RailTable::show(const StyleRail* rail, const std::map<RailSpot, std::int64_t>& inWash) {
    m_heads->show(rail);
    m_grid->show(rail, inWash);
    setWhole(m_isWhole);
    layColumns();
}

void RailTable::setWhole(bool isWhole) {
    m_isWhole = isWhole;
    const int all = m_grid->sizeHint().height();
    m_scroll->setMinimumHeight(isWhole ? all : std::min(all, kFewestRows * cellHeight()));
}

void RailTable::layColumns() {
    m_columns = m_grid->columnsIn(m_grid->width());
    const int farthest = static_cast<int>(std::ceil(m_columns.farthest()));
    m_sideways->setVisible(farthest > 0);
    m_sideways->setRange(0, farthest);
    m_sideways->setPageStep(static_cast<int>(m_columns.room()));
    m_sideways->setSingleStep(static_cast<int>(m_columns.each));
    shiftTo(m_sideways->value());
}

// The row that was in view before is not to be left half under the heads.
bool RailTable::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_scroll->viewport() && event->type() == QEvent::Resize)
        QTimer::singleShot(0, m_grid, &RailGrid::bringIntoView);
    return QWidget::eventFilter(watched, event);
}

void RailTable::shiftTo(qreal shift) {
    m_columns.shift = shift;
    m_heads->setColumns(m_columns);
    m_grid->setColumns(m_columns);
}

} // namespace holdfast::app
