// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Where things lie in the drawing of the bench: nests one below the other, each with its caption, its rulers
// and the roll at its end; from millimetres to pixels and back.

#include "core/cutting/nest.h"

#include <QPointF>
#include <QRectF>
#include <QSize>

#include <span>
#include <vector>

namespace holdfast::app {

inline constexpr int kBenchRulerLeft = 52; // across the roll
inline constexpr int kBenchRulerTop = 24;  // along it
inline constexpr int kBenchCaption = 30;
inline constexpr int kBenchMeasure = 40; // the length used, below
inline constexpr int kBenchRoll = 36;    // the roll seen from the side

class BenchScale {
public:
    BenchScale() = default;
    // As large as fits: all of the length and a bit more, unless that grows too small to be seen; then it
    // scrolls.
    BenchScale(std::span<const Nest> nests, QSize room);

    double pixelsPerMillimetre() const { return m_scale; }
    QSize content() const { return m_content; }
    std::size_t count() const { return m_seats.size(); }

    QRectF band(std::size_t nest) const;     // all that belongs to it, from its caption down
    QRectF film(std::size_t nest) const;     // what of the roll lies on the bench
    bool endsInRoll(std::size_t nest) const; // more of it is on the core
    QRectF rectOf(std::size_t nest, const FilmArea& area) const;
    double alongAt(std::size_t nest, double millimetres) const;
    // The length of film for this many pixels.
    Millimetres lengthOf(double pixels) const;

private:
    struct Seat {
        double top = 0;
        QRectF film;
        bool endsInRoll = true;
    };
    std::vector<Seat> m_seats;
    double m_scale = 1;
    QSize m_content;
};

// From one number on a ruler to the next, so that they keep clear of one another.
int rulerStep(double pixelsPerMillimetre);

} // namespace holdfast::app
