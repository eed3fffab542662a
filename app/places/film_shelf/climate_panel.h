// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The air a roll was in, over a window that the person chooses. The chart itself is a module that is loaded
// when the first one is to be shown; where that fails, the reason and the figures are in its place.

#include "app/places/film_shelf/air_window.h"
#include "app/places/film_shelf/climate_chart.h"
#include "core/shop/reckoned_shop.h"

#include <QWidget>

class QVBoxLayout;

namespace holdfast::app {

class Button;
class ElidingLabel;
class Label;

class ClimatePanel : public QWidget {
    Q_OBJECT

public:
    explicit ClimatePanel(QWidget* parent = nullptr);

    void show(std::shared_ptr<const ReckonedShop> shop, RollId roll);
    AirWindow window() const { return m_windowChosen; }
    void takeNextWindow();

signals:
    void windowChosen();
    void inFullAsked(); // and asked again: back to the shelf

protected:
    void changeEvent(QEvent* event) override;

private:
    void draw();
    void loadChart();

    std::shared_ptr<const ReckonedShop> m_shop;
    RollId m_roll;
    ElidingLabel* m_place = nullptr;
    Button* m_window = nullptr;
    AirWindow m_windowChosen = AirWindow::Month;
    QVBoxLayout* m_column = nullptr;
    Label* m_instead = nullptr; // where no chart can be drawn
    ClimateChart* m_chart = nullptr;
    QString m_cannotLoad;
};

} // namespace holdfast::app
