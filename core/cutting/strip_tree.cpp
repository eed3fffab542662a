// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip_tree.h"

#include <algorithm>

namespace holdfast {

StripTree::StripTree(const FillFrame& frame, std::span<const FillPiece> pieces)
    : m_isLaid(pieces.size())
    , m_left(pieces.size())
    , m_spare(frame.width * frame.end)
    , m_skylines{StripSkyline{frame}} {
    for (const TakenArea& pin : frame.pins)
        m_spare -= (pin.acrossEnd - pin.across) * (pin.alongEnd - pin.along);
    for (std::size_t index = 0; index < pieces.size(); ++index) {
        const FillPiece& piece = pieces[index];
        m_spare -= piece.area();
        m_ways.push_back({piece, index, piece.across, piece.along, false});
        if (piece.mayTurn)
            m_ways.push_back({piece, index, piece.along, piece.across, true});
    }
    std::ranges::stable_sort(m_ways, std::ranges::greater{},
                             [](const LaidWay& way) { return way.piece.area(); });
}

std::optional<std::vector<FilledPlace>> StripTree::search(const std::function<bool()>& mayGoOn) {
    m_mayGoOn = &mayGoOn;
    if (m_spare < 0 || !grow(0, m_spare))
        return std::nullopt;
    return m_places;
}

StripSkyline& StripTree::nextSkyline(std::size_t depth) {
    if (m_skylines.size() <= depth + 1)
        m_skylines.push_back(m_skylines[depth]);
    else
        m_skylines[depth + 1] = m_skylines[depth];
    return m_skylines[depth + 1];
}

bool StripTree::grow(std::size_t depth, std::int64_t spare) {
    if (m_left == 0)
        return true;
    if (!(*m_mayGoOn)())
        return false;
    const std::optional<StripGap> gap = m_skylines[depth].lowest();
    if (!gap)
        return false;
    if (layEach(depth, *gap, spare))
        return true;
    const std::int64_t lost = nextSkyline(depth).giveUp(*gap);
    return lost <= spare && grow(depth + 1, spare - lost);
}

bool StripTree::layEach(std::size_t depth, const StripGap& gap, std::int64_t spare) {
    std::vector<const LaidWay*> tried;
    for (const LaidWay& way : m_ways) {
        if (m_isLaid[way.index] || way.across > gap.width || way.along > gap.toEnd ||
            std::ranges::any_of(tried, [&](const LaidWay* other) { return way.isLike(*other); }))
            continue;
        tried.push_back(&way);
        if (layAt(depth, gap, way, gap.across, spare) ||
            (way.across < gap.width && layAt(depth, gap, way, gap.across + gap.width - way.across, spare)))
            return true;
    }
    return false;
}

bool StripTree::layAt(std::size_t depth, const StripGap& gap, const LaidWay& way, std::int64_t across,
                      std::int64_t spare) {
    if (way.along > gap.ceiling && !m_skylines[depth].isFree(across, way.across, gap.along, way.along))
        return false;
    nextSkyline(depth).raise(gap, across, way.across, gap.along + way.along);
    m_isLaid[way.index] = 1;
    m_places.push_back({way.piece.piece, across, gap.along, way.isTurned});
    --m_left;
    if (grow(depth + 1, spare))
        return true;
    ++m_left;
    m_places.pop_back();
    m_isLaid[way.index] = 0;
    return false;
}

} // namespace holdfast
