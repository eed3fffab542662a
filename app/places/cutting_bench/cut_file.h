// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the cutter is given: the nest's decals as outlines, the cut file as SVG, its name.

#include "app/places/cutting_bench/bench_model.h"
#include "core/cutting/cut_file.h"

#include <QPainterPath>
#include <QString>

#include <functional>

namespace holdfast::app {

// Lines and curves of a shape, loop by loop.
std::vector<OutlineLoop> loopsOf(const QPainterPath& shape);

// An error names the decal that has nothing to cut. `goesOn` is given the share done and says whether to go
// on; where it did not, the text is empty.
Result<std::string> cutFileOf(const ReckonedShop& shop, const Nest& nest, CutFileWish wish,
                              const std::function<bool(double)>& goesOn = {});

QString cutFileName(const ReckonedShop& shop, const Nest& nest); // "R-09 Dusk 2026-11-26.svg"

} // namespace holdfast::app
