// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the customer pays now, as one line: "Paid now £ 10.00 in cash". Nothing is paid unless it is typed or
// the deposit that the shop asks for is taken by its key; how it was paid is asked of each customer. In the
// amount, C is cash and K is card. A click into the amount opens digits to press above it.

#include "app/places/fair_table/fair_table_model.h"

#include <QWidget>

namespace holdfast::app {

class AmountPad;
class Button;
class Field;

class DepositRow : public QWidget {
    Q_OBJECT

public:
    explicit DepositRow(FairTableModel& model, QWidget* parent = nullptr);

    void refresh();
    void takeFocus(); // where an amount is typed
    // Marks the amount as wrong; the words are said elsewhere. Empty takes the mark away.
    void setError(const QString& words);

public slots:
    void payAll();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void connectAll();
    void refreshHow();
    void payAsAsked();
    void pay(Money amount);
    void choose(std::optional<PaidHow> how);
    bool takeLetter(const QKeyEvent& key);
    void openPad();
    void closePad();

    FairTableModel& m_model;
    Field* m_amount = nullptr;
    Button* m_asked = nullptr; // takes the deposit that the shop asks for
    Button* m_cash = nullptr;  // how it was paid, while that is open …
    Button* m_card = nullptr;
    AmountPad* m_pad = nullptr; // made when it is first opened
    Button* m_how = nullptr;    // … and what was chosen; opens it again
};

} // namespace holdfast::app
