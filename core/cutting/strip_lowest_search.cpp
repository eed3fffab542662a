// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip_lowest_search.h"

#include "core/cutting/strip_lowest.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace holdfast {

LowestSearch::LowestSearch(FillFrame frame, std::span<const FillPiece> pieces, std::uint64_t seed)
    : m_frame(std::move(frame))
    , m_pieces(pieces.begin(), pieces.end())
    , m_toBegin(fillOrders(pieces))
    , m_end(std::numeric_limits<std::int64_t>::max())
    , m_random(seed) {
    std::ranges::reverse(m_toBegin);
}

std::optional<Filling> LowestSearch::search(std::int64_t end, std::uint64_t rounds, StripBudget& budget) {
    while (rounds-- > 0 && budget.spendRound()) {
        if (tryNext(budget) && m_end < end)
            return m_filling;
    }
    return std::nullopt;
}

// True: it is shorter than all before. One as short is gone on from, too.
bool LowestSearch::tryNext(StripBudget& budget) {
    FillOrder order = m_order;
    if (!m_toBegin.empty()) {
        order = std::move(m_toBegin.back());
        m_toBegin.pop_back();
    } else {
        change(order);
    }
    const bool isFirst = m_order.empty();
    const std::int64_t end = isFirst ? m_end : m_end + 1;
    auto filling = fillLowest(m_frame, m_pieces, order, end, [&] { return budget.isOver(); });
    if (!filling)
        return false;
    const bool isShorter = filling->end < m_end;
    m_order = std::move(order);
    m_end = filling->end;
    m_filling = std::move(*filling);
    return isShorter;
}

// Two pieces change places, or one is laid earlier or later.
void LowestSearch::change(FillOrder& order) {
    const auto from = static_cast<std::ptrdiff_t>(m_random.below(order.size()));
    const auto to = static_cast<std::ptrdiff_t>(m_random.below(order.size()));
    if (m_random.below(2) == 0)
        std::swap(order[static_cast<std::size_t>(from)], order[static_cast<std::size_t>(to)]);
    else if (from < to)
        std::rotate(order.begin() + from, order.begin() + from + 1, order.begin() + to + 1);
    else
        std::rotate(order.begin() + to, order.begin() + from, order.begin() + from + 1);
}

} // namespace holdfast
