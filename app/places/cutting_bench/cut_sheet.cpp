// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/cut_sheet.h"

#include "app/desk/formats.h"
#include "app/papers/decal_shapes.h"
#include "app/places/cutting_bench/bench_words.h"
#include "app/theme/text_runs.h"
#include "app/theme/type.h"

#include <QCoreApplication>
#include <QPagedPaintDevice>
#include <QPainter>

#include <algorithm>
#include <array>
#include <cmath>

namespace holdfast::app {

namespace {

// Everything on paper is in tenths of a millimetre.
constexpr double kUnits = 10;
constexpr double kMargin = 12; // mm
constexpr double kRuler = 9;
constexpr double kRow = 6.4;
constexpr double kTallest = 170; // a strip; what is left of the page is for its list
constexpr double kOutline = 1.2; // fine enough for small letters at 1 : 3
constexpr double kHatch = 24;    // tenths of a millimetre from line to line
constexpr std::array<int, 7> kScales{1, 2, 3, 4, 5, 6, 8};
constexpr int kSmallestScale = 8;

QFont paperFont(double millimetres, QFont::Weight weight, bool isSerif = false) {
    QFont font = fontOf(isSerif ? Type::CardTitle : Type::Body);
    font.setWeight(weight);
    font.setPixelSize(static_cast<int>(std::lround(millimetres * kUnits)));
    // Text taken out of the paper again loses what shaping joins.
    font.setStyleStrategy(QFont::PreferNoShaping);
    return font;
}

class CutSheet {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::CutSheet)

public:
    CutSheet(QPagedPaintDevice& paper, const ReckonedShop& shop, const CutFileWish& wish,
             const std::function<bool(double)>& goesOn)
        : m_paper(paper)
        , m_shop(shop)
        , m_wish(wish)
        , m_goesOn(goesOn)
        , m_decals(decalsOnGarments(shop.facts)) {}

    Result<Drawn> draw(std::span<const Nest> nests) {
        if (!m_painter.begin(&m_paper))
            return plainError(inWindow(tr("The cut sheet could not be written.")));
        const double dots = m_painter.device()->logicalDpiX();
        m_painter.scale(dots / 25.4 / kUnits, dots / 25.4 / kUnits);
        m_width = m_painter.device()->width() / dots * 25.4;
        m_height = m_painter.device()->height() / dots * 25.4;
        for (const Nest& nest : nests)
            m_toDraw += 2 * nest.decals.size();
        bool isFirst = true;
        for (const Nest& nest : nests) {
            if (!isFirst && !newPage())
                return plainError(inWindow(tr("The cut sheet could not be written.")));
            isFirst = false;
            m_y = 0;
            head(nest);
            strips(nest);
            list(nest);
            if (m_isStopped)
                break;
        }
        m_painter.end();
        return m_isStopped ? Drawn::Stopped : Drawn::Whole;
    }

private:
    // Each decal is drawn once and is once in the list.
    bool goesOn() {
        ++m_drawn;
        m_isStopped = m_isStopped || !m_goesOn(static_cast<double>(m_drawn) / static_cast<double>(m_toDraw));
        return !m_isStopped;
    }
    bool newPage() {
        m_y = 0;
        return m_paper.newPage();
    }
    void need(double millimetres) {
        if (m_y > 0 && m_y + millimetres > m_height)
            newPage();
    }

    void text(double x, double y, double wide, const QString& words, const QFont& font,
              Qt::Alignment across = Qt::AlignLeft) {
        m_painter.setFont(font);
        m_painter.setPen(Qt::black);
        m_painter.drawText(QRectF(x * kUnits, y * kUnits, wide * kUnits, kRow * kUnits),
                           static_cast<int>(across) | Qt::AlignVCenter | Qt::TextDontClip,
                           withRunsApart(words));
    }

    void head(const Nest& nest) {
        const Film& film = m_shop.facts.films.at(nest.film);
        text(0, m_y, m_width, tr("%1, %2").arg(rollLabel(m_shop.facts, nest.roll), words(film.name())),
             paperFont(6, QFont::DemiBold, true));
        text(0, m_y, m_width, longDay(m_shop.now.today()), paperFont(3.6, QFont::Normal), Qt::AlignRight);
        m_y += 9;
        text(0, m_y, m_width,
             tr("%1 used, %2 left on the roll after, gap %3, mirrored, %4")
                 .arg(millimetres(nest.length), metres(nest.rollLeft - nest.length), millimetres(nest.gap),
                      words(m_shop.facts.settings.shopName)),
             paperFont(3.6, QFont::Normal));
        m_y += 7;
    }

