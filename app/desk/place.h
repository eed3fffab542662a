// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A place of the workshop: one screen. It shows the reckoned shop and says what the person did; it knows
// nothing of other places. The shell makes it when it is first opened and draws rail, header and foot.

#include "app/desk/shop_desk.h"

#include <QVector>
#include <QWidget>

namespace holdfast::app {

// A key of a place that no button and no hint shows, for the list of its keys.
struct PlaceKey {
    QString keys;
    QString words;
};

// What of something half done in a place can be undone and redone before anything in the journal is, in
// words for "Undo: …" and "Redo: …"; empty: nothing.
struct OwnSteps {
    QString undo;
    QString redo;
};

class Place : public QWidget {
    Q_OBJECT

public:
    explicit Place(ShopDesk& desk, QWidget* parent = nullptr)
        : QWidget(parent)
        , m_desk(desk) {}

    virtual QString subtitle() const = 0;              // after the title in the header
    virtual QWidget* headerTools() { return nullptr; } // at the right of the header; made once
    virtual void opened() = 0;                         // shown; put the keyboard where work starts
    // What had the keyboard is gone, or a form was left: put it where work goes on. Cheap.
    virtual void takeKeyboard() { opened(); }
    virtual void turnTo(const SlipTarget& matter) { Q_UNUSED(matter) } // turn to this order, roll, lot …
    // A paper's code was scanned while this place is shown. True: the place turned to it, or said why not.
    // Opens, and never acts; but a bag tag at the press walk takes its garment up.
    virtual bool takeScan(const SlipTarget& matter) {
        Q_UNUSED(matter)
        return false;
    }

    virtual QVector<PlaceKey> moreKeys() const { return {}; }

    virtual OwnSteps ownSteps() const { return {}; }
    virtual void undoOwn() {}
    virtual void redoOwn() {}

signals:
    void subtitleChanged();
    void ownStepsChanged();

protected:
    ShopDesk& desk() const { return m_desk; }

private:
    ShopDesk& m_desk;
};

} // namespace holdfast::app
