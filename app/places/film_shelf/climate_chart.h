// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The chart of temperature and humidity, as the module that draws it is asked for it. The module is separate
// (it brings Qt Charts and OpenGL with it, which the program does without until Film shelf is opened), so
// that all it needs comes with the picture: numbers, words, dyes and fonts.

#include "app/theme/tokens.h"
#include "core/facts/climate.h"
#include "core/film/exposure.h"
#include "core/trade/units.h"

#include <QFont>
#include <QString>
#include <QtPlugin>

#include <memory>
#include <vector>

class QWidget;

namespace holdfast::app {

// Readings of one place while the roll was there.
struct AirPiece {
    std::shared_ptr<const ClimateSeries> readings;
    Instant from;
    Instant to;
};

struct LabelledSpell {
    Measure measure = Measure::Humidity;
    Spell spell;
    QString words; // "43 h"
};

struct DayMark {
    Instant at;
    QString words; // "14 Oct"
};

struct ClimatePicture {
    std::vector<AirPiece> air;
    std::vector<AirPiece> beside; // of another place, drawn thin
    Instant from;
    Instant to;
    Instant countedFrom; // exposure before it is not the roll's: nothing is hatched there
    Band<Humidity> humidity;
    Band<Celsius> temperature;
    std::vector<LabelledSpell> spells; // the longest of each measure
    std::vector<DayMark> days;
    QString humidityNow; // at the line's end: "44 %"; empty for none
    QString temperatureNow;
};

struct ChartDress {
    Tokens dyes;
    QFont small;
    QFont smallStrong;
};

class ClimateChart {
public:
    virtual ~ClimateChart() = default;

    virtual QWidget* widget() = 0; // belongs to the parent it was made with
    virtual void setPicture(const ClimatePicture& picture) = 0;
    virtual void setDress(const ChartDress& dress) = 0; // again after each change of light
};

class ClimateChartMaker {
public:
    virtual ~ClimateChartMaker() = default;

    virtual ClimateChart* make(QWidget* parent) = 0;
};

} // namespace holdfast::app

Q_DECLARE_INTERFACE(holdfast::app::ClimateChartMaker, "holdfast.ClimateChartMaker/2")
