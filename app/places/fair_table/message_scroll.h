// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is said at once, as banners below each other, in room of its own whose height the table gives: nothing
// above it moves when a word comes or goes. More scrolls; the worst comes first and is always seen.

#include "app/places/fair_table/table_messages.h"
#include "app/widgets/vertical_scroll.h"

#include <vector>

namespace holdfast::app {

class Banner;
class Label;

class MessageScroll : public VerticalScroll {
    Q_OBJECT

public:
    explicit MessageScroll(QWidget* parent = nullptr);

    void show(const std::vector<TableMessage>& messages, ShopDesk& desk);
    int neededHeight(); // so that all of it is seen

signals:
    // The spot offered for a decal that is off the cloth is taken.
    void spotTaken(std::size_t garment, std::size_t decal, const holdfast::DecalSpot& spot);
    void makingAgainAsked(std::size_t garment);
    void sameAgainAsked();
    void teamListAsked();

private:
    Label* m_nothing = nullptr; // what will be said here, while there is nothing
    std::vector<Banner*> m_banners;
    std::vector<TableMessage> m_messages;
};

} // namespace holdfast::app
