// SPDX-License-Identifier: GPL-3.0-or-later
// report use-first: which rolls to use up first, and what is against using them.
#include "app/command_line/reports.h"
#include "app/command_line/text_table.h"
#include "app/desk/formats.h"
#include "app/desk/use_by_words.h"

#include <QCoreApplication>
#include <QJsonArray>

#include <cmath>

namespace holdfast::app {

namespace {

class UseFirstReport {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::UseFirstReport)

public:
    explicit UseFirstReport(const ReckonedShop& shop)
        : m_shop(shop) {}

    QString text() const {
        QString whole = reportTitle(tr("Use first"), m_shop);
        if (m_shop.allotment.useFirst.empty())
            return whole + tr("No roll is on the shelf.") + QLatin1Char('\n');
        using Side = TextTable::Side;
        TextTable table({{tr("No."), Side::Right},
                         {tr("Roll")},
                         {tr("Film")},
                         {tr("Left"), Side::Right},
                         {tr("Use by")},
                         {tr("Days"), Side::Right},
                         {tr("Waiting work"), Side::Right},
                         {tr("Goes out of date, estimate"), Side::Right},
                         {tr("State")}});
        int number = 0;
        for (const RollForecast& forecast : m_shop.allotment.useFirst) {
            const FilmRoll& roll = rollOf(forecast);
            const RollCondition& condition = m_shop.conditions.at(roll.id);
            table.add({QString::number(++number), words(roll.label()), words(film(roll).name()),
                       metres(forecast.left), condition.useBy ? useByInFull(condition) : tr("no limit"),
                       forecast.daysLeft ? QString::number(forecast.daysLeft->count()) : QString(),
                       metres(forecast.allotted), wasteWords(forecast), state(roll, condition)});
        }
        return whole + table.text();
    }

    QJsonObject json() const {
        QJsonObject whole = reportHead("use-first", m_shop);
        QJsonArray rolls;
        for (const RollForecast& forecast : m_shop.allotment.useFirst)
            rolls.append(rollJson(forecast));
        whole.insert(QStringLiteral("rolls"), rolls);
        return whole;
    }

private:
    const FilmRoll& rollOf(const RollForecast& forecast) const {
        return m_shop.facts.rolls.at(forecast.roll);
    }
    const Film& film(const FilmRoll& roll) const { return m_shop.facts.films.at(roll.film); }

    // "1.2 m (0.4–1.9 m)": eight of ten times it lies within.
    static QString wasteWords(const RollForecast& forecast) {
        const QString likely = metres(forecast.expectedWaste);
        const QString low = metres(forecast.wasteLow);
        const QString high = metres(forecast.wasteHigh);
        return low == high ? likely : tr("%1 (%2 to %3)").arg(likely, low, high);
    }

    QString state(const FilmRoll& roll, const RollCondition& condition) const {
        QStringList parts;
        if (condition.stripFailed)
            parts.append(tr("its test strip failed: use another roll"));
        if (condition.isPastAge(m_shop.now.today()))
            parts.append(tr("past its %1: press a test strip").arg(words(condition.useByName())));
        if (!condition.hasPlace)
            parts.append(tr("has no storage place: move it to one"));
        else if (condition.isOutsideNow())
            parts.append(tr("its place is outside the limits now"));
        else if (condition.isBadlyKept(film(roll)))
            parts.append(tr("%1 h outside the limits: press a test strip")
                             .arg(static_cast<qint64>(std::llround(condition.hoursOutside()))));
        if (condition.readingIsStale && condition.hasPlace)
            parts.append(tr("no reading lately"));
        return parts.isEmpty() ? tr("in order") : parts.join(QStringLiteral("; "));
    }

    QJsonObject rollJson(const RollForecast& forecast) const {
        const FilmRoll& roll = rollOf(forecast);
        const RollCondition& condition = m_shop.conditions.at(roll.id);
        const auto place = roll.placeNow();
        const StoragePlace* stands = place ? m_shop.facts.places.find(*place) : nullptr;
        const auto orNull = [](const auto& optional, auto&& value) {
            return optional ? QJsonValue(value(*optional)) : QJsonValue();
        };
        return {
            {QStringLiteral("roll"), words(roll.label())},
            {QStringLiteral("film"), words(film(roll).name())},
            {QStringLiteral("place"), stands != nullptr ? QJsonValue(words(stands->name)) : QJsonValue()},
            {QStringLiteral("leftMillimetres"), static_cast<qint64>(forecast.left.value)},
            {QStringLiteral("allottedMillimetres"), static_cast<qint64>(forecast.allotted.value)},
            {QStringLiteral("usualUseMillimetres"), static_cast<qint64>(forecast.usualUse.value)},
            {QStringLiteral("expectedWasteMillimetres"), static_cast<qint64>(forecast.expectedWaste.value)},
            {QStringLiteral("wasteLowMillimetres"), static_cast<qint64>(forecast.wasteLow.value)},
            {QStringLiteral("wasteHighMillimetres"), static_cast<qint64>(forecast.wasteHigh.value)},
            {QStringLiteral("useBy"),
             orNull(condition.useBy, [](LocalDate day) { return words(isoDate(day)); })},
            {QStringLiteral("useByIsEstimate"), condition.useByIsEstimate},
            {QStringLiteral("useByEarliest"),
             orNull(condition.useByRange, [](const DaySpan& span) { return words(isoDate(span.first)); })},
            {QStringLiteral("useByLatest"),
             orNull(condition.useByRange, [](const DaySpan& span) { return words(isoDate(span.last)); })},
            {QStringLiteral("daysLeft"),
             orNull(forecast.daysLeft, [](Days days) { return static_cast<qint64>(days.count()); })},
            {QStringLiteral("calendarAgeDays"), static_cast<qint64>(condition.calendarAge.count())},
            {QStringLiteral("effectiveAgeDays"), std::round(condition.effectiveDays * 10) / 10},
            {QStringLiteral("hoursOutsideHumidity"), std::round(condition.humidityHoursOutside * 10) / 10},
            {QStringLiteral("hoursOutsideTemperature"),
             std::round(condition.temperatureHoursOutside * 10) / 10},
            {QStringLiteral("outsideNow"), condition.isOutsideNow()},
            {QStringLiteral("readingIsStale"), condition.readingIsStale},
            {QStringLiteral("mayBeUsed"), forecast.mayBeUsed},
            {QStringLiteral("decals"), static_cast<qint64>(forecast.decals.size())},
            {QStringLiteral("decalsToPressEarly"), static_cast<qint64>(forecast.pressEarly.size())}};
    }

    const ReckonedShop& m_shop;
};

} // namespace

Report useFirstReport(const ReckonedShop& shop) {
    const UseFirstReport report{shop};
    return {report.text(), report.json()};
}

} // namespace holdfast::app
