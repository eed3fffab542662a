// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The two figures that go over time: how many garments are still without a fault, and whether a month is
// unusual. Lines of 1.5 px, what may well be as a tint, words at the lines, no grid but limits.

#include "core/quality/figures.h"

#include <QWidget>

namespace holdfast::app {

// Steps down from all; the tint holds the true share.
class HoldingChart : public QWidget {
    Q_OBJECT

public:
    explicit HoldingChart(QWidget* parent = nullptr);

    void show(const Survival& survival);

    QSize sizeHint() const override { return {480, 280}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Survival m_survival;
};

// A point for each month, between its limits.
class MonthsChart : public QWidget {
    Q_OBJECT

public:
    explicit MonthsChart(QWidget* parent = nullptr);

    void show(const FaultMonths& months);

    QSize sizeHint() const override { return {480, 240}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    FaultMonths m_months;
};

} // namespace holdfast::app
