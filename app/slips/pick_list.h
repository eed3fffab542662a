// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One of many by name, with a shade before it where it has one: a list that opens below. Letters find any
// word of a name, arrows move; the wheel turns it only while it has the keyboard, so that a form that scrolls
// changes nothing.

#include "app/widgets/type_ahead.h"

#include <QColor>
#include <QComboBox>
#include <QVector>

namespace holdfast::app {

struct PickItem {
    QString text;
    QColor shade = {}; // of cloth or film
};

class PickList : public QComboBox {
    Q_OBJECT

public:
    explicit PickList(const QString& accessibleName, QWidget* parent = nullptr);

    void setItems(const QVector<PickItem>& items, int chosen = -1); // emits nothing
    // What was chosen last was found by letters, and more of them may follow.
    bool isTyping() const { return m_typeAhead.isGoingOn(); }

protected:
    bool event(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override; // of the open list
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void paintShades();
    bool isForSearch(const QKeyEvent& key) const;

    TypeAhead m_typeAhead;
    QVector<PickItem> m_items;
};

} // namespace holdfast::app
