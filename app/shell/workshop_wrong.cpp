// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong in the shop file: looked for at each day's first opening and before each backup, shown in the
// way of work, mended, and where it cannot be, saved into a new file.
#include "app/desk/background_work.h"
#include "app/desk/formats.h"
#include "app/desk/shop_beside.h"
#include "app/shell/foot_line.h"
#include "app/shell/place_header.h"
#include "app/shell/places.h"
#include "app/shell/shop_paths.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "app/shell/wrong_place.h"
#include "db/backups/mending.h"
#include "db/check/check.h"
#include "db/check/mend.h"
#include "db/check/save.h"
#include "db/disk/new_file.h"

#include <QScrollArea>

#include <utility>

namespace holdfast::app {

namespace {

db::TellCheck told(const std::function<bool(double)>& progress) {
    return [&progress](double share, Phrase) { return progress(share); };
}

// "marsh.holdfast" → "marsh-saved.holdfast", or with a number where that is taken.
std::filesystem::path besideIt(const std::filesystem::path& shop) {
    std::filesystem::path free;
    for (int count = 1; free.empty() || std::filesystem::exists(free); ++count) {
        const std::string number = count == 1 ? "" : "-" + std::to_string(count);
        free = shop.parent_path() / (shop.stem().string() + "-saved" + number + shop.extension().string());
    }
    return free;
}

std::string savedWords(const db::Saved& saved, const std::filesystem::path& target) {
    const QString all = Workshop::tr("Saved to %1.").arg(words(target.string()));
    if (saved.lost.empty())
        return plain(Workshop::tr("%1 Nothing was lost.").arg(all));
    const QString lost = Workshop::tr("%1 What could not be saved: %2").arg(all, words(saved.lost.front()));
    const int more = howMany(saved.lost.size() - 1);
    return plain(more > 0 ? Workshop::tr("%1 And %n more.", nullptr, more).arg(lost) : lost);
}

// A demo is made again each day, and has no backups.
Result<Done> mendedFile(db::Shop& shop, bool isDemo, LocalTime now, const db::TellCheck& tell) {
    if (isDemo) {
        const auto mended = db::mendShop(shop, tell);
        return mended.ok() ? Result<Done>{Done{}} : mended.error();
    }
    const auto mended = db::mendWithBackup(shop, now, tell);
    return mended.ok() ? Result<Done>{Done{}} : mended.error();
}

} // namespace

// What a person set aside on this laptop is not shown again by itself; anything else is.
void Workshop::lookForWrong() {
    if (m_desk.awaitsClimate())
        return;
    const WhatIsWrong wrong = m_desk.wrong();
    if (wrong.isNothing())
        hideWrong();
    else if (m_wrong != nullptr)
        m_wrong->set(wrong);
    else if (!isSetAside(m_desk.file(), wrong))
        showWrong(wrong);
}

void Workshop::showWrong(const WhatIsWrong& wrong) {
    if (wrong.isNothing()) {
        m_foot->showWords(tr("Nothing is wrong in the shop file, as far as it was looked at."));
        return;
    }
    if (m_wrong == nullptr) {
        Place* before = place();
        m_slips->close();
        m_wrong = new WrongPlace(m_desk, m_room->widget());
        connect(m_wrong, &Place::subtitleChanged, this,
                [this] { m_header->setSubtitle(m_wrong->subtitle()); });
        connect(m_wrong, &WrongPlace::setAsideAsked, this, [this] {
            setAside(m_desk.file(), m_desk.wrong());
            hideWrong();
            m_foot->showWords(
                tr("Closed for now. The Back room opens it again, under The file and its backups."));
        });
        if (before != nullptr)
            before->hide();
        m_header->setTitle(tr("What is wrong in the shop file"));
        m_header->setTools(nullptr);
        m_header->setWayBack({});
    }
    m_wrong->set(wrong);
    arrange();
    m_wrong->show();
    m_wrong->opened();
}

void Workshop::hideWrong() {
    if (m_wrong == nullptr)
        return;
    m_wrong->hide();
    std::exchange(m_wrong, nullptr)->deleteLater();
    present(*builtPlace(m_current), {});
}

// On a thread and a connection of its own; nothing of it is seen where all is well.
void Workshop::checkOfTheDay() {
    db::Shop& file = m_desk.file();
    const LocalDate today = m_desk.now().today();
    if (file.path().empty() || file.isReadOnly() || wasCheckedOn(file, today))
        return;
    m_checkOfTheDay = new BackgroundWork(this);
    m_checkOfTheDay->begin({},
                           [this, path = file.path(), clock = m_desk.clock().now,
                            today](const BackgroundWork::Progress& progress) -> BackgroundWork::Outcome {
                               auto reading = db::Shop::openReadOnly(path, clock);
                               if (!reading.ok())
                                   return reading.error();
                               auto found = db::checkQuickly(**reading, told(progress));
                               if (!found.ok())
                                   return found.error();
                               return {std::string{}, [this, today, found = std::move(*found)] {
                                           if (found.isWhole())
                                               keepCheckedOn(m_desk.file(), today);
                                           else
                                               m_desk.takeFindings(found);
                                       }};
                           });
}

void Workshop::checkFile() {
    const std::filesystem::path shop = m_desk.file().path();
    if (shop.empty()) {
        m_foot->showFailure(tr("This shop has no file yet."));
        return;
    }
    const std::string whole = plain(tr("The shop file is whole: every row is as its history says."));
    const std::string other = plain(tr("The check found what is shown here."));
    beginWork(tr("Checking the shop file"),
              [this, shop, clock = m_desk.clock().now, whole,
               other](const BackgroundWork::Progress& progress) -> BackgroundWork::Outcome {
                  auto reading = db::Shop::openReadOnly(shop, clock);
                  if (!reading.ok())
                      return reading.error();
                  auto faults = db::checkShop(**reading, told(progress));
                  if (!faults.ok())
                      return faults.error();
                  const std::string outcome = faults->empty() ? whole : other;
                  return {outcome, [this, found = db::QuickFindings{{}, std::move(*faults)}] {
                              m_desk.takeFindings(found);
                          }};
              });
}

void Workshop::mendFile() {
    if (m_desk.file().path().empty()) {
        m_foot->showFailure(tr("This shop has no file yet."));
        return;
    }
    const bool isDemo = isDemoShop(m_desk.file().path());
    const std::string whole = plain(
        isDemo ? tr("Mended. The shop file is whole again.")
               : tr("Mended. The shop file is whole again. What was there before is kept as a backup."));
    const std::string partly = plain(
        isDemo ? tr("Mended as far as the history tells how. What is left is shown here.")
               : tr("Mended as far as the history tells how. What is left is shown here; an earlier backup "
                    "may have it. What was there before is kept as one too."));
    writeBeside(tr("Mending the shop file"),
                [this, isDemo, whole, partly, at = m_desk.now().local()](
                    db::Shop& shop, const BackgroundWork::Progress& progress) -> BackgroundWork::Outcome {
                    if (const auto mended = mendedFile(shop, isDemo, at, told(progress)); !mended.ok())
                        return mended.error();
                    auto found = db::checkQuickly(shop);
                    if (!found.ok())
                        return found.error();
                    return {found->isWhole() ? whole : partly,
                            [this, found = std::move(*found)] { m_desk.takeFindings(found); }};
                });
}

void Workshop::saveWhatCanBe() {
    const std::filesystem::path shop = m_desk.file().path();
    if (shop.empty()) {
        m_foot->showFailure(tr("This shop has no file yet."));
        return;
    }
    beginWork(
        tr("Saving what can be saved"),
        [shop, target = besideIt(shop)](const BackgroundWork::Progress& progress) -> Result<std::string> {
            const auto saved = db::saveWhatCanBe(shop, target, told(progress));
            if (!saved.ok())
                return saved.error();
            return savedWords(*saved, target);
        });
}

} // namespace holdfast::app
