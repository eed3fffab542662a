// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Humidity above, temperature below, on one axis of days: the band as a tint between its limit lines, hours
// outside it hatched, words at the lines themselves. Gaps in the readings are gaps in the line. Another place
// is shown next to the first in thin lines.

#include "app/places/film_shelf/climate_chart.h"
#include "app/places/film_shelf/thinned_series.h"

#include <QBrush>
#include <QtCharts/QChartView>

#include <vector>

class QValueAxis;

namespace holdfast::app {

class ClimateChartView : public QChartView, public ClimateChart {
    Q_OBJECT

public:
    explicit ClimateChartView(QWidget* parent);

    QWidget* widget() override { return this; }
    // Grows with the room there is; asks for none beyond its least.
    QSize sizeHint() const override { return {240, minimumHeight()}; }
    void setPicture(const ClimatePicture& picture) override;
    void setDress(const ChartDress& dress) override;

protected:
    void drawBackground(QPainter* painter, const QRectF& rect) override;
    void drawForeground(QPainter* painter, const QRectF& rect) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    // One of the two lines with the part of the chart it has.
    struct Strip {
        Measure measure = Measure::Humidity;
        double low = 0; // the band, in the measure's unit
        double high = 0;
        double least = 0; // shown at the strip's lower edge
        double most = 0;  // and at its upper one
        bool showsBand = true;
        double top = 0; // share of the plot's height
        double bottom = 0;
        std::vector<ThinLine> lines;
        std::vector<ThinLine> beside; // another place's
    };

    void layOut();
    void draw();
    Strip stripOf(Measure measure, double low, double high) const;
    static void widen(Strip& strip, double least, double most, double margin);
    std::vector<ThinLine> linesOf(const std::vector<AirPiece>& air, Measure measure) const;
    void addLines(const Strip& strip, QValueAxis* across);
    double xOf(double seconds) const;
    double yOf(const Strip& strip, double value) const;
    QPen penOf(const Strip& strip) const;
    QPen penBeside(const Strip& strip) const;
    void paintBand(QPainter& painter, const Strip& strip) const;
    void paintOutside(QPainter& painter, const Strip& strip) const;
    void paintLimits(QPainter& painter, const Strip& strip, const QString& unit) const;
    void paintHours(QPainter& painter, const Strip& strip) const;
    void paintEnds(QPainter& painter) const;
    void paintDays(QPainter& painter) const;

    ClimatePicture m_picture;
    ChartDress m_dress;
    QBrush m_hatch;
    QRectF m_plot;
    std::vector<Strip> m_strips;
};

} // namespace holdfast::app
