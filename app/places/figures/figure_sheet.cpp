#include "app/places/figures/figure_sheet.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <map>

namespace holdfast::app {

namespace {

// After so many days the share without a fault is told, where any garment was watched for so long.
constexpr int kDaysTold[] = {30, 90, 180, 365, 730};

class FigureWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::FigureWords)

public:
    explicit FigureWords(const FiguresShown& shown)
        : m_shown(shown)
        , m_figures(shown.figures) {}

    FigureSheet cameBack() const {
        FigureSheet sheet;
        sheet.question = tr("What came back?");
        sheet.empty = tr("What customers bring back stands here, once garments are handed over.");
        if (m_figures.handedOver.empty() && m_figures.faults.empty())
            return sheet;
        const FaultShare all = faultsOfAll(m_figures.handedOver);
        sheet.answer = tr("%1 of %2 garments").arg(all.faults).arg(all.garments);
        sheet.whole = shareSentence(tr("%1 of %2 garments came back with a fault of pressing"), all);
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
        sheet.note =
            tr("A garment counts once in the sentence, by the first fault of pressing told of it; each "
               "telling counts in the rows. Who tells nothing is taken as content.");
        return sheet;
    }

    FigureSheet whatIsCommon() const {
        FigureSheet sheet;
        sheet.question = tr("What do they have in common?");
        sheet.empty = tr("Films, rolls and presses stand here side by side, once garments are handed over.");
        const auto shares = faultsBy(m_figures.handedOver, m_shown.by);
        if (shares.empty())
            return sheet;
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
                                percent(share.interval.share), span(share.interval)},
                               share.isMoreThanChance           ? tr("more than chance")
                               : isAnyJudged && !share.isJudged ? tr("too few to judge")
                                                                : QString()});
            sheet.most = std::max(sheet.most, share.interval.high);
        }
        sheet.note =
            tr("The thin line reaches as far as the true share may well lie (95 of 100 times). Only where "
               "%1 garments or more stand on either side is it said whether chance could have done it.")
                .arg(kFewestToJudge);
        return sheet;
    }

    FigureSheet holding() const {
        FigureSheet sheet;
        sheet.question = tr("How long do decals hold?");
        sheet.empty = tr("The share still without a fault stands here, once garments are handed over.");
        sheet.chart = FigureChart::Holding;
        if (m_figures.handedOver.empty())
            return sheet;
        const Survival survival = daysWithoutFault(m_figures.handedOver, m_shown.today);
        sheet.nameHead = tr("After handing over");
        sheet.heads = {tr("Without a fault"), tr("May well be"), tr("Still watched")};
        for (const int days : kDaysTold) {
            if (days > survival.watchedUntil)
                break;
            const auto watched = watchedFor(days);
            const ShareInterval share = shareAt(survival, days, watched);
            sheet.answer = tr("%1 after %2").arg(percent(share.share), dayCount(Days{days}));
            sheet.rows.append({dayCount(Days{days}),
                               {},
                               {percent(share.share), span(share), QString::number(watched)},
                               {}});
        }
        const FaultShare all = faultsOfAll(m_figures.handedOver);
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
        return sheet;
    }

    FigureSheet months() const {
        FigureSheet sheet;
        sheet.question = tr("Does a month stand out?");
        sheet.empty = tr("Months stand here side by side, once garments are handed over.");
        sheet.chart = FigureChart::Months;
        const FaultMonths months = faultsByMonth(m_figures.handedOver);
        if (months.months.empty())
            return sheet;
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
                                percent(charted.value), percent(charted.high)},
                               charted.value > charted.high  ? tr("more than usual")
                               : charted.value < charted.low ? tr("fewer than usual")
                                                             : QString()});
        }
        sheet.answer = out == 0 ? tr("none") : out == 1 ? tr("1 month") : tr("%1 months").arg(out);
        sheet.whole = out == 0
                          ? tr("Each month is within what the mean of all would bring by chance.")
                          : tr("%1 beyond what the mean of all would bring by chance.").arg(sheet.answer);
        sheet.note =
            tr("Limits are three standard errors from the mean of %1, by the garments of each month. A late "
               "month may still change; few garments make wide limits.")
                .arg(percent(months.chart.mean));
        return sheet;
    }

    FigureSheet promises() const {
        FigureSheet sheet;
        sheet.question = tr("Were promises kept?");
        sheet.empty = tr("Promises stand here once the first was to be kept.");
        if (m_figures.promises.empty())
            return sheet;
        const PromisesKept all = promisesKept(m_figures.promises);
        sheet.answer = tr("%1 of %2").arg(all.kept).arg(all.given);
        sheet.whole = tr("%1 of %2 orders were pressed by the time promised: %3, may well be %4.")
                          .arg(all.kept)
                          .arg(all.given)
                          .arg(percent(all.interval->share), span(*all.interval));
        sheet.nameHead = tr("Promised for");
        sheet.heads = {tr("Orders"), tr("Kept"), tr("Share"), tr("May well be")};
        std::map<std::chrono::year_month, std::vector<PromiseGiven>> byMonth;
        for (const PromiseGiven& promise : m_figures.promises) {
            const std::chrono::year_month_day day{dateOf(promise.promised)};
            byMonth[day.year() / day.month()].push_back(promise);
        }
        for (auto month = byMonth.rbegin(); month != byMonth.rend(); ++month) {
            const PromisesKept kept = promisesKept(month->second);
            sheet.rows.append({monthName(month->first),
                               FigureBar{kept.interval->share, kept.interval->low, kept.interval->high, 0},
                               {QString::number(kept.given), QString::number(kept.kept),
                                percent(kept.interval->share), span(*kept.interval)},
                               {}});
        }
        sheet.most = 1;
        sheet.note = tr("An order is as ready as its last garment. One that was never pressed is not kept; "
                        "cancelled ones and quotations are no promises.");
        return sheet;
    }

    FigureSheet takings() const {
        FigureSheet sheet;
        sheet.question = tr("What did each fair bring?");
        sheet.empty = tr("Fairs and the workshop stand here, once orders are taken.");
        if (m_figures.places.empty())
            return sheet;
        Money ordered, taken;
        sheet.nameHead = tr("Taken at");
        sheet.heads = {tr("Days"), tr("Orders"), tr("Garments"), tr("Ordered"), tr("Paid so far")};
        for (const PlaceTakings& place : m_figures.places) {
            ordered += place.ordered;
            taken += place.taken;
            const auto length = static_cast<double>(place.ordered.minor);
            sheet.rows.append(
                {placeName(place.place),
                 FigureBar{length, {}, {}, length - static_cast<double>(place.taken.minor)},
                 {QString::number(place.days), QString::number(place.orders), QString::number(place.garments),
                  money(place.ordered, m_shown.currency), money(place.taken, m_shown.currency)},
                 {}});
            sheet.most = std::max(sheet.most, length);
        }
        sheet.answer = money(ordered, m_shown.currency);
        sheet.whole = tr("Ordered for %1, of which %2 is paid.")
                          .arg(money(ordered, m_shown.currency), money(taken, m_shown.currency));
        sheet.note =
            tr("Hatched: still owed. Days are those on which an order was taken. What a stall cost is not "
               "known here; tax is yours to reckon by local law.");
        return sheet;
    }

    FigureSheet film() const {
        FigureSheet sheet;
        sheet.question = tr("Where did the film go?");
        sheet.empty = tr("Films stand here once a roll was received.");
        if (m_figures.films.empty())
            return sheet;
        FilmUse all;
        sheet.nameHead = tr("Film");
        sheet.heads = {tr("Received"), tr("Cut"), tr("Test strips"), tr("Wasted"), tr("Share wasted")};
        for (const FilmUse& film : m_figures.films) {
            all.cut += film.cut;
            all.testStrips += film.testStrips;
            all.wasted += film.wasted;
            const auto lost = static_cast<double>((film.testStrips + film.wasted).value);
            const double gone = static_cast<double>(film.cut.value) + lost;
            sheet.rows.append(
                {words(film.film),
                 FigureBar{gone, {}, {}, lost},
                 {length(film.received), length(film.cut), length(film.testStrips), length(film.wasted),
                  film.shareWasted() ? percent(*film.shareWasted()) : tr("–")},
                 {}});
            sheet.most = std::max(sheet.most, gone);
        }
        const auto share = all.shareWasted();
        sheet.answer = share ? tr("%1 wasted").arg(percent(*share)) : tr("nothing used yet");
        sheet.whole = share ? tr("%1 cut; %2 became test strips or was left on rolls that were used up.")
                                  .arg(metres(all.cut), metres(all.testStrips + all.wasted))
                            : tr("Nothing was cut yet.");
        sheet.note =
            tr("Hatched: test strips and what was wasted. What lay between the decals of a cut counts as "
               "cut; the cutting mat shows it for each nest.");
        return sheet;
    }

