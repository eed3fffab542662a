// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Empty rectangles of film worth keeping.

#include "core/cutting/nest.h"

#include <span>
#include <vector>

namespace holdfast {

// The largest empty rectangle of a film area, then the largest of what is left next to it, and so on, at most
// `most` of them; each with both sides of at least `smallest`. `taken` may overlap and lie outside.
std::vector<FilmArea> offcutsOf(const FilmArea& film, std::span<const FilmArea> taken, Millimetres smallest,
                                std::size_t most);

} // namespace holdfast
