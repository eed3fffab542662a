// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/garment_stage.h"

#include "app/desk/formats.h"
#include "app/theme/drawings.h"
#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"
#include "app/theme/undyed_cloth.h"
#include "app/theme/wording_outline.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <array>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr double kTop = 10;
constexpr double kWidthRoom = 24;   // for the width, below the garment
constexpr double kFoot = 50;        // the scale bar, and the field for the width
constexpr double kFieldRoom = 196;  // the width's field, at the foot on the right
constexpr double kLongestBar = 120; // of the scale
constexpr double kChalkLong = 13;   // a mark, across its edge
constexpr double kChalkWide = 3.4;
constexpr double kGripOutside = 22;      // what a finger meets beyond an edge, and at most within it
constexpr std::int64_t kSnapsWithin = 6; // mm to the centre line, while dragged
constexpr std::int64_t kNudge = 5;
constexpr std::int64_t kSmallNudge = 1;
constexpr std::array<int, 4> kScaleLengths{200, 100, 50, 20};

struct EdgeMiddle {
    QPointF at;
    bool isUpright; // of the left and the right edge
};

// Top, bottom, left, right.
std::array<EdgeMiddle, 4> edgeMiddlesOf(const QRectF& box) {
    const QPointF middle = box.center();
    return {EdgeMiddle{{middle.x(), box.top()}, false}, EdgeMiddle{{middle.x(), box.bottom()}, false},
            EdgeMiddle{{box.left(), middle.y()}, true}, EdgeMiddle{{box.right(), middle.y()}, true}};
}

void paintBarEnds(QPainter& painter, const QLineF& bar) {
    const QPointF along = bar.p2() - bar.p1();
    const double length = std::max(1.0, std::hypot(along.x(), along.y()));
    const QPointF across(-along.y() / length * 6, along.x() / length * 6);
    painter.drawLine(bar);
    painter.drawLine(bar.p1() - across, bar.p1() + across);
    painter.drawLine(bar.p2() - across, bar.p2() + across);
}

} // namespace

GarmentStage::GarmentStage(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("garmentStage"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    giveNoFocusRing(this);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(tr("Garment at true scale"));
}

void GarmentStage::setScene(const StageScene& scene) {
    if (m_scene == scene)
        return;
    m_scene = scene;
    setAccessibleDescription(scene.described);
    rescale();
    update();
}

void GarmentStage::setLeftRoom(int room) {
    if (m_leftRoom == room)
        return;
    m_leftRoom = room;
    rescale();
    update();
}

QRectF GarmentStage::rectOf(std::size_t decal) const {
    const StageDecal& it = m_scene.decals[decal];
    return m_scale.rectOf(it.below, it.aside, it.width, it.height);
}

void GarmentStage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    rescale();
}

void GarmentStage::rescale() {
    const QRectF box(m_leftRoom, kTop, width() - m_leftRoom - kSideRoom,
                     height() - kTop - kWidthRoom - kFoot);
    m_scale = StageScale(box, m_scene.outline.isEmpty() ? QStringLiteral("tee") : m_scene.outline,
                         m_scene.size, m_scene.side);
}

QColor GarmentStage::cloth() const {
    return m_scene.cloth.isValid() ? m_scene.cloth : undyedCloth();
}

QColor GarmentStage::inkOnCloth() const {
    const Tokens& day = tokens(Light::Day);
    return cloth().lightnessF() > 0.55 ? day.ink : day.card;
}

void GarmentStage::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), tokens().sunk);
    const auto paint = m_scene.side == Side::Back ? paintGarmentBack : paintGarment;
    paint(painter, m_scale.sheet(), m_scene.outline.isEmpty() ? QStringLiteral("tee") : m_scene.outline,
          cloth());
    paintDecals(painter);
    paintCurrent(painter);
    paintScaleBar(painter);
    if (m_scene.side == Side::Back)
        paintLine(painter, QRectF(m_leftRoom, kSpace12, 120, lineHeight(Type::SmallStrong)), tr("The back"),
                  Type::SmallStrong, tokens().ink);
    if (hasFocus() && !m_scene.current)
        paintFocusRing(painter, QRectF(rect()).adjusted(6, 6, -6, -6), kButtonRadius);
}

