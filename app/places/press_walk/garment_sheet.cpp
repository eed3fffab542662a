// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/garment_sheet.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/theme/drawings.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"
#include "app/theme/wording_outline.h"
#include "core/press/layers.h"

#include <QPainter>
#include <QPainterPath>

namespace holdfast::app {

namespace {

constexpr qreal kCaption = 34;
constexpr qreal kMargin = 18;

// The side that the step works on: of its decal, or of the nearest step with one.
Side sideAt(const Garment& garment, const Route& route, std::size_t at) {
    const auto sideOfStep = [&](const RouteStep& step) -> std::optional<Side> {
        for (const Decal& decal : garment.decals)
            if (step.decal == decal.id)
                return sideOf(decal.placement);
        return std::nullopt;
    };
    for (std::size_t step = at; step < route.steps.size(); ++step)
        if (const auto side = sideOfStep(route.steps[step]))
            return *side;
    for (std::size_t step = std::min(at, route.steps.size()); step > 0; --step)
        if (const auto side = sideOfStep(route.steps[step - 1]))
            return *side;
    return Side::Front;
}

std::optional<DecalId> decalAt(const Route& route, std::size_t at) {
    for (std::size_t step = at; step < route.steps.size(); ++step)
        if (route.steps[step].decal)
            return route.steps[step].decal;
    return std::nullopt;
}

bool hasPillow(const BlankStyle& style) {
    return std::ranges::any_of(
        style.obstacles, [](const ObstacleOnStyle& obstacle) { return obstacle.way == WayRound::Pillow; });
}

// Maps millimetres on the cloth to the drawing.
struct Ground {
    QRectF body; // printable area as drawn; its top is the top seam
    qreal perMillimetre = 1;
    bool isBack = false;

    QRectF boxOf(const Decal& decal) const {
        const qreal width = static_cast<qreal>(decal.width.value) * perMillimetre;
        const qreal height = static_cast<qreal>(decal.height.value) * perMillimetre;
        // The wearer's left is at the right of a front, and at the left of a back.
        const qreal aside = static_cast<qreal>(decal.aside.value) * perMillimetre * (isBack ? -1 : 1);
        return {body.center().x() + aside - width / 2,
                body.top() + static_cast<qreal>(decal.below.value) * perMillimetre, width, height};
    }
};

Ground drawnGround(const QRectF& box, const QString& outline, const QString& size, Side side) {
    const QRectF sheet = garmentSheet(box);
    const qreal unit = sheet.width() / kGarmentSheetWidth;
    const QRectF body = garmentBody(outline);
    return {QRectF(sheet.left() + body.left() * unit, sheet.top() + body.top() * unit, body.width() * unit,
                   body.height() * unit),
            unit / millimetresPerUnit(outline, size), side == Side::Back};
}

void paintContent(QPainter& painter, const QRectF& box, const Decal& decal, const QColor& film) {
    if (const auto* artwork = std::get_if<Artwork>(&decal.content)) {
        paintDecal(painter, box, words(artwork->name), film);
        return;
    }
    paintWording(painter, box, std::get<Wording>(decal.content), film);
}

// A measure on a small plate of the ground it lies on, so that it reads over any cloth.
void paintMeasure(QPainter& painter, QPointF centre, const QString& text, const QRectF& within) {
    const qreal width = widthOf(text, Type::SmallStrong) + 8;
    QRectF plate(centre.x() - width / 2, centre.y() - 9, width, 18);
    if (plate.right() > within.right())
        plate.moveRight(within.right());
    if (plate.left() < within.left())
        plate.moveLeft(within.left());
    paintBox(painter, plate, 3, tokens().card, {});
    paintLine(painter, plate, text, Type::SmallStrong, tokens().ink, Qt::AlignHCenter);
}

void paintMeasures(QPainter& painter, const QRectF& decalBox, const Ground& ground, const Decal& decal,
                   const QRectF& within) {
    const QColor ink = tokens().ink;
    const QPen pen(ink, 1.5);
    painter.setPen(pen);
    const qreal under = decalBox.bottom() + 9;
    painter.drawLine(QPointF(decalBox.left(), under), QPointF(decalBox.right(), under));
    painter.drawLine(QPointF(decalBox.left(), under - 4), QPointF(decalBox.left(), under + 4));
    painter.drawLine(QPointF(decalBox.right(), under - 4), QPointF(decalBox.right(), under + 4));
    paintMeasure(painter, {decalBox.center().x(), under + 14}, millimetres(decal.width), within);

    if (decal.below.value <= 0)
        return;
    painter.setPen(pen);
    const qreal x = decalBox.right() + 12;
    const qreal top = ground.body.top();
    painter.drawLine(QPointF(x, top), QPointF(x, decalBox.top()));
    painter.drawLine(QPointF(x - 4, top), QPointF(x + 4, top));
    painter.drawLine(QPointF(x - 4, decalBox.top()), QPointF(x + 4, decalBox.top()));
    paintMeasure(
        painter,
        {x + 8 + widthOf(millimetres(decal.below), Type::SmallStrong) / 2, (top + decalBox.top()) / 2},
        millimetres(decal.below), within);
}

} // namespace

GarmentSheet::GarmentSheet(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("garmentSheet"));
    setAccessibleName(tr("Drawing of the garment"));
}

