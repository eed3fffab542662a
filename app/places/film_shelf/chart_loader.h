// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The chart's module, loaded when the first chart is to be shown.

#include "app/places/film_shelf/climate_chart.h"

namespace holdfast::app {

// A chart that belongs to `parent`; null where the module cannot be loaded, with the reason in `reason`.
ClimateChart* makeClimateChart(QWidget* parent, QString& reason);

ChartDress chartDress(); // by the light there is

// Where the module is looked for, first to last; tests name another folder. Empty: as built.
void setChartFolder(const QString& folder);

} // namespace holdfast::app
