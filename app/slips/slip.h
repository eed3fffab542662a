// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A slip: a short form at the right edge of the window, never a dialog. It says its title, has a few fields,
// one action and Escape. It asks nothing that the person already said: what it is about comes with it.

#include "app/desk/shop_desk.h"

#include <QVariantMap>
#include <QWidget>

namespace holdfast::app {

class Slip : public QWidget {
    Q_OBJECT

public:
    using QWidget::QWidget;

    virtual QString title() const = 0;
    // Puts the keyboard on the first field that is still to be filled.
    virtual void begin() = 0;

    // What a person changed since begin(), and how a slip left half filled gets it again.
    virtual QVariantMap typed() const { return {}; }
    virtual void putBack(const QVariantMap& typed) { Q_UNUSED(typed) }

signals:
    void finished();   // done, or nothing left to do
    void freshAsked(); // as it was before anything was typed
};

// Makes the form; none where the matter it is about is gone.
Slip* makeSlip(SlipName name, ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
// The same for the same form about the same thing.
QString slipKey(SlipName name, const SlipTarget& matter);

} // namespace holdfast::app
