// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The figures of the shop on paper: each question with what it comes to, its chart, its rows and what to
// beware of; where there is no chart yet, why.

#include "app/papers/paper.h"
#include "app/places/figures/figure_sheet.h"

#include <vector>

namespace holdfast::app {

// What is common is compared by each of film, roll, press, blank and washing.
std::vector<Paper> figurePapers(FiguresShown shown);

} // namespace holdfast::app
