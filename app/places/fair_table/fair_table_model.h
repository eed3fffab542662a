// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The order being typed, as the widgets of the fair table share it: every step of the maker goes through
// edit(), which keeps the step before for undo, recalculates price, promise and what cannot be kept, and sees
// that the draft survives a crash. Knows nothing of widgets.

#include "app/desk/shop_desk.h"
#include "app/places/fair_table/opened_order.h"
#include "app/places/fair_table/table_draft.h"
#include "app/places/fair_table/table_messages.h"
#include "app/places/fair_table/table_sums.h"
#include "app/places/fair_table/team_garments.h"
#include "db/actions/order_actions.h"

#include <QObject>
#include <QTimer>

#include <functional>
#include <optional>
#include <vector>

namespace holdfast::app {

// Where on the table something is chosen or typed.
enum class Section { Style, Size, Colour, Placement, Decal, Film, Words, Width, Name, Phone, Deposit, None };

struct Missing {
    Section section = Section::None;
    std::size_t garment = 0;
    QString what; // "Choose a size."
};

// What the customer is told once the order is taken.
struct TakenOrder {
    OrderId id;
    std::int64_t number = 0;
    QString customer;
    LocalTime readyAt{};
    Money total;
    Money paid;
    std::optional<PaidHow> paidHow;
    bool isQuotation = false;
    bool isChange = false; // of an order that was taken before
    QString leavesDayOpen; // why no day can be given yet; empty: the day is given
    QString dayWaitsFor;   // what it waits for; empty: nothing
};

// Steps of one kind in a row are one step for undo: typing, dragging.
enum class Step { Choice, Words, Name, Phone, Deposit, Note, Price, Discount, Day, Drag, Width, Copies };

class FairTableModel : public QObject {
    Q_OBJECT

public:
    explicit FairTableModel(ShopDesk& desk, QObject* parent = nullptr);
    ~FairTableModel() override;

    const TableDraft& draft() const { return m_draft; }
    const TableSums& sums() const { return m_sums; }
    const std::vector<TableMessage>& messages() const { return m_messages; }
    const ReckonedShop& shop() const { return *m_shop; }
    // What is left on the rail for the garment at hand, of this size and colour, or of all where one is not
    // chosen: without what the other garments of this order take.
    BlankStock stockLeft(const std::string& size, ColourId colour);
    const BlankStyle* style() const; // of the garment at hand; none: not chosen yet
    ShopDesk& desk() const { return m_desk; }

    void edit(Step step, const std::function<void(TableDraft&)>& change);
    // Turns to another garment or decal: nothing of the order changes, and there is no step to undo.
    void turn(const std::function<void(TableDraft&)>& change);
    // A garment for each line of a team's list, and what is wrong with a line on the garment they are made
    // after.
    void addTeam(const std::vector<TeamLine>& lines);
    std::vector<TeamLine> checkedTeam(std::vector<TeamLine> lines) const;
    std::int64_t stockOf(BlankStyleId style, const std::string& size, ColourId colour);
    void endStep() { m_lastStep.reset(); }
    bool canUndo() const { return !m_past.empty(); }
    bool canRedo() const { return !m_undone.empty(); }
    void undo();
    void redo();
    // Empties the table, or leaves an order that was opened as it was; can be undone.
    void clear();

    // Lays an order that was taken on the table, to be changed, or the same garments to be ordered again.
    // What is half typed is set aside and comes back once that is done. All can be undone.
    void open(OrderId order);
    void takeAgain(OrderId order);
    const OpenedOrder* opened() const { return m_draft.opened.get(); }
    bool isChanged() const; // an order that was opened is to be otherwise than it is

    // A film for the first decal: the last one used; else one that fits and has most left.
    void editWithFilm(Step step, const std::function<void(TableDraft&)>& change);

    // The first thing to be chosen or mended before the order can be taken, or saved as a quotation.
    std::optional<Missing> missing(bool isQuotation) const;
    // Takes the order, or writes what was changed of the one that was opened.
    Result<db::OrderTaken> take(bool isQuotation);
    const std::optional<TakenOrder>& taken() const { return m_taken; }

    // What happened to the draft that the maker did not do: kept from before, or not readable.
    const QString& keptWords() const { return m_keptWords; }
    bool isRestored() const { return m_isRestored; }
    // Keeps the draft at once.
    void keepNow();

signals:
    void changed();

private:
    void restore();
    void reckon();
    void shopChanged();
    void followOpened();
    Result<db::OrderTaken> write(const OrderDraft& order);
    void layNextOrder();
    FilmId usualFilm() const;
    TakenOrder toldOf(const OrderDraft& order) const;
    Result<Done> notePhone();
    bool isKnown(CustomerId customer);
    std::optional<Missing> missingOf(std::size_t garment) const;
    std::optional<Missing> missingMoney(bool isQuotation) const;
    bool isGone(OrderId order);
    void set(TableDraft draft);

    ShopDesk& m_desk;
    std::shared_ptr<const ReckonedShop> m_shop;
    TableReckoner m_reckoner;
    TableDraft m_draft;
    TableSums m_sums;
    std::vector<TableMessage> m_messages;
    std::vector<TableDraft> m_past;
    std::vector<TableDraft> m_undone;
    std::optional<Step> m_lastStep;
    std::optional<TakenOrder> m_taken;
    TableDraft m_takenDraft;
    std::optional<OrderId> m_onTableAgain; // undone, and laid on the table as it was typed
    QString m_keptWords;
    bool m_isRestored = false;
    QTimer m_keepSoon;
    QByteArray m_kept;
};

} // namespace holdfast::app
