// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/backups_beside.h"

#include "app/desk/formats.h"
#include "app/desk/machine_settings.h"
#include "app/desk/shop_desk.h"

#include <algorithm>
#include <utility>

namespace holdfast::app {

namespace {

constexpr int kAfterStart = 3'000; // the start is over, and the check of the day has begun
constexpr Minutes kAfterRefusal{60};
constexpr const char* kSecondNote = "second-backup-on";

std::optional<BackupsKnown>& shownInstead() {
    static std::optional<BackupsKnown> backups;
    return backups;
}

} // namespace

std::filesystem::path secondBackupFolder() {
    const std::string chosen = plain(machineSetting(kBackupFolderSetting));
    return chosen.empty() ? std::filesystem::path{} : db::secondBackupFolder(chosen);
}

struct BackupsBeside::Wish {
    std::filesystem::path shop;
    std::filesystem::path second;
    db::Clock clock;
    LocalTime now{};
    bool isDueToday = false;
    bool isOn = false;
    bool mayCopy = true;
    bool isSound = true; // nothing is known to be wrong in the shop
    // As of the last look.
    std::vector<BackupShown> all;
    std::vector<std::filesystem::path> names;
};

struct BackupsBeside::Outcome {
    BackupsKnown known;
    std::vector<std::filesystem::path> names;
    bool isSecondUpToDate = false;
    std::optional<db::QuickFindings> found; // in the backup that was made
};

namespace {

bool hasOneOf(const std::filesystem::path& shop, LocalDate day, bool isWholeWanted) {
    return std::ranges::any_of(db::namedBackupsIn(db::backupFolder(shop), shop),
                               [&](const db::KeptBackup& each) {
                                   return dateOf(each.at) == day && (each.isWhole || !isWholeWanted);
                               });
}

bool hasNewest(const std::filesystem::path& shop, const std::filesystem::path& second, LocalTime now) {
    for (const db::KeptBackup& each : db::namedBackupsIn(db::backupFolder(shop), shop))
        if (each.isWhole && each.at <= now) {
            std::error_code unknown;
            return std::filesystem::exists(second / each.path.filename(), unknown);
        }
    return true;
}

std::vector<std::filesystem::path> namesIn(const std::filesystem::path& shop,
                                           const std::filesystem::path& second) {
    std::vector<std::filesystem::path> names;
    for (const auto& folder : {db::backupFolder(shop), second})
        for (const db::KeptBackup& each : db::namedBackupsIn(folder, shop))
            names.push_back(each.path);
    return names;
}

// What is in both folders is one.
std::vector<BackupShown> eachOnce(const std::vector<db::KeptBackup>& backups,
                                  const std::filesystem::path& second) {
    std::vector<BackupShown> shown;
    for (const db::KeptBackup& backup : backups) {
        const bool isInSecond = !second.empty() && backup.path.parent_path() == second;
        const auto same = std::ranges::find_if(shown, [&](const BackupShown& each) {
            return each.backup.path.filename() == backup.path.filename();
        });
        if (same == shown.end()) {
            shown.push_back({backup, !isInSecond, isInSecond, {}});
            continue;
        }
        same->isHere = same->isHere || !isInSecond;
        same->isInSecond = same->isInSecond || isInSecond;
        if (!isInSecond)
            same->backup = backup;
    }
    return shown;
}

} // namespace

BackupsBeside::BackupsBeside(ShopDesk& desk)
    : m_desk(desk)
    , m_work(std::make_unique<Beside<Outcome>>()) {
    m_first.setSingleShot(true);
    m_first.setInterval(kAfterStart);
    connect(&m_first, &QTimer::timeout, this, &BackupsBeside::look);
    connect(&desk, &ShopDesk::minutePassed, this, [this] {
        if (m_isOn)
            look();
    });
    connect(&desk, &ShopDesk::errandDone, this, [this] {
        m_notBefore.reset();
        m_noCopyBefore.reset();
        if (m_isOn)
            look();
    });
}

BackupsBeside::~BackupsBeside() = default;

void BackupsBeside::begin() {
    const db::Shop& file = m_desk.file();
    m_isOn = !file.path().empty() && !file.isReadOnly();
    if (shownInstead()) {
        m_known = *shownInstead();
        m_isLookedAt = true;
    } else if (m_isOn) {
        m_first.start();
    }
    emit changed(); // a place that was there before is notified that they are made
}

bool BackupsBeside::mayMakeToday() const {
    return m_isOn && (!m_notBefore || m_desk.now().instant >= *m_notBefore);
}

void BackupsBeside::look() {
    if (m_desk.file().path().empty() || shownInstead())
        return;
    m_isWantedAgain = m_work->isUnderWay();
    if (m_isWantedAgain)
        return;
    Wish wish;
    wish.shop = m_desk.file().path();
    wish.second = secondBackupFolder();
    wish.clock = m_desk.clock().now;
    wish.now = m_desk.now().local();
    wish.isSound = !m_desk.awaitsClimate() && m_desk.wrong().isNothing();
    wish.isDueToday = mayMakeToday();
    wish.isOn = m_isOn;
    wish.mayCopy = !m_noCopyBefore || m_desk.now().instant >= *m_noCopyBefore;
    wish.all = m_known.all;
    wish.names = m_names;
    m_work->begin(
        [wish = std::move(wish)](auto& reporter) {
            return lookedAt(wish, [&](double share) { return reporter.report(share); });
        },
        [this](Outcome outcome) {
            take(std::move(outcome));
            if (std::exchange(m_isWantedAgain, false))
                look();
        });
}

// Makes what is missing. The shop is opened only where there is something to make: this is asked each minute.
void BackupsBeside::makeMissing(const Wish& wish, const Progress& progress, Outcome& outcome) {
    // One of a damaged shop is made once; one that is whole as soon as it can be.
    const bool isDue = wish.isDueToday && !hasOneOf(wish.shop, dateOf(wish.now), wish.isSound);
    std::error_code unknown;
    outcome.known.isSecondThere = !wish.second.empty() && std::filesystem::is_directory(wish.second, unknown);
    outcome.isSecondUpToDate = outcome.known.isSecondThere && hasNewest(wish.shop, wish.second, wish.now);
    const bool isToCopy =
        wish.isOn && wish.mayCopy && outcome.known.isSecondThere && !outcome.isSecondUpToDate;
    if (!isDue && !isToCopy)
        return;
    auto reading = db::Shop::openReadOnly(wish.shop, wish.clock);
    if (!reading.ok()) {
        outcome.known.refusal = reading.error().message;
        return;
    }
    const auto tell = [&progress](double share, Phrase) { return progress(share); };
    if (isDue) {
        auto made = db::makeBackup(**reading, db::BackupReason::OfTheDay, wish.now, tell);
        if (made.ok())
            outcome.found = std::move(made->found);
        else
            outcome.known.refusal = made.error().message;
    }
    if (isToCopy || (isDue && outcome.known.isSecondThere)) {
        const auto copied = db::copyToSecondFolder(**reading, wish.second, wish.now, tell);
        outcome.isSecondUpToDate = copied.ok();
        if (!copied.ok())
            outcome.known.secondRefusal = copied.error().message;
    }
}

BackupsBeside::Outcome BackupsBeside::lookedAt(const Wish& wish, const Progress& progress) {
    Outcome outcome;
    outcome.known.secondFolder = wish.second;
    makeMissing(wish, progress, outcome);
    outcome.names = namesIn(wish.shop, wish.second);
    if (outcome.names == wish.names) {
        outcome.known.all = wish.all;
        return outcome;
    }
    outcome.known.all = eachOnce(db::backupsOf(wish.shop, wish.second), wish.second);
    for (BackupShown& each : outcome.known.all) {
        const auto read = std::ranges::find_if(
            wish.all, [&](const BackupShown& before) { return before.backup.path == each.backup.path; });
        each.orders = read != wish.all.end() ? read->orders : db::ordersIn(each.backup);
    }
    return outcome;
}

void BackupsBeside::take(Outcome outcome) {
    // A refusal stays until the next try, which is not made each minute.
    if (m_notBefore && outcome.known.refusal.empty() && !mayMakeToday())
        outcome.known.refusal = m_known.refusal;
    else if (!outcome.known.refusal.empty())
        m_notBefore = m_desk.now().instant + kAfterRefusal;
    else
        m_notBefore.reset();
    const bool waitsToCopy = m_noCopyBefore && m_desk.now().instant < *m_noCopyBefore;
    if (waitsToCopy && outcome.known.isSecondThere && outcome.known.secondRefusal.empty() &&
        !outcome.isSecondUpToDate)
        outcome.known.secondRefusal = m_known.secondRefusal;
    else if (!outcome.known.secondRefusal.empty())
        m_noCopyBefore = m_desk.now().instant + kAfterRefusal;
    else
        m_noCopyBefore.reset();
    m_known = std::move(outcome.known);
    m_names = std::move(outcome.names);
    m_isLookedAt = true;
    if (outcome.isSecondUpToDate && secondUpToDateOn() != m_desk.now().today())
        m_desk.file().keepNote(kSecondNote, isoDate(m_desk.now().today()));
    if (outcome.found && !outcome.found->isWhole())
        m_desk.takeFindings(std::move(*outcome.found));
    tellOfTrouble();
    emit changed();
}

// Once a day; the Back room goes on saying it.
void BackupsBeside::tellOfTrouble() {
    const LocalDate today = m_desk.now().today();
    if (!m_isOn)
        return;
    if (!m_known.refusal.empty() && m_failedOn != today) {
        emit m_desk.failed(tr("No backup was made today. %1").arg(words(m_known.refusal)));
        m_failedOn = today;
        return;
    }
    if (m_toldOn == today)
        return;
    if (!m_known.secondFolder.empty() && !m_known.isSecondThere) {
        const auto since = secondUpToDateOn();
        m_desk.say(since ? tr("The second backup folder, %1, is not there; its last backup is of %2.")
                               .arg(words(m_known.secondFolder.string()), day(*since))
                         : tr("The second backup folder, %1, is not there.")
                               .arg(words(m_known.secondFolder.string())));
        m_toldOn = today;
    } else if (!m_known.secondRefusal.empty()) {
        m_desk.say(
            tr("Nothing was copied to the second backup folder. %1").arg(words(m_known.secondRefusal)));
        m_toldOn = today;
    }
}

std::optional<LocalDate> BackupsBeside::secondUpToDateOn() const {
    db::Shop& file = m_desk.file();
    const auto note = file.read([&](db::Connection&) { return file.note(kSecondNote); });
    return note.ok() && *note ? parseIsoDate(**note) : std::nullopt;
}

void BackupsBeside::showInstead(std::optional<BackupsKnown> backups) {
    shownInstead() = std::move(backups);
}

void BackupsBeside::setSecondFolder(const std::filesystem::path& chosen) {
    keepMachineSetting(kBackupFolderSetting, words(chosen.string()));
    m_desk.file().dropNote(kSecondNote);
    m_toldOn.reset();
    m_noCopyBefore.reset();
    look();
}

} // namespace holdfast::app
