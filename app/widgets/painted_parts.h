// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Parts that a widget paints itself, as a screen reader finds them: each is a child of the widget with a
// name, a role, a box, and whether the keyboard is on it; it can be moved to and pressed. A widget that
// paints lines, tabs or cells says here what they are, with the words that it paints.

#include <QAccessible>
#include <QRect>
#include <QString>

namespace holdfast::app {

class PaintedParts {
public:
    struct Roles {
        QAccessible::Role whole;
        QAccessible::Role part;
    };

    virtual ~PaintedParts() = default;

    virtual Roles partRoles() const = 0;
    virtual int partCount() const = 0;
    virtual QString partName(int part) const = 0;
    virtual QRect partBox(int part) const = 0; // in the widget
    // The part that the keyboard is on; −1 where there is none, or the widget takes no keys.
    virtual int currentPart() const = 0;
    // As by the keyboard.
    virtual void moveToPart(int part) = 0;
    virtual void pressPart(int part) = 0;

protected:
    // The first of a kind makes all of them known to Qt.
    PaintedParts();
    // After the keyboard moved to another part.
    void sayCurrentPart();
};

} // namespace holdfast::app
