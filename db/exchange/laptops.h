// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Bookkeeping of the laptops, as the parts of the exchange share it. None of it is recorded by a session.

#include "db/exchange/exchange.h"

namespace holdfast::db {

inline constexpr std::int64_t kOrderNumbersEach = 1000;
inline constexpr std::int64_t kFewOrderNumbers = 100;

Seat seatHere(Connection& connection);
std::int64_t shopNumber(Connection& connection);

// The next range from the top of the workshop's own, or nothing where that would leave the workshop fewer
// than a range of its own. REQUIRES: a transaction at the workshop.
struct OrderRange {
    std::int64_t first = 0;
    std::int64_t last = 0;
};
std::optional<OrderRange> takeOrderRange(Connection& connection);

// At the workshop: gives a new range to a laptop that has few numbers left by what is known of it.
void giveRangeIfFew(Connection& connection, SeatNumber laptop);

// What the workshop says of the laptops: new ones, and a new range for this one.
void learnSeats(Connection& connection, const std::vector<Seat>& seats);
// At a workshop that was put back from an older copy: laptops that it no longer knows, whose order numbers
// are its own no more.
void learnForgottenSeats(Connection& connection, const std::vector<Seat>& seats);

// The next order number lies in this laptop's range and above all that are given out: a copy that was put
// back from an older one does not know what it gave out since, but its orders say so.
void goOnAboveAllOrderNumbers(Connection& connection);

// The next id that this copy makes, for what it does of itself while news is taken in.
// REQUIRES: a transaction in which writing is allowed.
std::int64_t newIdHere(Connection& connection, Instant at);

// How far another laptop is along the line, and which copy of its file it is, said at `at`: what was said
// earlier does not count against what was said later.
struct Known {
    std::int64_t place = 0;
    std::int64_t incarnation = 0; // 0: not known
};
void noteKnown(Connection& connection, SeatNumber laptop, const Known& known, Instant at);
Known knownOf(Connection& connection, SeatNumber laptop);
std::int64_t incarnationHere(Connection& connection);

} // namespace holdfast::db
