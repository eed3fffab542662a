// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip_skyline.h"

#include <algorithm>

namespace holdfast {

namespace {

bool isOver(const TakenArea& pin, std::int64_t across, std::int64_t width) {
    return pin.across < across + width && pin.acrossEnd > across;
}

} // namespace

StripSkyline::StripSkyline(const FillFrame& frame)
    : m_frame(frame) {
    std::ranges::sort(m_frame.pins, {}, &TakenArea::along);
    clear();
}

void StripSkyline::clear() {
    m_levels.assign(1, {0, m_frame.width, 0});
    m_passedPins = 0;
}

void StripSkyline::setLevels(const Levels& levels) {
    m_levels = levels;
    m_passedPins = 0;
}

std::span<const TakenArea> StripSkyline::pinsBefore(std::int64_t end) const {
    const std::span<const TakenArea> ahead = std::span{m_frame.pins}.subspan(m_passedPins);
    const auto after = std::ranges::lower_bound(ahead, end, {}, &TakenArea::along);
    return ahead.first(static_cast<std::size_t>(after - ahead.begin()));
}

void StripSkyline::passPins(std::int64_t along) {
    while (m_passedPins < m_frame.pins.size() && m_frame.pins[m_passedPins].alongEnd <= along)
        ++m_passedPins;
}

std::optional<StripGap> StripSkyline::lowest() {
    for (;;) {
        std::size_t level = 0;
        for (std::size_t other = 1; other < m_levels.size(); ++other) {
            if (m_levels[other].along < m_levels[level].along)
                level = other;
        }
        if (m_levels[level].along >= m_frame.end)
            return std::nullopt;
        passPins(m_levels[level].along);
        if (m_frame.pins.empty() || !growAroundPin(level))
            return gapAt(level);
    }
}

StripGap StripSkyline::gapAt(std::size_t level) const {
    const Level& low = m_levels[level];
    StripGap gap;
    gap.level = level;
    gap.across = low.across;
    gap.width = low.width;
    gap.along = low.along;
    gap.leftWall = level > 0 ? m_levels[level - 1].along - low.along : StripGap::kNoWall;
    gap.rightWall = level + 1 < m_levels.size() ? m_levels[level + 1].along - low.along : StripGap::kNoWall;
    gap.toEnd = m_frame.end - low.along;
    gap.ceiling = gap.toEnd;
    const std::span<const TakenArea> ahead = std::span{m_frame.pins}.subspan(m_passedPins);
    const auto above = std::ranges::upper_bound(ahead, low.along, {}, &TakenArea::along);
    const auto over = std::find_if(above, ahead.end(),
                                   [&](const TakenArea& pin) { return isOver(pin, low.across, low.width); });
    if (over != ahead.end())
        gap.ceiling = std::min(gap.ceiling, over->along - low.along);
    return gap;
}

bool StripSkyline::growAroundPin(std::size_t level) {
    const Level low = m_levels[level];
    for (const TakenArea& pin : pinsBefore(low.along + 1)) {
        if (!isOver(pin, low.across, low.width) || pin.alongEnd <= low.along)
            continue;
        const std::int64_t across = std::max(pin.across, low.across);
        raiseLevel(level, across, std::min(pin.acrossEnd, low.across + low.width) - across, pin.alongEnd);
        return true;
    }
    return false;
}

void StripSkyline::raise(const StripGap& gap, std::int64_t across, std::int64_t width, std::int64_t along) {
    raiseLevel(gap.level, across, width, along);
}

std::int64_t StripSkyline::giveUp(const StripGap& gap) {
    const std::int64_t height = std::min({gap.leftWall, gap.rightWall, gap.ceiling});
    m_levels[gap.level].along += height;
    joinNeighbours(gap.level);
    return height * gap.width;
}

bool StripSkyline::isFree(std::int64_t across, std::int64_t width, std::int64_t along,
                          std::int64_t height) const {
    return along + height <= m_frame.end &&
           std::ranges::none_of(pinsBefore(along + height), [&](const TakenArea& pin) {
               return isOver(pin, across, width) && pin.alongEnd > along;
           });
}

void StripSkyline::raiseLevel(std::size_t level, std::int64_t across, std::int64_t width,
                              std::int64_t along) {
    const Level before = m_levels[level];
    const std::int64_t over = before.across + before.width - across - width;
    m_levels[level] = {across, width, along};
    if (over > 0)
        m_levels.insert(at(level + 1), {across + width, over, before.along});
    if (across > before.across) {
        m_levels.insert(at(level), {before.across, across - before.across, before.along});
        ++level;
    }
    joinNeighbours(level);
}

void StripSkyline::joinNeighbours(std::size_t level) {
    const std::int64_t along = m_levels[level].along;
    if (level + 1 < m_levels.size() && m_levels[level + 1].along == along) {
        m_levels[level].width += m_levels[level + 1].width;
        m_levels.erase(at(level + 1));
    }
    if (level > 0 && m_levels[level - 1].along == along) {
        m_levels[level - 1].width += m_levels[level].width;
        m_levels.erase(at(level));
    }
}

} // namespace holdfast
