// SPDX-License-Identifier: GPL-3.0-or-later
// report figures: what came back and why, how long decals hold, promises kept, takings, what fairs earned,
// what to bring, film.
#include "app/command_line/reports.h"
#include "app/command_line/text_table.h"
#include "app/desk/formats.h"
#include "app/places/figures/figure_sheet.h"

#include <QCoreApplication>
#include <QJsonArray>

#include <cmath>

namespace holdfast::app {

namespace {

constexpr std::pair<FaultsBy, const char*> kCompared[] = {{FaultsBy::Film, "film"},
                                                          {FaultsBy::Roll, "roll"},
                                                          {FaultsBy::Press, "press"},
                                                          {FaultsBy::Style, "style"},
                                                          {FaultsBy::Washing, "washing"}};

// To a tenth of a hundredth.
QJsonValue shareJson(double share) {
    return std::round(share * 1000) / 1000;
}

QJsonObject withInterval(QJsonObject object, const ShareInterval& interval) {
    object.insert(QStringLiteral("share"), shareJson(interval.share));
    object.insert(QStringLiteral("low"), shareJson(interval.low));
    object.insert(QStringLiteral("high"), shareJson(interval.high));
    return object;
}

class FiguresReport {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::FiguresReport)

public:
    FiguresReport(const ReckonedShop& shop, const ShopFigures& figures)
        : m_shop(shop)
        , m_shown(figuresShown(shop, figures)) {}

    QString text() {
        QString whole = reportTitle(tr("Figures since %1").arg(date(figures().from)), m_shop);
        for (int question = 0; question < kFigureQuestions; ++question) {
            const auto asked = static_cast<FigureQuestion>(question);
            if (asked != FigureQuestion::WhatIsCommon) {
                whole += sheetText(figureSheet(asked, m_shown));
                continue;
            }
            for (const auto& [by, code] : kCompared) {
                m_shown.by = by;
                whole += sheetText(figureSheet(asked, m_shown));
            }
        }
        return whole;
    }

    QJsonObject json() const {
        QJsonObject whole = reportHead("figures", m_shop);
        whole.insert(QStringLiteral("from"), words(isoDate(figures().from)));
        whole.insert(QStringLiteral("handedOver"), faultShareJson(figures().handedOver));
        whole.insert(QStringLiteral("faults"), faultsJson());
        QJsonObject compared;
        for (const auto& [by, code] : kCompared)
            compared.insert(QLatin1String(code), comparedJson(by));
        whole.insert(QStringLiteral("compared"), compared);
        whole.insert(QStringLiteral("holding"), holdingJson());
        whole.insert(QStringLiteral("months"), monthsJson());
        whole.insert(QStringLiteral("promises"), promisesJson());
        whole.insert(QStringLiteral("takings"), takingsJson());
        whole.insert(QStringLiteral("earned"), earnedJson());
        whole.insert(QStringLiteral("bring"), bringJson());
        whole.insert(QStringLiteral("films"), filmsJson());
        return whole;
    }

private:
    const ShopFigures& figures() const { return m_shown.figures; }

    static QString sheetText(const FigureSheet& sheet) {
        QString text = (sheet.title.isEmpty() ? sheet.question : sheet.title) + QLatin1Char('\n');
        if (sheet.whole.isEmpty())
            return text + QStringLiteral("    ") + sheet.empty + QStringLiteral("\n\n");
        text += QStringLiteral("    ") + sheet.whole + QLatin1Char('\n');
        std::vector<TextTable::Column> columns{{sheet.nameHead}};
        for (const QString& head : sheet.heads)
            columns.push_back({head, TextTable::Side::Right});
        TextTable table(std::move(columns));
        for (const FigureRow& row : sheet.rows) {
            table.add(QStringList{row.name} + row.cells);
            if (!row.remark.isEmpty())
                table.addNote(row.remark);
        }
        return table.isEmpty() ? text + QLatin1Char('\n') : text + table.text(4) + QLatin1Char('\n');
    }

    static QJsonObject faultShareJson(const FaultShare& share) {
        return withInterval({{QStringLiteral("garments"), static_cast<qint64>(share.garments)},
                             {QStringLiteral("cameBack"), static_cast<qint64>(share.faults)}},
                            share.interval);
    }

    QJsonArray faultsJson() const {
        QJsonArray faults;
        for (const auto& [fault, told] : figures().faults)
            faults.append(QJsonObject{{QStringLiteral("fault"), words(faultWords(fault))},
                                      {QStringLiteral("ofPressing"), isOfPressing(fault)},
                                      {QStringLiteral("told"), static_cast<qint64>(told)}});
        return faults;
    }

    QJsonArray comparedJson(FaultsBy by) const {
        QJsonArray shares;
        for (const FaultShare& share : figures().compared.at(by)) {
            QJsonObject object = faultShareJson(share);
            object.insert(QStringLiteral("name"), words(share.name));
            object.insert(QStringLiteral("moreThanChance"), share.isMoreThanChance);
            shares.append(object);
        }
        return shares;
    }

    QJsonObject holdingJson() const {
        const Survival& survival = figures().withoutFault;
        QJsonArray steps;
        for (const SurvivalStep& step : survival.steps)
            steps.append(withInterval({{QStringLiteral("day"), step.at},
                                       {QStringLiteral("watched"), static_cast<qint64>(step.watched)},
                                       {QStringLiteral("faults"), static_cast<qint64>(step.faults)}},
                                      {step.share, step.low, step.high}));
        return {{QStringLiteral("steps"), steps}, {QStringLiteral("watchedUntilDay"), survival.watchedUntil}};
    }

