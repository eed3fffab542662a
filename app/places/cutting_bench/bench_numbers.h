// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Where the number of each decal goes in the drawing of the bench, so that who weeds finds it. In a corner
// of its box where it covers nothing of the drawing; else on free film or an offcut near by, with a short
// line to its box; else, where there is no room at the scale drawn, only in the list. No number covers a
// drawing, another number or words.

#include "app/papers/decal_shapes.h"
#include "app/places/cutting_bench/bench_model.h"
#include "app/places/cutting_bench/bench_scale.h"

#include <QLineF>

#include <map>
#include <optional>

class QPainterPath;

namespace holdfast::app {

// In pixels of the drawing.
struct BenchNumber {
    QString text;
    QRectF place;
    std::optional<QLineF> leader; // from the edge of its frame; none: it is inside
};

class BenchNumbers {
public:
    void lay(const BenchModel& model, const BenchScale& scale, DecalShapes& shapes);
    const BenchNumber* of(DecalId decal) const; // null where it has no room
    // How many times the last lay() looked whether two boxes meet: what it costs, in work and not in time.
    std::int64_t compared() const { return m_compared; }

private:
    std::map<DecalId, BenchNumber> m_numbers;
    std::int64_t m_compared = 0;
};

// The decal's outline where it lies; empty where it has none.
QPainterPath outlineOnFilm(const BenchScale& scale, std::size_t nest, const NestedDecal& decal,
                           const QPainterPath& shape);

// The words of an offcut: where they go, along or, where they fit only so, across.
struct OffcutWords {
    QString title;
    QString size;
    QRectF place; // as it is seen
    bool isUpright = false;
};

// None where there is no room for them.
std::optional<OffcutWords> wordsOfOffcut(const QRectF& box, const FilmArea& offcut, bool isKept);

} // namespace holdfast::app
