// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/bench_numbers.h"

#include "app/places/cutting_bench/bench_words.h"
#include "app/theme/measures.h"
#include "app/theme/type.h"

#include <QCoreApplication>
#include <QPainterPath>
#include <QTransform>

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace holdfast::app {

namespace {

struct BenchNumberWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::BenchNumberWords)
};

constexpr double kNumberHeight = 17;
constexpr double kWithin = 3;         // from the edges of its box
constexpr double kLeastLabelled = 36; // of a box that has its number within
constexpr double kNearest = 9;        // from a box to a number next to it
constexpr double kFarthest = 49;      // a line that is longer is no longer read as one
constexpr double kStep = 4;
constexpr double kClear = 2;      // about a number, and about its line
constexpr double kOffcutEdge = 4; // the outline of an offcut is not broken
constexpr double kRollEnd = 8;    // the roll lies over the film's end

// What is taken on one film, found fast where there is much of it.
class TakenFilm {
public:
    explicit TakenFilm(const QRectF& film)
        : m_film(film)
        , m_columns(static_cast<int>(film.width() / kCell) + 1)
        , m_rows(static_cast<int>(film.height() / kCell) + 1)
        , m_cells(static_cast<std::size_t>(m_columns * m_rows)) {}

    void take(const QRectF& box) {
        eachCell(box, [&](std::vector<QRectF>& cell) {
            cell.push_back(box);
            return true;
        });
    }

    bool isFree(const QRectF& box) {
        return eachCell(box, [&](const std::vector<QRectF>& cell) {
            return std::ranges::none_of(cell, [&](const QRectF& taken) {
                ++m_compared;
                return taken.intersects(box);
            });
        });
    }

    std::int64_t compared() const { return m_compared; } // boxes in all

private:
    static constexpr double kCell = 48;

    template <class Then>
    bool eachCell(const QRectF& box, Then&& then) {
        const auto within = [](double at, int count) {
            return std::clamp(static_cast<int>(std::floor(at / kCell)), 0, count - 1);
        };
        for (int row = within(box.top() - m_film.top(), m_rows);
             row <= within(box.bottom() - m_film.top(), m_rows); ++row)
            for (int column = within(box.left() - m_film.left(), m_columns);
                 column <= within(box.right() - m_film.left(), m_columns); ++column)
                if (!then(m_cells[cellAt(row, column)]))
                    return false;
        return true;
    }

    std::size_t cellAt(int row, int column) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(m_columns) +
               static_cast<std::size_t>(column);
    }

    QRectF m_film;
    int m_columns;
    int m_rows;
    std::vector<std::vector<QRectF>> m_cells;
    std::int64_t m_compared = 0;
};

// Numbers of one nest.
class NestNumbers {
public:
    NestNumbers(const BenchModel& model, const BenchScale& scale, std::size_t nest)
        : m_model(model)
        , m_scale(scale)
        , m_nest(nest)
        , m_lies(model.nests()[nest])
        , m_film(scale.film(nest).adjusted(0, 0, scale.endsInRoll(nest) ? -kRollEnd : 0, 0))
        , m_taken(m_film) {
        for (const NestedDecal& decal : m_lies.decals)
            m_taken.take(m_scale.rectOf(nest, decal.box));
        for (const FilmArea& offcut : m_lies.offcuts) {
            const QRectF box = m_scale.rectOf(nest, offcut);
            m_offcuts.push_back(box);
            if (const auto words = wordsOfOffcut(box, offcut, m_model.keepsOffcut(m_lies.roll, offcut)))
                m_taken.take(words->place);
        }
        const double end = m_scale.alongAt(nest, static_cast<double>(m_lies.length.value));
        m_partingCut = QRectF(end - kWithin, m_film.top(), 2 * kWithin, m_film.height());
    }

    // In a corner of the box where it covers nothing of the drawing.
    std::optional<QRectF> within(const NestedDecal& decal, const QSizeF& size,
                                 const QPainterPath& drawn) const {
        const QRectF box = m_scale.rectOf(m_nest, decal.box);
        if (box.height() < kLeastLabelled || box.width() < size.width() + 2 * kWithin + kClear)
            return std::nullopt;
        const QRectF room = box.adjusted(kWithin, kWithin, -kWithin - size.width(), -kWithin - size.height());
        for (const QPointF corner :
             {room.bottomLeft(), room.bottomRight(), room.topLeft(), room.topRight()}) {
            const QRectF place(corner, size);
            const bool isUnderPin = decal.isPinned && corner == room.topRight();
            if (!isUnderPin && !drawn.intersects(place))
                return place;
        }
        return std::nullopt;
    }

    // On free film, the nearest first, with a line that crosses nothing.
    std::optional<BenchNumber> beside(const NestedDecal& decal, const QString& text, const QSizeF& size) {
        const QRectF box = m_scale.rectOf(m_nest, decal.box);
        for (double away = kNearest; away <= kFarthest; away += kStep)
            for (const BenchNumber& number : placesAt(box, size, away)) {
                if (!isFree(number, box))
                    continue;
                m_taken.take(number.place.adjusted(-kClear, -kClear, kClear, kClear));
                m_taken.take(boxOf(*number.leader));
                return BenchNumber{text, number.place, number.leader};
            }
        return std::nullopt;
    }

    std::int64_t compared() const { return m_taken.compared(); }

private:
    // Where a line may leave a side: in its middle, so that the number ends with the side, and at its ends.
    static std::array<double, 5> alongSide(double side, double number) {
        const double within = std::max(0.0, (side - number) / 2);
        const double end = std::max(0.0, side / 2 - kWithin);
        return {0, -within, within, -end, end};
    }

