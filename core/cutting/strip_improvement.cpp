// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip_improvement.h"

#include "core/cutting/strip_lowest_search.h"

#include <algorithm>

namespace holdfast {

namespace {

// Fillings of a chain's first turn: this many pieces are laid, within limits.
constexpr std::uint64_t kPiecesOfFirstTurn = 20'000;
constexpr std::uint64_t kFewestFillings = 8;
constexpr std::uint64_t kMostFillings = 256;

// At first the search aims further than one unit: for this share of what the least length leaves to be
// gained.
constexpr std::int64_t kShareAimedFor = 16;

// Laying pieces as low as they can lie takes about this many times as long as filling a frame with them, and
// more for very many, of which it is not tried.
constexpr std::uint64_t kFillingsForOneLowest = 8;
constexpr std::size_t kMostLaidLowest = 2'000;

// This many of the pieces that are not laid are tried in one go.
constexpr std::size_t kPiecesTried = 32;

class Improvement {
public:
    Improvement(const StripTask& task, const StripPlan& plan, Filling filling, const StripSearch& search,
                const ImprovedFilling& improved)
        : m_task(task)
        , m_plan(plan)
        , m_best(std::move(filling))
        , m_seed(search.seed)
        , m_budget(search, plan.pieces.size())
        , m_improved(improved) {}

    void run() {
        std::uint64_t fillings = firstFillings(m_plan.pieces.size());
        beginLowest();
        while (!m_budget.isOver()) {
            const bool couldLayMore = isAnyLeft() && layMore(fillings);
            const bool couldBeShorter = shorten(fillings, isAnyLeft());
            layLower(fillings / kFillingsForOneLowest);
            if (!couldLayMore && !couldBeShorter)
                return;
            fillings *= 2;
        }
    }

private:
    static std::uint64_t firstFillings(std::size_t pieces) {
        return std::clamp(kPiecesOfFirstTurn / std::max<std::uint64_t>(pieces, 1), kFewestFillings,
                          kMostFillings);
    }

    bool isAnyLeft() const { return m_best.places.size() < m_plan.pieces.size(); }

    std::vector<char> laid() const {
        std::vector<char> laid(m_task.pieces.size());
        for (const FilledPlace& place : m_best.places)
            laid[place.piece] = 1;
        return laid;
    }

    // Tries the first pieces that are not laid, each with all that are laid and matter more; whatever else
    // was laid comes after it. False: their area alone is too much, now and for ever.
    bool layMore(std::uint64_t fillings) {
        bool isPossible = false;
        std::vector<char> isLaid = laid();
        std::vector<FillPiece> wanted;
        std::int64_t spare = spareArea();
        std::size_t tried = 0;
        for (const FillPiece& piece : m_plan.pieces) {
            if (!isLaid[piece.piece]) {
                if (piece.area() > spare)
                    continue;
                if (m_budget.isOver() || ++tried > kPiecesTried)
                    return true;
                isPossible = true;
                wanted.push_back(piece);
                if (!layTogether(wanted, fillings)) {
                    wanted.pop_back();
                    continue;
                }
                isLaid = laid();
            } else {
                wanted.push_back(piece);
            }
            spare -= piece.area();
        }
        return isPossible;
    }

    std::int64_t spareArea() const {
        std::int64_t spare = m_plan.frame.width * m_plan.frame.end;
        for (const TakenArea& pin : m_plan.frame.pins)
            spare -= (pin.acrossEnd - pin.across) * (pin.alongEnd - pin.along);
        return spare;
    }

    bool layTogether(const std::vector<FillPiece>& wanted, std::uint64_t fillings) {
        StripSearcher searcher{m_plan.frame, wanted, m_seed};
        searcher.aimFor(m_plan.frame.end);
        std::optional<Filling> found = searcher.search(fillings, m_budget);
        if (!found)
            return false;
        keepWithMore(std::move(*found));
        return true;
    }

    // Of the pieces that are laid. False: it is as short as can be.
    bool shorten(std::uint64_t fillings, bool onlyOneTurn) {
        const std::vector<char> isLaid = laid();
        StripTask task{m_task.width, m_task.length, {}};
        for (std::size_t piece = 0; piece < isLaid.size(); ++piece) {
            if (isLaid[piece] || m_task.pieces[piece].pinned)
                task.pieces.push_back(m_task.pieces[piece]);
        }
        std::vector<FillPiece> pieces;
        std::ranges::copy_if(m_plan.pieces, std::back_inserter(pieces),
                             [&](const FillPiece& piece) { return isLaid[piece.piece] != 0; });
        if (!m_least)
            m_least = leastLength(task, m_best.end);
        const std::int64_t least = *m_least;
        if (m_best.end <= least || pieces.empty() || m_budget.askNow())
            return false;
        StripSearcher searcher{m_plan.frame, pieces, m_seed};
        for (std::int64_t step = firstStep(least); m_best.end > least;) {
            if (m_budget.askNow())
                return false;
            searcher.aimFor(m_best.end - step);
            if (auto found = searcher.search(fillings, m_budget)) {
                if (keepWithMore(std::move(*found)))
                    return true;
                step = firstStep(least);
                continue;
            }
            if (m_budget.isOver() || (onlyOneTurn && step == 1))
                return true;
            if (step == 1)
                fillings *= 2;
            step = std::max<std::int64_t>(1, step / 2);
        }
        return false;
    }

    // Where all are laid.
    void beginLowest() {
        if (isAnyLeft() || m_plan.pieces.empty() || m_plan.pieces.size() > kMostLaidLowest)
            return;
        FillFrame open = m_plan.frame;
        open.end = m_best.end;
        for (const FillPiece& piece : m_plan.pieces)
            open.end += std::max(piece.along, piece.mayTurn ? piece.across : 0);
        m_lowest.emplace(std::move(open), m_plan.pieces, m_seed);
        const std::size_t orders = fillOrders(m_plan.pieces).size();
        while (const auto found = m_lowest->search(m_best.end, orders, m_budget))
            keepWithMore(*found);
    }

    // For as long as it leads.
    void layLower(std::uint64_t rounds) {
        if (!m_lowest || m_lowest->reached() > m_best.end)
            return;
        if (const auto found = m_lowest->search(m_best.end, rounds, m_budget))
            keepWithMore(*found);
    }

    std::int64_t firstStep(std::int64_t least) const {
        return std::max<std::int64_t>(1, (m_best.end - least) / kShareAimedFor);
    }

    // Whatever is not laid yet and finds room now, too. True: some did.
    bool keepWithMore(Filling filling) {
        const std::size_t laidBefore = filling.places.size();
        if (laidBefore < m_plan.pieces.size())
            layIntoFreeSpace(m_plan, filling, [&] { return m_budget.isOver(); });
        if (laidBefore < m_plan.pieces.size())
            m_least.reset(); // others may be laid
        m_best = std::move(filling);
        m_improved(m_best);
        return m_best.places.size() > laidBefore;
    }

    const StripTask& m_task;
    const StripPlan& m_plan;
    Filling m_best;
    std::uint64_t m_seed = 0;
    StripBudget m_budget;
    std::optional<std::int64_t> m_least; // of the pieces that are laid
    std::optional<LowestSearch> m_lowest;
    const ImprovedFilling& m_improved;
};

} // namespace

void improveFilling(const StripTask& task, const StripPlan& plan, Filling filling, const StripSearch& search,
                    const ImprovedFilling& improved) {
    Improvement{task, plan, std::move(filling), search, improved}.run();
}

} // namespace holdfast
