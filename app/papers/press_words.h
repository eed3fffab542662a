// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What of a garment's route is worth writing down at the press.

#include "core/press/route.h"

#include <QString>

namespace holdfast::app {

// "150 °C 12 s", each press pass once, in turn; empty where there is no recipe.
QString heatWords(const Route& route);

// "Pillow under the zip; preheat 15 s; press 150 °C, 12 s, medium; peel warm after about 40 s; cover sheet,
// front 5 s, back 5 s".
QString workWords(const Route& route);

} // namespace holdfast::app
