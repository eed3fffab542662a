#include "core/cutting/strip_construction.h"

#include "core/cutting/strip_free_space.h"

#include <algorithm>

namespace holdfast {

namespace {

// With more pieces fewer orders are tried, so that the first answer comes at once.
constexpr std::size_t kPiecesForEveryOrder = 400;
constexpr std::size_t kPiecesForOneOrder = 4'000;

using Order = std::vector<FillPiece>;

Order unturned(Order order) {
    for (FillPiece& piece : order)
        piece.mayTurn = false;
    return order;
}

template <class Measure>
Order largestFirst(std::span<const FillPiece> pieces, Measure measure) {
    Order order(pieces.begin(), pieces.end());
    std::ranges::stable_sort(order, std::ranges::greater{}, measure);
    return order;
}

std::vector<Order> ordersOf(std::span<const FillPiece> pieces) {
    const auto longer = [](const FillPiece& piece) {
        return piece.mayTurn ? std::max(piece.across, piece.along) : piece.along;
    };
    const auto wider = [](const FillPiece& piece) {
        return piece.mayTurn ? std::max(piece.across, piece.along) : piece.across;
    };
    const auto larger = [](const FillPiece& piece) { return piece.across * piece.along; };
    const auto further = [](const FillPiece& piece) { return piece.across + piece.along; };
    std::vector<Order> orders;
    orders.push_back(largestFirst(pieces, wider));
    if (pieces.size() > kPiecesForOneOrder)
        return orders;
    orders.push_back(largestFirst(pieces, longer));
    orders.push_back(largestFirst(pieces, larger));
    if (pieces.size() > kPiecesForEveryOrder)
        return orders;
    orders.push_back(largestFirst(pieces, further));
    if (std::ranges::any_of(pieces, &FillPiece::mayTurn)) {
        for (std::size_t order = 0, known = orders.size(); order < known; ++order)
            orders.push_back(unturned(orders[order]));
    }
    return orders;
}

std::int64_t endOf(const FillFrame& frame, const Filling& filling) {
    std::int64_t end = filling.end;
    for (const TakenArea& pin : frame.pins)
        end = std::max(end, pin.alongEnd);
    return end;
}

// REQUIRES: pieces in the task's order.
const FillPiece& pieceOf(std::span<const FillPiece> pieces, const FilledPlace& place) {
    return *std::ranges::lower_bound(pieces, place.piece, {}, &FillPiece::piece);
}

// What a stopped filling left out, in rows behind it.
void finishInRows(const FillFrame& frame, std::span<const FillPiece> pieces, Filling& filling) {
    std::vector<std::size_t> laid;
    for (const FilledPlace& place : filling.places)
        laid.push_back(place.piece);
    std::ranges::sort(laid);
    Order left;
    std::ranges::copy_if(pieces, std::back_inserter(left), [&](const FillPiece& piece) {
        return !std::ranges::binary_search(laid, piece.piece);
    });
    const auto rows = shelvedAfter(frame, filling.end, left);
    filling.places.insert(filling.places.end(), rows.begin(), rows.end());
    for (const FilledPlace& place : rows)
        filling.end = std::max(filling.end, areaOf(pieceOf(pieces, place), place).alongEnd);
}

// Each of the rest where it fits tightest between what is laid.
void layIntoFreeSpace(const StripPlan& plan, std::span<const FillPiece> rest, Filling& filling,
                      const ShouldStop& shouldStop) {
    const auto isOver = [&] { return filling.isStopped || (filling.isStopped = shouldStop && shouldStop()); };
    StripFreeSpace space{plan.frame, rest};
    for (const FilledPlace& place : filling.places) {
        if (isOver())
            return;
        space.take(areaOf(pieceOf(plan.pieces, place), place));
    }
    for (const FillPiece& piece : rest) {
        if (isOver())
            return;
        const auto place = space.tightest(piece);
        if (!place)
            continue;
        filling.places.push_back(*place);
        space.take(areaOf(piece, *place));
    }
}

FillFrame withoutEnd(const StripPlan& plan, std::span<const FillPiece> pieces) {
    FillFrame frame = plan.frame;
    std::int64_t end = 1;
    for (const TakenArea& pin : frame.pins)
        end = std::max(end, pin.alongEnd);
    for (const FillPiece& piece : pieces)
        end += std::max(piece.along, piece.mayTurn ? piece.across : 0);
    frame.end = end;
    return frame;
}

} // namespace

Filling fillInSeveralOrders(const StripPlan& plan, std::span<const FillPiece> pieces,
                            const ShouldStop& shouldStop) {
    const FillFrame frame = withoutEnd(plan, pieces);
    std::optional<Filling> best;
    for (const Order& order : ordersOf(pieces)) {
        Filling filling = fillStrip(frame, order, shouldStop);
        const bool isStopped = filling.isStopped;
        if (isStopped && best) {
            best->isStopped = true;
            break;
        }
        if (isStopped)
            finishInRows(frame, pieces, filling);
        if (!best || endOf(frame, filling) < endOf(frame, *best))
            best = std::move(filling);
        if (isStopped)
            break;
    }
    return best.value_or(Filling{});
}

Filling fillByPrecedence(const StripPlan& plan, const ShouldStop& shouldStop) {
    const std::span<const FillPiece> pieces{plan.pieces};
    Filling best = fillInSeveralOrders(plan, pieces, shouldStop);
    if (endOf(plan.frame, best) <= plan.frame.end)
        return best;
    bool isStopped = best.isStopped;
    best = Filling{};
    std::size_t fitting = 0;
    std::size_t tooMany = pieces.size();
    while (fitting + 1 < tooMany && !isStopped) {
        const std::size_t tried = fitting + (tooMany - fitting) / 2;
        Filling filling = fillInSeveralOrders(plan, pieces.first(tried), shouldStop);
        isStopped = filling.isStopped;
        if (endOf(plan.frame, filling) <= plan.frame.end) {
            best = std::move(filling);
            fitting = tried;
        } else {
            tooMany = tried;
        }
    }
    best.isStopped = isStopped;
    layIntoFreeSpace(plan, pieces.subspan(fitting), best, shouldStop);
    return best;
}

} // namespace holdfast
