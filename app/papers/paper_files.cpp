// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/paper_files.h"

#include "app/desk/formats.h"
#include "db/disk/new_file.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>

#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kDotsPerInch = 300;
constexpr double kMillimetresInInch = 25.4;

struct PaperFiles {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PaperFiles)
};

Error cannotWriteFile(const QString& path, const Error& why) {
    return fieldError("file",
                      inWindow(PaperFiles::tr("%1 could not be written. %2").arg(path, words(why.message))));
}

// Papers bear names and telephone numbers: the owner's alone, never written through a link onto another file,
// and under their name only when they are whole.
Result<Done> keepAs(const QString& path, std::string_view bytes) {
    auto file = db::NewFile::beginOver(path.toStdString());
    if (!file.ok())
        return cannotWriteFile(path, file.error());
    auto kept = file->write(bytes);
    if (kept.ok())
        kept = file->keep();
    return kept.ok() ? kept : cannotWriteFile(path, kept.error());
}

Error cannotDraw() {
    return plainError(inWindow(PaperFiles::tr("The paper could not be drawn.")));
}

} // namespace

void setPage(QPagedPaintDevice& device, const QSizeF& size, double margin) {
    device.setPageLayout({QPageSize(size, QPageSize::Millimeter, {}, QPageSize::FuzzyMatch),
                          QPageLayout::Portrait, QMarginsF(margin, margin, margin, margin),
                          QPageLayout::Millimeter});
}

void preparePdf(QPdfWriter& writer, const QString& title) {
    writer.setResolution(kDotsPerInch);
    writer.setTitle(title);
}

Result<Drawn> drawPapers(QPagedPaintDevice& device, std::span<const Paper> papers,
                         const GoesOnDrawing& goesOn) {
    QPainter painter;
    std::size_t drawn = 0;
    for (const Paper& paper : papers) {
        if (drawn == 0 || paper.size != papers[drawn - 1].size)
            setPage(device, paper.size);
        if (drawn == 0 ? !painter.begin(&device) : !device.newPage())
            return cannotDraw();
        painter.save();
        const double dots = device.logicalDpiX();
        painter.scale(dots / kMillimetresInInch / kTenthsOfMillimetre,
                      dots / kMillimetresInInch / kTenthsOfMillimetre);
        PaperInk ink(painter, Letters::AsText);
        paper.draw(ink);
        painter.restore();
        ++drawn;
        if (goesOn && !goesOn(static_cast<double>(drawn) / static_cast<double>(papers.size())))
            return Drawn::Stopped;
    }
    return Drawn::Whole;
}

Result<Drawn> writePdf(const QString& path, const QString& title,
                       const std::function<Result<Drawn>(QPdfWriter&)>& draw) {
    QBuffer written;
    written.open(QIODevice::WriteOnly);
    Result<Drawn> drawn = Drawn::Whole;
    {
        QPdfWriter writer(&written);
        preparePdf(writer, title);
        drawn = draw(writer);
    }
    if (!drawn.ok() || *drawn == Drawn::Stopped)
        return drawn;
    const auto kept = keepAs(path, {written.data().constData(), static_cast<std::size_t>(written.size())});
    return kept.ok() ? drawn : kept.error();
}

Result<Drawn> writePapers(const QString& path, const QString& title, std::span<const Paper> papers,
                          const GoesOnDrawing& goesOn) {
    return writePdf(path, title, [&](QPdfWriter& writer) { return drawPapers(writer, papers, goesOn); });
}

std::string paperSvg(const Paper& paper) {
    QBuffer written;
    QSvgGenerator generator;
    generator.setOutputDevice(&written);
    // A unit of the drawing is a tenth of a millimetre.
    generator.setResolution(static_cast<int>(std::lround(kMillimetresInInch * kTenthsOfMillimetre)));
    const QSizeF size = paper.size * kTenthsOfMillimetre;
    generator.setSize(size.toSize());
    generator.setViewBox(QRectF(QPointF(0, 0), size));
    generator.setTitle(paper.name);
    generator.setDescription({});
    QPainter painter(&generator);
    PaperInk ink(painter, Letters::AsOutlines);
    paper.draw(ink);
    painter.end();
    return written.data().toStdString();
}

Result<Done> writeText(const QString& path, const std::string& text) {
    return keepAs(path, text);
}

} // namespace holdfast::app
