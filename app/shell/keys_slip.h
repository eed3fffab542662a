// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The keys of the place that is shown, and those that are the same everywhere. What buttons, hints and fields
// show on their caps is read off them, so that the list cannot be out of step with the screen.

#include "app/desk/place.h"
#include "app/slips/slip.h"

namespace holdfast::app {

class VerticalScroll;

class KeysSlip : public Slip {
    Q_OBJECT

public:
    KeysSlip(Place& place, const QString& placeWords, QWidget* parent);

    QString title() const override { return m_title; }
    void begin() override;

private:
    void addGroup(const QString& heading, const QVector<PlaceKey>& keys);

    QString m_title;
    VerticalScroll* m_scroll = nullptr;
};

// Of the place as it is shown now, those of its tools in the header too.
QVector<PlaceKey> keysOf(Place& place);

} // namespace holdfast::app
