// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What stands in the way of garments not at hand: the same of several of them is said once, with their
// numbers.

#include "app/places/fair_table/table_messages.h"

#include <QHash>

#include <cstddef>
#include <utility>
#include <vector>

namespace holdfast::app {

class SaidOfOthers {
public:
    // Only what holds it is of interest of a garment that is not at hand.
    void add(std::size_t garment, std::vector<TableMessage> said);
    void sayInto(std::vector<TableMessage>& messages);

private:
    struct Said {
        TableMessage message;
        std::vector<std::size_t> garments;
    };
    std::vector<Said> m_said;
    QHash<std::pair<QString, QString>, std::size_t> m_known; // lead and text, and where it is said
};

} // namespace holdfast::app
