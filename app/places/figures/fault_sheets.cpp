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
        sheet.whole += tr(" Of %1 told, nothing was done yet.").arg(m_figures.unanswered);
    sheet.nameHead = tr("What was wrong");
    sheet.heads = {tr("Told")};
    for (const auto& [fault, count] : m_figures.faults) {
        const QString name = withCapital(words(faultWords(fault)));
        sheet.rows.append({name,
                           FigureBar{static_cast<double>(count), {}, {}, 0},
                           {QString::number(count)},
                           isOfPressing(fault) ? QString() : tr("not of pressing")});
        sheet.most = std::max(sheet.most, static_cast<double>(count));
    }
    sheet.note = tr("A garment counts once in the sentence, by the first fault of pressing told of it; each "
                    "telling counts in the rows. Who tells nothing is taken as content.");
    return;
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
        sheet.whole = tr("%1 came back more than chance would have it.").arg(words(worst->name));
    } else if (isAnyJudged) {
        sheet.answer = tr("nothing stands out");
        sheet.whole = tr("Nothing here came back more than chance would have it.");
    } else {
        sheet.answer = tr("too few to judge");
        sheet.whole =
            tr("Too few to judge: %1 garments or more must stand on either side.").arg(kFewestToJudge);
    }
    sheet.nameHead = byWords();
    sheet.heads = {tr("Garments"), tr("Came back"), tr("Share"), tr("May well be")};
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
    sheet.note =
        tr("The thin line reaches as far as the true share may well lie (95 of 100 times). Only where "
           "%1 garments or more stand on either side is it said whether chance could have done it; where "
           "nothing is wrong, films, rolls, presses, blanks and washing together stay quiet in 19 of 20 "
           "shops.")
            .arg(kFewestToJudge);
    return;
}
void FaultSheets::holding(FigureSheet& sheet) const {
    const FaultShare& all = m_figures.handedOver;
    if (all.garments == 0)
        return;
    const Survival& survival = m_figures.withoutFault;
    sheet.nameHead = tr("After handing over");
    sheet.heads = {tr("Without a fault"), tr("May well be"), tr("Still watched")};
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
                      ? tr("No garment was handed over %1 ago yet.").arg(dayCount(Days{kDaysTold[0]}))
                      : tr("%1 of %2 garments are not known to have failed.")
                            .arg(all.garments - all.faults)
                            .arg(all.garments);
    sheet.note =
        tr("A garment of which nothing was told was watched until today. The tint holds the true share "
           "95 of 100 times; where few are still watched it is wide.");
    return;
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
    sheet.answer = out == 0 ? tr("none") : out == 1 ? tr("1 month") : tr("%1 months").arg(out);
    sheet.whole = out == 0 ? tr("Each month is within what the mean of all would bring by chance.")
                           : tr("%1 beyond what the mean of all would bring by chance.").arg(sheet.answer);
    sheet.note =
        tr("The limit of a month is what chance goes beyond once in some 370 months, by the mean of %1 and "
           "the garments of that month: few garments have a wide one. A late month may still change.")
            .arg(percentOf(months.chart.mean));
    return;
}
QString FaultSheets::sentence(const QString& counts, const FaultShare& all) const {
    if (all.garments == 0)
        return tr("No garment of this span is handed over.");
    return tr("%1: %2, may well be %3.")
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
