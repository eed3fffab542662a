// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Backups that are made by themselves, on a thread of their own: one a day, at the day's first opening or
// when the day begins while the shop is open, and the newest one into the second folder as soon as that is
// there. Nothing is asked and nothing is in the way: what could not be done is said in the foot, once a day,
// and in the Back room until it can.

#include "app/desk/beside.h"
#include "db/backups/backups.h"

#include <QTimer>

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::app {

class ShopDesk;

struct BackupShown {
    db::KeptBackup backup; // in the own folder where it is there too
    bool isHere = false;   // in the own folder
    bool isInSecond = false;
    std::optional<std::int64_t> orders; // none: it cannot be read
};

struct BackupsKnown {
    std::vector<BackupShown> all;       // the newest first
    std::filesystem::path secondFolder; // empty: none was chosen
    bool isSecondThere = false;
    Sentence refusal;       // why today's is missing; empty: it is not
    Sentence secondRefusal; // why the second folder has not got it
};

// That of ours in the folder chosen on this computer; empty where none was.
std::filesystem::path secondBackupFolder();

class BackupsBeside : public QObject {
    Q_OBJECT

public:
    explicit BackupsBeside(ShopDesk& desk);
    ~BackupsBeside() override;

    // From now on they are made. Not for a demo; and not for a shop without a file, or open for reading only.
    void begin();
    bool isOn() const { return m_isOn; }

    // Looks at both folders and makes what is missing; changed() comes at the end.
    void look();
    const BackupsKnown& known() const { return m_known; }
    bool isLookedAt() const { return m_isLookedAt; }

    // The day on which the second folder last was up to date.
    std::optional<LocalDate> secondUpToDateOn() const;
    // An empty path: none. The folder of ours in it is there already.
    void setSecondFolder(const std::filesystem::path& chosen);

    // Instead of what is in the folders, as for pictures: then none is made. None: what is in them again.
    static void showInstead(std::optional<BackupsKnown> backups);

signals:
    void changed();

private:
    struct Outcome; // of one look
    struct Wish;
    using Progress = std::function<bool(double)>;
    static void makeMissing(const Wish& wish, const Progress& progress, Outcome& outcome);
    static Outcome lookedAt(const Wish& wish, const Progress& progress);
    void take(Outcome outcome);
    void tellOfTrouble();
    bool mayMakeToday() const;

    ShopDesk& m_desk;
    bool m_isOn = false;
    bool m_isLookedAt = false;
    BackupsKnown m_known;
    std::optional<Instant> m_notBefore;    // after a refusal
    std::optional<Instant> m_noCopyBefore; // likewise, into the second folder
    std::optional<LocalDate> m_failedOn;   // said in the foot
    std::optional<LocalDate> m_toldOn;
    std::vector<std::filesystem::path> m_names; // in both folders, as they were listed
    bool m_isWantedAgain = false;
    QTimer m_first;
    std::unique_ptr<Beside<Outcome>> m_work;
};

} // namespace holdfast::app
