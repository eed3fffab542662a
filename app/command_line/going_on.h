// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The program goes on as a new process of its own, with the same shop at the same moment: Qt takes the size
// of text only when it starts.

#include "app/desk/clock.h"

#include <filesystem>
#include <optional>

namespace holdfast::app {

struct GoingOn {
    std::filesystem::path shop;
    Instant at;

    // The clock of the process before: the system's, or one that was set otherwise.
    Clock clock() const;
};

// What the process before handed on; none for one that a person started.
std::optional<GoingOn> handedOn();

// Becomes a new process of the same words. Returns only where that fails.
void goOn(const GoingOn& on, char** argv);

} // namespace holdfast::app
