// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip_branches.h"

#include "core/cutting/strip_filler.h"

#include <algorithm>

namespace holdfast {

namespace {

constexpr double kMostBranches = 64;

// The ways tried are drawn among the first few, this many, in the order; each place in it counts for half, a
// snug one for twenty, and chance for up to ten.
constexpr std::size_t kWaysDrawnFrom = 15;
constexpr std::uint32_t kSnugCounts = 20;
constexpr std::uint32_t kChanceCounts = 10;

} // namespace

StripBranches::StripBranches(const FillFrame& frame, std::span<const FillPiece> pieces, FillHabit habit,
                             std::int64_t spare)
    : m_rule(frame, pieces, habit)
    , m_skyline(frame)
    , m_spare(spare) {}

std::optional<std::vector<FilledPlace>> StripBranches::search(const FillOrder& order, std::int64_t areaLeft,
                                                              double width, StripRandom& random,
                                                              const std::function<bool()>& mayFill) {
    m_width = width;
    m_random = &random;
    m_mayFill = &mayFill;
    m_found.reset();
    m_isOver = false;
    m_rule.begin(order);
    m_skyline.clear();
    m_branches.assign(1, {m_skyline.levels(), m_rule.left(), {}, 0, m_rule.area(), areaLeft, 0});
    while (!m_branches.empty()) {
        m_twigs.clear();
        m_leastLeft.clear();
        m_seen.clear();
        m_most = mostBranches(m_branches.front().laid.size());
        for (std::size_t branch = 0; branch < m_branches.size(); ++branch) {
            sprout(branch);
            if (m_found || m_isOver)
                return std::move(m_found);
        }
        m_branches = grown();
    }
    return std::nullopt;
}

std::size_t StripBranches::mostBranches(std::size_t laid) const {
    const auto all = static_cast<double>(m_rule.pieces());
    const double branches = m_width * all / std::max(1.0, all - static_cast<double>(laid));
    return static_cast<std::size_t>(std::clamp(branches, 1.0, kMostBranches));
}

void StripBranches::sprout(std::size_t index) {
    Branch& branch = m_branches[index];
    m_skyline.setLevels(branch.levels);
    m_rule.setLeft(branch.left);
    std::optional<StripGap> gap;
    const std::uint32_t best = goToNextGap(branch, gap);
    if (best == StripRule::kNone || branch.lost > m_spare)
        return;
    for (const std::uint32_t way : waysFor(*gap, best)) {
        tryTwig({index, *gap, way, m_rule.acrossOf(*gap, m_skyline, way), branch.areaLeft, 0, 0},
                way == best);
        if (m_found || m_isOver)
            return;
    }
}

// The first that a piece fits into, and which is the best for it; those before it are given up.
std::uint32_t StripBranches::goToNextGap(Branch& branch, std::optional<StripGap>& gap) {
    std::uint32_t best = StripRule::kNone;
    while (best == StripRule::kNone && m_rule.isAnyLeft() && (gap = m_skyline.lowest())) {
        best = m_rule.bestFor(*gap, m_skyline);
        if (best == StripRule::kNone)
            branch.lost += m_skyline.giveUp(*gap);
    }
    branch.levels = m_skyline.levels();
    return best;
}

std::vector<std::uint32_t> StripBranches::waysFor(const StripGap& gap, std::uint32_t best) {
    const auto sizesOf = [&](std::uint32_t way) {
        return std::pair{m_rule.way(way).across, m_rule.way(way).along};
    };
    std::vector<std::pair<std::uint32_t, std::uint32_t>> drawn; // the least go first
    std::uint32_t place = 0;
    for (const StripRule::Candidate& candidate : m_rule.candidatesFor(gap, m_skyline, kWaysDrawnFrom)) {
        if (sizesOf(candidate.way) == sizesOf(best))
            continue;
        const std::uint32_t counts = place++ / 2 + m_random->below(kChanceCounts);
        drawn.push_back({candidate.isSnug ? counts : counts + kSnugCounts, candidate.way});
    }
    std::ranges::sort(drawn);
    std::vector<std::uint32_t> ways{best};
    for (std::size_t next = 0; next < drawn.size() && ways.size() < kWaysTried; ++next)
        ways.push_back(drawn[next].second);
    return ways;
}

// What the rule leaves after the best way is known already: it is what it leaves after the branch.
void StripBranches::tryTwig(Twig twig, bool isBest) {
    const Branch& branch = m_branches[twig.branch];
    const StripRule::PieceWay& way = m_rule.way(twig.way);
    raise(branch, twig);
    twig.laidSizes =
        branch.laidSizes + StripRandom::mixed(static_cast<std::uint64_t>(way.area) * 0x9e3779b97f4a7c15 +
                                              static_cast<std::uint64_t>(way.across + way.along));
    if (!isNew(twig.laidSizes))
        return;
    if (!isBest) {
        m_isOver = !(*m_mayFill)();
        if (m_isOver)
            return;
        twig.areaLeft = fillAfter(branch, twig.way, nullptr);
        if (twig.areaLeft == FillOutcome::kTooMuch)
            return;
        if (twig.areaLeft == 0) {
            m_found = branch.laid;
            m_found->push_back(placeOf(twig.way, twig.gap, twig.across));
            raise(branch, twig);
            fillAfter(branch, twig.way, &*m_found);
            return;
        }
    }
    keepTwig(twig);
}

// The skyline with the twig.
void StripBranches::raise(const Branch& branch, const Twig& twig) {
    const StripRule::PieceWay& way = m_rule.way(twig.way);
    m_skyline.setLevels(branch.levels);
    m_skyline.raise(twig.gap, twig.across, way.across, twig.gap.along + way.along);
}

// Whether the same sizes were not laid before so that the skyline is the same.
bool StripBranches::isNew(std::uint64_t laidSizes) {
    std::uint64_t state = laidSizes;
    for (const StripSkyline::Level& level : m_skyline.levels())
        state = StripRandom::mixed(state ^ static_cast<std::uint64_t>(level.across)) +
                static_cast<std::uint64_t>(level.along);
    if (std::ranges::find(m_seen, state) != m_seen.end())
        return false;
    m_seen.push_back(state);
    return true;
}

// The area that is left over; too much where enough twigs leave less. REQUIRES: the skyline with the way.
std::int64_t StripBranches::fillAfter(const Branch& branch, std::uint32_t way,
                                      std::vector<FilledPlace>* places) {
    m_rule.setLeft(branch.left);
    m_rule.take(way);
    std::int64_t left = branch.areaToLay - m_rule.way(way).area;
    std::int64_t lost = branch.lost;
    while (m_rule.isAnyLeft()) {
        const std::optional<StripGap> gap = m_skyline.lowest();
        if (!gap)
            break;
        const std::uint32_t best = m_rule.bestFor(*gap, m_skyline);
        if (best == StripRule::kNone) {
            lost += m_skyline.giveUp(*gap);
            if (m_leastLeft.size() == m_most && lost > m_spare + m_leastLeft.back())
                return FillOutcome::kTooMuch;
            continue;
        }
        const std::int64_t across = m_rule.acrossOf(*gap, m_skyline, best);
        m_skyline.raise(*gap, across, m_rule.way(best).across, gap->along + m_rule.way(best).along);
        m_rule.take(best);
        if (places)
            places->push_back(placeOf(best, *gap, across));
        left -= m_rule.way(best).area;
    }
    return left;
}

void StripBranches::keepTwig(const Twig& twig) {
    m_leastLeft.insert(std::ranges::upper_bound(m_leastLeft, twig.areaLeft), twig.areaLeft);
    if (m_leastLeft.size() > m_most)
        m_leastLeft.pop_back();
    m_twigs.push_back(twig);
    m_twigs.back().drawn = m_random->next();
}

std::vector<StripBranches::Branch> StripBranches::grown() {
    std::ranges::sort(m_twigs, {}, [](const Twig& twig) { return std::pair{twig.areaLeft, twig.drawn}; });
    m_twigs.resize(std::min(m_twigs.size(), m_most));
    std::vector<Branch> grown;
    grown.reserve(m_twigs.size());
    for (const Twig& twig : m_twigs) {
        const StripRule::PieceWay& way = m_rule.way(twig.way);
        Branch& branch = grown.emplace_back(m_branches[twig.branch]);
        raise(branch, twig);
        m_rule.setLeft(branch.left);
        m_rule.take(twig.way);
        branch.levels = m_skyline.levels();
        branch.left = m_rule.left();
        branch.laid.push_back(placeOf(twig.way, twig.gap, twig.across));
        branch.areaToLay -= way.area;
        branch.areaLeft = twig.areaLeft;
        branch.laidSizes = twig.laidSizes;
    }
    return grown;
}

FilledPlace StripBranches::placeOf(std::uint32_t way, const StripGap& gap, std::int64_t across) const {
    const StripRule::PieceWay& laid = m_rule.way(way);
    return {m_rule.numberInTask(laid.piece), across, gap.along, laid.isTurned};
}

} // namespace holdfast
