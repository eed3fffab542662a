// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Press walk: the day's garments in heat runs, the one in hand with its seconds, the cooling rack, and aside
// what cannot be pressed with what frees it. Space is Next.

#include "app/desk/formats.h"
#include "app/desk/place.h"
#include "app/places/press_walk/count_panel.h"
#include "app/places/press_walk/rack_list.h"
#include "app/places/press_walk/walk_model.h"
#include "core/press/next_at_press.h"

#include <QTimer>

class QGridLayout;
class QListView;
class QStackedWidget;

namespace holdfast::app {

class AsideList;
class Button;
class Card;
class CurrentGarment;
class DayStrip;
class EmptyState;
class Label;
class SewnTabs;
class VerticalScroll;
class WalkNotice;
class WalkTools;

class PressWalkPlace : public Place {
    Q_OBJECT

public:
    explicit PressWalkPlace(ShopDesk& desk, QWidget* parent = nullptr);
    ~PressWalkPlace() override;

    QString subtitle() const override;
    QWidget* headerTools() override;
    void opened() override;
    void takeKeyboard() override;
    void turnTo(const SlipTarget& matter) override;
    // A bag tag takes its garment up, if it may be taken up; a claim ticket shows which of its garments is
    // next. Whatever it is, no step is finished by it and nothing is taken from the rack.
    bool takeScan(const SlipTarget& matter) override;
    QVector<PlaceKey> moreKeys() const override;

    bool eventFilter(QObject* watched, QEvent* event) override;

protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    // building
    QWidget* makePage();
    void makeWalk();
    QWidget* makeCentre();
    void makeRack();
    void makeAside();
    QWidget* makeKeys();
    QWidget* makeFoot();
    void listen();
    void listenToKeys();
    Button* makeKey(const QString& words, const QString& iconName, Qt::Key key, const QString& name);

    // where the parts are
    enum class Arrangement { None, Wide, Beside, Above }; // three columns; two, with tabs; the garment on top
    enum class Side { Walk, Aside };                      // of the tabs
    void arrange();
    void place(Arrangement arrangement);
    void fitCentre();
    void showSide(Side side);
    bool isLow() const; // the tabs and the rack leave the walk most of their column
    void showTabs();

    // showing
    void refresh(); // at once where it is seen, else when it is shown again
    void showWalk();
    void showList();
    void tick();
    void showPanel();
    void showNext();
    void showKeys();
    void showGarment();
    void showRack();
    PanelWords panelWords() const;
    QString heatToSet(GarmentId garment) const;
    PanelWords stepWords(GarmentId garment) const;
    PanelWords tooLongWords(const RouteStep& step, const StepCount& count) const;
    PanelWords askewWords(const RouteStep& step, const StepCount& count) const;
    PanelWords broughtBackWords(GarmentId garment) const;
    PanelWords plannedWords(GarmentId garment) const;
    PanelWords awaitedWords(GarmentId garment) const;
    PanelWords idleWords() const;
    QString handsAreFull() const;              // why no other is taken up
    QString dueWords(GarmentId garment) const; // "419-a: peel cool now. 1 turns to it."
    QString nextWords() const;
    QString whyNotNext() const; // empty where Next does something
    std::vector<RackRow> rackRows() const;
    RackRow rackRow(GarmentId garment, RackRow::State state, const QString& words,
                    const QString& digits) const;

    // what is where
    const Garment& garmentOf(GarmentId garment) const;
    QString numberOf(GarmentId garment) const;
    const RouteStep* openStep(GarmentId garment) const;
    const StepCounts& counts() const { return desk().counts(); }
    std::vector<OnTheRack> rackNow() const;
    NextAtPress offered() const; // what Next does
    std::optional<GarmentId> shownGarment() const { return offered().garment; }
    bool isUnderHeat() const;    // the garment in hand, by a closed platen, whether its count is over or not
    bool isHeatCounting() const; // and it is not over yet
    bool isTooLong() const;      // and it is likely scorched
    bool mustBeHeld() const;     // Next would end a count before its time
    // A paused walk lets go of nothing but what lies under heat.
    bool isStopped() const { return m_isPaused && !isUnderHeat(); }
    bool isOnPress(GarmentId garment) const;

