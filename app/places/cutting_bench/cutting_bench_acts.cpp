// SPDX-License-Identifier: GPL-3.0-or-later
// What is done with the bench: files for the cutter, paper for the wall, and that it is cut.
#include "app/places/cutting_bench/cutting_bench_place.h"

#include "app/desk/formats.h"
#include "app/desk/shop_beside.h"
#include "app/places/cutting_bench/bench_panel.h"
#include "app/places/cutting_bench/bench_view.h"
#include "app/places/cutting_bench/bench_words.h"
#include "app/places/cutting_bench/cut_file.h"
#include "app/theme/wording_outline.h"
#include "db/actions/film_actions.h"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QStackedWidget>
#include <QStandardPaths>

#include <functional>
#include <memory>
#include <vector>

namespace holdfast::app {

namespace {

constexpr std::string_view kFolderNote = "cut folder";

// This many decals are written to the shop, and the shop reckoned again, in a moment.
constexpr std::size_t kFewDecals = 200;

// The outline that a wording lies on the bench by, to be kept from now on.
void keepOutline(const Decal& decal, std::vector<db::KeptOutline>& outlines) {
    const auto* wording = std::get_if<Wording>(&decal.content);
    if (!wording || !wording->outline.empty())
        return;
    if (std::string outline = outlineToKeep(*wording); !outline.empty())
        outlines.push_back({decal.id, std::move(outline)});
}

std::vector<db::RollCut> rollsToCharge(const BenchModel& model) {
    std::vector<db::RollCut> rolls;
    for (const Nest& nest : model.nests()) {
        db::RollCut& charged = rolls.emplace_back();
        charged.roll = nest.roll;
        charged.length = nest.length;
        for (const NestedDecal& decal : nest.decals) {
            charged.decals.push_back(decal.decal);
            if (const DecalOnGarment cut = model.decal(decal.decal); cut.decal)
                keepOutline(*cut.decal, charged.outlines);
        }
        for (const FilmArea& area : nest.offcuts)
            if (model.keepsOffcut(nest.roll, area))
                charged.offcuts.push_back({area.acrossSize, area.alongSize});
    }
    return rolls;
}

std::size_t decalsOn(const std::vector<db::RollCut>& rolls) {
    std::size_t decals = 0;
    for (const db::RollCut& each : rolls)
        decals += each.decals.size();
    return decals;
}

// On a thread of its own; the window takes it over, and the bench goes on.
BackgroundWork::Outcome chargedBeside(ShopDesk& desk, const KnownBefore& known,
                                      const std::vector<db::RollCut>& rolls, const ReckonedShop& shop,
                                      QObject* bench, const std::function<void()>& goOn) {
    Result<std::string> outcome = std::string{};
    auto written = std::make_shared<WrittenBeside>();
    if (const auto beside = ShopBeside::open(desk.file(), known); !beside.ok()) {
        outcome = beside.error();
    } else {
        const auto charged = db::cutFromRolls((*beside)->file(), rolls, shop.now, &shop.conditions);
        outcome = charged.ok() ? Result<std::string>{plain(words((*beside)->file().recent(1).at(0).title))}
                               : charged.error();
        *written = (*beside)->written();
    }
    return {outcome, [&desk, written, bench, goOn] {
                desk.takeOver(std::move(*written));
                // Once the work has ended: another search may begin then.
                QMetaObject::invokeMethod(bench, goOn, Qt::QueuedConnection);
            }};
}

} // namespace

QString CuttingBenchPlace::folder() {
    const auto kept = desk().file().read([&](db::Connection&) { return desk().file().note(kFolderNote); });
    if (kept.ok() && kept->has_value() && QFileInfo(words(**kept)).isDir())
        return words(**kept);
    return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
}

void CuttingBenchPlace::write(const QString& words, Writing writing) {
    if (m_model.isBeingLaid()) {
        desk().say(beingLaidWords());
        return;
    }
    if (!m_model.film() || m_model.nests().empty()) {
        desk().say(tr("Nothing is on the bench."));
        return;
    }
    m_search.drop();
    m_model.markSearched();
    const CutToWrite bench{m_model.shop(), m_model.nests(), m_panel->wish()};
    const bool hasBegun = m_writing.begin(
        words, [bench, writing = std::move(writing)](const BackgroundWork::Progress& progress) {
            return writing(bench, progress);
        });
    if (!hasBegun)
        desk().say(tr("Files are being written; wait for them or stop them first."));
}

void CuttingBenchPlace::saved(const QString& path, const QString& words, Writing writing) {
    const QString here = QFileInfo(path).absolutePath();
    if (QFileInfo(here).isDir())
        desk().file().keepNote(kFolderNote, plain(here));
    write(words, std::move(writing));
}

void CuttingBenchPlace::saveCutFiles(const QString& path) {
    saved(path, tr("Writing the cut file"),
          [path](const CutToWrite& bench, const BackgroundWork::Progress& progress) {
              return writeCutFiles(bench, path, progress);
          });
}

void CuttingBenchPlace::printCutSheets(const QString& folder) {
    write(
        tr("Printing the cut sheet"),
        [folder, choice = keptPrinters()](const CutToWrite& bench, const BackgroundWork::Progress& progress) {
            return printCutSheet(bench, printingHere(choice, folder), progress);
        });
}

void CuttingBenchPlace::askCutFile() {
    if (!m_model.film() || m_model.nests().empty() || m_model.isBeingLaid())
        return;
    const QString name = cutFileName(*m_model.shop(), m_model.nests().front());
    auto* dialog =
        new QFileDialog(this, tr("Save cut file"), QDir(folder()).filePath(name), tr("Cut file (*.svg)"));
    dialog->setObjectName(QStringLiteral("cutFileDialog"));
    dialog->setOption(QFileDialog::DontUseNativeDialog);
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setDefaultSuffix(QStringLiteral("svg"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QFileDialog::fileSelected, this, &CuttingBenchPlace::saveCutFiles);
    dialog->open();
}

void CuttingBenchPlace::markCut() {
    if (!m_model.film() || m_model.nests().empty() || m_model.isBeingLaid() || m_isCutting)
        return;
    m_search.drop();
    const auto goOn = [this, at = m_model.filmAt()] {
        m_isCutting = false;
        refresh();
        // The next film that has something to lay, where this one has not.
        const auto films = static_cast<int>(m_model.films().size());
        for (int next = 0; next < films && m_model.nests().empty() && !m_model.isBeingLaid(); ++next)
            m_model.chooseFilm((at + next) % films);
        if (m_pages->currentIndex() == 0)
            m_view->setFocus(Qt::OtherFocusReason);
    };
    const auto shop = m_model.shop(); // outlives the act, after which the bench shows a newer one
    const std::vector<db::RollCut> rolls = rollsToCharge(m_model);
    m_isCutting = true;
    if (decalsOn(rolls) <= kFewDecals || desk().file().path().empty()) {
        desk().done(db::cutFromRolls(desk().file(), rolls, desk().now(), &shop->conditions));
        goOn();
        return;
    }
    m_model.markSearched(); // what is marked is what lies there
    const bool hasBegun =
        m_writing.begin(tr("Marking as cut"), [this, rolls, goOn, &desk = desk(), known = desk().known(),
                                               shop](const BackgroundWork::Progress&) {
            return chargedBeside(desk, known, rolls, *shop, this, goOn);
        });
    if (!hasBegun) {
        m_isCutting = false;
        desk().say(tr("Files are being written; wait for them or stop them first."));
    }
}

} // namespace holdfast::app
