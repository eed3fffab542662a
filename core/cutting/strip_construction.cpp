// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip_construction.h"

#include "core/cutting/strip_free_space.h"
#include "core/cutting/strip_lowest.h"

#include <algorithm>
#include <utility>

namespace holdfast {

namespace {

// With more pieces fewer orders are tried, so that the first answer comes at once.
constexpr std::size_t kPiecesForEveryOrder = 500;
constexpr std::size_t kPiecesForOneOrder = 4'000;
constexpr std::size_t kPiecesForPlainWays = 120; // for laying low, and for every order upright and lying

using Pieces = std::span<const FillPiece>;

std::int64_t longerSide(const FillPiece& piece, std::int64_t unturned) {
    return piece.mayTurn ? std::max(piece.across, piece.along) : unturned;
}

template <class Measure>
FillOrder largestFirst(Pieces pieces, Measure measure) {
    FillOrder order(pieces.size());
    for (std::uint32_t piece = 0; piece < pieces.size(); ++piece)
        order[piece].piece = piece;
    std::ranges::stable_sort(order, std::ranges::greater{},
                             [&](const OrderedPiece& ordered) { return measure(pieces[ordered.piece]); });
    return order;
}

const FillPiece& pieceOf(Pieces pieces, const FilledPlace& place) {
    return *std::ranges::lower_bound(pieces, place.piece, {}, &FillPiece::piece);
}

std::int64_t endOfPins(const FillFrame& frame) {
    std::int64_t end = 0;
    for (const TakenArea& pin : frame.pins)
        end = std::max(end, pin.alongEnd);
    return end;
}

std::vector<FillPiece> notLaid(Pieces pieces, const Filling& filling) {
    std::vector<std::size_t> laid;
    for (const FilledPlace& place : filling.places)
        laid.push_back(place.piece);
    std::ranges::sort(laid);
    std::vector<FillPiece> left;
    std::ranges::copy_if(pieces, std::back_inserter(left), [&](const FillPiece& piece) {
        return !std::ranges::binary_search(laid, piece.piece);
    });
    return left;
}

void finishInRows(const FillFrame& frame, Pieces pieces, Filling& filling) {
    for (const FilledPlace& place : shelvedAfter(frame, filling.end, notLaid(pieces, filling))) {
        filling.places.push_back(place);
        filling.end = std::max(filling.end, areaOf(pieceOf(pieces, place), place).alongEnd);
    }
}

// Of the first pieces as many as lie in rows before the end.
void finishFirstInRows(const FillFrame& frame, Pieces pieces, Filling& filling) {
    std::size_t fitting = 0;
    for (std::size_t tooMany = pieces.size() + 1; fitting + 1 < tooMany;) {
        const std::size_t tried = fitting + (tooMany - fitting) / 2;
        const Pieces first = pieces.first(tried);
        const bool fits =
            shelvedAfter(frame, filling.end, {first.begin(), first.end()}).size() == first.size();
        (fits ? fitting : tooMany) = tried;
    }
    finishInRows(frame, pieces.first(fitting), filling);
}

FillFrame withoutEnd(FillFrame frame, Pieces pieces) {
    frame.end = endOfPins(frame) + 1;
    for (const FillPiece& piece : pieces)
        frame.end += std::max(piece.along, piece.mayTurn ? piece.across : 0);
    return frame;
}

std::vector<FillPiece> unturned(Pieces pieces) {
    std::vector<FillPiece> unturned(pieces.begin(), pieces.end());
    for (FillPiece& piece : unturned)
        piece.mayTurn = false;
    return unturned;
}

// Each with its shorter side along the strip, where the width allows.
std::vector<FillPiece> lying(Pieces pieces, std::int64_t width) {
    std::vector<FillPiece> lying = unturned(pieces);
    for (std::size_t index = 0; index < lying.size(); ++index) {
        FillPiece& piece = lying[index];
        if (pieces[index].mayTurn && piece.across < piece.along && piece.along <= width)
            std::swap(piece.across, piece.along);
    }
    return lying;
}

// Keeps the shortest of what it is given to try.
class Shortest {
public:
    Shortest(const FillFrame& frame, Pieces pieces, const ShouldStop& shouldStop)
        : m_frame(frame)
        , m_pieces(pieces)
        , m_shouldStop(shouldStop) {}

    void tryOrders(Pieces asTheyMayLie, const std::vector<FillOrder>& orders) {
        for (const bool avoidsNarrowRest : {true, false}) {
            if (!avoidsNarrowRest && m_pieces.size() > kPiecesForPlainWays)
                return;
            StripFiller filler{m_frame, asTheyMayLie, {avoidsNarrowRest, false}};
            for (const FillOrder& order : orders) {
                if (m_best && m_best->isStopped)
                    return;
                keep(filler, filler.fill(order, FillOutcome::kTooMuch, m_shouldStop), asTheyMayLie);
            }
        }
    }

    // In rows, and each piece as low as it can lie.
    void tryPlainWays(Pieces asTheyMayLie) {
        if (m_best && m_best->isStopped)
            return;
        const auto rows = fillInRows(m_frame, asTheyMayLie, m_shouldStop);
        if (!rows) {
            m_best->isStopped = true;
            return;
        }
        keepIfShorter(*rows, asTheyMayLie);
        if (m_pieces.size() > kPiecesForPlainWays)
            return;
        for (const FillOrder& order : fillOrders(asTheyMayLie)) {
            if (const auto low = fillLowest(m_frame, asTheyMayLie, order, m_best->end, m_shouldStop))
                keepIfShorter(*low, asTheyMayLie);
        }
    }

