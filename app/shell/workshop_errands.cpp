// SPDX-License-Identifier: GPL-3.0-or-later
// The long errands of the workshop's frame: copying the shop, checking its file, printing, undoing and
// redoing a long action.
#include "app/desk/background_work.h"
#include "app/desk/backup_note.h"
#include "app/desk/due_days_file.h"
#include "app/desk/formats.h"
#include "app/desk/shop_beside.h"
#include "app/papers/paper_making.h"
#include "app/shell/backup_slip.h"
#include "app/shell/due_days_slip.h"
#include "app/shell/foot_line.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "db/actions/put_back.h"
#include "db/check/check.h"
#include "db/journal/backup.h"
#include "db/journal/undo_words.h"

namespace holdfast::app {

namespace {

// This many bytes of a journal entry, some hundred rows, take longer to undo, and the shop longer to
// reckon again, than a window may wait.
constexpr std::int64_t kLongAction = 20'000;

// The check before a backup, of the work of both.
constexpr double kChecking = 0.5;

} // namespace

void Workshop::openBackupSlip() {
    auto* slip = new BackupSlip(m_desk, m_slips);
    connect(slip, &BackupSlip::backupAsked, this, [this, slip](const std::filesystem::path& target) {
        if (backUp(target))
            slip->waitForWork();
    });
    openWorkSlip(slip, [this] { openBackupSlip(); });
}

void Workshop::openDueDaysSlip() {
    auto* slip = new DueDaysSlip(m_desk, m_slips);
    connect(slip, &DueDaysSlip::calendarAsked, this,
            [this, slip](const std::filesystem::path& target, Names names) {
                if (saveDueDays(target, names))
                    slip->waitForWork();
            });
    openWorkSlip(slip, [this] { openDueDaysSlip(); });
}

bool Workshop::saveDueDays(const std::filesystem::path& target, Names names) {
    return beginWork(
        tr("Saving the due days"),
        [shop = m_desk.file().path(), clock = m_desk.clock(), target,
         names](const BackgroundWork::Progress&) -> BackgroundWork::Outcome {
            auto reading = db::Shop::openReadOnly(shop, clock.now);
            if (!reading.ok())
                return reading.error();
            const auto written = writeDueDays(**reading, target, clock.moment(), names);
            if (!written.ok())
                return written.error();
            const QString done = tr("Saved the day of %n order in %1.|Saved the days of %n orders in %1.",
                                    nullptr, howMany(written->days))
                                     .arg(app::words(target.string()));
            return {
                plain(written->isWhole ? done : tr("%1 Orders that cannot be read are left out.").arg(done))};
        });
}

// A form whose work is done in the background: it stays until that ends, and says why where it fails.
void Workshop::openWorkSlip(FormSlip* slip, std::function<void()> again) {
    connect(m_work, &BackgroundWork::succeeded, slip, [slip] { slip->endWork({}); });
    connect(m_work, &BackgroundWork::failed, slip, &FormSlip::endWork);
    openSlip(slip, std::move(again));
}

bool Workshop::backUp(const std::filesystem::path& target) {
    const std::filesystem::path shop = m_desk.file().path();
    const db::Clock clock = m_desk.clock().now;
    const std::string done = plain(tr("Backed up to %1.").arg(words(target.string())));
    return beginWork(
        tr("Backing up"),
        [this, shop, target, clock,
         done](const BackgroundWork::Progress& progress) -> BackgroundWork::Outcome {
            auto reading = db::Shop::openReadOnly(shop, clock);
            if (!reading.ok())
                return reading.error();
            auto checked = db::checkQuickly(
                **reading, [&](double share, Phrase) { return progress(kChecking * share); });
            if (!checked.ok())
                return checked.error();
            const auto copied = db::backup(**reading, target, [&](int pagesDone, int pagesInAll) {
                const double share = pagesInAll > 0 ? static_cast<double>(pagesDone) / pagesInAll : 0;
                return progress(kChecking + (1 - kChecking) * share);
            });
            if (!copied.ok())
                return copied.error();
            return {done, [this, made = LastBackup{clock(), target}, found = std::move(*checked)] {
                        keepBackup(m_desk.file(), made);
                        m_desk.takeFindings(found);
                    }};
        });
}

void Workshop::printPaper(PaperName name, const SlipTarget& matter) {
    closeFinder();
    const auto errand = paperErrand(m_desk, name, matter);
    if (!errand.ok()) {
        m_foot->showFailure(words(errand.error().message));
        return;
    }
    beginWork(tr("Printing %1").arg(errand->title),
              [errand = *errand, choice = keptPrinters(),
               folder = paperFolder()](const BackgroundWork::Progress& progress) {
                  return printPapers(errand, printingHere(choice, folder), progress);
              });
}

// Undoes an act, or does again what an undo undid.
void Workshop::reverse(const db::HistoryEntry& entry) {
    db::Shop& file = m_desk.file();
    const bool isUndo = entry.undoes.has_value();
    const auto reversed = [id = entry.id, isUndo](db::Shop& shop, const auto& progress) {
        return isUndo ? db::redo(shop, id, progress) : shop.undo(id, progress);
    };
    if (entry.bytes < kLongAction || file.path().empty()) {
        m_desk.done(reversed(file, db::TellProgress{}));
        return;
    }
    const std::string done = plain(app::words(db::titleOfUndo(entry.title)));
    writeBeside(isUndo ? tr("Redoing") : tr("Undoing"),
                [reversed, done](db::Shop& beside, const auto& progress) -> Result<std::string> {
                    const auto outcome = reversed(beside, progress);
                    return outcome.ok() ? Result<std::string>{done} : outcome.error();
                });
}

// One deed that writes to the shop, on a thread and a connection of its own; the desk catches up with it.
bool Workshop::writeBeside(const QString& words, DeedBeside deed) {
    return beginWork(words,
                     [this, deed = std::move(deed), known = m_desk.known()](
                         const BackgroundWork::Progress& progress) -> BackgroundWork::Outcome {
                         const auto beside = ShopBeside::open(m_desk.file(), known);
                         if (!beside.ok())
                             return beside.error();
                         auto done = deed((*beside)->file(), progress);
                         if (!done.told.ok())
                             return done;
                         auto written = std::make_shared<WrittenBeside>((*beside)->written());
                         return {done.told, [this, written, then = done.inWindow] {
                                     if (then)
                                         then();
                                     m_desk.takeOver(std::move(*written));
                                 }};
                     });
}

// False: other work is under way, and the foot says so.
bool Workshop::beginWork(const QString& words, BackgroundWork::Work work) {
    const bool began = m_work->begin(words, std::move(work));
    if (!began)
        m_foot->showFailure(tr("Other work is under way; wait for it or stop it first."));
    return began;
}

} // namespace holdfast::app
