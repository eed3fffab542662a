// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The air of a place in words and figures, and two places compared.

#include "core/facts/film.h"
#include "core/film/climate_window.h"

#include <QString>
#include <QStringList>

#include <vector>

namespace holdfast::app {

struct AirRow {
    QString name;       // "Dew point"
    QStringList values; // one a place
};

// `figures` are one or two places'.
std::vector<AirRow> airRows(const std::vector<ClimateFigures>& figures, const Film& film);

// "Cellar: 2.1 °C cooler and 6 % damper, 31 h more outside the limits." Only what differs; empty where one of
// them recorded nothing.
QString comparedWords(const ClimateFigures& here, const ClimateFigures& there, const QString& thereName);

} // namespace holdfast::app
