#pragma once
// Press walk: the day's garments in heat runs, the one in hand with its seconds, the cooling rack, and aside
// what cannot be pressed with what frees it. Space is Next.

#include "app/desk/place.h"
#include "app/places/press_walk/count_panel.h"
#include "app/places/press_walk/rack_list.h"
#include "app/places/press_walk/step_counts.h"
#include "app/places/press_walk/walk_model.h"

#include <QTimer>

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
class PromisedNotice;
class WalkTools;

class PressWalkPlace : public Place {
    Q_OBJECT

public:
    explicit PressWalkPlace(ShopDesk& desk, QWidget* parent = nullptr);
    ~PressWalkPlace() override;

    QString subtitle() const override;
    QWidget* headerTools() override;
    void opened() override;
    void turnTo(const Matter& matter) override;

    bool eventFilter(QObject* watched, QEvent* event) override;

protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    // building
    QWidget* makeWalkColumn();
    QWidget* makeCentre();
    QWidget* makeAsideColumn();
    QWidget* makeKeys();
    void listen();
    Button* makeKey(const QString& words, const QString& iconName, Qt::Key key, const QString& name);

    // showing
    void refresh(); // at once where it is seen, else when it is shown again
    void showWalk();
    void tick();
    void showPanel();
    void showNext();
    void showKeys();
    void showGarment();
    void showRack();
    void armZero();
    PanelWords panelWords() const;
    PanelWords stepWords(GarmentId garment) const;
    PanelWords restingWords() const; // nothing is in hand
    QString nextWords() const;

    // what stands where
    const Garment& garmentOf(GarmentId garment) const;
    QString numberOf(GarmentId garment) const;
    const RouteStep* openStep(GarmentId garment) const;
    std::optional<GarmentId> dueOnRack() const;
    std::optional<GarmentId> firstPlanned() const;
    std::optional<GarmentId> shownGarment() const;
    bool isHeatCounting() const;
    bool mustBeHeld() const; // Next would end a count before its time
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
    void countAgain();
    void setPaused(bool isPaused);
    void turnToPromised();
    void freeCurrent();
    void waiveCurrent();
    void printDaySheet();
    void turnToBench(const AsideEntry& entry);
    void note(const QString& words);

    StepCounts m_counts;
    std::optional<GarmentId> m_chosen; // turned to by hand, in place of the one the walk names
    std::optional<GarmentId> m_inHand;
    bool m_isPaused = false;
    bool m_isHoldOffered = false;
    bool m_isStale = true;                  // something changed while nobody looked
    bool m_heldIsDone = false;              // the key is still down after what it was held for
    quint64 m_spaceReleased = 0;            // by the system's clock of events
    std::map<GarmentId, Instant> m_sounded; // steps whose end was sounded, by their start
    std::function<void()> m_heldAct;
    QString m_note;
    std::shared_ptr<const ReckonedShop> m_shop;
    Walk m_walk;

    QTimer m_tick;
    QTimer m_zero;
    QTimer m_held;
    QTimer m_noteEnds;

    WalkModel m_model;
    QStackedWidget* m_pages = nullptr;
    QWidget* m_emptyPage = nullptr;
    EmptyState* m_empty = nullptr;
    QWidget* m_walkColumn = nullptr;
    QWidget* m_asideColumn = nullptr;
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
    Card* m_rackCard = nullptr;
    RackList* m_rack = nullptr;
    Label* m_rackEmpty = nullptr;
    Card* m_asideCard = nullptr;
    PromisedNotice* m_promised = nullptr;
    AsideList* m_aside = nullptr;
    Label* m_asideEmpty = nullptr;
    WalkTools* m_tools = nullptr;
};

} // namespace holdfast::app