    Filling best() && { return std::move(*m_best); }

private:
    void keep(const StripFiller& filler, const FillOutcome& outcome, Pieces asTheyMayLie) {
        if (outcome.isStopped && m_best) {
            m_best->isStopped = true;
            return;
        }
        const std::int64_t end = std::max(outcome.end, endOfPins(m_frame));
        if (m_best && m_best->end <= end)
            return;
        keepIfShorter({filler.places(), end, outcome.isStopped}, asTheyMayLie);
        if (outcome.isStopped)
            finishInRows(m_frame, m_pieces, *m_best);
    }

    void keepIfShorter(Filling filling, Pieces asTheyMayLie) {
        if (m_best && m_best->end <= filling.end)
            return;
        m_best = std::move(filling);
        for (FilledPlace& place : m_best->places) {
            if (pieceOf(asTheyMayLie, place).across != pieceOf(m_pieces, place).across)
                place.isTurned = !place.isTurned;
        }
    }

    const FillFrame& m_frame;
    Pieces m_pieces;
    const ShouldStop& m_shouldStop;
    std::optional<Filling> m_best;
};

} // namespace

std::vector<FillOrder> fillOrders(Pieces pieces) {
    std::vector<FillOrder> orders;
    orders.push_back(
        largestFirst(pieces, [](const FillPiece& piece) { return longerSide(piece, piece.across); }));
    if (pieces.size() > kPiecesForOneOrder)
        return orders;
    orders.push_back(
        largestFirst(pieces, [](const FillPiece& piece) { return longerSide(piece, piece.along); }));
    orders.push_back(largestFirst(pieces, [](const FillPiece& piece) { return piece.area(); }));
    if (pieces.size() > kPiecesForEveryOrder)
        return orders;
    orders.push_back(largestFirst(pieces, [](const FillPiece& piece) { return piece.across + piece.along; }));
    return orders;
}

Filling fillInSeveralOrders(const FillFrame& frame, Pieces pieces, const ShouldStop& shouldStop) {
    const FillFrame open = withoutEnd(frame, pieces);
    const std::vector<FillOrder> orders = fillOrders(pieces);
    Shortest shortest{open, pieces, shouldStop};
    shortest.tryOrders(pieces, orders);
    shortest.tryPlainWays(pieces);
    if (std::ranges::none_of(pieces, &FillPiece::mayTurn))
        return std::move(shortest).best();

    const std::vector<FillPiece> flat = lying(pieces, frame.width);
    shortest.tryPlainWays(flat);
    if (pieces.size() <= kPiecesForEveryOrder) {
        std::vector<FillOrder> uprightOrders = orders;
        std::vector<FillOrder> flatOrders = fillOrders(flat);
        if (pieces.size() > kPiecesForPlainWays) {
            uprightOrders.resize(2);
            flatOrders.resize(1);
        }
        shortest.tryOrders(unturned(pieces), uprightOrders);
        shortest.tryOrders(flat, flatOrders);
    }
    return std::move(shortest).best();
}

Filling fillByPrecedence(const StripPlan& plan, const ShouldStop& shouldStop) {
    const Pieces pieces{plan.pieces};
    Filling all = fillInSeveralOrders(plan.frame, pieces, shouldStop);
    if (all.end <= plan.frame.end)
        return all;
    bool isStopped = all.isStopped;
    Filling best{{}, endOfPins(plan.frame), false};
    std::size_t fitting = 0;
    std::size_t tooMany = pieces.size();
    while (fitting + 1 < tooMany && !isStopped) {
        const std::size_t tried = fitting + (tooMany - fitting) / 2;
        Filling filling = fillInSeveralOrders(plan.frame, pieces.first(tried), shouldStop);
        isStopped = filling.isStopped;
        if (filling.end <= plan.frame.end) {
            best = std::move(filling);
            fitting = tried;
        } else {
            tooMany = tried;
        }
    }
    best.isStopped = isStopped;
    if (isStopped && best.places.empty())
        finishFirstInRows(plan.frame, pieces, best);
    layIntoFreeSpace(plan, best, shouldStop);
    return best;
}

void layIntoFreeSpace(const StripPlan& plan, Filling& filling, const ShouldStop& shouldStop) {
    const auto isOver = [&] {
        filling.isStopped = filling.isStopped || (shouldStop && shouldStop());
        return filling.isStopped;
    };
    const std::vector<FillPiece> left = notLaid(plan.pieces, filling);
    StripFreeSpace space{plan.frame, left};
    for (const FilledPlace& place : filling.places) {
        if (isOver())
            return;
        space.take(areaOf(pieceOf(plan.pieces, place), place));
    }
    for (const FillPiece& piece : left) {
        if (isOver())
            return;
        const auto place = space.tightest(piece);
        if (!place)
            continue;
        filling.places.push_back(*place);
        const TakenArea taken = areaOf(piece, *place);
        filling.end = std::max(filling.end, taken.alongEnd);
        space.take(taken);
    }
}

} // namespace holdfast