void GarmentStage::paintDecals(QPainter& painter) const {
    for (std::size_t at = 0; at < m_scene.decals.size(); ++at) {
        const StageDecal& decal = m_scene.decals[at];
        if (decal.side != m_scene.side)
            continue;
        if (const auto* artwork = std::get_if<Artwork>(&decal.content))
            paintDecal(painter, rectOf(at), words(artwork->name), decal.film);
        else
            paintWording(painter, rectOf(at), std::get<Wording>(decal.content), decal.film);
    }
}

void GarmentStage::paintCurrent(QPainter& painter) const {
    if (!m_scene.current || m_scene.decals[*m_scene.current].side != m_scene.side)
        return;
    const QRectF box = rectOf(*m_scene.current);
    painter.setBrush(Qt::NoBrush);
    QPen stitch(inkOnCloth(), 1.6);
    stitch.setDashPattern({4, 3});
    painter.setPen(stitch);
    painter.drawRect(box);
    paintChalkMarks(painter, box);
    if (hasFocus())
        paintFocusRing(painter, box.adjusted(-3, -3, 3, 3), kKeyRadius);
    paintMeasures(painter, m_scene.decals[*m_scene.current], box);
}

// As a tailor marks cloth: a short stroke across the middle of each edge, light on dark cloth, blue on light.
void GarmentStage::paintChalkMarks(QPainter& painter, const QRectF& box) const {
    const Tokens& day = tokens(Light::Day);
    const QColor chalk = cloth().lightnessF() > 0.55 ? day.indigo : day.card;
    // Marks leave a small decal to be seen.
    const double length = std::clamp(std::min(box.width(), box.height()) / 2, 7.0, kChalkLong);
    painter.setPen(QPen(chalk, kChalkWide, Qt::SolidLine, Qt::RoundCap));
    for (const EdgeMiddle& edge : edgeMiddlesOf(box)) {
        const QPointF half = edge.isUpright ? QPointF(length / 2, 0) : QPointF(0, length / 2);
        painter.drawLine(edge.at - half, edge.at + half);
    }
}

void GarmentStage::paintMeasures(QPainter& painter, const StageDecal& decal, const QRectF& box) const {
    // On the cloth: from the seam to the upper edge, next to what lies between.
    QPointF seam(box.center().x(), m_scale.seam().y());
    const QRectF between(seam.x() - 1, seam.y(), 2, std::max(0.0, box.top() - seam.y()));
    bool isBeside = false;
    for (std::size_t at = 0; at < m_scene.decals.size(); ++at) {
        if (at == m_scene.current || m_scene.decals[at].side != m_scene.side ||
            !rectOf(at).intersects(between))
            continue;
        seam.setX(std::min({isBeside ? seam.x() : box.left(), rectOf(at).left(), box.left()}) - 8);
        isBeside = true;
    }
    if (box.top() - seam.y() > 6) {
        QPen dots(inkOnCloth(), 1.4);
        dots.setDashPattern({2, 3});
        painter.setPen(dots);
        painter.drawLine(seam, QPointF(seam.x(), box.top()));
    }
    if (box.top() - seam.y() > lineHeight(Type::SmallStrong)) {
        const QString text = millimetres(decal.below);
        const double top = isBeside ? seam.y() + 2 : (seam.y() + box.top()) / 2 - 10;
        paintLine(painter, QRectF(seam.x() + 7, top, 90, 20), text, Type::SmallStrong, inkOnCloth());
    }

    painter.setPen(QPen(tokens().ink, 1.6));
    // At the right of the garment: the height.
    const double right =
        std::min(std::max(m_scale.garment().right(), box.right()) + 14, width() - kSideRoom + 14.0);
    paintBarEnds(painter, QLineF(right, box.top(), right, box.bottom()));
    const double middle = std::clamp(box.center().y(), 20.0, height() - kFoot - 22.0);
    paintLine(painter, QRectF(right + 10, middle - 19, 60, 20), QString::number(decal.height.value),
              Type::SmallStrong, tokens().ink);
    paintLine(painter, QRectF(right + 10, middle - 1, 60, 20), tr("mm"), Type::SmallStrong, tokens().ink);
    // Below the garment: the width.
    const double below = height() - kFoot - kWidthRoom + 10;
    paintBarEnds(painter, QLineF(box.left(), below, box.right(), below));
    const QString wide = millimetres(decal.width);
    const double text = widthOf(wide, Type::SmallStrong);
    const bool fitsRight = box.right() + 10 + text < width() - 6;
    paintLine(painter,
              QRectF(fitsRight ? box.right() + 10 : box.left() - 10 - text, below - 10, text + 2, 20), wide,
              Type::SmallStrong, tokens().ink);
}

