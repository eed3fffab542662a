// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How far back the air of a place is looked at.

#include "core/film/climate_window.h"
#include "core/shop/reckoned_shop.h"

#include <QString>

namespace holdfast::app {

enum class AirWindow { Month, Quarter, SinceItCame, All };

AirWindow nextOf(AirWindow window);
QString windowWords(AirWindow window); // "30 days", "since it came"
// Up to now, a minute long at least. `SinceItCame` of the roll; `All` of the place it is in.
ClimateWindow windowOf(AirWindow window, const ReckonedShop& shop, const FilmRoll& roll);

} // namespace holdfast::app
