// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Draws the nests to scale: film, rulers, decals as they are cut, weeding frames, offcuts, the parting cut.

#include "app/papers/decal_shapes.h"
#include "app/places/cutting_bench/bench_model.h"
#include "app/places/cutting_bench/bench_numbers.h"
#include "app/places/cutting_bench/bench_scale.h"
#include "core/cutting/cut_file.h"

class QPainter;

namespace holdfast::app {

struct FilmInks;

// A decal under the hand: where it may lie, and where the hand has it.
struct DraggedDecal {
    DecalId decal;
    DecalPin place;
    QRectF wanted; // in pixels of the drawing
};

struct BenchLook {
    CutFileWish wish; // what is shown is what the file will say
    std::optional<DraggedDecal> dragged;
    bool hasKeyboard = false;
};

class BenchPainter {
public:
    explicit BenchPainter(const BenchModel& model)
        : m_model(model) {}

    // The places of the numbers are found again at the next painting: what lies there, its scale or its wish
    // has changed.
    void forgetNumbers() { m_hasNumbers = false; }
    // Only what meets `visible` is drawn.
    void paint(QPainter& painter, const BenchScale& scale, const BenchLook& look, const QRectF& visible);

private:
    void paintRulers(QPainter& painter, std::size_t nest, const QRectF& visible) const;
    void paintCaption(QPainter& painter, std::size_t nest, const QRectF& visible) const;
    void paintFilm(QPainter& painter, std::size_t nest, const FilmInks& inks) const;
    void paintOffcuts(QPainter& painter, std::size_t nest, const FilmInks& inks) const;
    void paintDecals(QPainter& painter, std::size_t nest, const FilmInks& inks, const QRectF& visible);
    void paintDecal(QPainter& painter, std::size_t nest, const NestedDecal& decal, const FilmInks& inks);
    void paintNumbers(QPainter& painter, std::size_t nest, const FilmInks& inks, const QRectF& visible) const;
    void paintChosen(QPainter& painter, std::size_t nest, const NestedDecal& decal,
                     const FilmInks& inks) const;
    void paintPartingCut(QPainter& painter, std::size_t nest, const FilmInks& inks) const;

    const BenchModel& m_model;
    const BenchScale* m_scale = nullptr;
    const BenchLook* m_look = nullptr;
    DecalShapes m_shapes;
    BenchNumbers m_numbers;
    bool m_hasNumbers = false;
};

} // namespace holdfast::app
