// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// At the right of the header: what was taken today, and the clock.

#include "app/desk/shop_desk.h"

#include <QTimer>
#include <QWidget>

namespace holdfast::app {

class TodayTools : public QWidget {
    Q_OBJECT

public:
    explicit TodayTools(ShopDesk& desk, QWidget* parent = nullptr);

    QString takenWords() const { return m_taken + QStringLiteral(" ") + m_money; }
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void reckon();

    ShopDesk& m_desk;
    QString m_taken;
    QString m_money;
    QString m_clock;
    QTimer m_tick; // the clock turns with the minute, not up to a minute late
};

} // namespace holdfast::app
