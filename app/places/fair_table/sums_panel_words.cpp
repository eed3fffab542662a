// SPDX-License-Identifier: GPL-3.0-or-later
// What the bill says of the day and the total, and what makes the day sooner.
#include "app/desk/formats.h"
#include "app/places/fair_table/draft_words.h"
#include "app/places/fair_table/sums_panel.h"
#include "app/theme/type.h"
#include "db/actions/shop_actions.h"

namespace holdfast::app {

namespace {

constexpr double kBesideSooner = 76; // the clock and the margins

} // namespace

// What of the blanks is not chosen yet: until then the promise is for the likeliest.
QString SumsPanel::stillOpen() const {
    bool isSizeOpen = false;
    bool isColourOpen = false;
    for (const TableGarment& garment : m_model.draft().garments) {
        isSizeOpen = isSizeOpen || (garment.style.isSet() && garment.size.empty());
        isColourOpen = isColourOpen || (garment.style.isSet() && !garment.colour.isSet());
    }
    if (isSizeOpen && isColourOpen)
        return tr("size and colour still open");
    return isSizeOpen ? tr("size still open") : isColourOpen ? tr("colour still open") : QString();
}

// Of an order that was taken, the day that it was promised for.
QString SumsPanel::besideTheDay() const {
    const OpenedOrder* opened = m_model.opened();
    if (const QString open = stillOpen(); !opened || !open.isEmpty())
        return open;
    return m_model.sums().isAsPromised
               ? tr("as promised")
               : tr("was %1").arg(promise(opened->order.promised, m_model.shop().now.today()));
}

// The answer to the day that the customer asks for.
QString SumsPanel::wantedWords(const WantedDay& wanted, LocalDate today) const {
    switch (wanted.answer) {
    case WantedDay::Answer::Kept:
        return dateOf(wanted.earliest) == wanted.day
                   ? tr("as wanted; no day sooner")
                   : tr("as wanted; %1 at the soonest").arg(dayNear(dateOf(wanted.earliest), today));
    case WantedDay::Answer::TooSoon:
        return tr("not on %1, as wanted").arg(day(wanted.day));
    case WantedDay::Answer::Closed:
        return tr("closed on %1").arg(day(wanted.day));
    }
    return {};
}

// What it costs the shop, and what an order that was taken came to.
QString SumsPanel::belowTotal(const TableSums& sums, const Currency& currency) const {
    QString costs = tr("costs %1").arg(money(sums.floor, currency));
    if (sums.tax.kind == TaxKind::Included)
        costs = tr("%1 of it %2 · %3")
                    .arg(money(sums.bill.sum.tax, currency),
                         words(taxWords(sums.tax, m_model.shop().facts.settings.prices.taxName)), costs);
    const OpenedOrder* opened = m_model.opened();
    return !opened || opened->order.total == sums.total
               ? costs
               : tr("was %1 · %2").arg(money(opened->order.total, currency), costs);
}

// "today", "Wed" within the week, "25 Nov" after: the line is short.
QString SumsPanel::weekdayNear(LocalDate when, LocalDate today) {
    constexpr qsizetype kWeekday = 3; // "Wed" of "Wed 25 Nov"
    return when == today ? tr("today") : when - today < Days{7} ? day(when).left(kWeekday) : day(when);
}

// As many colours as the line has room for; the hour is never cut.
QString SumsPanel::soonerWords(const SoonerOption& sooner, LocalDate today) const {
    const QString when =
        tr("%1 from %2").arg(weekdayNear(dateOf(sooner.readyAt), today), clock(sooner.readyAt));
    if (sooner.withoutDecal)
        return tr("Without %1: %2")
            .arg(decalWords(m_model.draft().garment().decals[*sooner.withoutDecal].decal.content), when);
    if (sooner.longerDay)
        return tr("Open %1 to %2: %3")
            .arg(weekdayNear(sooner.longerDay->day, today),
                 clock(LocalTime{sooner.longerDay->day} + sooner.longerDay->hours.closes), when);
    for (std::size_t count = sooner.colours.size(); count > 0; --count) {
        QStringList names;
        for (std::size_t at = 0; at < count; ++at)
            names.append(words(sooner.colours[at]->name));
        const QString last = names.takeLast();
        const QString colours =
            names.isEmpty() ? last : tr("%1 or %2").arg(names.join(QStringLiteral(", ")), last);
        const QString text = tr("Washed %1: %2").arg(colours, when);
        if (widthOf(text, Type::BodyStrong) <= width() - kBesideSooner)
            return text;
    }
    return tr("A washed colour: %1").arg(when);
}

void SumsPanel::takeSooner() {
    const auto sooner = m_model.sums().sooner;
    if (!sooner)
        return;
    if (sooner->longerDay) {
        ShopSettings settings = m_model.shop().facts.settings;
        settings.otherHours[sooner->longerDay->day] = sooner->longerDay->hours;
        m_model.desk().done(db::changeSettings(m_model.desk().file(), settings));
        emit keyboardFreed();
        return;
    }
    m_model.edit(Step::Choice, [&](TableDraft& draft) {
        if (sooner->withoutDecal)
            removeDecal(draft, *sooner->withoutDecal);
        else
            draft.garment().colour = sooner->colours.front()->id;
    });
    emit keyboardFreed();
}

} // namespace holdfast::app
