// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/cut_writing.h"

#include "app/desk/formats.h"
#include "app/places/cutting_bench/bench_words.h"
#include "app/places/cutting_bench/cut_file.h"
#include "app/places/cutting_bench/cut_sheet.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QPdfWriter>

namespace holdfast::app {

namespace {

struct CutWriting {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::CutWriting)
};

// "/home/cuts/dusk.svg" → "/home/cuts/dusk R-11.svg"
QString besides(const QString& path, const QString& roll) {
    const QFileInfo file(path);
    const QString suffix = file.suffix().isEmpty() ? QString() : QStringLiteral(".") + file.suffix();
    return file.dir().filePath(QStringLiteral("%1 %2%3").arg(file.completeBaseName(), roll, suffix));
}

std::string stopped() {
    return plain(CutWriting::tr("Stopped; nothing was written."));
}

} // namespace

Result<std::string> writeCutFiles(const CutToWrite& bench, const QString& path,
                                  const BackgroundWork::Progress& progress) {
    struct Sheet {
        QString path;
        std::string text;
    };
    std::vector<Sheet> sheets;
    for (const Nest& nest : bench.nests) {
        const double before = static_cast<double>(sheets.size());
        const double share = 1 / static_cast<double>(bench.nests.size());
        auto text = cutFileOf(*bench.shop, nest, bench.wish,
                              [&](double done) { return progress((before + done) * share); });
        if (!text.ok())
            return text.error();
        if (text->empty())
            return stopped();
        sheets.push_back({sheets.empty() ? path : besides(path, rollLabel(bench.shop->facts, nest.roll)),
                          std::move(*text)});
    }
    if (!progress(1))
        return stopped();
    QStringList written;
    for (const Sheet& sheet : sheets) {
        if (const auto done = writeText(sheet.path, sheet.text); !done.ok())
            return done.error();
        written.append(QFileInfo(sheet.path).fileName());
    }
    return plain(CutWriting::tr("Saved %1.|Saved %n cut files: %1.", nullptr, howMany(written.size()))
                     .arg(written.join(QStringLiteral(", "))));
}

Result<std::string> printCutSheet(const CutToWrite& bench, const Printing& printing,
                                  const BackgroundWork::Progress& progress) {
    QStringList rolls;
    for (const Nest& nest : bench.nests)
        rolls << rollLabel(bench.shop->facts, nest.roll);
    return printSheets(
        CutWriting::tr("Cut sheet %1").arg(rolls.join(QStringLiteral(", "))),
        [&](QPdfWriter& paper, const GoesOnDrawing& goesOn) {
            return drawCutSheets(paper, *bench.shop, bench.nests, bench.wish, goesOn);
        },
        printing, progress);
}

} // namespace holdfast::app
