// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/chart/climate_chart_view.h"

#include <QPainter>
#include <QPainterPath>
#include <QtCharts/QChart>
#include <QtCharts/QLineSeries>
#include <QtCharts/QValueAxis>

#include <algorithm>
#include <cmath>
#include <limits>

namespace holdfast::app {

namespace {

constexpr qreal kLeft = 30;   // limits
constexpr qreal kRight = 44;  // last readings
constexpr qreal kTop = 18;    // hours of the highest spells
constexpr qreal kBottom = 22; // days
constexpr qreal kLabel = 16;
constexpr int kHatchTile = 7;
// Of the plot's height. Temperature that kept within its band needs no limits drawn, and little room.
constexpr double kHumidityShare = 0.72;
constexpr double kHumidityShareBesideLimits = 0.58;
constexpr double kBetween = 0.10;
constexpr double kLeastDegrees = 8; // that the temperature's strip shows

// Diagonal stripes, clear between them, smooth at any ratio.
QBrush hatchOf(const QColor& line, qreal ratio) {
    const int pixels = std::max(4, static_cast<int>(std::lround(kHatchTile * ratio)));
    QPixmap tile(pixels, pixels);
    tile.fill(Qt::transparent);
    QPainter painter(&tile);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(line, pixels * 0.34, Qt::SolidLine, Qt::FlatCap));
    for (int shift = -1; shift <= 1; ++shift)
        painter.drawLine(QPointF(-pixels + shift * pixels, pixels * 2),
                         QPointF(pixels * 2 + shift * pixels, -pixels));
    painter.end();
    QBrush brush(tile);
    brush.setTransform(QTransform::fromScale(static_cast<qreal>(kHatchTile) / pixels,
                                             static_cast<qreal>(kHatchTile) / pixels));
    return brush;
}

} // namespace

ClimateChartView::ClimateChartView(QWidget* parent)
    : QChartView(parent) {
    setFocusPolicy(Qt::NoFocus);
    setFrameShape(QFrame::NoFrame);
    setRenderHint(QPainter::Antialiasing);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setAttribute(Qt::WA_TransparentForMouseEvents);
    viewport()->setAttribute(Qt::WA_TransparentForMouseEvents);
    QChart* plot = chart();
    plot->legend()->hide();
    plot->setBackgroundVisible(false);
    plot->setPlotAreaBackgroundVisible(false);
    plot->setAnimationOptions(QChart::NoAnimation);
    plot->setMargins({});
    plot->setContentsMargins(0, 0, 0, 0);
}

void ClimateChartView::setPicture(const ClimatePicture& picture) {
    m_picture = picture;
    draw();
}

void ClimateChartView::setDress(const ChartDress& dress) {
    m_dress = dress;
    m_hatch = hatchOf(dress.dyes.weldHatch, devicePixelRatioF());
    setBackgroundBrush(dress.dyes.card);
    draw();
}

void ClimateChartView::resizeEvent(QResizeEvent* event) {
    QChartView::resizeEvent(event);
    draw();
}

void ClimateChartView::layOut() {
    m_plot = QRectF(viewport()->rect()).adjusted(kLeft, kTop, -kRight, -kBottom);
    m_plot.setWidth(std::max(40.0, m_plot.width()));
    m_plot.setHeight(std::max(40.0, m_plot.height()));
    chart()->setPlotArea(m_plot);
}

std::vector<ThinLine> ClimateChartView::linesOf(const std::vector<AirPiece>& air, Measure measure) const {
    std::vector<ThinLine> lines;
    const auto span = static_cast<double>((m_picture.to - m_picture.from).count());
    for (const AirPiece& piece : air) {
        const auto seconds = static_cast<double>((piece.to - piece.from).count());
        const int columns = std::max(
            2, static_cast<int>(m_plot.width() * devicePixelRatioF() * seconds / std::max(1.0, span)));
        const auto shift = static_cast<double>((piece.from - m_picture.from).count());
        for (ThinLine& line : thinned(*piece.readings, measure, piece.from, piece.to, columns)) {
            for (ThinPoint& point : line)
                point.seconds += shift;
            lines.push_back(std::move(line));
        }
    }
    return lines;
}

