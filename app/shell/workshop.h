// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The frame about the places of one open shop: rail, header, foot, slips at the right edge, the command
// finder. Makes a place when it is first opened and swaps them; what a place does is its own business.

#include "app/desk/background_work.h"
#include "app/shell/finder_entries.h"
#include "app/shell/places.h"
#include "core/orders/due_days.h"

#include <QWidget>

#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <vector>

class QScrollArea;

namespace holdfast::db {
class PreparedBackup;
}

namespace holdfast::app {

class AwaitedPlace;
class CommandFinder;
class CountAlarm;
class FootLine;
class FormSlip;
class KeyboardKeeper;
class PlaceHeader;
class Rail;
class ScanListener;
class Slip;
class SlipEdge;
class WrongPlace;

class Workshop : public QWidget {
    Q_OBJECT

public:
    explicit Workshop(ShopDesk& desk, QWidget* parent = nullptr);
    ~Workshop() override;

    // Shows the place that was open last.
    void begin();
    void turnTo(PlaceName name, const SlipTarget& matter = {});
    // As turnTo, from the place shown, which a way leads back to until another is turned to.
    void leadTo(PlaceName name, const SlipTarget& matter);
    PlaceName current() const { return m_current; }
    // The one in view: that turned to, or what is wrong in the shop file in its room.
    Place* place() const;
    bool showsWrong() const { return m_wrong != nullptr; }

    void showSlip(SlipName name, const SlipTarget& matter);
    // At the printer, or without one as a PDF; the foot says which.
    void printPaper(PaperName name, const SlipTarget& matter);
    void act(ShellAct act);
    void doErrand(Errand errand);
    // What a scanner typed; opens what it names, or says why not.
    void openScanned(const QString& typed);

    SlipEdge* slipEdge() const { return m_slips; }
    CommandFinder* finder(); // made when first asked for: the start is shorter without it
    FootLine* foot() const { return m_foot; }
    CountAlarm* alarm() const { return m_alarm; }

signals:
    void anotherShopAsked();
    // All is ready but the putting in place, for which the shop must be closed.
    void puttingBackReady(const std::shared_ptr<holdfast::db::PreparedBackup>& backup);
    void textSizeAsked(int percent);

protected:
    void resizeEvent(QResizeEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    bool focusNextPrevChild(bool next) override;

private:
    void present(const BuiltPlace& place, const SlipTarget& matter);
    void putKeyboardIn(Place& shown);
    void showOwnSteps(const Place& shown);
    void endWaitForClimate();
    void listenToDesk();
    void makeKeys();
    void makeWork();
    void keepKeyboard();
    void arrange();
    void follow(const FinderTarget& target);
    void refreshFrame();
    void showCounts();
    void undo();
    void redo();
    void reverse(const db::HistoryEntry& entry);
    void changeLight();
    void changeTextSize(int percent);
    void showAbout();
    void showLicences();
    void closeFinder();
    void layPlace(const QRect& room);
    void followPlace(); // after what it needs became more or less
    void openBackupSlip();
    bool backUp(const std::filesystem::path& target);
    void openDueDaysSlip();
    bool saveDueDays(const std::filesystem::path& target, Names names);
    void checkFile();
    void lookForWrong();
    void showWrong(const WhatIsWrong& wrong);
    void hideWrong();
    void checkOfTheDay();
    void mendFile();
    void saveWhatCanBe();
    bool beginWork(const QString& words, BackgroundWork::Work work); // false: other work is under way
    bool writeBeside(const QString& words, DeedBeside deed);
    void openWorkSlip(FormSlip* slip, std::function<void()> again);
    void openCopySlip();
    void openNewsSlip();
    void openTakingInSlip();
    void openBecomingSlip();
    void openBackupFolderSlip();
    void openPuttingBackSlip(const std::filesystem::path& backup);
    // `again` opens the same with nothing typed.
    void openSlip(Slip* slip, std::function<void()> again = {}, const QString& key = {});
    bool isOverPlace(const QWidget* focused) const;
    bool isKeyOfPlace(const QKeySequence& keys) const;
    Place* made(const BuiltPlace& place);

    ShopDesk& m_desk;
    Rail* m_rail = nullptr;
    PlaceHeader* m_header = nullptr;
    FootLine* m_foot = nullptr;
    SlipEdge* m_slips = nullptr;
    CountAlarm* m_alarm = nullptr;
    CommandFinder* m_finder = nullptr;
    BackgroundWork* m_work = nullptr;
    BackgroundWork* m_checkOfTheDay = nullptr; // nobody waits for it
    WrongPlace* m_wrong = nullptr;
    KeyboardKeeper* m_keyboard = nullptr;
    ScanListener* m_scanner = nullptr;
    QScrollArea* m_room = nullptr; // the place shown is in it, and scrolls where it is larger
    QSize m_leastLaid;             // what the place needed when it was laid
    std::map<PlaceName, Place*> m_places;
    PlaceName m_current = PlaceName::FairTable;
    std::optional<PlaceName> m_ledFrom;
    std::vector<AwaitedPlace*> m_awaited; // among m_places, until the climate log is read
    std::optional<AskSlip> m_slipAwaited;
    std::function<void()> m_openAgain; // the slip that is open
};

} // namespace holdfast::app
