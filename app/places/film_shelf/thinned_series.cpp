// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/thinned_series.h"

#include <algorithm>

namespace holdfast::app {

namespace {

double valueOf(const ClimateReading& reading, Measure measure) {
    return measure == Measure::Temperature ? reading.temperature.value : reading.humidity.percent;
}

double secondsFrom(Instant from, Instant at) {
    return static_cast<double>((at - from).count());
}

ThinPoint between(const ThinPoint& before, const ThinPoint& after, double seconds) {
    const double share = (seconds - before.seconds) / (after.seconds - before.seconds);
    return {seconds, before.value + share * (after.value - before.value)};
}

// Takes points in order of time and keeps those of each column that show.
class Columns {
public:
    explicit Columns(double width)
        : m_width(width) {}

    void add(const ThinPoint& point) {
        const auto column = static_cast<long>(point.seconds / m_width);
        if (m_count > 0 && column != m_column)
            flush();
        m_column = column;
        if (m_count == 0)
            m_first = m_lowest = m_highest = point;
        if (point.value < m_lowest.value)
            m_lowest = point;
        if (point.value > m_highest.value)
            m_highest = point;
        m_last = point;
        ++m_count;
    }

    void endLine() {
        flush();
        if (!m_line.empty())
            m_lines.push_back(std::move(m_line));
        m_line.clear();
    }

    std::vector<ThinLine> take() {
        endLine();
        return std::move(m_lines);
    }

private:
    void flush() {
        if (m_count == 0)
            return;
        const bool lowestFirst = m_lowest.seconds <= m_highest.seconds;
        for (const ThinPoint& point :
             {m_first, lowestFirst ? m_lowest : m_highest, lowestFirst ? m_highest : m_lowest, m_last})
            if (m_line.empty() || point.seconds > m_line.back().seconds)
                m_line.push_back(point);
        m_count = 0;
    }

    double m_width;
    long m_column = 0;
    std::size_t m_count = 0;
    ThinPoint m_first;
    ThinPoint m_lowest;
    ThinPoint m_highest;
    ThinPoint m_last;
    ThinLine m_line;
    std::vector<ThinLine> m_lines;
};

} // namespace

std::vector<ThinLine> thinned(const ClimateSeries& series, Measure measure, Instant from, Instant to,
                              int columns, Hours allowedGap) {
    const double span = secondsFrom(from, to);
    Columns kept(span / columns);
    auto at = std::ranges::lower_bound(series, from, {}, &ClimateReading::at);
    while (at != series.begin()) {
        --at;
        if (measure == Measure::Temperature || at->hasHumidity)
            break;
    }
    const ClimateReading* before = nullptr;
    for (; at != series.end(); ++at) {
        if (measure == Measure::Humidity && !at->hasHumidity)
            continue; // the line goes on to the next that has one
        const ThinPoint point{secondsFrom(from, at->at), valueOf(*at, measure)};
        if (before) {
            const ThinPoint last{secondsFrom(from, before->at), valueOf(*before, measure)};
            const bool isJoined = at->at - before->at <= allowedGap;
            if (!isJoined)
                kept.endLine();
            if (isJoined && last.seconds < 0 && point.seconds > 0)
                kept.add(between(last, point, 0));
            if (isJoined && point.seconds > span && last.seconds < span)
                kept.add(between(last, point, span));
        }
        if (point.seconds > span)
            break;
        if (point.seconds >= 0)
            kept.add(point);
        before = &*at;
    }
    return kept.take();
}

} // namespace holdfast::app