ClimateChartView::Strip ClimateChartView::stripOf(Measure measure, double low, double high) const {
    Strip strip;
    strip.measure = measure;
    strip.low = low;
    strip.high = high;
    strip.lines = linesOf(m_picture.air, measure);
    strip.beside = linesOf(m_picture.beside, measure);
    strip.least = std::numeric_limits<double>::max();
    strip.most = std::numeric_limits<double>::lowest();
    for (const auto* lines : {&strip.lines, &strip.beside})
        for (const ThinLine& line : *lines)
            for (const ThinPoint& point : line) {
                strip.least = std::min(strip.least, point.value);
                strip.most = std::max(strip.most, point.value);
            }
    if (strip.lines.empty() && strip.beside.empty()) {
        strip.least = low;
        strip.most = high;
    }
    return strip;
}

void ClimateChartView::widen(Strip& strip, double least, double most, double margin) {
    strip.least = std::min(strip.least, least) - margin;
    strip.most = std::max(strip.most, most) + margin;
}

void ClimateChartView::draw() {
    chart()->removeAllSeries();
    const auto axes = chart()->axes();
    for (QAbstractAxis* axis : axes) {
        chart()->removeAxis(axis);
        delete axis;
    }
    m_strips.clear();
    layOut();
    if (m_picture.from >= m_picture.to || m_hatch.style() == Qt::NoBrush)
        return;

    Strip humid = stripOf(Measure::Humidity, m_picture.humidity.low.percent, m_picture.humidity.high.percent);
    Strip warm =
        stripOf(Measure::Temperature, m_picture.temperature.low.value, m_picture.temperature.high.value);
    widen(humid, humid.low, humid.high, 2);
    warm.showsBand = warm.least < warm.low || warm.most > warm.high;
    if (warm.showsBand)
        widen(warm, warm.low, warm.high, 0.5);
    else if (const double middle = (warm.least + warm.most) / 2; warm.most - warm.least < kLeastDegrees)
        widen(warm, middle - kLeastDegrees / 2, middle + kLeastDegrees / 2, 0);
    humid.bottom = warm.showsBand ? kHumidityShareBesideLimits : kHumidityShare;
    warm.top = humid.bottom + kBetween;
    warm.bottom = 1;
    m_strips.push_back(std::move(humid));
    m_strips.push_back(std::move(warm));

    auto* across = new QValueAxis;
    across->setRange(0, static_cast<double>((m_picture.to - m_picture.from).count()));
    across->setVisible(false);
    chart()->addAxis(across, Qt::AlignBottom);
    for (const Strip& strip : m_strips)
        addLines(strip, across);
    viewport()->update();
}

void ClimateChartView::addLines(const Strip& strip, QValueAxis* across) {
    // The axis goes on beyond the strip so that the strip is its part of the plot.
    const double perShare = (strip.most - strip.least) / (strip.bottom - strip.top);
    auto* up = new QValueAxis;
    up->setRange(strip.least - (1 - strip.bottom) * perShare, strip.most + strip.top * perShare);
    up->setVisible(false);
    chart()->addAxis(up, Qt::AlignLeft);
    const auto add = [&](const std::vector<ThinLine>& lines, const QPen& pen) {
        for (const ThinLine& line : lines) {
            auto* series = new QLineSeries;
            series->setPen(pen);
            QList<QPointF> points;
            points.reserve(static_cast<qsizetype>(line.size()));
            for (const ThinPoint& point : line)
                points.append({point.seconds, point.value});
            series->replace(points);
            chart()->addSeries(series);
            series->attachAxis(across);
            series->attachAxis(up);
        }
    };
    add(strip.beside, penBeside(strip));
    add(strip.lines, penOf(strip));
}