    // Right, left, below and above, the middle first.
    static std::vector<BenchNumber> placesAt(const QRectF& box, const QSizeF& size, double away) {
        std::vector<BenchNumber> places;
        const QPointF middle = box.center();
        for (const double by : alongSide(box.height(), size.height())) {
            const double y = middle.y() + by;
            const QRectF right(box.right() + away, y - size.height() / 2, size.width(), size.height());
            const QRectF left(box.left() - away - size.width(), right.top(), size.width(), size.height());
            places.push_back({{}, right, QLineF(box.right(), y, right.left(), y)});
            places.push_back({{}, left, QLineF(box.left(), y, left.right(), y)});
        }
        for (const double by : alongSide(box.width(), size.width())) {
            const double x = middle.x() + by;
            const QRectF below(x - size.width() / 2, box.bottom() + away, size.width(), size.height());
            const QRectF above(below.left(), box.top() - away - size.height(), size.width(), size.height());
            places.push_back({{}, below, QLineF(x, box.bottom(), x, below.top())});
            places.push_back({{}, above, QLineF(x, box.top(), x, above.bottom())});
        }
        return places;
    }

    static QRectF boxOf(const QLineF& line) {
        return QRectF(line.p1(), line.p2()).normalized().adjusted(-kClear, -kClear, kClear, kClear);
    }

    bool isFree(const BenchNumber& number, const QRectF& box) {
        if (!m_film.contains(number.place) || m_partingCut.intersects(number.place))
            return false;
        const bool breaksOffcut = std::ranges::any_of(m_offcuts, [&](const QRectF& offcut) {
            const QRectF inside = offcut.adjusted(kOffcutEdge, kOffcutEdge, -kOffcutEdge, -kOffcutEdge);
            return offcut.intersects(number.place) && !inside.contains(number.place);
        });
        if (breaksOffcut || !m_taken.isFree(number.place))
            return false;
        // After its own box, where the line begins.
        QLineF line = *number.leader;
        line.setP1(line.pointAt(std::min(0.5, (kClear + 1) / line.length())));
        return m_taken.isFree(boxOf(line)) && !box.intersects(number.place);
    }

    const BenchModel& m_model;
    const BenchScale& m_scale;
    std::size_t m_nest;
    const Nest& m_lies;
    QRectF m_film;
    TakenFilm m_taken;
    QRectF m_partingCut; // its line may be crossed, not covered
    std::vector<QRectF> m_offcuts;
};

} // namespace

QPainterPath outlineOnFilm(const BenchScale& scale, std::size_t nest, const NestedDecal& decal,
                           const QPainterPath& shape) {
    const QRectF film = scale.film(nest);
    QTransform placed = ontoSheet(decal);
    placed *= QTransform::fromScale(scale.pixelsPerMillimetre(), scale.pixelsPerMillimetre());
    placed *= QTransform::fromTranslate(film.left(), film.top());
    return placed.map(shape);
}

std::optional<OffcutWords> wordsOfOffcut(const QRectF& box, const FilmArea& offcut, bool isKept) {
    OffcutWords words;
    words.title = isKept ? BenchNumberWords::tr("Offcut, kept") : BenchNumberWords::tr("Offcut");
    words.size = QStringLiteral("%1 × %2").arg(offcut.alongSize.value).arg(offcut.acrossSize.value);
    const double wide =
        std::max(widthOf(words.title, Type::SmallStrong), widthOf(words.size, Type::Small)) + kSpace16;
    const double high = 2 * lineHeight(Type::Small) + kSpace8;
    const bool fits = box.width() >= wide + kSpace8 && box.height() >= high + kSpace8;
    words.isUpright = !fits && box.height() >= wide + kSpace8 && box.width() >= high + kSpace8;
    if (!fits && !words.isUpright)
        return std::nullopt;
    const QSizeF size = words.isUpright ? QSizeF(high, wide) : QSizeF(wide, high);
    // At its lower end, away from decals, which are laid from the upper: their numbers need the room next to
    // them.
    words.place =
        QRectF(QPointF(box.center().x() - size.width() / 2, box.bottom() - size.height() - kSpace8), size);
    return words;
}

void BenchNumbers::lay(const BenchModel& model, const BenchScale& scale, DecalShapes& shapes) {
    m_numbers.clear();
    m_compared = 0;
    for (std::size_t nest = 0; nest < scale.count(); ++nest) {
        NestNumbers numbers(model, scale, nest);
        for (const NestedDecal& decal : model.nests()[nest].decals) {
            const DecalOnGarment on = model.decal(decal.decal);
            if (!on.decal)
                continue;
            const QString text = decalNumber(model.facts(), on);
            const QSizeF size(widthOf(text, Type::SmallStrong) + 2 * kWithin, kNumberHeight);
            const QPainterPath drawn = outlineOnFilm(scale, nest, decal, shapes.of(*on.decal));
            if (const auto place = numbers.within(decal, size, drawn))
                m_numbers[decal.decal] = {text, *place, std::nullopt};
            else if (auto number = numbers.beside(decal, text, size))
                m_numbers[decal.decal] = *std::move(number);
        }
        m_compared += numbers.compared();
    }
}

const BenchNumber* BenchNumbers::of(DecalId decal) const {
    const auto found = m_numbers.find(decal);
    return found == m_numbers.end() ? nullptr : &found->second;
}

} // namespace holdfast::app