    QJsonArray monthsJson() const {
        const FaultMonths& months = figures().months;
        QJsonArray all;
        for (std::size_t month = 0; month < months.months.size(); ++month) {
            const ChartedSample& charted = months.chart.samples[month];
            all.append(withInterval(
                {{QStringLiteral("month"), words(isoDate(LocalDate{months.months[month] / 1})).left(7)},
                 {QStringLiteral("garments"), static_cast<qint64>(months.samples[month].of)},
                 {QStringLiteral("cameBack"), static_cast<qint64>(months.samples[month].found)},
                 {QStringLiteral("standsOut"), charted.isOut()}},
                {charted.value, charted.low, charted.high}));
        }
        return all;
    }

    QJsonObject promisesJson() const {
        const PromisesKept kept = promisesKept(figures().promises);
        return withInterval({{QStringLiteral("given"), static_cast<qint64>(kept.given)},
                             {QStringLiteral("kept"), static_cast<qint64>(kept.kept)}},
                            kept.interval.value_or(ShareInterval{}));
    }

    QJsonArray takingsJson() const {
        QJsonArray places;
        for (const PlaceTakings& place : figures().places)
            places.append(
                QJsonObject{{QStringLiteral("place"), words(place.place)},
                            {QStringLiteral("days"), static_cast<qint64>(place.days)},
                            {QStringLiteral("orders"), static_cast<qint64>(place.orders)},
                            {QStringLiteral("garments"), static_cast<qint64>(place.garments)},
                            {QStringLiteral("orderedMinor"), static_cast<qint64>(place.ordered.minor)},
                            {QStringLiteral("paidMinor"), static_cast<qint64>(place.taken.minor)}});
        return places;
    }

    QJsonArray earnedJson() const {
        QJsonArray places;
        for (const Earned& earned : figures().earned) {
            const auto minor = [](Money amount) { return static_cast<qint64>(amount.minor); };
            QJsonObject object{{QStringLiteral("place"), words(earned.place)},
                               {QStringLiteral("isInTheList"), earned.fair.has_value()},
                               {QStringLiteral("days"), static_cast<qint64>(earned.days)},
                               {QStringLiteral("orders"), static_cast<qint64>(earned.orders)},
                               {QStringLiteral("garments"), static_cast<qint64>(earned.garments)},
                               {QStringLiteral("orderedMinor"), minor(earned.ordered)},
                               {QStringLiteral("makingMinor"), minor(earned.cost.total())},
                               {QStringLiteral("stallMinor"), minor(earned.stall())},
                               {QStringLiteral("leftMinor"), minor(earned.left())}};
            if (earned.fair) {
                object.insert(QStringLiteral("firstDay"), words(isoDate(earned.fair->firstDay)));
                object.insert(QStringLiteral("minutesWorked"),
                              static_cast<qint64>(earned.fair->hoursWorked().count()));
                object.insert(QStringLiteral("leftAnHourMinor"), minor(*earned.leftAnHour()));
            }
            places.append(object);
        }
        return places;
    }

    QJsonObject bringJson() const {
        const WhatToBring& bring = figures().bring;
        QJsonArray blanks;
        for (const ToBring& kind : bring.kinds)
            blanks.append(QJsonObject{{QStringLiteral("blank"), words(kind.name)},
                                      {QStringLiteral("askedFor"), shareJson(kind.asked.mean)},
                                      {QStringLiteral("bring"), static_cast<qint64>(kind.brought.quantity)},
                                      {QStringLiteral("washed"), static_cast<qint64>(kind.ready)},
                                      {QStringLiteral("toWash"), static_cast<qint64>(kind.toWash)},
                                      {QStringLiteral("missing"), static_cast<qint64>(kind.missing())},
                                      {QStringLiteral("expectedTooFew"), shareJson(kind.brought.shortage)},
                                      {QStringLiteral("expectedHome"), shareJson(kind.brought.leftover)}});
        QJsonObject whole{{QStringLiteral("fairDaysKnown"), static_cast<qint64>(bring.days)},
                          {QStringLiteral("fairsKnown"), static_cast<qint64>(bring.fairs)},
                          {QStringLiteral("isFromFew"), bring.isFromFew()},
                          {QStringLiteral("days"), static_cast<qint64>(bring.comingDays)},
                          {QStringLiteral("blanks"), blanks}};
        if (const auto& next = figures().nextFair) {
            whole.insert(QStringLiteral("fair"), words(next->name));
            whole.insert(QStringLiteral("firstDay"), words(isoDate(next->firstDay)));
        }
        return whole;
    }

    QJsonArray filmsJson() const {
        QJsonArray films;
        for (const FilmUse& film : figures().films)
            films.append(QJsonObject{
                {QStringLiteral("film"), words(film.film)},
                {QStringLiteral("receivedMillimetres"), static_cast<qint64>(film.received.value)},
                {QStringLiteral("cutMillimetres"), static_cast<qint64>(film.cut.value)},
                {QStringLiteral("testStripMillimetres"), static_cast<qint64>(film.testStrips.value)},
                {QStringLiteral("wastedMillimetres"), static_cast<qint64>(film.wasted.value)}});
        return films;
    }

    const ReckonedShop& m_shop;
    FiguresShown m_shown;
};

} // namespace

Report figuresReport(const ReckonedShop& shop, const ShopFigures& figures) {
    FiguresReport report{shop, figures};
    QJsonObject json = report.json();
    return {report.text(), std::move(json)};
}

} // namespace holdfast::app
