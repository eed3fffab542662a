// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The garment at true scale with its decals: drag one to move it, a chalk mark in the middle of an edge to
// size it, arrow keys to nudge it 5 mm (with Shift 1 mm). Shows how far below the seam it is, its width and
// its height in millimetres.

#include "app/places/fair_table/stage_scale.h"
#include "app/theme/finger_scroll.h"
#include "core/facts/order.h"

#include <QColor>
#include <QWidget>

#include <optional>
#include <vector>

namespace holdfast::app {

struct StageDecal {
    DecalContent content;
    Side side = Side::Front; // front or back; sleeves are seen from the front
    Millimetres below;
    Millimetres aside;
    Millimetres width;
    Millimetres height;
    QColor film;

    bool operator==(const StageDecal&) const = default;
};

struct StageScene {
    QString outline;        // empty: no style chosen yet
    QString size;           // as named; empty: not chosen yet, drawn as M
    bool tellsSize = false; // it is one of several
    QColor cloth;           // invalid: undyed
    Side side = Side::Front;
    std::vector<StageDecal> decals;     // what lies below comes first
    std::optional<std::size_t> current; // the one being worked on
    QString described;                  // for those who hear the screen

    bool operator==(const StageScene&) const = default;
};

class GarmentStage : public QWidget, public Draggable {
    Q_OBJECT

public:
    explicit GarmentStage(QWidget* parent = nullptr);

    void setScene(const StageScene& scene);
    static constexpr int kSideRoom = 72; // for the measures, on both sides of the garment
    // The garment keeps clear of what is laid over the left of the stage.
    void setLeftRoom(int room);
    // Where a decal is, in pixels of the stage.
    QRectF rectOf(std::size_t decal) const;

    QSize sizeHint() const override { return {474, 190}; } // takes what room there is
    QSize minimumSizeHint() const override { return {280, 190}; }
    bool isGrippedAt(const QPoint& onScreen) const override;

signals:
    void picked(std::size_t decal);
    void moved(holdfast::Millimetres below, holdfast::Millimetres aside);
    void widened(holdfast::Millimetres width, holdfast::Millimetres below);
    void settled(); // the mouse was let go: the next move is a step of its own

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    enum class Grip { None, Whole, Top, Bottom, Left, Right };

    void rescale();
    Grip gripAt(QPointF at, std::size_t decal) const;
    std::optional<std::size_t> decalAt(QPointF at) const;
    void dragTo(QPointF at);
    void paintDecals(QPainter& painter) const;
    void paintCurrent(QPainter& painter) const;
    void paintChalkMarks(QPainter& painter, const QRectF& box) const;
    void paintMeasures(QPainter& painter, const StageDecal& decal, const QRectF& box) const;
    void paintScaleBar(QPainter& painter) const;
    QColor cloth() const;
    QColor inkOnCloth() const;

    StageScene m_scene;
    StageScale m_scale;
    int m_leftRoom = kSideRoom;
    Grip m_grip = Grip::None;
    QPointF m_gripFrom;
    StageDecal m_gripped; // as it was when it was gripped
};

} // namespace holdfast::app
