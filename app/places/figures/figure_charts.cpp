// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/figures/figure_charts.h"

#include "app/desk/formats.h"
#include "app/theme/measures.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QLocale>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr qreal kLeft = 88; // words at the left
constexpr qreal kRight = 24;
constexpr qreal kTop = 20;
constexpr qreal kBottom = 34; // days, months
constexpr qreal kLine = 1.5;
constexpr qreal kDot = 4.5;
constexpr int kTimeMarks[] = {7, 30, 90, 180, 365, 730, 1825};
constexpr int kMostMarks = 7;
constexpr double kLeastShown = 0.1; // of the share that failed: a step of one in a hundred is no cliff
constexpr double kRoomAbove = 1.15;

// Where shares and their places are.
struct Plot {
    QRectF area;
    double least = 0;
    double most = 1;

    qreal y(double share) const { return area.bottom() - area.height() * (share - least) / (most - least); }
};

Plot plotOf(const QWidget& widget, double least, double most) {
    return {QRectF(widget.rect()).adjusted(kLeft, kTop, -kRight, -kBottom), least, most};
}

void paintShare(QPainter& painter, const Plot& plot, double share, const QString& words) {
    const QRectF box(0, plot.y(share) - 9, plot.area.left() - 8, 18);
    paintLine(painter, box, words, Type::Small, tokens().ink2, Qt::AlignRight);
}

// Days between two marks, so that a handful of marks is on the axis.
int daysBetweenMarks(double until) {
    for (const int span : kTimeMarks) {
        if (until / span <= kMostMarks)
            return span;
    }
    return static_cast<int>(until / kMostMarks);
}

} // namespace

