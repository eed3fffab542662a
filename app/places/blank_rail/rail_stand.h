// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The rail itself: the styles hang from it as tabs, the one looked at is a sewn label open to the grid below.
// One stop for Tab; ← → change the style.

#include "app/places/blank_rail/rail_stock.h"

#include <QColor>
#include <QWidget>

#include <vector>

namespace holdfast::app {

class RailStand : public QWidget {
    Q_OBJECT

public:
    explicit RailStand(QWidget* parent = nullptr);

    void show(const std::vector<StyleRail>& rail, int current);

signals:
    void chosen(int style);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    struct Tab {
        QString name, outline;
        std::int64_t units = 0;
        bool isUnread = false;
        QColor cloth;
    };
    QRectF tabRect(int at) const;
    int firstShown() const;
    int shownCount() const;
    void paintTab(QPainter& painter, int at) const;

    std::vector<Tab> m_tabs;
    int m_current = 0;
};

} // namespace holdfast::app
