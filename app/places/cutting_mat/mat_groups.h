#pragma once
// What is on the mat: decals that are cut alike on one line, with how many they are. A click turns to the
// first. So many lines at most are shown, so that what stands below is in reach; how many more there are is
// said.

#include "app/papers/decal_shapes.h"
#include "app/places/cutting_mat/mat_model.h"

#include <QColor>
#include <QVector>
#include <QWidget>

namespace holdfast::app {

struct MatGroup {
    DecalId first;
    QString title; // "423 Heron, tote"
    QString size;  // "180 × 228 mm"
    Decal decal;
    int count = 0;
};

class MatGroups : public QWidget {
    Q_OBJECT

public:
    explicit MatGroups(QWidget* parent = nullptr);

    void show(const MatModel& model, bool isMirrored);
    const QVector<MatGroup>& groups() const { return m_groups; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return {240, sizeHint().height()}; }

signals:
    void chosen(holdfast::DecalId decal);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;

private:
    int shown() const;
    void paintGroup(QPainter& painter, const QRectF& row, const MatGroup& group);

    QVector<MatGroup> m_groups;
    DecalShapes m_shapes;
    QColor m_film;
    bool m_isMirrored = true;
};

} // namespace holdfast::app
