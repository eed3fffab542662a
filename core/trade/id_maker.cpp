// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/id_maker.h"

#include "core/trade/assertion.h"

#include <algorithm>

namespace holdfast {

namespace {

constexpr int kCounterBits = 12;
constexpr int kSeatBits = 10;
constexpr int kTimeBits = 41;
constexpr std::int64_t kCounters = std::int64_t{1} << kCounterBits;
constexpr std::int64_t kSeatMask = ((std::int64_t{1} << kSeatBits) - 1) << kCounterBits;
constexpr std::int64_t kLastMillisecond = (std::int64_t{1} << kTimeBits) - 1;
constexpr std::chrono::sys_days kEpoch{std::chrono::year{2024} / std::chrono::January / 1};

std::int64_t millisecondsOf(std::int64_t id) {
    return id >> (kSeatBits + kCounterBits);
}

std::int64_t counterOf(std::int64_t id) {
    return id & (kCounters - 1);
}

std::int64_t millisecondsSinceEpoch(Instant now) {
    const auto since = std::chrono::duration_cast<std::chrono::milliseconds>(now - kEpoch).count();
    return std::clamp<std::int64_t>(since, 0, kLastMillisecond);
}

} // namespace

IdMaker::IdMaker(std::int64_t seat, std::int64_t lastId)
    : m_seat(seat)
    , m_last(lastId) {
    HOLDFAST_ASSERT(seat >= kLowestSeat && seat <= kHighestSeat);
    HOLDFAST_ASSERT(lastId >= 0);
}

std::int64_t IdMaker::next(Instant now) {
    const std::int64_t milliseconds = millisecondsSinceEpoch(now);
    m_last = millisecondsOf(m_last) >= milliseconds
                 ? movedOn((m_last & ~kSeatMask) | (m_seat << kCounterBits), 1)
                 : (milliseconds << (kSeatBits + kCounterBits)) | (m_seat << kCounterBits);
    return m_last;
}

std::int64_t IdMaker::movedOn(std::int64_t id, std::int64_t steps) {
    HOLDFAST_ASSERT(steps >= 0);
    const std::int64_t counted = counterOf(id) + steps;
    const std::int64_t milliseconds = millisecondsOf(id) + counted / kCounters;
    HOLDFAST_ASSERT(milliseconds <= kLastMillisecond);
    return (milliseconds << (kSeatBits + kCounterBits)) | (id & kSeatMask) | (counted % kCounters);
}

std::int64_t IdMaker::seatOf(std::int64_t id) {
    return (id >> kCounterBits) & kHighestSeat;
}

Instant IdMaker::timeOf(std::int64_t id) {
    return std::chrono::floor<std::chrono::seconds>(kEpoch + std::chrono::milliseconds{millisecondsOf(id)});
}

} // namespace holdfast
