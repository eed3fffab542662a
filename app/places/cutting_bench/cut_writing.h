// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Cut files and the cut sheet on paper, written in the background: outlines of a thousand decals take
// seconds. What is written is the bench as it lay when it was asked for. A file that was there stays whole
// until all of the new one is written, and when it is stopped.

#include "app/desk/background_work.h"
#include "app/papers/paper_printing.h"
#include "app/places/cutting_bench/bench_model.h"
#include "core/cutting/cut_file.h"

#include <QString>

namespace holdfast::app {

struct CutToWrite {
    std::shared_ptr<const ReckonedShop> shop;
    std::vector<Nest> nests;
    CutFileWish wish;
};

// Each on any thread; what became of it in words to tell the person, also where it was stopped. An error says
// what could not be written, and why.

// A cut file for each roll: at this path, or next to it with the roll's name where there are several.
Result<std::string> writeCutFiles(const CutToWrite& bench, const QString& path,
                                  const BackgroundWork::Progress& progress);
// On the printer for sheets, or as a PDF where there is none.
Result<std::string> printCutSheet(const CutToWrite& bench, const Printing& printing,
                                  const BackgroundWork::Progress& progress);

} // namespace holdfast::app