void GarmentStage::paintScaleBar(QPainter& painter) const {
    if (m_scene.outline.isEmpty())
        return;
    const double beforeField = width() - kSpace16 - kFieldRoom;
    const double longest = std::clamp(beforeField, 40.0, kLongestBar);
    const auto fits = std::ranges::find_if(
        kScaleLengths, [&](int length) { return length * m_scale.pixelsPerMillimetre() <= longest; });
    const int length = fits == kScaleLengths.end() ? kScaleLengths.back() : *fits;
    const double wide = length * m_scale.pixelsPerMillimetre();
    const double top = height() - 26;
    paintBox(painter, QRectF(kSpace16, top, wide, 8), 0, tokens().card, tokens().ink, 1);
    painter.fillRect(QRectF(kSpace16, top, wide / 2, 8), tokens().ink);
    QString text = m_scene.tellsSize ? tr("%1 mm, true scale for %2").arg(length).arg(m_scene.size)
                                     : tr("%1 mm, true scale").arg(length);
    const double behind = beforeField - wide - 10;
    if (widthOf(text, Type::SmallStrong) > behind)
        text = tr("%1 mm").arg(length);
    // Where the field for the width leaves no room after the bar, its words are above it.
    const bool isAbove = widthOf(text, Type::SmallStrong) > behind;
    const QPointF at = isAbove ? QPointF(kSpace16, top - 22) : QPointF(kSpace16 + wide + 10, top - 6);
    paintLine(painter, QRectF(at, QSizeF(width(), 20)), text, Type::SmallStrong, tokens().ink);
}

GarmentStage::Grip GarmentStage::gripAt(QPointF at, std::size_t decal) const {
    constexpr std::array<Grip, 4> edges{Grip::Top, Grip::Bottom, Grip::Left, Grip::Right};
    const QRectF box = rectOf(decal);
    // Within a small decal most is left to move it by.
    const double inside = std::min(kGripOutside, std::min(box.width(), box.height()) / 5);
    const auto middles = edgeMiddlesOf(box);
    for (std::size_t edge = 0; edge < middles.size(); ++edge) {
        const QPointF off = at - middles[edge].at;
        const double along = middles[edge].isUpright ? off.y() : off.x();
        const double across = middles[edge].isUpright ? off.x() : off.y();
        if (std::abs(along) <= kGripOutside && std::abs(across) <= (box.contains(at) ? inside : kGripOutside))
            return edges[edge];
    }
    return box.contains(at) ? Grip::Whole : Grip::None;
}

