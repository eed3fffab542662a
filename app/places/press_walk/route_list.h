// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The steps of the garment in hand: done with a tick, the one under way on indigo, the rest with their
// numbers. Scrolls by itself so that the step under way and those after it are seen.

#include "core/holds/assessment.h"

#include <QListView>
#include <QStringListModel>

namespace holdfast::app {

class RouteList : public QListView {
    Q_OBJECT

public:
    explicit RouteList(QWidget* parent = nullptr);

    // `at` is the step under way, or the first to come.
    void show(const Route& route, std::size_t at, bool isUnderway);
    void clear();

protected:
    void resizeEvent(QResizeEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    friend class RouteDelegate;
    void followStep();

    QStringListModel m_model; // the spoken words of each step
    std::vector<RouteStep> m_steps;
    std::size_t m_at = 0;
    bool m_isUnderway = false;
};

} // namespace holdfast::app
