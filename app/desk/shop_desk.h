// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The open shop as the places see it: its file, the clock, and everything reckoned from both.
//
// A place asks shop() for the reckoned shop and shows it; it does something by calling an action of
// db/actions with file(), and hands the outcome to done(). changed() then comes by itself.
//
// A long climate log is read in the background (see docs/decisions/climate-beside.md): as long as
// awaitsClimate(), shop() is as if no reading were known, and whatever depends on how rolls were kept is
// not to be shown.

#include "app/desk/background_work.h"
#include "app/desk/climate_beside.h"
#include "app/desk/clock.h"
#include "app/desk/count_watch.h"
#include "app/desk/formats.h"
#include "app/desk/plan_beside.h"
#include "app/desk/shop_beside.h"
#include "app/desk/what_is_wrong.h"
#include "core/facts/invoice.h"
#include "core/holds/finding.h"
#include "core/quality/claim.h"
#include "core/shop/reckoned_shop.h"
#include "core/shop/walk.h"
#include "db/journal/shop.h"

#include <QObject>
#include <QString>
#include <QTimer>

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::app {

// The shop's own numbers, as a form asks for them.
enum class SettingsPart { Shop, Money, Bill, PriceList, Hours, Washing, Cutting, Pressing };

// Forms that any place may ask for; the shell shows them at the right edge (see app/slips).
enum class SlipName {
    ReadLabel,
    MarkNotPrewashed,
    ChooseWayRound,
    NoteLawChecked,
    ReceiveBlanks,
    CorrectCount,
    AddStyle,
    ChangeStyle,
    CopyStyle,
    ChangeBlank,
    MarkDry,
    MeasureShrinkage,
    ReceiveRoll,
    RollMove,
    TestStrip,
    RecordReading,
    CorrectReading,
    ImportReadings,
    UseUpRoll,
    ChangePlace,
    AddFilm,
    FilmSheet,
    NextShade,
    Recipe,
    ChangeFilm,
    Miscut,
    CheckPress,
    AddPress,
    ChangePress,
    Layers,
    ConfirmWording,
    TakeMoney,
    OrdersFile,
    CountTill,
    MovePromise,
    Customer,
    JoinCustomers,
    ForgetCustomer,
    OrderNote,
    PartOrder,
    Invoice,
    CreditNote,
    CancelOrder,
    CameBack,
    AnswerClaim,
    Waive,
    Spoil,
    AddFair,
    ChangeFair,
    Scanner,
    Settings,
};

// What the Back room shows at the right of its list.
enum class RoomSection {
    Shop,
    Prices,
    Work,
    Styles,
    Films,
    Presses,
    Fairs,
    Copies,
    Laptops,
    Computer,
    Printers
};

// What Figures shows next to its list.
enum class FigureQuestion {
    CameBack,
    WhatIsCommon,
    Holding,
    Months,
    Promises,
    Takings,
    Earned,
    Bring,
    Buy,
    Till,
    Film
};

// What a form or an action is about; which fields are set depends on what is to be done.
struct SlipTarget {
    std::optional<OrderId> order;
    std::optional<CustomerId> customer;
    std::optional<GarmentId> garment;
    std::optional<DecalId> decal;
    std::vector<DecalId> decals; // of what is to be cut now; empty: all that waits
    std::optional<RollId> roll;
    std::optional<FilmId> film;
    std::optional<BlankLotId> lot;
    std::optional<BlankStyleId> style;
    std::optional<PlaceId> place;
    std::optional<PressId> press;
    std::optional<Rule> rule;
    std::optional<ColourId> colour;
    std::optional<ClaimId> claim;
    std::optional<FairId> fair;
    std::optional<InvoiceId> invoice;     // or credit note; none: the one of the order that is in force
    std::optional<SettingsPart> settings; // none: all of them
    std::optional<RoomSection> section;   // of the Back room
    std::optional<FigureQuestion> question;
    std::optional<Instant> at;    // of a reading
    std::optional<SlipName> then; // the form that goes on once this one is done
    QString size;
    bool isAgain = false; // at the fair table: the same once more, as an order of its own

    static SlipTarget of(const Finding& finding, const Garment& garment);
};

enum class PlaceName {
    FairTable,
    PressWalk,
    FilmShelf,
    BlankRail,
    CuttingBench,
    OrderBook,
    Figures,
    BackRoom
};

// What is printed (see app/papers); the shell has it made and sent to the printer.
enum class PaperName {
    ClaimTicket,
    CareCards,
    BagTags,
    Quotation,
    Receipt,
    Invoice, // or credit note
    DaySheet,
    RollLabel,
    BuyingList,
    TestLabel,
    TestSheet
};

// What the shell does with the file as a whole, in the background where it takes long.
enum class Errand {
    BackUp,
    ChooseBackupFolder, // the second one
    PutBackBackup,      // which is asked
    CheckFile,
    ShowWrong, // what cannot be read, or is otherwise wrong in the file
    MendFile,
    SaveWhatCanBe,
    OpenAnother,
    SaveDueDays, // as a calendar
    CopyForLaptop,
    WriteNews,
    TakeInNews,
    BecomeWorkshop
};

// An action that may take long. It asks `progress` now and then with the share done, and stops where that
// answers false.
using DeedBeside =
    std::function<BackgroundWork::Outcome(db::Shop& shop, const BackgroundWork::Progress& progress)>;

class BackupsBeside;

class ShopDesk : public QObject {
    Q_OBJECT

public:
    ShopDesk(std::unique_ptr<db::Shop> file, Clock clock, QObject* parent = nullptr);
    ~ShopDesk() override;

    db::Shop& file() { return *m_file; }
    const Clock& clock() const { return m_clock; }
    Now now() const { return m_clock.moment(); }

    // Reckoned when first asked after a change or a passed minute; cheap otherwise.
    const std::shared_ptr<const ReckonedShop>& shop();
    const Walk& walk();
    const Currency& currency() { return shop()->facts.settings.currency; }
    // The seconds of every step under way at the press.
    const StepCounts& counts() const { return m_countWatch.counts(); }
    bool awaitsClimate() const { return !m_climate && m_climateBeside.isUnderWay(); }

    // Tells the person what became of an action: nothing more on success (the foot line shows the journal's
    // words), the reason on failure. Returns whether it went well.
    template <class T>
    bool done(const Result<T>& outcome) {
        if (outcome.ok())
            return true;
        emit failed(words(outcome.error().message));
        return false;
    }

    // Rows that are left out, what the last check found, or why nothing can be read.
    WhatIsWrong wrong();
    void takeFindings(db::QuickFindings found);

    // Those that are made by themselves.
    BackupsBeside& backups() { return *m_backups; }

    // For an action in the background, and what it wrote there with what need not be reckoned here again.
    KnownBefore known() const { return {now(), m_climate, m_orderShown}; }
    void takeOver(WrittenBeside written);

    // Done on a thread and a connection of its own, its progress in the foot; REQUIRES: a shop with a file.
    void doBeside(const QString& words, const DeedBeside& deed) { emit besideAsked(words, deed); }

    void say(const QString& words) { emit said(words); }

    // Does what frees a finding: some acts at once, others by their form or in their place.
    void free(FreeingAct act, const SlipTarget& matter);

signals:
    void changed(const holdfast::db::ChangedTables& tables); // after an action; shop() is new
    void minutePassed();                                     // shop() is new: waits may be over
    void replanned();                                        // shop() has a better plan, all else as it was
    // At the press, whatever place is seen.
    void countsEnded(const std::vector<holdfast::app::EndedCount>& counts);
    void knockAsked();                    // to hear how loud it is
    void climateProgressed(double share); // while awaitsClimate(); changed() comes at its end
    void wrongChanged();                  // wrong() may be other than before
    void failed(const QString& reason);
    void said(const QString& words);
    void placeAsked(holdfast::app::PlaceName place, const holdfast::app::SlipTarget& matter);
    void slipAsked(holdfast::app::SlipName slip, const holdfast::app::SlipTarget& matter);
    void paperAsked(holdfast::app::PaperName paper, const holdfast::app::SlipTarget& matter);
    void errandAsked(holdfast::app::Errand errand);
    void puttingBackAsked(const std::filesystem::path& backup); // opens the form for it
    void textSizeAsked(int percent);
    void besideAsked(const QString& words, const holdfast::app::DeedBeside& deed);
    // Well; what is said of copies, of laptops or of this computer may be other than before.
    void errandDone();

private:
    bool isClimateLong();
    void readClimateBeside();
    void takeClimate(std::optional<ClimateRead> read);
    void goOnWithClimate();
    void forgetReckoned();
    void reckon();
    void show(std::shared_ptr<const ReckonedShop> shop);
    void takePlan(const DayPlan& plan);

    std::unique_ptr<db::Shop> m_file;
    Clock m_clock;
    CountWatch m_countWatch;
    ClimateReckoner m_reckoner;
    std::optional<ClimateHistory> m_climate;
    // Set while changed() is emitted for work in the background.
    std::shared_ptr<const ReckonedShop> m_reckonedBeside;
    std::vector<GarmentId> m_orderShown; // of the last plan
    std::vector<GarmentId> m_bestOrder;  // the best known, which may not be worth the change
    std::shared_ptr<const ReckonedShop> m_shop;
    Sentence m_unreadable;       // why m_shop is of no facts
    db::QuickFindings m_checked; // by the last check
    std::optional<Walk> m_walk;
    PlanBeside m_planBeside;
    QTimer m_minute;
    int m_listener = 0;
    std::unique_ptr<BackupsBeside> m_backups;
    Beside<std::optional<ClimateRead>> m_climateBeside;
};

} // namespace holdfast::app
