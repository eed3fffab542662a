// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The cutting bench: nests to scale, which a hand moves decals on. A drag or an arrow key lays a decal only
// where it may lie and pins it there; Tab goes from decal to decal and after the last one on; Delete leaves
// one out.

#include "app/places/cutting_bench/bench_painter.h"
#include "app/theme/finger_scroll.h"

#include <QAbstractScrollArea>

namespace holdfast::app {

class BenchView : public QAbstractScrollArea, public Draggable {
    Q_OBJECT

public:
    explicit BenchView(BenchModel& model, QWidget* parent = nullptr);

    void setWish(const CutFileWish& wish);
    // After the model has changed.
    void layOut();
    // Where a decal lies, in pixels of the viewport.
    QRectF rectOf(DecalId decal) const;
    bool isDragging() const { return m_look.dragged.has_value(); }

    QSize sizeHint() const override { return {860, 520}; }
    QSize minimumSizeHint() const override { return {300, 200}; }
    bool isGrippedAt(const QPoint& onScreen) const override;

signals:
    void dragBegun();
    void refused(const QString& why); // what a key asked for could not be done

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool focusNextPrevChild(bool next) override;
    bool viewportEvent(QEvent* event) override;

private:
    QPointF origin() const; // of the drawing in the viewport
    std::optional<DecalId> decalAt(QPointF at) const;
    bool turnOffcutAt(QPointF at);
    void dragTo(QPointF at);
    void leaveDrag();
    void showChosen();
    void say();
    QString emptyWords() const;

    BenchModel& m_model;
    BenchPainter m_painter;
    BenchScale m_scale;
    BenchLook m_look;
    std::optional<DecalId> m_held;
    DecalPin m_heldFrom;
    QPointF m_pressed;
};

} // namespace holdfast::app
