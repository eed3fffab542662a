#pragma once
// A slip: a short form at the right edge of the window, never a dialog. It says its title, has a few fields,
// one action and Escape. It asks nothing that the person already said: what it is about comes with it.

#include "app/desk/shop_desk.h"

#include <QWidget>

namespace holdfast::app {

class Slip : public QWidget {
    Q_OBJECT

public:
    using QWidget::QWidget;

    virtual QString title() const = 0;
    // Puts the keyboard on the first field that is still to be filled.
    virtual void begin() = 0;

signals:
    void finished(); // done, or nothing left to do
};

// Makes the form; none where the matter it is about is gone.
Slip* makeSlip(SlipName name, ShopDesk& desk, const Matter& matter, QWidget* parent);

} // namespace holdfast::app
