// SPDX-License-Identifier: GPL-3.0-or-later
// The errands of the second laptop: a copy for it, news written, news taken in.
#include "app/desk/backups_beside.h"
#include "app/desk/formats.h"
#include "app/shell/foot_line.h"
#include "app/shell/laptop_slips.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "db/exchange/exchange.h"

#include <algorithm>

namespace holdfast::app {

namespace {

struct Laptops {
    std::vector<db::Seat> others;
    bool isTheWorkshop = true;
};

Result<Laptops> laptopsOf(db::Shop& shop) {
    return shop.read([](db::Connection& connection) {
        Laptops laptops{db::seats(connection), db::isTheWorkshop(connection)};
        std::erase_if(laptops.others, [](const db::Seat& seat) { return seat.isHere || !seat.isInUse; });
        return laptops;
    });
}

QString entriesWords(std::int64_t entries) {
    return Workshop::tr("%n entry|%n entries", nullptr, howMany(entries));
}

// Half of the progress is the backup's; the news begins again.
Result<Done> backedUpBeforeNews(db::Shop& shop, bool isWanted, LocalTime now,
                                const std::function<bool(double)>& progress) {
    if (!isWanted)
        return Done{};
    const auto made = db::makeBackup(shop, db::BackupReason::BeforeNews, now,
                                     [&progress](double share, Phrase) { return progress(share / 2); });
    if (made.ok())
        return Done{};
    return plainError(said("Nothing was brought in, because no backup could be made before. {why}",
                           {{"why", made.error().message}}));
}

std::string takenInWords(const db::NewsTakenIn& taken) {
    QString said =
        taken.added == 0
            ? Workshop::tr("Nothing new from %1.").arg(words(taken.fromName))
            : Workshop::tr("Brought in %1 from %2.").arg(entriesWords(taken.added), words(taken.fromName));
    if (taken.isFromAnotherCopy)
        said = Workshop::tr(
                   "%1 It came from another copy of that laptop’s file than before: keep to one of them.")
                   .arg(said);
    if (taken.added > 0 && !taken.differences.empty())
        said = Workshop::tr("%1 %n change could not be made as entered: see Back room, Second laptop.|"
                            "%1 %n changes could not be made as entered: see Back room, Second laptop.",
                            nullptr, howMany(taken.differences.size()))
                   .arg(said);
    return plain(said);
}

} // namespace

void Workshop::doErrand(Errand errand) {
    switch (errand) {
    case Errand::BackUp:
        openBackupSlip();
        return;
    case Errand::ChooseBackupFolder:
        openBackupFolderSlip();
        return;
    case Errand::PutBackBackup:
        openPuttingBackSlip({});
        return;
    case Errand::CheckFile:
        checkFile();
        return;
    case Errand::ShowWrong:
        closeFinder();
        showWrong(m_desk.wrong());
        return;
    case Errand::MendFile:
        mendFile();
        return;
    case Errand::SaveWhatCanBe:
        saveWhatCanBe();
        return;
    case Errand::SaveDueDays:
        openDueDaysSlip();
        return;
    case Errand::OpenAnother:
        emit anotherShopAsked();
        return;
    case Errand::CopyForLaptop:
        openCopySlip();
        return;
    case Errand::WriteNews:
        openNewsSlip();
        return;
    case Errand::TakeInNews:
        openTakingInSlip();
        return;
    case Errand::BecomeWorkshop:
        openBecomingSlip();
        return;
    }
}

void Workshop::openCopySlip() {
    if (m_desk.file().path().empty())
        return m_foot->showFailure(tr("This shop has no file yet."));
    auto* slip = new CopyForLaptopSlip(m_desk, m_slips);
    connect(slip, &CopyForLaptopSlip::copyAsked, this,
            [this, slip](const std::filesystem::path& target, const std::string& name) {
                keepNewsFolder(m_desk, target);
                if (writeBeside(tr("Copying the shop"),
                                [target, name](db::Shop& shop, const auto& progress) -> Result<std::string> {
                                    const auto seat = db::makeCopyForLaptop(shop, target, name, progress);
                                    if (!seat.ok())
                                        return seat.error();
                                    return plain(tr("The shop for %1 is in %2, with order numbers %3 to %4.")
                                                     .arg(words(seat->name), words(target.string()))
                                                     .arg(seat->firstOrderNumber)
                                                     .arg(seat->lastOrderNumber));
                                }))
                    slip->waitForWork();
            });
    openWorkSlip(slip, [this] { openCopySlip(); });
}

void Workshop::openNewsSlip() {
    const auto laptops = laptopsOf(m_desk.file());
    if (!m_desk.done(laptops))
        return;
    if (laptops->others.empty())
        return m_foot->showFailure(
            tr("There is no other laptop to save news for: make a copy for one first."));
    auto* slip = new WriteNewsSlip(m_desk, laptops->others, laptops->isTheWorkshop, m_slips);
    connect(
        slip, &WriteNewsSlip::newsAsked, this,
        [this, slip](const std::filesystem::path& target, db::SeatNumber laptop) {
            keepNewsFolder(m_desk, target);
            if (writeBeside(tr("Saving news"),
                            [target, laptop](db::Shop& shop, const auto& progress) -> Result<std::string> {
                                const auto written = db::writeNews(shop, target, laptop, progress);
                                if (!written.ok())
                                    return written.error();
                                return plain(tr("News for %1: %2, in %3.")
                                                 .arg(words(written->to), entriesWords(written->entries),
                                                      words(target.string())));
                            }))
                slip->waitForWork();
        });
    openWorkSlip(slip, [this] { openNewsSlip(); });
}

void Workshop::openTakingInSlip() {
    auto* slip = new TakeInNewsSlip(m_desk, m_slips);
    connect(slip, &TakeInNewsSlip::takingInAsked, this, [this, slip](const std::filesystem::path& news) {
        keepNewsFolder(m_desk, news);
        const bool isBackedUp = m_desk.backups().isOn();
        const LocalTime now = m_desk.now().local();
        if (writeBeside(tr("Bringing in news"),
                        [news, isBackedUp, now](db::Shop& shop, const auto& progress) -> Result<std::string> {
                            if (const auto kept = backedUpBeforeNews(shop, isBackedUp, now, progress);
                                !kept.ok())
                                return kept.error();
                            const auto taken = db::takeInNews(shop, news, progress);
                            if (!taken.ok())
                                return taken.error();
                            return takenInWords(*taken);
                        }))
            slip->waitForWork();
    });
    openWorkSlip(slip, [this] { openTakingInSlip(); });
}

void Workshop::openBecomingSlip() {
    const auto laptops = laptopsOf(m_desk.file());
    if (!m_desk.done(laptops))
        return;
    if (laptops->isTheWorkshop)
        return m_foot->showFailure(tr("This is the workshop’s copy already."));
    auto* slip = new BecomeWorkshopSlip(m_desk, m_slips);
    connect(slip, &BecomeWorkshopSlip::becomingAsked, this, [this, slip] {
        if (writeBeside(tr("Making this the workshop’s copy"),
                        [](db::Shop& shop, const auto&) -> Result<std::string> {
                            const auto next = db::becomeWorkshop(shop);
                            if (!next.ok())
                                return next.error();
                            return plain(
                                tr("This is the workshop’s copy now. Its next order gets number %1, so "
                                   "that no ticket of the lost file comes twice.")
                                    .arg(*next));
                        }))
            slip->waitForWork();
    });
    openWorkSlip(slip, [this] { openBecomingSlip(); });
}

} // namespace holdfast::app
