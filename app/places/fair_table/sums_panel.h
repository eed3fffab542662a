#pragma once
// The right of the fair table: what the order is made of, what it comes to, the day it is promised for, who
// it is for, and the key that takes it.

#include "app/places/fair_table/fair_table_model.h"

#include <QWidget>

class QVBoxLayout;

namespace holdfast::app {

class Button;
class CustomerRow;
class DepositRow;
class KeyHint;
class Label;
class OrderLines;
class PromiseBlock;
class TakenBlock;

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
    void ticketAsked(); // of the order just taken

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void build();
    QWidget* buildTitle();
    QWidget* buildDraft();
    void connectAll();
    void refreshTitle();
    QString stillOpen() const;
    QString soonerWords(const SoonerOption& sooner, LocalDate today) const;
    void refreshSums();

    FairTableModel& m_model;
    QVBoxLayout* m_column = nullptr;
    QWidget* m_titleRow = nullptr;
    Label* m_title = nullptr;
    KeyHint* m_toLines = nullptr;
    Label* m_count = nullptr;
    Button* m_afresh = nullptr;
    Label* m_kept = nullptr;
    QWidget* m_draft = nullptr; // lines, total, promise: what gives way to the order just taken
    OrderLines* m_lines = nullptr;
    Label* m_total = nullptr;
    Label* m_floor = nullptr;
    PromiseBlock* m_promise = nullptr;
    Button* m_sooner = nullptr;
    TakenBlock* m_taken = nullptr;
    Button* m_ticket = nullptr;
    CustomerRow* m_customer = nullptr;
    DepositRow* m_deposit = nullptr;
    Label* m_error = nullptr;
    Button* m_another = nullptr;
    Button* m_quotation = nullptr;
    Button* m_take = nullptr;
};

} // namespace holdfast::app