HoldingChart::HoldingChart(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("holdingChart"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void HoldingChart::show(const Survival& survival) {
    m_survival = survival;
    setAccessibleName(tr("Share of garments without a fault, by days since handing over"));
    update();
}

void HoldingChart::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double until = std::max(1.0, m_survival.watchedUntil);
    double lowest = 1 - kLeastShown;
    for (const SurvivalStep& step : m_survival.steps)
        lowest = std::min(lowest, step.low);
    const Plot plot = plotOf(*this, std::max(0.0, std::floor(lowest * 10) / 10), 1);
    const auto x = [&](double days) { return plot.area.left() + plot.area.width() * days / until; };

    QPainterPath line(QPointF(plot.area.left(), plot.y(1)));
    QPainterPath above(QPointF(plot.area.left(), plot.y(1)));
    std::vector<QPointF> below{{plot.area.left(), plot.y(1)}};
    SurvivalStep before{0, 0, 0, 1, 0, 1, 1};
    const auto stepTo = [&](double at, const SurvivalStep& step) {
        line.lineTo(x(at), plot.y(before.share));
        line.lineTo(x(at), plot.y(step.share));
        above.lineTo(x(at), plot.y(before.high));
        above.lineTo(x(at), plot.y(step.high));
        below.emplace_back(x(at), plot.y(before.low));
        below.emplace_back(x(at), plot.y(step.low));
        before = step;
    };
    for (const SurvivalStep& step : m_survival.steps)
        stepTo(step.at, step);
    stepTo(until, before);
    for (auto point = below.rbegin(); point != below.rend(); ++point)
        above.lineTo(*point);
    painter.fillPath(above, tokens().woad);
    painter.setPen(QPen(tokens().indigo, kLine, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.drawPath(line);

    painter.fillRect(QRectF(plot.area.left(), plot.area.bottom(), plot.area.width(), 1), tokens().edge);
    paintShare(painter, plot, 1, percentOf(1));
    paintShare(painter, plot, plot.least, percentOf(plot.least));
    const int between = daysBetweenMarks(until);
    for (int days = 0; days <= until; days += between) {
        painter.fillRect(QRectF(x(days), plot.area.bottom(), 1, 5), tokens().edge);
        const QString words = days == 0 ? tr("handed over") : dayCount(Days{days});
        const QRectF box(x(days) - 60, plot.area.bottom() + 8, 120, 18);
        paintLine(painter, days == 0 ? box.translated(60, 0) : box, words, Type::Small, tokens().ink2,
                  days == 0 ? Qt::AlignLeft : Qt::AlignHCenter);
    }
    const QRectF end(x(until) - 200, plot.y(before.share) - 24, 196, 20);
    paintLine(painter, end, tr("%1 without a fault").arg(percentOf(before.share)), Type::SmallStrong,
              tokens().indigo, Qt::AlignRight);
}

MonthsChart::MonthsChart(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("monthsChart"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void MonthsChart::show(const FaultMonths& months) {
    m_months = months;
    setAccessibleName(tr("Share that came back, by the month of handing over, between its limits"));
    update();
}

void MonthsChart::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const auto& samples = m_months.chart.samples;
    if (samples.empty())
        return;
    double most = kLeastShown;
    for (const ChartedSample& sample : samples)
        most = std::max({most, sample.high, sample.value});
    const Plot plot = plotOf(*this, 0, std::min(1.05, most * kRoomAbove));
    const qreal wide = plot.area.width() / static_cast<double>(samples.size());
    const auto left = [&](std::size_t month) { return plot.area.left() + wide * static_cast<double>(month); };

    for (std::size_t month = 0; month < samples.size(); ++month) {
        const ChartedSample& sample = samples[month];
        const QRectF band(QPointF(left(month), plot.y(sample.high)),
                          QPointF(left(month) + wide, plot.y(sample.low)));
        painter.fillRect(band, tokens().greenTint);
        painter.setPen(QPen(tokens().green, 1, Qt::DashLine));
        painter.drawLine(band.topLeft(), band.topRight());
        if (sample.low > 0)
            painter.drawLine(band.bottomLeft(), band.bottomRight());
    }
    painter.setPen(QPen(tokens().green, kLine));
    painter.drawLine(QPointF(plot.area.left(), plot.y(m_months.chart.mean)),
                     QPointF(plot.area.right(), plot.y(m_months.chart.mean)));
    painter.fillRect(QRectF(plot.area.left(), plot.area.bottom(), plot.area.width(), 1), tokens().edge);

    QPainterPath line;
    for (std::size_t month = 0; month < samples.size(); ++month) {
        const QPointF at(left(month) + wide / 2, plot.y(samples[month].value));
        month == 0 ? line.moveTo(at) : line.lineTo(at);
    }
    painter.setPen(QPen(tokens().indigo, kLine));
    painter.drawPath(line);
    const std::size_t every =
        1 + (samples.size() - 1) / static_cast<std::size_t>(std::max(1.0, plot.area.width() / 64));
    for (std::size_t month = 0; month < samples.size(); ++month) {
        const QPointF at(left(month) + wide / 2, plot.y(samples[month].value));
        painter.setPen(Qt::NoPen);
        painter.setBrush(samples[month].isOut() ? tokens().madder : tokens().indigo);
        painter.drawEllipse(at, kDot, kDot);
        if (samples[month].isOut())
            paintLine(painter, QRectF(at.x() - 60, at.y() - 24, 120, 18), percentOf(samples[month].value),
                      Type::SmallStrong, tokens().madder, Qt::AlignHCenter);
        if (month % every == 0) {
            const QString name = QLocale().standaloneMonthName(
                static_cast<int>(static_cast<unsigned>(m_months.months[month].month())),
                QLocale::ShortFormat);
            paintLine(painter, QRectF(left(month) + wide / 2 - 40, plot.area.bottom() + 8, 80, 18), name,
                      Type::Small, tokens().ink2, Qt::AlignHCenter);
        }
    }
    paintShare(painter, plot, m_months.chart.mean, tr("mean %1").arg(percentOf(m_months.chart.mean)));
}

} // namespace holdfast::app
