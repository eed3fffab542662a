// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Digits to press where there is a pointer and no keyboard at hand: it opens above an amount that is clicked
// into and types into it. It takes no keyboard itself, and goes when the amount is left.

#include <QWidget>

class QLineEdit;

namespace holdfast::app {

class AmountPad : public QWidget {
    Q_OBJECT

public:
    // Over the ground, which is the window.
    AmountPad(QLineEdit* amount, QWidget* ground);

    // `hasFractions`: of the currency.
    void openAbove(const QWidget& row, bool hasFractions);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void press(const QString& sign);

    QLineEdit* m_amount;
    QWidget* m_point = nullptr;
};

} // namespace holdfast::app
