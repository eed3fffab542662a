// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The local search behind packWithin: lays pieces before an end that was not reached yet, by changing the
// order in which the strip is filled. What it keeps small is the area that finds no room.
//
// Several chains, each an order and an axis (the frame is filled along the strip or across it), take turns
// with twice as many fillings each time. A worse order is taken now and then, ever more rarely within a turn
// (simulated annealing: Kirkpatrick, Gelatt and Vecchi 1983 [M]). Between their turns the best chains' orders
// are branched from (strip_branches.h). A few pieces are laid by trying everything as well.

#include "core/cutting/strip_branches.h"
#include "core/cutting/strip_construction.h"
#include "core/cutting/strip_packing.h"

namespace holdfast {

// Counts rounds, work and time, and asks whether to stop each time a fixed amount of work was done.
class StripBudget {
public:
    static constexpr std::uint64_t kWorkBetweenAsking = 2'000; // pieces laid

    // A round lays that many pieces.
    StripBudget(const StripSearch& search, std::size_t pieces);

    bool isOver();
    bool askNow(); // after much work that is not counted; true: it is over
    // One round more; false: there is none left.
    bool spendRound();

private:
    void work(std::uint64_t pieces);
    void ask();

    const StripSearch& m_search;
    std::uint64_t m_piecesOfRound = 1;
    std::optional<std::uint64_t> m_mostRounds;
    std::uint64_t m_rounds = 0;
    std::uint64_t m_unasked = 0;        // work since it asked
    std::uint64_t m_untold = 0;         // work of rounds since the last report
    std::chrono::nanoseconds m_ends{0}; // of the thread's processor time
    bool m_isOver = false;
};

// Searches for one set of pieces; chains keep what they learned for one end when they aim for the next.
class StripSearcher {
public:
    // The frame's end does not count.
    StripSearcher(FillFrame frame, std::span<const FillPiece> pieces, std::uint64_t seed);

    void aimFor(std::int64_t end);

    // A turn of every chain, and branches; all pieces before the end, or none.
    std::optional<Filling> search(std::uint64_t fillingsEach, StripBudget& budget);

private:
    struct Chain {
        FillOrder order;
        bool isAcross = false; // which axis it fills
        bool keepsLeft = false;
        std::int64_t areaLeft = 0;
    };

    enum class MoveKind { Exchange, Shift, Turn };
    struct Move {
        MoveKind kind = MoveKind::Exchange;
        std::size_t from = 0;
        std::size_t to = 0; // Turn: the same
    };

    std::optional<Filling> branchOut(std::uint64_t fillings, StripBudget& budget);
    std::optional<Filling> tryEverything(std::uint64_t rounds, StripBudget& budget);
    std::optional<Filling> turn(Chain& chain, std::uint64_t fillings, StripBudget& budget);
    std::optional<Move> someMove(const Chain& chain, const std::vector<std::uint32_t>& left);
    std::optional<Move> bringForward(const FillOrder& order, std::uint32_t piece);
    static void make(FillOrder& order, const Move& move);
    static void takeBack(FillOrder& order, const Move& move);
    std::int64_t allowance(std::uint64_t filling, std::uint64_t fillings);
    std::vector<std::uint32_t> leftOver(const StripFiller& filler) const;
    StripFiller& fillerOf(const Chain& chain) { return m_fillers[kindOf(chain)]; }
    // Chains of a kind share what fills for them.
    static std::size_t kindOf(const Chain& chain) { return (chain.isAcross ? 2U : 0U) + chain.keepsLeft; }
    FillHabit habitOf(bool keepsLeft) const;
    Filling filled(std::vector<FilledPlace> places, bool isAcross) const;

    FillFrame m_frame;
    std::vector<FillPiece> m_pieces;
    StripRandom m_random;
    std::vector<Chain> m_chains;
    std::int64_t m_area = 0; // of the pieces
    std::int64_t m_meanSide = 0;
    bool m_triesTurns = false;             // else what fits exactly says which way
    std::int64_t m_spare = 0;              // of the frame, beyond the pieces and pins
    std::vector<StripFiller> m_fillers;    // by kind of chain
    std::vector<StripBranches> m_branches; // the same; none: there are too many pieces to branch
};

} // namespace holdfast
