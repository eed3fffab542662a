// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/bench_scale.h"

#include "app/theme/measures.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr double kLeast = 0.22;    // pixels a millimetre
constexpr double kReadable = 0.45; // below it a long nest scrolls instead
constexpr double kMost = 1.6;
constexpr double kABitMore = 120;  // mm of film seen after the cut-off line
constexpr std::size_t kInView = 2; // nests that are to be seen whole, one below the other
constexpr int kChrome = kBenchCaption + kBenchRulerTop + kBenchMeasure;

double number(Millimetres length) {
    return static_cast<double>(length.value);
}

} // namespace

int rulerStep(double pixelsPerMillimetre) {
    constexpr std::array<int, 5> steps{50, 100, 200, 500, 1000};
    const auto fits = std::ranges::find_if(steps, [&](int step) { return step * pixelsPerMillimetre >= 44; });
    return fits == steps.end() ? steps.back() : *fits;
}

BenchScale::BenchScale(std::span<const Nest> nests, QSize room) {
    if (nests.empty()) {
        m_content = room;
        return;
    }
    double longest = 1;
    for (const Nest& nest : nests)
        longest = std::max(longest, number(nest.length) + kABitMore);
    std::vector<double> widths;
    for (const Nest& nest : nests)
        widths.push_back(number(nest.rollWidth));
    std::ranges::sort(widths, std::greater<>());
    const std::size_t seen = std::min(kInView, widths.size());
    double wide = 0;
    for (std::size_t at = 0; at < seen; ++at)
        wide += widths[at];

    const double side = kBenchRulerLeft + kBenchRoll + kSpace16;
    const double alongFits = (room.width() - side) / longest;
    const double acrossFits = (room.height() - static_cast<double>(seen) * kChrome) / std::max(1.0, wide);
    m_scale = std::clamp(std::min(acrossFits, std::max(alongFits, kReadable)), kLeast, kMost);

    const double reach = std::max(longest * m_scale, room.width() - side);
    double top = 0;
    for (const Nest& nest : nests) {
        Seat seat;
        seat.top = top;
        const double left = number(nest.rollLeft) * m_scale;
        seat.endsInRoll = left > reach;
        seat.film = QRectF(kBenchRulerLeft, top + kBenchCaption + kBenchRulerTop, std::min(left, reach),
                           number(nest.rollWidth) * m_scale);
        top = seat.film.bottom() + kBenchMeasure;
        m_seats.push_back(seat);
    }
    m_content = QSize(static_cast<int>(std::ceil(reach + side)), static_cast<int>(std::ceil(top)));
}

QRectF BenchScale::band(std::size_t nest) const {
    const Seat& seat = m_seats[nest];
    return {0, seat.top, static_cast<double>(m_content.width()),
            seat.film.bottom() + kBenchMeasure - seat.top};
}

QRectF BenchScale::film(std::size_t nest) const {
    return m_seats[nest].film;
}

bool BenchScale::endsInRoll(std::size_t nest) const {
    return m_seats[nest].endsInRoll;
}

QRectF BenchScale::rectOf(std::size_t nest, const FilmArea& area) const {
    const QRectF& film = m_seats[nest].film;
    return {film.left() + number(area.along) * m_scale, film.top() + number(area.across) * m_scale,
            number(area.alongSize) * m_scale, number(area.acrossSize) * m_scale};
}

double BenchScale::alongAt(std::size_t nest, double millimetres) const {
    return m_seats[nest].film.left() + millimetres * m_scale;
}

Millimetres BenchScale::lengthOf(double pixels) const {
    return {std::llround(pixels / m_scale)};
}

} // namespace holdfast::app
