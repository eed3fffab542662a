// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// In the way of work: what of the shop file cannot be read or is not as its history says, one by one, what it
// takes away, and what can be done. It is shown in the room of the places until all is put right or a person
// sets it aside; the Back room and the finder open it again.

#include "app/desk/place.h"

class QVBoxLayout;

namespace holdfast::app {

class Banner;
class Button;
class Card;
class VerticalScroll;

class WrongPlace : public Place {
    Q_OBJECT

public:
    explicit WrongPlace(ShopDesk& desk, QWidget* parent = nullptr);

    void set(const WhatIsWrong& wrong);

    QString subtitle() const override;
    void opened() override;

signals:
    void setAsideAsked();

private:
    void makeActs(QVBoxLayout& page);
    void fillList();
    void addEntry(QVBoxLayout& list, const QString& what, const QString& why);
    bool isUnreadable() const { return !m_wrong.unreadable.empty(); }

    WhatIsWrong m_wrong;
    Banner* m_lead = nullptr;
    Card* m_card = nullptr;
    VerticalScroll* m_list = nullptr;
    Button* m_mend = nullptr;
    Button* m_goOn = nullptr;
};

} // namespace holdfast::app
