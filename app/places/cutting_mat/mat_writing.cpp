#include "app/places/cutting_mat/mat_writing.h"

#include "app/desk/formats.h"
#include "app/places/cutting_mat/cut_file.h"
#include "app/places/cutting_mat/mat_sheet.h"
#include "app/places/cutting_mat/mat_words.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QPdfWriter>

namespace holdfast::app {

namespace {

struct MatWriting {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::MatWriting)
};

// "/home/cuts/dusk.svg" → "/home/cuts/dusk R-11.svg"
QString besides(const QString& path, const QString& roll) {
    const QFileInfo file(path);
    const QString suffix = file.suffix().isEmpty() ? QString() : QStringLiteral(".") + file.suffix();
    return file.dir().filePath(QStringLiteral("%1 %2%3").arg(file.completeBaseName(), roll, suffix));
}

std::string stopped() {
    return plain(MatWriting::tr("Stopped; nothing was written."));
}

} // namespace

Result<std::string> writeCutFiles(const MatToWrite& mat, const QString& path,
                                  const BackgroundWork::Progress& progress) {
    struct Sheet {
        QString path;
        std::string text;
    };
    std::vector<Sheet> sheets;
    for (const Nest& nest : mat.nests) {
        const double before = static_cast<double>(sheets.size());
        const double share = 1 / static_cast<double>(mat.nests.size());
        auto text = cutFileOf(*mat.shop, nest, mat.wish,
                              [&](double done) { return progress((before + done) * share); });
        if (!text.ok())
            return text.error();
        if (text->empty())
            return stopped();
        sheets.push_back(
            {sheets.empty() ? path : besides(path, rollLabel(mat.shop->facts, nest.roll)), std::move(*text)});
    }
    if (!progress(1))
        return stopped();
    QStringList written;
    for (const Sheet& sheet : sheets) {
        if (const auto done = writeText(sheet.path, sheet.text); !done.ok())
            return done.error();
        written.append(QFileInfo(sheet.path).fileName());
    }
    return plain(written.size() == 1 ? MatWriting::tr("Saved %1.").arg(written.front())
                                     : MatWriting::tr("Saved %1 cut files: %2.")
                                           .arg(written.size())
                                           .arg(written.join(QStringLiteral(", "))));
}

Result<std::string> printMatSheet(const MatToWrite& mat, const Printing& printing,
                                  const BackgroundWork::Progress& progress) {
    QStringList rolls;
    for (const Nest& nest : mat.nests)
        rolls << rollLabel(mat.shop->facts, nest.roll);
    return printSheets(
        MatWriting::tr("Cut sheet %1").arg(rolls.join(QStringLiteral(", "))),
        [&](QPdfWriter& paper, const GoesOnDrawing& goesOn) {
            return drawMatSheets(paper, *mat.shop, mat.nests, mat.wish, goesOn);
        },
        printing, progress);
}

} // namespace holdfast::app
