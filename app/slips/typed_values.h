// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a person typed and chose in a form, by the names of its controls, so that a form that was left half
// filled can be shown again as it was.

#include <QVariantMap>

class QWidget;

namespace holdfast::app {

// A control whose places come and go (rows that are added), and that says itself what was typed in them.
class KeepsTyped {
public:
    virtual ~KeepsTyped() = default;
    virtual QVariant typed() const = 0;
    virtual void putBack(const QVariant& typed) = 0;
};

// Of every control below `form` that has a name.
QVariantMap typedIn(const QWidget& form);
// As if the person typed it again: what depends on it follows. A choice that is no longer there is left.
void putBackInto(QWidget& form, const QVariantMap& typed);

} // namespace holdfast::app
