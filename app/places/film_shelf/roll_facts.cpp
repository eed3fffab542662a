// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/roll_facts.h"

#include "app/desk/formats.h"
#include "app/places/film_shelf/roll_air.h"
#include "app/places/film_shelf/shelf_words.h"
#include "app/theme/measures.h"
#include "app/widgets/fact_block.h"

#include <QGridLayout>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

QString since(const ReckonedShop& shop, const FilmRoll& roll) {
    return dayInShort(dateOf(shop.now.toLocal(exposureSince(shop, roll))), shop.now.today());
}

} // namespace

RollFacts::RollFacts(QWidget* parent)
    : QWidget(parent) {

    const auto fact = [](const QString& label, const char* name) {
        auto* made = new FactBlock(label);
        made->setObjectName(QLatin1String(name));
        return made;
    };
    m_age = fact(tr("Calendar age"), "calendarAge");
    m_warmAge = fact(tr("Age by warmth, estimate"), "ageByWarmth");
    m_useBy = fact(tr("Use-by"), "useBy");
    m_outside = fact({}, "hoursOutside");

    auto* facts = new QGridLayout(this);
    facts->setContentsMargins(0, 0, 0, 0);
    facts->setHorizontalSpacing(kSpace12);
    facts->setVerticalSpacing(kSpace4);
    facts->addWidget(m_age, 0, 0);
    facts->addWidget(m_warmAge, 0, 1);
    facts->addWidget(m_useBy, 1, 0);
    facts->addWidget(m_outside, 1, 1);
    facts->setColumnStretch(0, 1);
    facts->setColumnStretch(1, 1);
}

void RollFacts::show(const ReckonedShop& shop, const FilmRoll& roll) {
    const RollCondition& condition = shop.conditions.at(roll.id);
    const Film& film = shop.facts.films.at(roll.film);
    const LocalDate today = shop.now.today();
    m_age->set(age(condition.calendarAge), roll.madeOn ? tr("made %1").arg(date(*roll.madeOn))
                                                       : tr("received %1").arg(date(roll.receivedOn)));

    // Against the hours it has lived: on its first day it has not aged by warmth for being counted from
    // midnight.
    const double lived =
        std::max(0.0, daysBetween(shop.now.toInstant(LocalTime{roll.agesFrom()}), shop.now.instant));
    const Days more{std::lround(condition.effectiveDays - lived)};
    const Days warm = condition.calendarAge + more;
    const Days unrecorded{std::lround(condition.unrecordedDays)};
    QString why = more > Days{0}   ? tr("%1 added by warmth").arg(dayCount(more))
                  : more < Days{0} ? tr("%1 spared by cool").arg(dayCount(-more))
                                   : tr("as by the calendar");
    if (condition.calendarAge > Days{0} && unrecorded * 2 > condition.calendarAge)
        why = tr("%1 unrecorded").arg(dayCount(unrecorded));
    m_warmAge->set(age(warm), why, more > Days{0} ? &Tokens::weld : &Tokens::ink);

    const auto limit = limitWithoutWarmth(film, roll);
    QString maker = tr("the maker gives none");
    if (condition.extendedByStrip)
        maker = tr("by its test strip");
    else if (roll.printedUseBy)
        maker = tr("maker says %1").arg(dayInShort(*roll.printedUseBy, today));
    else if (limit)
        maker = tr("%1 by the calendar").arg(dayInShort(*limit, today));
    if (condition.useByRange)
        maker.prepend(spanInShort(*condition.useByRange, today) + QLatin1Char('\n'));
    m_useBy->setLabel(condition.useByIsEstimate ? tr("Use-by, estimate") : tr("Use-by"));
    m_useBy->set(condition.useBy ? date(*condition.useBy) : tr("No limit given"), maker,
                 condition.isPastAge(today) ? &Tokens::madder : &Tokens::ink);

    // Humidity has the block; where only the temperature was out, it is said instead.
    const bool isTemperature = std::lround(condition.humidityHoursOutside) == 0 &&
                               std::lround(condition.temperatureHoursOutside) > 0;
    const Measure measure = isTemperature ? Measure::Temperature : Measure::Humidity;
    const double hours = isTemperature ? condition.temperatureHoursOutside : condition.humidityHoursOutside;
    m_outside->setLabel(
        tr("Outside %1").arg(isTemperature ? temperatureBandWords(film) : humidityBandWords(film)));
    const auto spells =
        spellsOutside(shop, roll, measure, exposureSince(shop, roll), shop.now.instant).size();
    QString note =
        spells > 0
            ? tr("%n spell since %1|%n spells since %1", nullptr, howMany(spells)).arg(since(shop, roll))
            : tr("never since %1").arg(since(shop, roll));
    if (!isTemperature && std::lround(condition.temperatureHoursOutside) > 0)
        note = tr("and %1 outside %2")
                   .arg(hourCount(condition.temperatureHoursOutside), temperatureBandWords(film));
    const bool isMoments = spells > 0 && std::lround(hours) == 0;
    m_outside->set(isMoments ? tr("under 1 h") : hourCount(hours), note,
                   condition.isBadlyKept(film) ? &Tokens::madder
                   : std::lround(hours) > 0    ? &Tokens::weld
                                               : &Tokens::ink);
}

} // namespace holdfast::app
