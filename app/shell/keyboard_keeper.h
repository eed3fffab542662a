// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Keeps the keyboard where work goes on. When what had it is gone, hidden or disabled, or when it fell on the
// frame about the place without the person having gone there by Tab, it is given back.
//
// Who owns it overrides focusNextPrevChild() and asks move(): Qt calls that for Tab, and also to find another
// home for the keyboard of a widget that is being hidden.

#include <QObject>
#include <QPointer>

#include <functional>

class QWidget;

namespace holdfast::app {

class KeyboardKeeper : public QObject {
    Q_OBJECT

public:
    struct Room {
        std::function<QWidget*(const QWidget*)> partOf; // place or form it belongs to; none: of the frame
        std::function<QWidget*()> usualPart;            // the place shown
        std::function<void(QWidget*)> giveBack;         // puts it where work goes on in this part
    };

    KeyboardKeeper(QWidget* whole, Room room);

    // Tab, or the search for another home for the keyboard; as QWidget::focusNextPrevChild.
    bool move(bool forward);
    // Gives it back once the event loop runs, unless somebody puts it somewhere until then.
    void settleSoon();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void follow(QWidget* now);
    void settle();
    void giveBack();
    bool isLost(const QWidget* focused) const;
    QWidget* partInUse() const;

    QWidget* m_whole;
    Room m_room;
    QPointer<QWidget> m_part;     // that had the keyboard last
    QPointer<QWidget> m_tabbedTo; // on the frame, by the person
    QPointer<QWidget> m_forcedTo; // where it was put for want of a better place
    bool m_isTabbing = false;
    bool m_isSettling = false; // once the loop runs
};

} // namespace holdfast::app
