// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The right of the fair table, as a bill: what the order is made of with its total below, the day it is
// promised for, who it is for, what is paid now, and the key that takes it. Each line that comes and goes has
// its room, so that nothing moves under a finger. Where the window is too low for all of it, the lines with
// total and promise scroll; customer, amount and the last keys are always seen.

#include "app/places/fair_table/fair_table_model.h"

#include <QWidget>

class QBoxLayout;

namespace holdfast::app {

class Button;
class Card;
class CustomerRow;
class DayRow;
class DepositRow;
class KeyHint;
class Label;
class NoteRow;
class OrderLines;
class PromiseBlock;
class TakenBlock;
class ThreadLine;
class VerticalScroll;

class SumsPanel : public QWidget {
    Q_OBJECT

public:
    explicit SumsPanel(FairTableModel& model, QWidget* parent = nullptr);

    void refresh();
    void takeFocus(Section section);
    // Says at its field what is missing; Section::None takes it away.
    void setError(Section section, const QString& words);
    void addGarmentToOrder();

signals:
    void takeAsked(bool isQuotation);
    void ticketAsked();   // of the order just taken
    void keyboardFreed(); // what was pressed is gone

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void build();
    QWidget* buildTitle();
    QWidget* buildDraft();
    QWidget* buildPayment();
    void layPayment(bool isPinned);
    void connectAll();
    void refreshTitle();
    void refreshError();
    QString stillOpen() const;
    QString besideTheDay() const;
    QString wantedWords(const WantedDay& wanted, LocalDate today) const;
    void takeSooner();
    QString belowTotal(const TableSums& sums, const Currency& currency) const;
    static QString weekdayNear(LocalDate when, LocalDate today);
    QString soonerWords(const SoonerOption& sooner, LocalDate today) const;
    void bringPromiseIntoView();
    void refreshSums();
    void refreshNote();

    FairTableModel& m_model;
    Card* m_card = nullptr;
    VerticalScroll* m_scroll = nullptr;
    QWidget* m_payment = nullptr; // who it is for and what is paid now
    ThreadLine* m_paymentLine = nullptr;
    bool m_isPinned = false; // below what scrolls
    Label* m_title = nullptr;
    KeyHint* m_toLines = nullptr;
    Button* m_clear = nullptr;
    Label* m_kept = nullptr;
    QWidget* m_draft = nullptr; // lines, total, promise: what gives way to the order just taken
    OrderLines* m_lines = nullptr;
    DayRow* m_day = nullptr;
    NoteRow* m_note = nullptr;
    Button* m_addNote = nullptr;
    Label* m_total = nullptr;
    Button* m_payAll = nullptr;
    Label* m_floor = nullptr;
    PromiseBlock* m_promise = nullptr;
    Button* m_sooner = nullptr;
    TakenBlock* m_taken = nullptr;
    Button* m_ticket = nullptr;
    CustomerRow* m_customer = nullptr;
    DepositRow* m_deposit = nullptr;
    Label* m_error = nullptr;
    Section m_errorSection = Section::None; // of what the last Enter asked for
    QString m_errorWords;
    QBoxLayout* m_lastKeys = nullptr;
    Button* m_another = nullptr;
    Button* m_quotation = nullptr;
    Button* m_take = nullptr;
};

} // namespace holdfast::app