    // keys
    bool takeKeyPress(const QKeyEvent& event, QWidget* focus);
    bool takeKeyRelease(const QKeyEvent& event);
    bool takeLetter(int key);
    bool takeArrow(int key, QWidget* focus);
    void hold(std::function<void()> act, const QString& note);
    void release();

    // doing
    void next();
    void nextNow(); // whatever still counts
    void finish(GarmentId garment);
    bool takeUp(GarmentId garment);
    void takeUpFollowing();
    void turnToGarment(GarmentId garment);
    void turnToRackRow(int row);
    void takeFromRack(GarmentId garment);
    void backAStep();
    void offerHold();
    void backOnTheWalk();
    void askSpoil();
    // What became of a garment that was under heat too long.
    void pressedOn();
    void spoiledByHeat();
    void putBack();
    void countAgain();
    bool takeUpScanned(const Garment& garment);
    QString whyNotTakenUp(const Garment& garment) const; // empty where it may be
    bool showNextOf(OrderId order);
    void pointTo(GarmentId garment); // in its list, without a change to it
    void toggleStrip();
    void setPaused(bool isPaused);
    void turnToPromised();
    void freeCurrent();
    void waiveCurrent();
    void printDaySheet();
    void turnToBench(const AsideEntry& entry);
    void note(const QString& words);
    void noteWhileCounting(const QString& words); // gone once the count is over
    template <class T>
    bool did(const Result<T>& outcome) {
        // The reason of a refusal is said in the foot line and, to be read from two metres, in the panel.
        if (!outcome.ok())
            note(words(outcome.error().message));
        return desk().done(outcome);
    }

    std::optional<GarmentId> m_chosen; // turned to by hand, in place of the one the walk names
    std::optional<GarmentId> m_inHand;
    bool m_isPaused = false;
    bool m_isHoldOffered = false;
    bool m_isStale = true;       // something changed while nobody looked
    bool m_heldIsDone = false;   // the key is still down after what it was held for
    quint64 m_spaceReleased = 0; // by the system's clock of events
    std::function<void()> m_heldAct;
    QString m_note;
    bool m_isNoteOfCount = false;
    std::optional<GarmentId> m_shownInList; // what the list was last turned to
    std::shared_ptr<const ReckonedShop> m_shop;
    Walk m_walk;

    QTimer m_tick;
    QTimer m_held;
    QTimer m_noteEnds;

    WalkModel m_model;
    QStackedWidget* m_pages = nullptr;
    QWidget* m_emptyPage = nullptr;
    EmptyState* m_empty = nullptr;
    VerticalScroll* m_scroll = nullptr;
    QGridLayout* m_columns = nullptr;
    Arrangement m_arrangement = Arrangement::None;
    Side m_side = Side::Walk;
    SewnTabs* m_tabs = nullptr;
    QWidget* m_centre = nullptr;
    QWidget* m_foot = nullptr;
    Card* m_walkCard = nullptr;
    WalkNotice* m_late = nullptr;
    QListView* m_list = nullptr;
    EmptyState* m_nothingReady = nullptr;
    DayStrip* m_strip = nullptr;
    Button* m_showsStrip = nullptr;
    CurrentGarment* m_current = nullptr;
    CountPanel* m_panel = nullptr;
    Button* m_next = nullptr;
    QStackedWidget* m_keys = nullptr;
    Button* m_back = nullptr;
    Button* m_hold = nullptr;
    Button* m_pause = nullptr;
    Button* m_spoil = nullptr;
    Button* m_unbegin = nullptr;
    Button* m_goOn = nullptr;
    Button* m_pressedOn = nullptr;
    Button* m_spoiledByHeat = nullptr;
    Button* m_putBack = nullptr;
    std::vector<std::pair<Button*, QString>> m_keyButtons; // with their icons
    Card* m_rackCard = nullptr;
    RackList* m_rack = nullptr;
    Label* m_rackEmpty = nullptr;
    Card* m_asideCard = nullptr;
    WalkNotice* m_promised = nullptr;
    AsideList* m_aside = nullptr;
    Label* m_asideEmpty = nullptr;
    WalkTools* m_tools = nullptr;
};

} // namespace holdfast::app
