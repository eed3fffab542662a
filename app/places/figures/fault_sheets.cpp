// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/figures/fault_sheets.h"

#include "app/desk/formats.h"
#include "app/places/figures/figure_words.h"

#include <algorithm>

namespace holdfast::app {

namespace {

// After these numbers of days the share without a fault is shown, if any garment was followed that long.
constexpr int kDaysTold[] = {30, 90, 180, 365, 730};

// Where nothing failed until then, Kaplan and Meier know no ends: those of all that were watched serve.
ShareInterval shareAt(const Survival& survival, int days, std::int64_t watched) {
    const SurvivalStep at = survival.at(days);
    return at.faults == 0 ? *shareInterval(watched, watched) : ShareInterval{at.share, at.low, at.high};
}

} // namespace

void FaultSheets::cameBack(FigureSheet& sheet) const {
    const FaultShare& all = m_figures.handedOver;
    if (all.garments == 0 && m_figures.faults.empty())
        return;
    sheet.answer = tr("%1 of %2 garments").arg(all.faults).arg(all.garments);
    sheet.whole = sentence(tr("%1 of %2 garments came back with a fault of pressing"), all);
    if (m_figures.unanswered > 0)
        sheet.whole =
            tr("%1 Still waiting for an answer: %2.").arg(sheet.whole, QString::number(m_figures.unanswered));
    sheet.nameHead = tr("What was wrong");
    sheet.heads = {tr("Reported")};
    for (const auto& [fault, count] : m_figures.faults) {
        const QString name = withCapital(words(faultWords(fault)));
        sheet.rows.append({name,
                           FigureBar{static_cast<double>(count), {}, {}, 0},
                           {QString::number(count)},
                           isOfPressing(fault) ? QString() : tr("not from pressing")});
        sheet.most = std::max(sheet.most, static_cast<double>(count));
    }
    sheet.note = tr("The sentence counts each garment once, by the first pressing fault reported; the table "
                    "counts every report. Garments nobody reported count as fine.");
}

void FaultSheets::whatIsCommon(FigureSheet& sheet) const {
    const auto found = m_figures.compared.find(m_shown.by);
    if (found == m_figures.compared.end() || found->second.empty())
        return;
    const std::vector<FaultShare>& shares = found->second;
    const auto worst = std::ranges::find_if(shares, &FaultShare::isMoreThanChance);
    const bool isAnyJudged = std::ranges::find_if(shares, &FaultShare::isJudged) != shares.end();
    if (worst != shares.end()) {
        sheet.answer = words(worst->name);
        sheet.whole = tr("%1 came back more often than chance explains.").arg(words(worst->name));
    } else if (isAnyJudged) {
        sheet.answer = tr("nothing unusual");
        sheet.whole = tr("Nothing here came back more often than chance explains.");
    } else {
        sheet.answer = tr("too few to judge");
        sheet.whole =
            tr("Too few to judge: it takes at least %1 garments with it and %1 without.").arg(kFewestToJudge);
    }
    sheet.nameHead = byWords();
    sheet.heads = {tr("Garments"), tr("Came back"), tr("Share"), tr("Likely range")};
    for (const FaultShare& share : shares) {
        sheet.rows.append({words(share.name),
                           FigureBar{share.interval.share, share.interval.low, share.interval.high, 0},
                           {QString::number(share.garments), QString::number(share.faults),
                            percentOf(share.interval.share), spanOf(share.interval)},
                           share.isMoreThanChance           ? tr("more than chance")
                           : isAnyJudged && !share.isJudged ? tr("too few to judge")
                                                            : QString()});
        sheet.most = std::max(sheet.most, share.interval.high);
    }
    sheet.note = tr("The thin line is the likely range of the true share, right 95 times in 100. Whether "
                    "chance could explain a difference is judged only with at least %1 garments with it and "
                    "%1 without. Where nothing is wrong, films, rolls, presses, blanks and washing together "
                    "raise no alarm in 19 of 20 shops.")
                     .arg(kFewestToJudge);
}

void FaultSheets::holding(FigureSheet& sheet) const {
    const FaultShare& all = m_figures.handedOver;
    if (all.garments == 0)
        return;
    const Survival& survival = m_figures.withoutFault;
    sheet.nameHead = tr("After handing over");
    sheet.heads = {tr("Without a fault"), tr("Likely range"), tr("Followed so long")};
    for (const int days : kDaysTold) {
        if (days > survival.watchedUntil)
            break;
        const auto watched = m_figures.watchedFor(Days{days});
        const ShareInterval share = shareAt(survival, days, watched);
        sheet.answer = tr("%1 after %2").arg(percentOf(share.share), dayCount(Days{days}));
        sheet.rows.append({dayCount(Days{days}),
                           {},
                           {percentOf(share.share), spanOf(share), QString::number(watched)},
                           {}});
    }
    if (sheet.rows.isEmpty())
        sheet.answer = tr("too early to say");
    sheet.whole = sheet.rows.isEmpty()
                      ? tr("No garment was handed over as long as %1 ago.").arg(dayCount(Days{kDaysTold[0]}))
                      : tr("%1 of %2 garments are not known to have failed.")
                            .arg(all.garments - all.faults)
                            .arg(all.garments);
    sheet.note = tr("A garment that nobody reported counts as fine until today. The shaded band covers the "
                    "true share 95 times in 100; it is wide where few garments have been followed so long.");
}

void FaultSheets::months(FigureSheet& sheet) const {
    const FaultMonths& months = m_figures.months;
    if (months.months.empty())
        return;
    int out = 0;
    sheet.nameHead = tr("Handed over in");
    sheet.heads = {tr("Garments"), tr("Came back"), tr("Share"), tr("Usual up to")};
    for (std::size_t month = months.months.size(); month-- > 0;) {
        const ChartedSample& charted = months.chart.samples[month];
        const CountSample& sample = months.samples[month];
        out += charted.isOut();
        sheet.rows.append({monthName(months.months[month]),
                           {},
                           {QString::number(sample.of), QString::number(sample.found),
                            percentOf(charted.value), percentOf(charted.high)},
                           charted.value > charted.high  ? tr("more than usual")
                           : charted.value < charted.low ? tr("fewer than usual")
                                                         : QString()});
    }
    sheet.answer = out == 0 ? tr("no") : tr("%n month|%n months", nullptr, howMany(out));
    sheet.whole = out == 0 ? tr("No month is unusual; the differences could be chance.")
                           : tr("%1 with more or fewer than chance explains.").arg(sheet.answer);
    sheet.note =
        tr("Chance passes a month’s limit once in about 370 months, given the average of %1 and the garments "
           "of that month; with few garments the limit is wide. The latest months may still change.")
            .arg(percentOf(months.chart.mean));
}

QString FaultSheets::sentence(const QString& counts, const FaultShare& all) const {
    if (all.garments == 0)
        return tr("No garment was handed over in this time.");
    return tr("%1: %2, likely range %3.")
        .arg(counts.arg(all.faults).arg(all.garments), percentOf(all.interval.share), spanOf(all.interval));
}

QString FaultSheets::byWords() const {
    switch (m_shown.by) {
    case FaultsBy::Film:
        return tr("Film");
    case FaultsBy::Roll:
        return tr("Roll");
    case FaultsBy::Press:
        return tr("Press");
    case FaultsBy::Style:
        return tr("Blank");
    case FaultsBy::Washing:
        return tr("Blank was");
    }
    return {};
}

} // namespace holdfast::app
