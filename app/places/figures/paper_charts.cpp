// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/figures/paper_charts.h"

#include "app/desk/formats.h"
#include "app/places/figures/figure_words.h"

#include <QCoreApplication>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

struct ChartWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PaperCharts)
};

constexpr QRectF kPlot{24, 8, 154, 40}; // mm, from the block's corner
constexpr double kChartHeight = 60;
constexpr double kThick = 0.6;
constexpr double kThin = 0.15;
constexpr double kDot = 1.1; // of its radius
constexpr double kLeastSpan = 0.1;
constexpr double kMonthWidth = 22; // of its name, at most
constexpr PaperType kChartWord{3.2, QFont::Normal};

struct PaperPlot {
    double least = 0;
    double most = 1;

    double y(double share) const {
        return kPlot.bottom() - kPlot.height() * (share - least) / (most - least);
    }
};

void drawAxes(PaperInk& ink, const PaperPlot& plot) {
    ink.rule(kPlot.left(), kPlot.right(), kPlot.bottom(), 0.25);
    for (const double share : {plot.least, plot.most})
        ink.line({kPlot.left() - 2, plot.y(share) + 1}, percentOf(share), kChartWord, Across::Right);
}

// Down in steps, from all of them to the end of what was watched.
QPainterPath stepsOf(const Survival& survival, const PaperPlot& plot, double SurvivalStep::* share) {
    const auto x = [&](double days) { return kPlot.left() + kPlot.width() * days / survival.watchedUntil; };
    QPainterPath path(QPointF(kPlot.left(), plot.y(1)));
    double before = 1;
    for (const SurvivalStep& step : survival.steps) {
        path.lineTo(x(step.at), plot.y(before));
        path.lineTo(x(step.at), plot.y(step.*share));
        before = step.*share;
    }
    path.lineTo(kPlot.right(), plot.y(before));
    return path;
}

void drawHolding(PaperInk& ink, const Survival& survival) {
    double lowest = 1 - kLeastSpan;
    for (const SurvivalStep& step : survival.steps)
        lowest = std::min(lowest, step.low);
    const PaperPlot plot{std::max(0.0, std::floor(lowest * 10) / 10), 1};
    drawAxes(ink, plot);
    ink.stroke(stepsOf(survival, plot, &SurvivalStep::low), {}, kThin);
    ink.stroke(stepsOf(survival, plot, &SurvivalStep::high), {}, kThin);
    ink.stroke(stepsOf(survival, plot, &SurvivalStep::share), {}, kThick);
    const double last = survival.steps.empty() ? 1 : survival.steps.back().share;
    ink.line({kPlot.right(), 5}, ChartWords::tr("%1 without a fault at the end").arg(percentOf(last)),
             kChartWord, Across::Right);
    const double below = kPlot.bottom() + 5;
    ink.line({kPlot.left(), below}, ChartWords::tr("handed over"), kChartWord);
    ink.line({kPlot.right(), below}, dayCount(Days{std::llround(survival.watchedUntil)}), kChartWord,
             Across::Right);
}

QPainterPath ring(QPointF at, double radius) {
    QPainterPath path;
    path.addEllipse(at, radius, radius);
    return path;
}

void drawMonths(PaperInk& ink, const FaultMonths& months) {
    const auto& samples = months.chart.samples;
    double most = kLeastSpan;
    for (const ChartedSample& sample : samples)
        most = std::max({most, sample.high, sample.value});
    const PaperPlot plot{0, most};
    drawAxes(ink, plot);
    ink.rule(kPlot.left(), kPlot.right(), plot.y(months.chart.mean), 0.25);
    ink.line({kPlot.right(), 5}, ChartWords::tr("mean %1").arg(percentOf(months.chart.mean)), kChartWord,
             Across::Right);
    const double wide = kPlot.width() / static_cast<double>(samples.size());
    const std::size_t every = 1 + static_cast<std::size_t>(kMonthWidth / wide);
    QPainterPath line;
    for (std::size_t at = 0; at < samples.size(); ++at) {
        const ChartedSample& sample = samples[at];
        const double left = kPlot.left() + wide * static_cast<double>(at);
        const QPointF point(left + wide / 2, plot.y(sample.value));
        ink.rule(left, left + wide, plot.y(sample.high), kThin);
        ink.rule(left, left + wide, plot.y(sample.low), kThin);
        ink.fill(ring(point, kDot));
        if (sample.isOut())
            ink.stroke(ring(point, 2 * kDot), {}, kThin * 2);
        at == 0 ? line.moveTo(point) : line.lineTo(point);
        if (at % every == 0)
            ink.line({point.x(), kPlot.bottom() + 5}, monthName(months.months[at]), kChartWord,
                     Across::Middle);
    }
    ink.stroke(line, {}, kThin * 2);
}

} // namespace

std::optional<PageBlock> holdingOnPaper(const Survival& survival) {
    if (survival.watchedUntil < 1)
        return std::nullopt;
    return PageBlock{kChartHeight, [survival](PaperInk& ink) { drawHolding(ink, survival); }};
}

std::optional<PageBlock> monthsOnPaper(const FaultMonths& months) {
    if (months.chart.samples.empty())
        return std::nullopt;
    return PageBlock{kChartHeight, [months](PaperInk& ink) { drawMonths(ink, months); }};
}

} // namespace holdfast::app
