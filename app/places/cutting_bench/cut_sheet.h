// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The cut sheet, on paper: each nest drawn to a stated scale, mirrored as it is cut, and below it a line with
// a box to tick for each decal. Black on white.

#include "app/papers/paper_files.h"
#include "app/places/cutting_bench/bench_model.h"
#include "core/cutting/cut_file.h"

#include <QString>

#include <functional>
#include <span>

class QPagedPaintDevice;

namespace holdfast::app {

// One part of a nest that goes on one line of paper, from `from` to `to` along the roll.
struct FilmStrip {
    Millimetres from;
    Millimetres to;
};

// How a nest is drawn on paper so wide: 1 : scale, in as many strips as it needs.
struct CutSheetScale {
    int scale = 1;
    std::vector<FilmStrip> strips;
};
CutSheetScale paperScaleOf(const Nest& nest, double paperMillimetres);

// Begins each nest on a page of its own. `goesOn` is given the share done and says whether to go on. An error
// where the paper cannot be written to. On any thread.
Result<Drawn> drawCutSheets(QPagedPaintDevice& paper, const ReckonedShop& shop, std::span<const Nest> nests,
                            const CutFileWish& wish, const std::function<bool(double)>& goesOn);

} // namespace holdfast::app
