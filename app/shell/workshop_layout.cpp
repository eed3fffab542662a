// SPDX-License-Identifier: GPL-3.0-or-later
// Where rail, header, place, foot, form and finder are in the window.

#include "app/shell/command_finder.h"
#include "app/shell/foot_line.h"
#include "app/shell/place_header.h"
#include "app/shell/rail.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "app/theme/measures.h"
#include "app/theme/tokens.h"

#include <QLayout>
#include <QPainter>
#include <QScrollArea>
#include <QScrollBar>
#include <QStackedWidget>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kMostRounds = 3;
constexpr int kLowestSlip = 440;

// The margin at the foot of a place, of its own layout or of the page that fills it.
int gutterBelow(const QWidget& place) {
    const QLayout* layout = place.layout();
    if (layout == nullptr)
        return 0;
    const int own = layout->contentsMargins().bottom();
    if (own > 0 || layout->count() != 1)
        return own;
    const auto* pages = qobject_cast<const QStackedWidget*>(layout->itemAt(0)->widget());
    return pages != nullptr && pages->currentWidget() != nullptr ? gutterBelow(*pages->currentWidget()) : 0;
}

} // namespace

void Workshop::arrange() {
    const int right = width() - kRailWidth;
    m_rail->setGeometry(0, 0, kRailWidth, height());
    const int header = m_header->heightForWidth(right);
    m_header->setGeometry(kRailWidth, 0, right, header);
    const int foot = m_foot->heightForWidth(right);
    m_foot->setGeometry(kRailWidth, height() - foot, right, foot);
    if (Place* now = place()) {
        // The foot is in the gutter that the place leaves below itself, as far as there is one; not where the
        // place scrolls, and what is in it would pass below the foot.
        const QRect room(kRailWidth, header, right, height() - header - foot);
        const int shared = std::clamp(gutterBelow(*now) - kFocusGap, 0, kSpace12);
        layPlace(now->minimumSizeHint().height() <= room.height() + shared ? room.adjusted(0, 0, 0, shared)
                                                                           : room);
    }
    // In a low window a form needs the room of the header, too.
    const int slipTop = height() - header < kLowestSlip ? 0 : header;
    m_slips->setGeometry(width() - kSlipWidth, slipTop, kSlipWidth, height() - slipTop);
    if (m_finder != nullptr)
        m_finder->place(QRect(kRailWidth, header, right, height() - header));
}

// A place that cannot be as small as the room for it is seen in part, and scrolls.
void Workshop::layPlace(const QRect& room) {
    m_room->setGeometry(room);
    const int bar = m_room->verticalScrollBar()->sizeHint().width();
    // Again where the place arranges itself otherwise at the width that it was given.
    for (int round = 0; round < kMostRounds; ++round) {
        const QSize least = place()->minimumSizeHint();
        const bool scrollsDown = least.height() > room.height() ||
                                 (least.width() > room.width() && least.height() + bar > room.height());
        const int width = room.width() - (scrollsDown ? bar : 0);
        const bool scrollsAcross = least.width() > width;
        const QSize size(std::max(least.width(), width),
                         std::max(least.height(), room.height() - (scrollsAcross ? bar : 0)));
        m_room->widget()->resize(size);
        place()->setGeometry(QRect(QPoint(), size));
        m_leastLaid = place()->minimumSizeHint();
        if (m_leastLaid == least)
            break;
    }
}

void Workshop::followPlace() {
    if (place() != nullptr && place()->minimumSizeHint() != m_leastLaid)
        arrange();
}

void Workshop::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

void Workshop::paintEvent(QPaintEvent*) {
    QPainter(this).fillRect(rect(), tokens().ground);
}

} // namespace holdfast::app
