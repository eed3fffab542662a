// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/bench_painter.h"

#include "app/desk/formats.h"
#include "app/places/cutting_bench/bench_words.h"
#include "app/places/cutting_bench/film_inks.h"
#include "app/theme/drawings.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

struct BenchDrawing {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::BenchDrawing)
};

constexpr double kMarkSide = 20; // the sign of a pin
constexpr double kTick = 5;      // of a ruler
constexpr double kKnot = 2.2;    // where the line of a number begins
constexpr double kPatchRadius = 3;

QPen dashed(const QColor& line, double width, double on, double off) {
    QPen pen(line, width);
    pen.setCapStyle(Qt::FlatCap);
    pen.setDashPattern({on / width, off / width});
    return pen;
}

} // namespace

void BenchPainter::paint(QPainter& painter, const BenchScale& scale, const BenchLook& look,
                         const QRectF& visible) {
    m_scale = &scale;
    m_look = &look;
    if (!m_hasNumbers)
        m_numbers.lay(m_model, scale, m_shapes);
    m_hasNumbers = true;
    painter.setRenderHint(QPainter::Antialiasing);
    for (std::size_t nest = 0; nest < scale.count(); ++nest) {
        if (!scale.band(nest).intersects(visible))
            continue;
        const Film& film = m_model.facts().films.at(m_model.nests()[nest].film);
        const FilmInks inks{colourOf(film.rgb)};
        paintFilm(painter, nest, inks);
        paintOffcuts(painter, nest, inks);
        paintDecals(painter, nest, inks, visible);
        paintNumbers(painter, nest, inks, visible);
        paintPartingCut(painter, nest, inks);
        paintRulers(painter, nest, visible);
        paintCaption(painter, nest, visible);
    }
}

void BenchPainter::paintRulers(QPainter& painter, std::size_t nest, const QRectF& visible) const {
    const QRectF film = m_scale->film(nest);
    const double pixels = m_scale->pixelsPerMillimetre();
    const int step = rulerStep(pixels);
    const double right = m_scale->band(nest).right() - kBenchRoll;
    const double lineTop = film.top() - kBenchRulerTop;
    const int from = std::max(0, static_cast<int>((visible.left() - film.left()) / (step * pixels)));
    for (int at = from * step; film.left() + at * pixels < std::min(right, visible.right() + 40);
         at += step) {
        const double x = film.left() + at * pixels;
        paintLine(painter, QRectF(x - 40, lineTop, 80, 18), QString::number(at), Type::Small, tokens().ink2,
                  Qt::AlignHCenter);
        painter.fillRect(QRectF(std::round(x), film.top() - kTick - 1, 1, kTick), tokens().benchLine);
    }
    // The ruler across stays in view while the bench scrolls.
    const double side = visible.left();
    if (side > 0.5)
        painter.fillRect(QRectF(side, film.top() - 4, kBenchRulerLeft - 4, film.height() + 8),
                         tokens().bench);
    for (int at = 0; at * pixels <= film.height() + 1; at += step) {
        const double y = film.top() + at * pixels;
        paintLine(painter, QRectF(side, y - 9, kBenchRulerLeft - 12, 18), QString::number(at), Type::Small,
                  tokens().ink2, Qt::AlignRight);
        painter.fillRect(QRectF(side + kBenchRulerLeft - kTick - 4, std::round(y), kTick, 1),
                         tokens().benchLine);
    }
}

void BenchPainter::paintCaption(QPainter& painter, std::size_t nest, const QRectF& visible) const {
    const Nest& lies = m_model.nests()[nest];
    const double baseline = m_scale->band(nest).top() + 20;
    double x = visible.left() + kBenchRulerLeft;
    x = paintRun(painter, {x, baseline}, rollLabel(m_model.facts(), lies.roll), Type::BodyStrong,
                 tokens().ink) +
        kSpace8;
    paintRun(painter, {x, baseline}, reasonOf(*m_model.film(), lies.roll), Type::Support, tokens().ink2);
}

