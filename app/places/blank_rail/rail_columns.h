// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Where the columns of the rail's grid are: the colours at the left and the sums at the right stay, the sizes
// between them share the room, or scroll sideways where there is too little of it for what the cells say.

#include <QtGlobal>

#include <algorithm>
#include <cstddef>

namespace holdfast::app {

struct RailColumns {
    qreal width = 0;
    qreal colour = 0; // of the colours
    qreal all = 0;    // of the sums
    qreal each = 0;   // of one size
    std::size_t sizes = 0;
    qreal shift = 0; // how far the sizes are scrolled

    static RailColumns in(qreal width, std::size_t sizes, qreal colour, qreal all, qreal leastEach) {
        RailColumns columns{width, colour, all, leastEach, sizes, 0};
        if (sizes > 0)
            columns.each = std::max(leastEach, columns.room() / static_cast<qreal>(sizes));
        return columns;
    }

    qreal room() const { return std::max<qreal>(0, width - colour - all); } // for the sizes
    qreal sumsLeft() const { return width - all; }
    qreal left(std::size_t size) const { return colour + each * static_cast<qreal>(size) - shift; }
    qreal farthest() const { return std::max<qreal>(0, each * static_cast<qreal>(sizes) - room()); }
};

} // namespace holdfast::app
