// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The tub, filling by weight, with the line at which the washer is full.

#include "core/trade/units.h"

#include <QColor>
#include <QWidget>

namespace holdfast::app {

class WashTub : public QWidget {
    Q_OBJECT

public:
    explicit WashTub(QWidget* parent = nullptr);

    void show(Grams weight, Grams full, std::int64_t units, const QColor& water);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Grams m_weight;
    Grams m_full{1};
    std::int64_t m_units = 0;
    QColor m_water;
};

} // namespace holdfast::app
