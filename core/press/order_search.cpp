// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/order_search.h"

#include "core/trade/assertion.h"

#include <utility>

namespace holdfast {

namespace {

// Longest block that a kick moves; longer ones were worse in the benches.
constexpr std::size_t kLongestKick = 3;

} // namespace

void carryOut(const OrderMove& move, std::span<std::size_t> order) {
    HOLDFAST_ASSERT(move.first < move.firstEnd && move.firstEnd <= move.second && move.second < move.last &&
                    move.last <= order.size());
    const auto at = [&](std::size_t place) { return order.begin() + static_cast<std::ptrdiff_t>(place); };
    if (move.isOfNeighbours()) {
        std::rotate(at(move.first), at(move.second), at(move.last));
        return;
    }
    // All three turned round as one and then each by itself.
    const std::size_t firstEnd = move.first + (move.last - move.second);
    const std::size_t second = move.last - (move.firstEnd - move.first);
    std::reverse(at(move.first), at(move.last));
    std::reverse(at(move.first), at(firstEnd));
    std::reverse(at(firstEnd), at(second));
    std::reverse(at(second), at(move.last));
}

void OrderRandom::shuffle(std::span<std::size_t> numbers) {
    for (std::size_t left = numbers.size(); left > 1; --left)
        std::swap(numbers[left - 1], numbers[below(left)]);
}

OrderMove OrderRandom::move(std::size_t fixed, std::size_t places) {
    HOLDFAST_ASSERT(fixed + 2 <= places);
    const std::size_t movable = places - fixed;
    std::size_t block = 1;
    while (block < kLongestKick && block + 1 < movable && below(2) == 0)
        ++block;
    const std::size_t from = below(movable - block + 1);
    const std::size_t to = below(movable - block); // of the other places
    if (to >= from)
        return {fixed + from, fixed + from + block, fixed + from + block, fixed + to + 1 + block};
    return {fixed + to, fixed + from, fixed + from, fixed + from + block};
}

void OrderRandom::kick(std::span<std::size_t> order, std::size_t fixed, std::size_t moves,
                       std::size_t reach) {
    const std::size_t within = std::min(reach, order.size() - fixed);
    const std::size_t begin = fixed + below(order.size() - fixed - within + 1);
    for (; moves > 0; --moves)
        carryOut(move(0, within), order.subspan(begin, within));
}

} // namespace holdfast
