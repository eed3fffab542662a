// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The door of the module.

#include "app/places/film_shelf/climate_chart.h"

#include <QObject>

namespace holdfast::app {

class ClimateChartModule : public QObject, public ClimateChartMaker {
    Q_OBJECT
    Q_PLUGIN_METADATA(IID "holdfast.ClimateChartMaker/2")
    Q_INTERFACES(holdfast::app::ClimateChartMaker)

public:
    ClimateChart* make(QWidget* parent) override;
};

} // namespace holdfast::app
