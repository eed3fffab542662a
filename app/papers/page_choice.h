// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Which of a printer's pages papers go on: what is in it, unless they would be too small there and the same
// roll can be cut longer.

#include "app/papers/paper.h"
#include "app/papers/print_queue.h"

#include <span>

namespace holdfast::app {

// From this share of its size on every letter of a paper can be read, at arm's length in the light of a
// workshop.
inline constexpr double kReadable = 0.8;
// Below this not even its code can.
inline constexpr double kLegible = 0.5;

// The smallest share at which one of these papers comes out on the page.
double smallestOn(const PrintPage& page, std::span<const Paper> papers);

PrintPage pageFor(const PrintQueue& queue, std::span<const Paper> papers);

QString sizeInWords(const PrintPage& page); // "62 × 29 mm"

} // namespace holdfast::app
