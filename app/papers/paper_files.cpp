#include "app/papers/paper_files.h"

#include "app/desk/formats.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QFileInfo>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>
#include <QSvgGenerator>

#include <unistd.h>

#include <cerrno>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kDotsPerInch = 300;
constexpr double kMillimetresInInch = 25.4;

struct PaperFiles {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PaperFiles)
};

Error cannotWriteFile(const QString& path, const QString& why) {
    return fieldError("file", plain(PaperFiles::tr("%1 could not be written: %2.").arg(path, why)));
}

// Papers bear names and telephone numbers: the owner's alone, and never written through a link onto another
// file.
Result<Done> openForOwner(QSaveFile& file) {
    if (QFileInfo(file.fileName()).isSymLink())
        return cannotWriteFile(file.fileName(),
                               PaperFiles::tr("it is a link to another file; choose another name"));
    if (!file.open(QIODevice::WriteOnly) ||
        !file.setPermissions(QFileDevice::ReadOwner | QFileDevice::WriteOwner))
        return cannotWriteFile(file.fileName(), file.errorString());
    return Done{};
}

// QSaveFile passes over a disk that did not keep what was written. A device that cannot say so is no disk.
Result<Done> keepOnDisk(QSaveFile& file) {
    const bool isOnDisk = file.flush() && (::fsync(file.handle()) == 0 || errno == EINVAL || errno == EROFS);
    const QString why = isOnDisk ? QString() : qt_error_string();
    if (!isOnDisk || !file.commit())
        return cannotWriteFile(file.fileName(), isOnDisk ? file.errorString() : why);
    return Done{};
}

Error cannotDraw() {
    return plainError(plain(PaperFiles::tr("The paper could not be drawn.")));
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
    QSaveFile file(path);
    if (auto opened = openForOwner(file); !opened)
        return opened.error();
    Result<Drawn> drawn = Drawn::Whole;
    {
        QPdfWriter writer(&file);
        preparePdf(writer, title);
        drawn = draw(writer);
    }
    if (!drawn.ok() || *drawn == Drawn::Stopped)
        return drawn;
    if (auto kept = keepOnDisk(file); !kept)
        return kept.error();
    return Drawn::Whole;
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
    QSaveFile file(path);
    const auto size = static_cast<qint64>(text.size());
    if (auto opened = openForOwner(file); !opened)
        return opened;
    if (file.write(text.data(), size) != size)
        return cannotWriteFile(path, file.errorString());
    return keepOnDisk(file);
}

} // namespace holdfast::app