void BenchPainter::paintFilm(QPainter& painter, std::size_t nest, const FilmInks& inks) const {
    const QRectF film = m_scale->film(nest);
    painter.fillRect(film, inks.film);
    painter.setPen(QPen(inks.edge, 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(film.adjusted(0.5, 0.5, -0.5, -0.5));
    if (!m_scale->endsInRoll(nest))
        return;
    // The rest of it, on its core, seen from above.
    const QRectF roll(film.right() - 4, film.top() - 10, kBenchRoll, film.height() + 20);
    const QRectF core(roll.center().x() - 8, roll.top() - 8, 16, roll.height() + 16);
    paintBox(painter, core, 2, tokens().board, tokens().boardEdge);
    paintBox(painter, roll, 6, inks.core, inks.edge);
    painter.fillRect(QRectF(roll.left() + 10, roll.top() + 1, 6, roll.height() - 2), inks.shine);
}

void BenchPainter::paintOffcuts(QPainter& painter, std::size_t nest, const FilmInks& inks) const {
    const Nest& lies = m_model.nests()[nest];
    for (const FilmArea& offcut : lies.offcuts) {
        const QRectF box = m_scale->rectOf(nest, offcut).adjusted(1.5, 1.5, -1.5, -1.5);
        const bool isKept = m_model.keepsOffcut(lies.roll, offcut);
        QPainterPath area;
        area.addRect(box);
        paintHatch(painter, area, blended(inks.film, inks.line, isKept ? 0.45 : 0.2));
        painter.setBrush(Qt::NoBrush);
        painter.setPen(isKept ? QPen(inks.line, 1.2) : dashed(inks.line, 1, 2, 3));
        painter.drawRect(box);
        const auto words = wordsOfOffcut(box, offcut, isKept);
        if (!words)
            continue;
        paintBox(painter, words->place, kPatchRadius, inks.patch, inks.edge);
        const QSizeF size = words->isUpright ? words->place.size().transposed() : words->place.size();
        painter.save();
        painter.translate(words->place.center());
        painter.rotate(words->isUpright ? -90 : 0);
        const QRectF line(-size.width() / 2, -size.height() / 2 + kSpace4, size.width(),
                          lineHeight(Type::Small));
        paintLine(painter, line, words->title, Type::SmallStrong, inks.words, Qt::AlignHCenter);
        paintLine(painter, line.translated(0, line.height()), words->size, Type::Small, inks.words,
                  Qt::AlignHCenter);
        painter.restore();
    }
}

void BenchPainter::paintDecals(QPainter& painter, std::size_t nest, const FilmInks& inks,
                               const QRectF& visible) {
    const Nest& lies = m_model.nests()[nest];
    const NestedDecal* chosen = nullptr;
    for (const NestedDecal& decal : lies.decals) {
        if (m_look->dragged && m_look->dragged->decal == decal.decal)
            continue;
        if (m_model.chosen() == decal.decal)
            chosen = &decal;
        if (m_scale->rectOf(nest, decal.box).intersects(visible))
            paintDecal(painter, nest, decal, inks);
    }
    if (chosen)
        paintChosen(painter, nest, *chosen, inks);
    if (!m_look->dragged || !lies.find(m_look->dragged->decal))
        return;
    NestedDecal held = *lies.find(m_look->dragged->decal);
    held.box = {held.box.across + (m_look->dragged->place.across - held.lies.across),
                held.box.along + (m_look->dragged->place.along - held.lies.along), held.box.acrossSize,
                held.box.alongSize};
    held.lies.across = m_look->dragged->place.across;
    held.lies.along = m_look->dragged->place.along;
    paintDecal(painter, nest, held, inks);
    paintChosen(painter, nest, held, inks);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(dashed(inks.line, 1.4, 3, 3));
    painter.drawRect(m_look->dragged->wanted);
}

void BenchPainter::paintDecal(QPainter& painter, std::size_t nest, const NestedDecal& decal,
                              const FilmInks& inks) {
    const DecalOnGarment on = m_model.decal(decal.decal);
    if (!on.decal)
        return;
    const QRectF box = m_scale->rectOf(nest, decal.box);
    if (m_look->wish.hasFrames) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(dashed(inks.line, 1.2, 5, 3));
        painter.drawRect(box.adjusted(0.5, 0.5, -0.5, -0.5));
    }
    const QPainterPath& shape = m_shapes.of(*on.decal);
    if (shape.isEmpty())
        paintOutline(painter, m_scale->rectOf(nest, decal.lies), 4, inks.line, 1.4, true);
    else
        painter.fillPath(outlineOnFilm(*m_scale, nest, decal, shape), inks.decal);
    if (decal.isPinned && box.width() > kMarkSide + 4 && box.height() > kMarkSide + 4) {
        const QRectF mark(box.right() - kMarkSide - 3, box.top() + 3, kMarkSide, kMarkSide);
        paintBox(painter, mark, kMarkSide / 2, inks.line, {});
        paintIcon(painter, mark.adjusted(3, 3, -3, -3), QStringLiteral("needle"), inks.film);
    }
}

// On a ground of its own, so that it can be read on every shade. Outside its frame a number has a line with a
// knot where that begins, clear of an offcut's hatch.
void BenchPainter::paintNumbers(QPainter& painter, std::size_t nest, const FilmInks& inks,
                                const QRectF& visible) const {
    for (const NestedDecal& decal : m_model.nests()[nest].decals) {
        const BenchNumber* number = m_numbers.of(decal.decal);
        const bool isHeld = m_look->dragged && m_look->dragged->decal == decal.decal;
        if (!number || isHeld || !m_scale->rectOf(nest, decal.box).united(number->place).intersects(visible))
            continue;
        if (number->leader) {
            painter.setPen(QPen(inks.film, 4));
            painter.drawLine(*number->leader);
            painter.setPen(QPen(inks.line, 1.2));
            painter.drawLine(*number->leader);
            painter.setPen(Qt::NoPen);
            painter.setBrush(inks.line);
            painter.drawEllipse(number->leader->p1(), kKnot, kKnot);
        }
        paintBox(painter, number->place, kPatchRadius, inks.patch, inks.edge);
        paintLine(painter, number->place, number->text, Type::SmallStrong, inks.words, Qt::AlignHCenter);
    }
}

void BenchPainter::paintChosen(QPainter& painter, std::size_t nest, const NestedDecal& decal,
                               const FilmInks& inks) const {
    const QRectF box = m_scale->rectOf(nest, decal.box);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(inks.line, 2));
    painter.drawRect(box.adjusted(1, 1, -1, -1));
    if (!m_look->hasKeyboard)
        return;
    painter.setPen(QPen(inks.line, 1.4));
    painter.drawRect(box.adjusted(-3, -3, 3, 3));
}

