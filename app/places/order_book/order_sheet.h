// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One order whole: who, when promised, its garments, its money, what happened. H turns it over to the care
// text and the hand-over.

#include "app/places/order_book/order_view.h"
#include "app/widgets/card.h"

class QGridLayout;
class QStackedWidget;

namespace holdfast::app {

class Button;
class CareSheet;
class ClaimLines;
class EmptyState;
class FactBlock;
class FlowLayout;
class GarmentLines;
class HistoryLines;
class Banner;
class Label;
class UndoneSheet;

class OrderSheet : public Card {
    Q_OBJECT

public:
    explicit OrderSheet(ShopDesk& desk, QWidget* parent = nullptr);

    // None: nothing is chosen. An order that was undone shows what it was.
    void show(std::optional<OrderId> order);
    std::optional<OrderId> order() const;
    // Shows the same order again after something changed.
    void refresh();
    void showCare();
    void showOrder();
    bool isCareShown() const;
    // The keyboard on this garment of the order shown; on handing over, where any of it can be handed over.
    void turnToGarment(GarmentId garment);
    void turnToHandingOver();
    // To where work on the order goes on.
    void takeKeyboard();
    // Less high, its lists would have no room.
    QSize minimumSizeHint() const override;

signals:
    void newOrderAsked();

private:
    QWidget* makeOrderPage();
    QWidget* makeHeader();
    QWidget* makeMoney();
    QWidget* makeClaims();
    QWidget* makeActs();
    void addPapers(FlowLayout& papers);
    void addMoneyPapers(FlowLayout& papers);
    Button* makeSmall(const QString& text, const QString& told, Qt::Key key, const char* name);
    void fill(const OrderView& view);
    void ask(SlipName slip);
    void askPaper(PaperName paper);
    SlipTarget matter() const;
    void layOnTable(bool isAgain);
    void confirm();
    void copyMessage();
    void fillActs(const OrderView& view);
    void fillMoneyPapers(const OrderView& view);
    void invoice();
    Button* addAct(QGridLayout& grid, int row, int at, const QString& text, const char* icon, Qt::Key key,
                   const char* name);

    ShopDesk& m_desk;
    std::optional<OrderId> m_order;
    std::optional<OrderView> m_view; // none: it was undone
    QStackedWidget* m_pages = nullptr;
    EmptyState* m_empty = nullptr;
    CareSheet* m_care = nullptr;
    UndoneSheet* m_undone = nullptr;
    Label* m_number = nullptr;
    Label* m_customer = nullptr;
    Label* m_promise = nullptr;
    Label* m_note = nullptr;
    Label* m_bill = nullptr;  // besides the garments
    Banner* m_odds = nullptr; // shown where two laptops brought about what no form allows
    GarmentLines* m_garments = nullptr;
    FactBlock* m_total = nullptr;
    FactBlock* m_paid = nullptr;
    FactBlock* m_owed = nullptr;
    Button* m_takeMoney = nullptr;
    Button* m_handOver = nullptr;
    Button* m_confirm = nullptr;
    Button* m_move = nullptr;
    Button* m_person = nullptr;
    Button* m_cancel = nullptr;
    Button* m_putBack = nullptr;
    Button* m_cameBack = nullptr;
    Button* m_message = nullptr;
    Button* m_writeNote = nullptr;
    Button* m_change = nullptr;
    Button* m_again = nullptr;
    Button* m_part = nullptr;
    Button* m_ticket = nullptr;
    Button* m_tags = nullptr;
    Button* m_cards = nullptr;
    Button* m_quotation = nullptr;
    Button* m_receipt = nullptr; // in its place once the order is confirmed
    Button* m_invoice = nullptr;
    Button* m_creditNote = nullptr;
    QWidget* m_claimsPart = nullptr; // shown where anything came back
    ClaimLines* m_claims = nullptr;
    HistoryLines* m_history = nullptr;
};

} // namespace holdfast::app
