// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/air_words.h"

#include "app/desk/formats.h"
#include "app/places/film_shelf/shelf_words.h"

#include <QCoreApplication>

#include <cmath>
#include <functional>

namespace holdfast::app {

namespace {

// Differences below these are none to speak of.
constexpr double kDegrees = 0.3;
constexpr double kPercent = 1;
constexpr double kHours = 1;

class AirWords {
    Q_DECLARE_TR_FUNCTIONS(AirWords)
};

QString decimal(double number) {
    return valueWords(Decimal{number, 1});
}

QString degrees(double number) {
    return AirWords::tr("%1 °C").arg(decimal(number));
}

QString temperatureWords(const Ranged& measure) {
    return AirWords::tr("%1, from %2 to %3")
        .arg(degrees(measure.mean), decimal(measure.low), decimal(measure.high));
}

QString humidityWords(const Ranged& measure) {
    return AirWords::tr("%1, from %2 to %3")
        .arg(humidity(Humidity{measure.mean}), valueWords(Decimal{measure.low, 0}),
             valueWords(Decimal{measure.high, 0}));
}

QString outsideWords(const HoursOutside& outside, const QString& above, const QString& below) {
    QStringList parts;
    if (std::lround(outside.above) > 0)
        parts << AirWords::tr("%1 %2").arg(hourCount(outside.above), above);
    if (std::lround(outside.below) > 0)
        parts << AirWords::tr("%1 %2").arg(hourCount(outside.below), below);
    return parts.isEmpty() ? AirWords::tr("never") : parts.join(AirWords::tr(", "));
}

QString unrecordedWords(const ClimateFigures& figures) {
    const double all = figures.recordedHours + figures.unrecordedHours;
    if (std::lround(figures.unrecordedHours) == 0)
        return AirWords::tr("nothing");
    return AirWords::tr("%1 of %2").arg(hourCount(figures.unrecordedHours), hourCount(all));
}

QString more(double difference, const QString& unit, const QString& ifAbove, const QString& ifBelow) {
    return AirWords::tr("%1 %2 %3")
        .arg(decimal(std::abs(difference)), unit, difference > 0 ? ifAbove : ifBelow);
}

} // namespace

std::vector<AirRow> airRows(const std::vector<ClimateFigures>& figures, const Film& film) {
    std::vector<AirRow> rows;
    const auto add = [&](const QString& name, const std::function<QString(const ClimateFigures&)>& value,
                         bool isOfReadings = true) {
        AirRow row{name, {}};
        for (const ClimateFigures& one : figures)
            row.values << (isOfReadings && one.recordedHours <= 0 ? AirWords::tr("not recorded")
                                                                  : value(one));
        rows.push_back(std::move(row));
    };
    add(AirWords::tr("Mean kinetic temperature"),
        [](const ClimateFigures& one) { return degrees(one.kinetic.value); });
    add(AirWords::tr("Temperature"),
        [](const ClimateFigures& one) { return temperatureWords(one.temperature); });
    add(AirWords::tr("Outside %1").arg(temperatureBandWords(film)), [](const ClimateFigures& one) {
        return outsideWords(one.temperatureOutside, AirWords::tr("too warm"), AirWords::tr("too cold"));
    });
    const auto addOfHumidity = [&](const QString& name,
                                   const std::function<QString(const ClimateFigures&)>& value) {
        add(name, [value](const ClimateFigures& one) {
            return one.humidHours > 0 ? value(one) : AirWords::tr("not known");
        });
    };
    addOfHumidity(AirWords::tr("Humidity"),
                  [](const ClimateFigures& one) { return humidityWords(one.humidity); });
    addOfHumidity(AirWords::tr("Outside %1").arg(humidityBandWords(film)), [](const ClimateFigures& one) {
        return outsideWords(one.humidityOutside, AirWords::tr("too damp"), AirWords::tr("too dry"));
    });
    addOfHumidity(AirWords::tr("Dew point"),
                  [](const ClimateFigures& one) { return temperatureWords(one.dewPoint); });
    addOfHumidity(AirWords::tr("Water in the air"), [](const ClimateFigures& one) {
        return AirWords::tr("%1 g/m³, from %2 to %3")
            .arg(decimal(one.absoluteHumidity.mean), decimal(one.absoluteHumidity.low),
                 decimal(one.absoluteHumidity.high));
    });
    add(AirWords::tr("Unrecorded"), unrecordedWords, false);
    add(
        AirWords::tr("Readings"),
        [](const ClimateFigures& one) { return valueWords(static_cast<std::int64_t>(one.readings)); }, false);
    return rows;
}

QString comparedWords(const ClimateFigures& here, const ClimateFigures& there, const QString& thereName) {
    if (here.recordedHours <= 0 || there.recordedHours <= 0)
        return {};
    QStringList parts;
    const double warmer = there.kinetic.value - here.kinetic.value;
    if (std::abs(warmer) >= kDegrees)
        parts << more(warmer, AirWords::tr("°C"), AirWords::tr("warmer"), AirWords::tr("cooler"));
    const double damper = there.humidity.mean - here.humidity.mean;
    if (here.humidHours > 0 && there.humidHours > 0 && std::abs(damper) >= kPercent)
        parts << more(damper, AirWords::tr("%"), AirWords::tr("damper"), AirWords::tr("drier"));
    const double outside = (there.humidityOutside.all() + there.temperatureOutside.all()) -
                           (here.humidityOutside.all() + here.temperatureOutside.all());
    if (std::abs(outside) >= kHours)
        parts << (outside > 0 ? AirWords::tr("%1 more outside the limits")
                              : AirWords::tr("%1 less outside the limits"))
                     .arg(hourCount(std::abs(outside)));
    if (parts.isEmpty())
        return AirWords::tr("%1 is much the same.").arg(thereName);
    return AirWords::tr("%1: %2.").arg(thereName, parts.join(AirWords::tr(", ")));
}

} // namespace holdfast::app
