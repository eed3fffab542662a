// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is on the film: decals that are cut alike on one line, with how many there are where it is more than
// one. A click turns to the first. Only the first lines are shown until all are asked for, so that what comes
// below is in reach.

#include "app/papers/decal_shapes.h"
#include "app/places/cutting_bench/bench_model.h"

#include <QColor>
#include <QVector>
#include <QWidget>

namespace holdfast::app {

struct BenchGroup {
    DecalId first;
    QString title; // "423 Heron, tote"
    QString size;  // "180 × 228 mm"
    Decal decal;
    int count = 0;
};

class BenchGroups : public QWidget {
    Q_OBJECT

public:
    explicit BenchGroups(QWidget* parent = nullptr);

    void show(const BenchModel& model);
    void showAll();
    int hidden() const { return static_cast<int>(m_groups.size()) - shown(); }
    const QVector<BenchGroup>& groups() const { return m_groups; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return {240, sizeHint().height()}; }

signals:
    void chosen(holdfast::DecalId decal);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;

private:
    int shown() const;
    void paintGroup(QPainter& painter, const QRectF& row, const BenchGroup& group);

    QVector<BenchGroup> m_groups;
    DecalShapes m_shapes;
    QColor m_film;
    bool m_showsAll = false;
};

} // namespace holdfast::app