std::optional<std::size_t> GarmentStage::decalAt(QPointF at) const {
    // The one at hand first, then what lies on top.
    if (m_scene.current && gripAt(at, *m_scene.current) != Grip::None)
        return m_scene.current;
    for (std::size_t decal = m_scene.decals.size(); decal-- > 0;)
        if (m_scene.decals[decal].side == m_scene.side && rectOf(decal).adjusted(-4, -4, 4, 4).contains(at))
            return decal;
    return std::nullopt;
}

bool GarmentStage::isGrippedAt(const QPoint& onScreen) const {
    return decalAt(mapFromGlobal(onScreen)).has_value();
}

void GarmentStage::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton)
        return;
    const auto decal = decalAt(event->position());
    if (!decal)
        return;
    if (m_scene.current != decal)
        emit picked(*decal); // the scene follows at once
    m_grip = gripAt(event->position(), *decal);
    if (m_grip == Grip::None)
        m_grip = Grip::Whole;
    m_gripFrom = event->position();
    m_gripped = m_scene.decals[*decal];
}

void GarmentStage::mouseMoveEvent(QMouseEvent* event) {
    if (m_grip != Grip::None) {
        dragTo(event->position());
        return;
    }
    const auto decal = decalAt(event->position());
    const Grip grip = decal ? gripAt(event->position(), *decal) : Grip::None;
    if (!decal)
        unsetCursor();
    else if (grip == Grip::Left || grip == Grip::Right)
        setCursor(Qt::SizeHorCursor);
    else if (grip == Grip::Top || grip == Grip::Bottom)
        setCursor(Qt::SizeVerCursor);
    else
        setCursor(Qt::SizeAllCursor);
}

void GarmentStage::dragTo(QPointF at) {
    const QRectF before = m_scale.rectOf(m_gripped.below, m_gripped.aside, m_gripped.width, m_gripped.height);
    if (m_grip == Grip::Whole) {
        const QPointF by = at - m_gripFrom;
        Millimetres aside = m_scale.asideAt(before.center().x() + by.x());
        if (std::abs(aside.value) < kSnapsWithin)
            aside = {0};
        emit moved(m_scale.belowAt(before.top() + by.y()), aside);
        return;
    }
    // Its shape stays, and its middle; pulled by its lower or a side edge the upper edge stays, too, and
    // pulled by its upper edge the lower one.
    const double aspect = before.width() / std::max(1.0, before.height());
    double wide = 2 * std::abs(at.x() - before.center().x());
    if (m_grip == Grip::Top)
        wide = (before.bottom() - at.y()) * aspect;
    else if (m_grip == Grip::Bottom)
        wide = (at.y() - before.top()) * aspect;
    wide = std::max(4.0, wide);
    const double top = m_grip == Grip::Top ? before.bottom() - wide / aspect : before.top();
    emit widened(m_scale.lengthOf(wide), m_scale.belowAt(top));
}

void GarmentStage::mouseReleaseEvent(QMouseEvent*) {
    if (m_grip == Grip::None)
        return;
    m_grip = Grip::None;
    emit settled();
}

void GarmentStage::keyPressEvent(QKeyEvent* event) {
    const bool isPlain = !(event->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier));
    const std::int64_t by = event->modifiers() & Qt::ShiftModifier ? kSmallNudge : kNudge;
    std::int64_t down = 0;
    std::int64_t right = 0;
    switch (event->key()) {
    case Qt::Key_Left:
        right = -by;
        break;
    case Qt::Key_Right:
        right = by;
        break;
    case Qt::Key_Up:
        down = -by;
        break;
    case Qt::Key_Down:
        down = by;
        break;
    default:
        QWidget::keyPressEvent(event);
        return;
    }
    if (!isPlain || !m_scene.current) {
        QWidget::keyPressEvent(event);
        return;
    }
    const StageDecal& decal = m_scene.decals[*m_scene.current];
    const std::int64_t towardsLeft = m_scene.side == Side::Back ? -right : right;
    emit moved(decal.below + Millimetres{down}, decal.aside + Millimetres{towardsLeft});
}

} // namespace holdfast::app
