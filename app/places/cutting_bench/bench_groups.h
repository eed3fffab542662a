#pragma once
// What is on the bench: decals that are cut alike on one line, with how many they are. A click turns to the
// first. So many lines at most are shown, so that what stands below is in reach; how many more there are is
// said.

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

    void show(const BenchModel& model, bool isMirrored);
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
    bool m_isMirrored = true;
};

} // namespace holdfast::app
