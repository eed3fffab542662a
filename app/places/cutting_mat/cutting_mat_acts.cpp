// What is done with the mat: files for the cutter, paper for the wall, and that it is cut.
#include "app/places/cutting_mat/cutting_mat_place.h"

#include "app/desk/formats.h"
#include "app/places/cutting_mat/cut_file.h"
#include "app/places/cutting_mat/mat_panel.h"
#include "app/places/cutting_mat/mat_sheet.h"
#include "app/places/cutting_mat/mat_view.h"
#include "app/places/cutting_mat/mat_words.h"
#include "db/actions/film_actions.h"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QPdfWriter>
#include <QPrintDialog>
#include <QPrinter>
#include <QPrinterInfo>
#include <QStackedWidget>
#include <QStandardPaths>

namespace holdfast::app {

namespace {

constexpr std::string_view kFolderNote = "cut folder";
constexpr int kPaperDots = 300; // an inch

// "/home/cuts/dusk.svg" → "/home/cuts/dusk R-11.svg"
QString besides(const QString& path, const QString& roll) {
    const QFileInfo file(path);
    const QString suffix = file.suffix().isEmpty() ? QString() : QStringLiteral(".") + file.suffix();
    return file.dir().filePath(QStringLiteral("%1 %2%3").arg(file.completeBaseName(), roll, suffix));
}

} // namespace

QString CuttingMatPlace::folder() {
    const auto kept = desk().file().read([&](db::Connection&) { return desk().file().note(kFolderNote); });
    if (kept.ok() && kept->has_value() && QFileInfo(words(**kept)).isDir())
        return words(**kept);
    return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
}

Result<Done> CuttingMatPlace::saveCutFiles(const QString& path) {
    if (!m_model.film() || m_model.nests().empty())
        return plainError(plain(tr("Nothing lies on the mat.")));
    QStringList written;
    for (const Nest& nest : m_model.nests()) {
        const auto sheet = cutFileOf(*m_model.shop(), nest, m_panel->wish());
        if (!sheet.ok())
            return sheet.error();
        const QString name = written.isEmpty() ? path : besides(path, rollLabel(m_model.facts(), nest.roll));
        if (const auto done = writeCutFile(name, *sheet); !done.ok())
            return done;
        written.append(QFileInfo(name).fileName());
    }
    desk().file().keepNote(kFolderNote, plain(QFileInfo(path).absolutePath()));
    desk().say(
        written.size() == 1
            ? tr("Saved %1.").arg(written.front())
            : tr("Saved %1 cut files: %2.").arg(written.size()).arg(written.join(QStringLiteral(", "))));
    return Done{};
}

Result<Done> CuttingMatPlace::saveMatSheet(const QString& path) {
    if (!m_model.film() || m_model.nests().empty())
        return plainError(plain(tr("Nothing lies on the mat.")));
    QFileInfo file(path);
    if (!QFileInfo(file.absolutePath()).isWritable())
        return fieldError("file", plain(tr("The folder %1 cannot be written to.").arg(file.absolutePath())));
    QPdfWriter paper(path);
    paper.setResolution(kPaperDots);
    paper.setPageSize(QPageSize(QPageSize::A4));
    paper.setTitle(tr("Mat sheet"));
    if (const auto drawn = drawMatSheets(paper, *m_model.shop(), m_model.nests(), m_panel->wish());
        !drawn.ok())
        return drawn;
    desk().file().keepNote(kFolderNote, plain(file.absolutePath()));
    desk().say(tr("Saved %1.").arg(file.fileName()));
    return Done{};
}

void CuttingMatPlace::askCutFile() {
    if (!m_model.film() || m_model.nests().empty())
        return;
    const QString name = cutFileName(*m_model.shop(), m_model.nests().front());
    auto* dialog =
        new QFileDialog(this, tr("Save cut file"), QDir(folder()).filePath(name), tr("Cut file (*.svg)"));
    dialog->setObjectName(QStringLiteral("cutFileDialog"));
    dialog->setOption(QFileDialog::DontUseNativeDialog);
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setDefaultSuffix(QStringLiteral("svg"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QFileDialog::fileSelected, this,
            [this](const QString& path) { desk().done(saveCutFiles(path)); });
    dialog->open();
}

void CuttingMatPlace::askMatSheet() {
    if (!m_model.film() || m_model.nests().empty())
        return;
    if (QPrinterInfo::availablePrinterNames().isEmpty()) {
        askMatSheetFile();
        return;
    }
    auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
    printer->setDocName(tr("Mat sheet"));
    auto* dialog = new QPrintDialog(printer.get(), this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QDialog::accepted, this, [this, printer] {
        if (m_model.film() && !m_model.nests().empty())
            desk().done(drawMatSheets(*printer, *m_model.shop(), m_model.nests(), m_panel->wish()));
    });
    dialog->open();
}

void CuttingMatPlace::askMatSheetFile() {
    QString name = cutFileName(*m_model.shop(), m_model.nests().front());
    name.replace(QStringLiteral(".svg"), QStringLiteral(".pdf"));
    auto* dialog =
        new QFileDialog(this, tr("Save mat sheet"), QDir(folder()).filePath(name), tr("Paper (*.pdf)"));
    dialog->setObjectName(QStringLiteral("matSheetDialog"));
    dialog->setOption(QFileDialog::DontUseNativeDialog);
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setDefaultSuffix(QStringLiteral("pdf"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QFileDialog::fileSelected, this,
            [this](const QString& path) { desk().done(saveMatSheet(path)); });
    dialog->open();
}

void CuttingMatPlace::markCut() {
    if (!m_model.film() || m_model.nests().empty())
        return;
    m_search.drop();
    const FilmId cutFrom = m_model.film()->film;
    const int at = m_model.filmAt();
    const std::vector<Nest> nests = m_model.nests();
    m_isCutting = true;
    for (const Nest& nest : nests) {
        std::vector<DecalId> decals;
        for (const NestedDecal& decal : nest.decals)
            decals.push_back(decal.decal);
        std::vector<db::OffcutSize> offcuts;
        for (const FilmArea& area : nest.offcuts)
            if (m_model.keepsOffcut(nest.roll, area))
                offcuts.push_back({area.acrossSize, area.alongSize});
        if (!desk().done(db::cutDecals(desk().file(), nest.roll, decals, nest.length, offcuts)))
            break;
    }
    m_isCutting = false;
    refresh();
    // The next film's mat, where this one still has something that waits.
    if (m_model.film() && m_model.film()->film == cutFrom && m_model.nests().empty())
        m_model.chooseFilm((at + 1) % static_cast<int>(m_model.films().size()));
    if (m_pages->currentIndex() == 0)
        m_view->setFocus(Qt::OtherFocusReason);
}

} // namespace holdfast::app