void BenchPainter::paintPartingCut(QPainter& painter, std::size_t nest, const FilmInks& inks) const {
    const Nest& lies = m_model.nests()[nest];
    const QRectF film = m_scale->film(nest);
    const double at = std::round(m_scale->alongAt(nest, static_cast<double>(lies.length.value))) + 0.5;
    const double below = film.bottom() + kBenchMeasure / 2.0;
    if (m_look->wish.hasPartingCut) {
        painter.setPen(dashed(inks.line, 1.8, 6, 4));
        painter.drawLine(QPointF(at, film.top() + 1), QPointF(at, film.bottom() - 1));
        painter.setPen(dashed(tokens().ink, 1.8, 6, 4));
        painter.drawLine(QPointF(at, film.bottom() + 1), QPointF(at, below - 9));
    }
    paintIcon(painter, QRectF(at - 11, below - 11, 22, 22), QStringLiteral("scissors"), tokens().ink);
    // How much is used, from the cut end on.
    const QString used = BenchDrawing::tr("%1 used").arg(millimetres(lies.length));
    const double text = widthOf(used, Type::BodyStrong);
    painter.setPen(QPen(tokens().ink, 1.4));
    painter.drawLine(QPointF(film.left() + 0.5, below - 6), QPointF(film.left() + 0.5, below + 6));
    const double room = at - 16 - film.left();
    if (room < text + kSpace32) {
        painter.drawLine(QPointF(film.left(), below), QPointF(at - 14, below));
        paintLine(painter, QRectF(at + 16, below - 10, text + 2, 20), used, Type::BodyStrong, tokens().ink);
        return;
    }
    const double middle = film.left() + room / 2;
    painter.drawLine(QPointF(film.left(), below), QPointF(middle - text / 2 - 12, below));
    painter.drawLine(QPointF(middle + text / 2 + 12, below), QPointF(at - 14, below));
    paintLine(painter, QRectF(middle - text / 2, below - 10, text + 2, 20), used, Type::BodyStrong,
              tokens().ink);
}

} // namespace holdfast::app