    void strips(const Nest& nest) {
        const CutSheetScale scale = paperScaleOf(nest, m_width - kRuler);
        text(0, m_y, m_width,
             tr("Drawn 1 : %1, carrier sheet down; numbers are millimetres of film").arg(scale.scale),
             paperFont(3.2, QFont::Normal));
        m_y += 7;
        for (const FilmStrip& strip : scale.strips) {
            if (m_isStopped)
                return;
            const double high = static_cast<double>(nest.rollWidth.value) / scale.scale;
            need(high + kRuler + 4);
            drawStrip(nest, strip, scale.scale);
            m_y += high + kRuler + 4;
        }
    }

    void drawStrip(const Nest& nest, const FilmStrip& strip, int scale) {
        const double pixels = kUnits / scale; // a millimetre of film
        const double from = static_cast<double>(strip.from.value);
        const double length = static_cast<double>((strip.to - strip.from).value);
        const double wide = static_cast<double>(nest.rollWidth.value);
        const QFont small = paperFont(2.6, QFont::Normal);
        const int step = scale > 4 ? 200 : 100;
        for (std::int64_t at = (strip.from.value + step - 1) / step * step; at <= strip.to.value;
             at += step) {
            const double x = kRuler + (static_cast<double>(at) - from) / scale;
            text(x - 10, m_y - 1, 20, QString::number(at), small, Qt::AlignHCenter);
        }
        for (std::int64_t at = 0; at <= nest.rollWidth.value; at += step)
            text(0, m_y + kRuler - 4 + static_cast<double>(at) / scale - kRow / 2, kRuler - 1.5,
                 QString::number(at), small, Qt::AlignRight);

        m_painter.save();
        m_painter.translate(kRuler * kUnits, (m_y + kRuler - 4) * kUnits);
        m_painter.setPen(QPen(Qt::black, 2.5));
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawRect(QRectF(0, 0, length * pixels, wide * pixels));
        m_painter.setClipRect(QRectF(-2, -2, length * pixels + 4, wide * pixels + 4));
        m_painter.translate(-from * pixels, 0);
        for (const NestedDecal& decal : nest.decals) {
            if (strip.to <= decal.box.along || decal.box.along + decal.box.alongSize <= strip.from)
                continue;
            drawDecal(decal, pixels);
            const bool isBegunHere = strip.from <= decal.box.along;
            if (isBegunHere && !goesOn())
                break;
        }
        for (const FilmArea& offcut : nest.offcuts)
            drawOffcut(offcut, pixels);
        if (m_wish.hasPartingCut && nest.length <= strip.to) {
            QPen line(Qt::black, 4);
            line.setDashPattern({4, 3});
            m_painter.setPen(line);
            const double at = static_cast<double>(nest.length.value) * pixels - 2;
            m_painter.drawLine(QPointF(at, 0), QPointF(at, wide * pixels));
        }
        m_painter.restore();
    }

    static QRectF rectOf(const FilmArea& area, double pixels) {
        return {static_cast<double>(area.along.value) * pixels,
                static_cast<double>(area.across.value) * pixels,
                static_cast<double>(area.alongSize.value) * pixels,
                static_cast<double>(area.acrossSize.value) * pixels};
    }

    void drawDecal(const NestedDecal& nested, double pixels) {
        const DecalOnGarment found = decalIn(m_decals, nested.decal);
        if (!found.decal)
            return;
        const QRectF box = rectOf(nested.box, pixels);
        m_painter.setBrush(Qt::NoBrush);
        if (m_wish.hasFrames) {
            QPen line(Qt::black, 1.6);
            line.setDashPattern({5, 4});
            m_painter.setPen(line);
            m_painter.drawRect(box);
        }
        QTransform placed = ontoSheet(nested);
        placed *= QTransform::fromScale(pixels, pixels);
        const QPainterPath shape = placed.map(m_shapes.of(*found.decal));
        m_painter.setPen(QPen(Qt::black, kOutline));
        if (shape.isEmpty())
            m_painter.drawRect(rectOf(nested.lies, pixels));
        else
            m_painter.drawPath(shape);
        const QFont font = paperFont(2.6, QFont::Bold);
        const QString label = decalNumber(m_shop.facts, found);
        const QFontMetricsF metrics(font);
        const QRectF words(box.left() + 6, box.bottom() - 32, metrics.horizontalAdvance(label) + 10, 30);
        if (words.width() > box.width() || words.height() > box.height())
            return;
        m_painter.fillRect(words, Qt::white);
        m_painter.setFont(font);
        m_painter.setPen(Qt::black);
        m_painter.drawText(words, Qt::AlignCenter, label);
    }

