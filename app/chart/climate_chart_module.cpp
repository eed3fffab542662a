// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/chart/climate_chart_module.h"

#include "app/chart/climate_chart_view.h"

namespace holdfast::app {

ClimateChart* ClimateChartModule::make(QWidget* parent) {
    return new ClimateChartView(parent);
}

} // namespace holdfast::app