void GarmentSheet::show(std::shared_ptr<const ReckonedShop> shop, GarmentId garment, std::size_t at) {
    m_shop = std::move(shop);
    m_garment = garment;
    m_at = at;
    setAccessibleDescription(caption());
    update();
}

void GarmentSheet::clear() {
    m_shop.reset();
    update();
}

QString GarmentSheet::caption() const {
    if (!m_shop || !m_shop->facts.garments.find(m_garment))
        return {};
    const Garment& garment = m_shop->facts.garments.at(m_garment);
    const Side side = sideAt(garment, m_shop->of(m_garment).route, m_at);
    const BlankStyle& style = m_shop->facts.styleOf(garment);
    if (side == Side::Back)
        return tr("The back, seen from behind");
    if (side == Side::Sleeve)
        return tr("The sleeve");
    for (const ObstacleOnStyle& obstacle : style.obstacles)
        if (obstacle.way == WayRound::Pillow)
            return tr("Pillow dashed, under the %1").arg(words(obstacleName(obstacle.obstacle)));
    return tr("Drawn to scale");
}

void GarmentSheet::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    painter.fillRect(rect(), dyes.sunk);
    if (!m_shop || !m_shop->facts.garments.find(m_garment))
        return;
    const Garment& garment = m_shop->facts.garments.at(m_garment);
    const Route& route = m_shop->of(m_garment).route;
    const Side side = sideAt(garment, route, m_at);
    const QString outline = outlineName(m_shop->facts, garment);

    const QRectF box = QRectF(rect()).adjusted(kMargin, kMargin, -kMargin, -kCaption);
    const auto paint = side == Side::Back ? paintGarmentBack : paintGarment;
    paint(painter, box, outline, clothOf(m_shop->facts, garment));
    const Ground ground = drawnGround(box, outline, words(garment.size), side);

    const auto current = decalAt(route, m_at);
    const Decal* measured = nullptr;
    QRectF all;
    for (const Decal& decal : garment.decals)
        if (sideOf(decal.placement) == side) {
            all |= ground.boxOf(decal);
            if (!measured || decal.id == current)
                measured = &decal;
        }

    if (side != Side::Back && !all.isEmpty() && hasPillow(m_shop->facts.styleOf(garment))) {
        QRectF pillow = all.adjusted(-18, -20, 18, 22);
        // It fills the body from one side of what stands in the way to the other.
        pillow.setLeft(std::min(pillow.left(), ground.body.center().x() -
                                                   (pillow.right() - ground.body.center().x()) * 0.6));
        pillow = pillow.intersected(ground.body.adjusted(-4, -4, 4, 4));
        paintBox(painter, pillow, 10, blended(dyes.weldTint, clothOf(m_shop->facts, garment), 0.35),
                 dyes.weld, 1.6, true);
    }
    for (const Decal& decal : garment.decals) {
        if (sideOf(decal.placement) != side)
            continue;
        const QRectF decalBox = ground.boxOf(decal);
        const Film& film = m_shop->facts.films.at(decal.film);
        paintContent(painter, decalBox, decal, colourOf(film.rgb));
        const QColor seam = decal.id == current ? dyes.indigo : dyes.edge;
        paintOutline(painter, decalBox.adjusted(-3, -3, 3, 3), 2, seam, 1.4, true);
    }
    if (measured)
        paintMeasures(painter, ground.boxOf(*measured), ground, *measured,
                      QRectF(rect()).adjusted(4, 0, -4, 0));

    const QRectF foot(12, height() - kCaption + 4, width() - 24, kCaption - 8);
    paintLine(painter, foot, caption(), Type::SmallStrong, dyes.ink2);
}

} // namespace holdfast::app