double ClimateChartView::xOf(double seconds) const {
    return m_plot.left() +
           m_plot.width() * seconds / static_cast<double>((m_picture.to - m_picture.from).count());
}

double ClimateChartView::yOf(const Strip& strip, double value) const {
    const double share =
        strip.top + (strip.bottom - strip.top) * (strip.most - value) / (strip.most - strip.least);
    return m_plot.top() + m_plot.height() * share;
}

QPen ClimateChartView::penOf(const Strip& strip) const {
    if (strip.measure == Measure::Humidity)
        return QPen(m_dress.dyes.indigo, 1.5, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
    QPen pen(m_dress.dyes.madder, 1.5, Qt::CustomDashLine, Qt::FlatCap, Qt::RoundJoin);
    pen.setDashPattern({3, 2});
    return pen;
}

QPen ClimateChartView::penBeside(const Strip& strip) const {
    QPen pen = penOf(strip);
    pen.setColor(m_dress.dyes.ink3);
    pen.setWidthF(1);
    return pen;
}

void ClimateChartView::drawBackground(QPainter* painter, const QRectF& rect) {
    QChartView::drawBackground(painter, rect);
    for (const Strip& strip : m_strips) {
        if (!strip.showsBand)
            continue;
        paintBand(*painter, strip);
        paintOutside(*painter, strip);
    }
}

void ClimateChartView::paintBand(QPainter& painter, const Strip& strip) const {
    const double high = yOf(strip, strip.high);
    const double low = yOf(strip, strip.low);
    painter.fillRect(QRectF(m_plot.left(), high, m_plot.width(), low - high), m_dress.dyes.greenTint);
    painter.setPen(QPen(m_dress.dyes.green, 1, Qt::DashLine));
    for (const double limit : {high, low})
        painter.drawLine(QPointF(m_plot.left(), limit), QPointF(m_plot.right(), limit));
}

void ClimateChartView::paintOutside(QPainter& painter, const Strip& strip) const {
    const double begins = xOf(static_cast<double>((m_picture.countedFrom - m_picture.from).count()));
    const double high = yOf(strip, strip.high);
    const double low = yOf(strip, strip.low);
    painter.save();
    for (const bool isAbove : {true, false}) {
        const double limit = isAbove ? high : low;
        const QRectF room = isAbove ? QRectF(QPointF(begins, 0), QPointF(m_plot.right(), limit))
                                    : QRectF(QPointF(begins, limit), QPointF(m_plot.right(), height()));
        painter.setClipRect(room);
        for (const ThinLine& line : strip.lines) {
            QPainterPath area(QPointF(xOf(line.front().seconds), limit));
            for (const ThinPoint& point : line)
                area.lineTo(xOf(point.seconds), yOf(strip, point.value));
            area.lineTo(xOf(line.back().seconds), limit);
            painter.fillPath(area, m_hatch);
        }
    }
    painter.restore();
    if (m_picture.countedFrom > m_picture.from && strip.measure == Measure::Humidity) {
        painter.setPen(QPen(m_dress.dyes.edge, 1, Qt::DotLine));
        painter.drawLine(QPointF(begins, m_plot.top()), QPointF(begins, m_plot.bottom()));
    }
}

void ClimateChartView::drawForeground(QPainter* painter, const QRectF& rect) {
    QChartView::drawForeground(painter, rect);
    if (m_strips.empty())
        return;
    painter->setRenderHint(QPainter::Antialiasing);
    for (const Strip& strip : m_strips) {
        if (!strip.showsBand)
            continue;
        paintLimits(*painter, strip, strip.measure == Measure::Humidity ? QString() : QStringLiteral("°"));
        paintHours(*painter, strip);
    }
    paintEnds(*painter);
    paintDays(*painter);
}

void ClimateChartView::paintLimits(QPainter& painter, const Strip& strip, const QString& unit) const {
    const double high = yOf(strip, strip.high);
    const double low = yOf(strip, strip.low);
    painter.setFont(m_dress.small);
    painter.setPen(m_dress.dyes.ink2);
    const auto limit = [&](double y, double value) {
        painter.drawText(QRectF(0, y - kLabel / 2, kLeft - 6, kLabel), Qt::AlignRight | Qt::AlignVCenter,
                         QString::number(value) + unit);
    };
    limit(high, strip.high);
    if (low - high >= kLabel - 3)
        limit(low, strip.low);
}

void ClimateChartView::paintHours(QPainter& painter, const Strip& strip) const {
    std::vector<const LabelledSpell*> longest;
    for (const LabelledSpell& spell : m_picture.spells)
        if (spell.measure == strip.measure && spell.spell.hours() >= 1)
            longest.push_back(&spell);
    std::ranges::stable_sort(longest, [](const LabelledSpell* one, const LabelledSpell* other) {
        return one->spell.hours() > other->spell.hours();
    });
    painter.setFont(m_dress.smallStrong);
    painter.setPen(m_dress.dyes.weld);
    const QFontMetricsF measure(m_dress.smallStrong);
    std::vector<QRectF> taken;
    for (const LabelledSpell* spell : longest) {
        const auto begins = static_cast<double>((spell->spell.begins - m_picture.from).count());
        const auto ends = static_cast<double>((spell->spell.ends - m_picture.from).count());
        double peak = spell->spell.isAbove ? strip.high : strip.low;
        for (const ThinLine& line : strip.lines)
            for (const ThinPoint& point : line)
                if (point.seconds >= begins && point.seconds <= ends)
                    peak = spell->spell.isAbove ? std::max(peak, point.value) : std::min(peak, point.value);
        const double wide = measure.horizontalAdvance(spell->words) + 4;
        const double y = yOf(strip, peak);
        QRectF box(xOf((begins + ends) / 2) - wide / 2, spell->spell.isAbove ? y - kLabel - 1 : y + 1, wide,
                   kLabel);
        box.moveLeft(std::clamp(box.left(), m_plot.left(), std::max(m_plot.left(), m_plot.right() - wide)));
        const bool isFree = std::ranges::none_of(
            taken, [&](const QRectF& other) { return other.adjusted(-3, 0, 3, 0).intersects(box); });
        if (!isFree || box.top() < 0)
            continue;
        painter.drawText(box, Qt::AlignCenter, spell->words);
        taken.push_back(box);
    }
}

void ClimateChartView::paintEnds(QPainter& painter) const {
    painter.setFont(m_dress.smallStrong);
    for (const Strip& strip : m_strips) {
        const bool isHumidity = strip.measure == Measure::Humidity;
        const QString text = isHumidity ? m_picture.humidityNow : m_picture.temperatureNow;
        if (text.isEmpty() || strip.lines.empty())
            continue;
        const double y = yOf(strip, strip.lines.back().back().value);
        painter.setPen(isHumidity ? m_dress.dyes.indigo : m_dress.dyes.madder);
        painter.drawText(QRectF(m_plot.right() + 4, y - kLabel / 2, kRight - 4, kLabel),
                         Qt::AlignLeft | Qt::AlignVCenter, text);
    }
}

void ClimateChartView::paintDays(QPainter& painter) const {
    painter.setFont(m_dress.small);
    painter.setPen(m_dress.dyes.ink2);
    for (const DayMark& day : m_picture.days) {
        const double x = xOf(static_cast<double>((day.at - m_picture.from).count()));
        const double wide = QFontMetricsF(m_dress.small).horizontalAdvance(day.words) + 2;
        const double left = std::clamp(x - wide / 2, m_plot.left(), m_plot.right() - wide);
        painter.drawText(QRectF(left, m_plot.bottom() + 5, wide, kLabel), Qt::AlignCenter, day.words);
    }
}

} // namespace holdfast::app