    void drawOffcut(const FilmArea& offcut, double pixels) {
        const QRectF box = rectOf(offcut, pixels);
        m_painter.setPen(QPen(Qt::black, 1.4));
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawRect(box);
        // Lines of their own: a brush's pattern is as fine as the printer's dots.
        m_painter.save();
        m_painter.setClipRect(box, Qt::IntersectClip);
        m_painter.setPen(QPen(Qt::black, 0.8));
        for (double at = box.left() - box.height(); at < box.right(); at += kHatch)
            m_painter.drawLine(QPointF(at, box.bottom()), QPointF(at + box.height(), box.top()));
        m_painter.restore();
        const QFont font = paperFont(2.6, QFont::Normal);
        const QString said = tr("Offcut %1").arg(areaWords(offcut));
        const double wide = QFontMetricsF(font).horizontalAdvance(said) + 12;
        if (wide > box.width() || box.height() < 40)
            return;
        const QRectF words(box.center().x() - wide / 2, box.center().y() - 18, wide, 36);
        m_painter.fillRect(words, Qt::white);
        m_painter.setFont(font);
        m_painter.drawText(words, Qt::AlignCenter, said);
    }

    void list(const Nest& nest) {
        need(3 * kRow);
        m_y += 2;
        text(0, m_y, m_width, tr("%1 decals: tick each when it is weeded").arg(nest.decals.size()),
             paperFont(4, QFont::DemiBold));
        m_y += kRow + 1;
        const QFont strong = paperFont(3.6, QFont::DemiBold);
        const QFont plainly = paperFont(3.6, QFont::Normal);
        for (const NestedDecal& nested : nest.decals) {
            const DecalOnGarment found = decalIn(m_decals, nested.decal);
            if (!goesOn())
                return;
            if (!found.decal)
                continue;
            need(kRow);
            m_painter.setPen(QPen(Qt::black, 2.5));
            m_painter.drawRect(QRectF(0, (m_y + 1.2) * kUnits, 4 * kUnits, 4 * kUnits));
            const Decal& decal = *found.decal;
            text(7, m_y, 18, decalNumber(m_shop.facts, found), strong);
            text(26, m_y, m_width - 100, words(decal.describe()), plainly);
            text(m_width - 72, m_y, 36, sizeWords(decal.width, decal.height), plainly, Qt::AlignRight);
            text(m_width - 34, m_y, 34,
                 tr("at %1, %2").arg(nested.lies.along.value).arg(nested.lies.across.value), plainly,
                 Qt::AlignRight);
            m_y += kRow;
            m_painter.setPen(QPen(Qt::black, 0.8));
            m_painter.drawLine(QPointF(0, m_y * kUnits), QPointF(m_width * kUnits, m_y * kUnits));
        }
    }

    QPagedPaintDevice& m_paper;
    const ReckonedShop& m_shop;
    const CutFileWish& m_wish;
    const std::function<bool(double)>& m_goesOn;
    DecalsOnGarments m_decals;
    std::size_t m_toDraw = 0;
    std::size_t m_drawn = 0;
    bool m_isStopped = false;
    DecalShapes m_shapes;
    QPainter m_painter;
    double m_width = 0;  // mm
    double m_height = 0; // mm
    double m_y = 0;      // mm, from the top of the page
};

} // namespace

CutSheetScale paperScaleOf(const Nest& nest, double paperMillimetres) {
    const auto length = static_cast<double>(nest.length.value);
    const auto width = static_cast<double>(nest.rollWidth.value);
    const auto fits = std::ranges::find_if(
        kScales, [&](int scale) { return length / scale <= paperMillimetres && width / scale <= kTallest; });
    CutSheetScale drawn;
    drawn.scale = fits != kScales.end()
                      ? *fits
                      : std::max(kSmallestScale, static_cast<int>(std::ceil(width / kTallest)));
    const auto most = static_cast<std::int64_t>(paperMillimetres * drawn.scale);
    for (Millimetres at; at < nest.length; at += Millimetres{most})
        drawn.strips.push_back({at, std::min(nest.length, at + Millimetres{most})});
    return drawn;
}

Result<Drawn> drawCutSheets(QPagedPaintDevice& paper, const ReckonedShop& shop, std::span<const Nest> nests,
                            const CutFileWish& wish, const std::function<bool(double)>& goesOn) {
    paper.setPageMargins(QMarginsF(kMargin, kMargin, kMargin, kMargin), QPageLayout::Millimeter);
    return CutSheet{paper, shop, wish, goesOn}.draw(nests);
}

} // namespace holdfast::app
