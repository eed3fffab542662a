// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip_search.h"

#include "core/cutting/strip_tree.h"

#include <algorithm>
#include <cmath>
#include <ctime>
#include <utility>

namespace holdfast {

namespace {

// A filling of more pieces than these asks by itself whether to stop.
constexpr std::size_t kPiecesToAskWithin = 500;

// Who asks within a round has laid about this many pieces since.
constexpr std::uint64_t kPiecesWithinRound = 32;

// Of this thread: other load on the machine does not shorten a search.
std::chrono::nanoseconds processorTime() {
    timespec time{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
    return std::chrono::seconds{time.tv_sec} + std::chrono::nanoseconds{time.tv_nsec};
}

// At the beginning of a turn of this many fillings an order is taken that leaves this share of a mean piece
// more over, more or less. Longer turns begin warmer, by the root of their length, up to the greatest share.
constexpr double kUsualTurn = 256;
constexpr double kAllowedShare = 0.3;
constexpr double kGreatestShare = 0.6;

// One move in this many brings a piece that found no room forward; of the others one in this many lets a
// piece be tried the other way first, where few fit exactly.
constexpr std::size_t kOneForwardIn = 4;
constexpr std::size_t kOneTurnIn = 2;

// Every other order may leave this part of a mean side free next to a piece, unless sides are of so few units
// that many fit together exactly.
constexpr std::int64_t kSidesLeftInOne = 16;
constexpr std::int64_t kFewUnits = 32;

// This many pieces are laid by trying everything as well; this many branches count as a round.
constexpr std::size_t kFewPieces = 12;
constexpr std::uint64_t kBranchesOfARound = 16;

// For each filling of a chain's turn this many are spent on branches, half of what is left of them on the
// best chain, then on the next. Less than this width is not worth it; nor are more pieces than ask by
// themselves whether to stop.
constexpr std::uint64_t kBranchedFillings = 2;
constexpr double kLeastWidth = 0.5;

FillFrame turnedOver(const FillFrame& frame) {
    FillFrame over{frame.end, frame.width, frame.pins};
    for (TakenArea& pin : over.pins) {
        std::swap(pin.across, pin.along);
        std::swap(pin.acrossEnd, pin.alongEnd);
    }
    return over;
}

std::vector<FillPiece> turnedOver(std::vector<FillPiece> pieces) {
    for (FillPiece& piece : pieces)
        std::swap(piece.across, piece.along);
    return pieces;
}

} // namespace

StripBudget::StripBudget(const StripSearch& search, std::size_t pieces)
    : m_search(search)
    , m_piecesOfRound(std::max<std::uint64_t>(pieces, 1))
    , m_mostRounds(search.rounds) {
    if (!m_mostRounds && search.work)
        m_mostRounds = *search.work / m_piecesOfRound;
    m_ends = processorTime() + search.budget;
    ask();
}

bool StripBudget::isOver() {
    work(kPiecesWithinRound);
    return m_isOver;
}

bool StripBudget::askNow() {
    ask();
    return m_isOver;
}

bool StripBudget::spendRound() {
    if (m_mostRounds && m_rounds >= *m_mostRounds)
        m_isOver = true;
    ++m_rounds;
    m_untold += m_piecesOfRound;
    work(m_piecesOfRound);
    return !m_isOver;
}

void StripBudget::work(std::uint64_t pieces) {
    m_unasked += pieces;
    if (m_unasked >= kWorkBetweenAsking)
        ask();
}

void StripBudget::ask() {
    m_unasked = 0;
    if (m_search.worked)
        m_search.worked(std::exchange(m_untold, 0));
    if (m_isOver)
        return;
    m_isOver = (!m_mostRounds && processorTime() >= m_ends) || (m_search.shouldStop && m_search.shouldStop());
}

StripSearcher::StripSearcher(FillFrame frame, std::span<const FillPiece> pieces, std::uint64_t seed)
    : m_frame(std::move(frame))
    , m_pieces(pieces.begin(), pieces.end())
    , m_random(seed) {
    std::int64_t sides = 0;
    for (const FillPiece& piece : m_pieces) {
        m_area += piece.area();
        sides += piece.across + piece.along;
    }
    m_meanSide = sides / (2 * std::max<std::int64_t>(1, static_cast<std::int64_t>(m_pieces.size())));
    m_triesTurns = m_meanSide >= kFewUnits && std::ranges::any_of(m_pieces, &FillPiece::mayTurn);
    // Every other order keeps left: strips that are cut up whole are found again more often so.
    bool keepsLeft = false;
    for (const FillOrder& order : fillOrders(m_pieces)) {
        for (const bool isAcross : {false, true})
            m_chains.push_back({order, isAcross, keepsLeft, 0});
        keepsLeft = !keepsLeft;
    }
}

void StripSearcher::aimFor(std::int64_t end) {
    m_frame.end = end;
    m_spare = m_frame.width * end - m_area;
    for (const TakenArea& pin : m_frame.pins)
        m_spare -= (pin.acrossEnd - pin.across) * (pin.alongEnd - pin.along);
    m_fillers.clear();
    m_branches.clear();
    const FillFrame over = turnedOver(m_frame);
    const std::vector<FillPiece> piecesOver = turnedOver(m_pieces);
    for (const bool isAcross : {false, true}) {
        for (const bool keepsLeft : {false, true}) {
            const FillFrame& frame = isAcross ? over : m_frame;
            const std::vector<FillPiece>& pieces = isAcross ? piecesOver : m_pieces;
            const FillHabit habit = habitOf(keepsLeft);
            m_fillers.emplace_back(frame, pieces, habit);
            if (m_pieces.size() <= kPiecesToAskWithin)
                m_branches.emplace_back(frame, pieces, habit, m_spare);
        }
    }
}

// Where hardly any sizes fit together exactly, waste cannot be avoided, and little of it is better than more.
// Those that keep left look for what fits exactly.
FillHabit StripSearcher::habitOf(bool keepsLeft) const {
    const bool isExact = keepsLeft || m_meanSide < kFewUnits;
    return {false, keepsLeft, isExact ? 0 : m_meanSide / kSidesLeftInOne};
}

std::optional<Filling> StripSearcher::search(std::uint64_t fillingsEach, StripBudget& budget) {
    for (Chain& chain : m_chains) {
        if (auto found = turn(chain, fillingsEach, budget); found || budget.isOver())
            return found;
    }
    std::ranges::stable_sort(m_chains, {}, &Chain::areaLeft);
    auto found = branchOut(kBranchedFillings * fillingsEach * m_chains.size(), budget);
    if (found || budget.isOver() || m_pieces.size() > kFewPieces)
        return found;
    return tryEverything(fillingsEach, budget);
}

std::optional<Filling> StripSearcher::branchOut(std::uint64_t fillings, StripBudget& budget) {
    if (m_pieces.size() > kPiecesToAskWithin)
        return std::nullopt;
    const auto ofOneBranch = static_cast<double>(m_pieces.size() * StripBranches::kWaysTried);
    std::uint64_t spent = 0;
    const auto mayFill = [&] {
        ++spent;
        return budget.spendRound();
    };
    for (const Chain& chain : m_chains) {
        const double width = static_cast<double>(fillings - std::min(fillings, spent)) / 2 / ofOneBranch;
        if (width < kLeastWidth)
            break;
        StripBranches& branches = m_branches[kindOf(chain)];
        if (auto places = branches.search(chain.order, chain.areaLeft, width, m_random, mayFill))
            return filled(std::move(*places), chain.isAcross);
        if (budget.isOver())
            break;
    }
    return std::nullopt;
}

std::optional<Filling> StripSearcher::tryEverything(std::uint64_t rounds, StripBudget& budget) {
    for (const bool isAcross : {false, true}) {
        std::uint64_t branches = 0;
        const auto mayGoOn = [&] {
            const bool isNewRound = ++branches % kBranchesOfARound == 0;
            return branches / kBranchesOfARound <= rounds &&
                   (isNewRound ? budget.spendRound() : !budget.isOver());
        };
        auto places = isAcross ? StripTree{turnedOver(m_frame), turnedOver(m_pieces)}.search(mayGoOn)
                               : StripTree{m_frame, m_pieces}.search(mayGoOn);
        if (places)
            return filled(std::move(*places), isAcross);
    }
    return std::nullopt;
}

std::optional<Filling> StripSearcher::turn(Chain& chain, std::uint64_t fillings, StripBudget& budget) {
    StripFiller& filler = fillerOf(chain);
    const ShouldStop shouldStop =
        m_pieces.size() > kPiecesToAskWithin ? ShouldStop{[&] { return budget.isOver(); }} : ShouldStop{};
    if (!budget.spendRound())
        return std::nullopt;
    const FillOutcome first = filler.fill(chain.order, FillOutcome::kTooMuch, shouldStop);
    if (first.isStopped)
        return std::nullopt;
    chain.areaLeft = first.areaLeft;
    if (chain.areaLeft == 0)
        return filled(filler.places(), chain.isAcross);
    std::vector<std::uint32_t> left = leftOver(filler);
    for (std::uint64_t filling = 0; filling < fillings; ++filling) {
        if (!budget.spendRound())
            return std::nullopt;
        const std::optional<Move> move = someMove(chain, left);
        if (!move)
            continue;
        make(chain.order, *move);
        const std::int64_t most = chain.areaLeft + allowance(filling, fillings);
        const FillOutcome outcome = filler.fill(chain.order, m_spare + most, shouldStop);
        if (outcome.areaLeft == 0)
            return filled(filler.places(), chain.isAcross);
        if (outcome.isStopped || outcome.areaLeft > most) {
            takeBack(chain.order, *move);
            continue;
        }
        chain.areaLeft = outcome.areaLeft;
        left = leftOver(filler);
    }
    return std::nullopt;
}

// None: it would change nothing.
std::optional<StripSearcher::Move> StripSearcher::someMove(const Chain& chain,
                                                           const std::vector<std::uint32_t>& left) {
    const FillOrder& order = chain.order;
    if (!left.empty() && m_random.below(kOneForwardIn) == 0)
        return bringForward(order, left[m_random.below(left.size())]);
    const std::size_t from = m_random.below(order.size());
    const FillPiece& one = m_pieces[order[from].piece];
    if (m_triesTurns && m_random.below(kOneTurnIn) == 0)
        return one.mayTurn ? std::optional{Move{MoveKind::Turn, from, from}} : std::nullopt;
    const Move move{MoveKind::Exchange, from, m_random.below(order.size())};
    const FillPiece& other = m_pieces[order[move.to].piece];
    if (one.across == other.across && one.along == other.along && one.mayTurn == other.mayTurn)
        return std::nullopt;
    return move;
}

std::optional<StripSearcher::Move> StripSearcher::bringForward(const FillOrder& order, std::uint32_t piece) {
    const auto found = std::ranges::find(order, piece, &OrderedPiece::piece);
    const auto from = static_cast<std::size_t>(found - order.begin());
    return from == 0 ? std::nullopt : std::optional{Move{MoveKind::Shift, from, m_random.below(from)}};
}

void StripSearcher::make(FillOrder& order, const Move& move) {
    const auto from = order.begin() + static_cast<std::ptrdiff_t>(move.from);
    const auto to = order.begin() + static_cast<std::ptrdiff_t>(move.to);
    if (move.kind == MoveKind::Turn)
        from->isTurnedFirst = !from->isTurnedFirst;
    else if (move.kind == MoveKind::Shift)
        std::rotate(to, from, from + 1);
    else
        std::iter_swap(from, to);
}

void StripSearcher::takeBack(FillOrder& order, const Move& move) {
    const auto from = order.begin() + static_cast<std::ptrdiff_t>(move.from);
    const auto to = order.begin() + static_cast<std::ptrdiff_t>(move.to);
    if (move.kind == MoveKind::Turn)
        from->isTurnedFirst = !from->isTurnedFirst;
    else if (move.kind == MoveKind::Shift)
        std::rotate(to, to + 1, from + 1);
    else
        std::iter_swap(from, to);
}

// How much more area may stay over than before: exponentially distributed, its mean falling through the turn.
std::int64_t StripSearcher::allowance(std::uint64_t filling, std::uint64_t fillings) {
    const double meanArea = static_cast<double>(m_area) / static_cast<double>(m_pieces.size());
    const auto length = static_cast<double>(fillings);
    const double share = std::min(kGreatestShare, kAllowedShare * std::sqrt(length / kUsualTurn));
    const double mean = share * meanArea * (1 - static_cast<double>(filling) / length);
    return static_cast<std::int64_t>(-std::log(1 - m_random.share()) * mean);
}

std::vector<std::uint32_t> StripSearcher::leftOver(const StripFiller& filler) const {
    std::vector<std::uint32_t> left;
    for (std::uint32_t piece = 0; piece < m_pieces.size(); ++piece) {
        if (!filler.isLaid(piece))
            left.push_back(piece);
    }
    return left;
}

Filling StripSearcher::filled(std::vector<FilledPlace> places, bool isAcross) const {
    Filling filling{std::move(places), 0, false};
    if (isAcross) {
        for (FilledPlace& place : filling.places)
            std::swap(place.across, place.along);
    }
    for (const TakenArea& pin : m_frame.pins)
        filling.end = std::max(filling.end, pin.alongEnd);
    for (const FilledPlace& place : filling.places) {
        const FillPiece& piece = *std::ranges::lower_bound(m_pieces, place.piece, {}, &FillPiece::piece);
        filling.end = std::max(filling.end, place.along + (place.isTurned ? piece.across : piece.along));
    }
    return filling;
}

} // namespace holdfast
