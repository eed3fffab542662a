// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/long/dormant_change.h"

#include <array>
#include <atomic>
#include <cstdlib>
#include <utility>

namespace dormant {

constinit std::atomic<int> chosenChange = kNotReadYet;
constinit std::atomic<bool> isNoting = false;

namespace {

std::array<std::atomic<bool>, kMostChanges> reached;
thread_local bool leftWasTrue = false;

} // namespace

int readChosen() {
    const char* const named = std::getenv("HOLDFAST_CHANGE");
    const int chosen = named ? std::atoi(named) : -1;
    chosenChange.store(chosen, std::memory_order_relaxed);
    return chosen;
}

void note(int change) {
    reached[static_cast<std::size_t>(change)].store(true, std::memory_order_relaxed);
}

bool wasReached(int change) {
    return reached[static_cast<std::size_t>(change)].load(std::memory_order_relaxed);
}

void forgetReached() {
    for (auto& each : reached)
        each.store(false, std::memory_order_relaxed);
}

bool leftOfAnd(int change) {
    const bool isDone = isChosen(change); // an awake && is an ||: what is true needs no right side
    leftWasTrue = !isDone;
    return isDone;
}

bool rightOfAnd(int change) {
    return std::exchange(leftWasTrue, false) || isChosen(change);
}

bool leftOfOr(int change) {
    const bool isDone = !isChosen(change);
    leftWasTrue = !isDone;
    return isDone;
}

bool rightOfOr(int change) {
    return std::exchange(leftWasTrue, false) || !isChosen(change);
}

} // namespace dormant
