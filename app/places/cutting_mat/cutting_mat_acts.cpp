// What is done with the mat: files for the cutter, paper for the wall, and that it is cut.
#include "app/places/cutting_mat/cutting_mat_place.h"

#include "app/desk/formats.h"
#include "app/places/cutting_mat/cut_file.h"
#include "app/places/cutting_mat/mat_panel.h"
#include "app/places/cutting_mat/mat_view.h"
#include "app/places/cutting_mat/mat_words.h"
#include "db/actions/film_actions.h"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QPrintDialog>
#include <QPrinter>
#include <QPrinterInfo>
#include <QStackedWidget>
#include <QStandardPaths>

namespace holdfast::app {

namespace {

constexpr std::string_view kFolderNote = "cut folder";

} // namespace

QString CuttingMatPlace::folder() {
    const auto kept = desk().file().read([&](db::Connection&) { return desk().file().note(kFolderNote); });
    if (kept.ok() && kept->has_value() && QFileInfo(words(**kept)).isDir())
        return words(**kept);
    return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
}

void CuttingMatPlace::write(const QString& words, Writing writing) {
    if (!m_model.film() || m_model.nests().empty()) {
        desk().say(tr("Nothing lies on the mat."));
        return;
    }
    m_search.drop();
    m_model.markSearched();
    const MatToWrite mat{m_model.shop(), m_model.nests(), m_panel->wish()};
    const bool hasBegun = m_writing.begin(
        words, [mat, writing = std::move(writing)](const BackgroundWork::Progress& progress) {
            return writing(mat, progress);
        });
    if (!hasBegun)
        desk().say(tr("The mat is being written; wait for it or stop it first."));
}

void CuttingMatPlace::saved(const QString& path, const QString& words, Writing writing) {
    const QString here = QFileInfo(path).absolutePath();
    if (QFileInfo(here).isDir())
        desk().file().keepNote(kFolderNote, plain(here));
    write(words, std::move(writing));
}

void CuttingMatPlace::saveCutFiles(const QString& path) {
    saved(path, tr("Writing the cut file"),
          [path](const MatToWrite& mat, const BackgroundWork::Progress& progress) {
              return writeCutFiles(mat, path, progress);
          });
}

void CuttingMatPlace::saveMatSheet(const QString& path) {
    saved(path, tr("Writing the mat sheet"),
          [path](const MatToWrite& mat, const BackgroundWork::Progress& progress) {
              return writeMatSheet(mat, path, progress);
          });
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
            &CuttingMatPlace::saveCutFiles);
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
        write(tr("Printing the mat sheet"),
              [printer](const MatToWrite& mat, const BackgroundWork::Progress& progress) {
                  return printMatSheet(mat, *printer, progress);
              });
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
            &CuttingMatPlace::saveMatSheet);
    dialog->open();
}

void CuttingMatPlace::markCut() {
    if (!m_model.film() || m_model.nests().empty())
        return;
    m_search.drop();
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
    // The next film that has something to lay, where this one has not.
    const auto films = static_cast<int>(m_model.films().size());
    for (int next = 0; next < films && m_model.nests().empty(); ++next)
        m_model.chooseFilm((at + next) % films);
    if (m_pages->currentIndex() == 0)
        m_view->setFocus(Qt::OtherFocusReason);
}

} // namespace holdfast::app