private:
    static QString withCapital(const QString& text) { return text.left(1).toUpper() + text.mid(1); }

    // "7 %", "0.4 %"; below one in a hundred with a decimal.
    static QString percent(double share) {
        const double hundredths = share * 100;
        const bool isSmall = hundredths > 0 && hundredths < 1;
        return tr("%1 %").arg(QString::number(hundredths, 'f', isSmall ? 1 : 0));
    }

    static QString length(Millimetres length) { return length.value == 0 ? tr("–") : metres(length); }

    static QString span(const ShareInterval& interval) {
        return tr("%1 to %2").arg(percent(interval.low), percent(interval.high));
    }

    static QString shareSentence(const QString& counts, const FaultShare& all) {
        if (all.garments == 0)
            return tr("No garment of this span is handed over.");
        return tr("%1: %2, may well be %3.")
            .arg(counts.arg(all.faults).arg(all.garments), percent(all.interval.share), span(all.interval));
    }

    static QString monthName(std::chrono::year_month month) {
        return date(LocalDate{month / 1}).section(QLatin1Char(' '), 1);
    }

    QString placeName(const std::string& place) const {
        return place == "workshop" ? tr("The workshop") : words(place);
    }

    QString byWords() const {
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

    // Where nothing failed until then, Kaplan and Meier know no ends: those of all that were watched serve.
    static ShareInterval shareAt(const Survival& survival, int days, std::int64_t watched) {
        const SurvivalStep at = survival.at(days);
        return at.faults == 0 ? *shareInterval(watched, watched) : ShareInterval{at.share, at.low, at.high};
    }

    // Garments that were handed over so many days ago or more, and had no fault until then.
    std::int64_t watchedFor(int days) const {
        return std::ranges::count_if(m_figures.handedOver, [&](const HandedOver& garment) {
            const LocalDate until = garment.fault ? garment.fault->toldOn : m_shown.today;
            return (until - garment.on).count() >= days;
        });
    }

    const FiguresShown& m_shown;
    const ShopFigures& m_figures;
};

} // namespace

FigureSheet figureSheet(FigureQuestion question, const FiguresShown& shown) {
    const FigureWords figures{shown};
    switch (question) {
    case FigureQuestion::CameBack:
        return figures.cameBack();
    case FigureQuestion::WhatIsCommon:
        return figures.whatIsCommon();
    case FigureQuestion::Holding:
        return figures.holding();
    case FigureQuestion::Months:
        return figures.months();
    case FigureQuestion::Promises:
        return figures.promises();
    case FigureQuestion::Takings:
        return figures.takings();
    case FigureQuestion::Film:
        return figures.film();
    }
    return {};
}

} // namespace holdfast::app
