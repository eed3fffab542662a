// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the command finder can find: places, actions, orders, rolls and lots, and where each leads.

#include "app/desk/shop_desk.h"

#include <QColor>
#include <QKeySequence>
#include <QString>

#include <variant>
#include <vector>

namespace holdfast::app {

// What the shell itself does.
enum class ShellAct { Undo, Redo, ChangeLight, LargerText, SmallerText, UsualText, ShowKeys, About };

struct GoTo {
    PlaceName place;
    SlipTarget matter;
};
struct AskSlip {
    SlipName slip;
    SlipTarget matter;
};
struct AskPaper {
    PaperName paper;
    SlipTarget matter;
};
using FinderTarget = std::variant<GoTo, AskSlip, AskPaper, Errand, ShellAct>;

enum class FinderKind { Place, Action, Order, Customer, Roll, Lot };

struct FinderEntry {
    FinderKind kind = FinderKind::Action;
    QString title;
    QString second;    // quiet words after the title
    QString also = {}; // not shown: other words that people type for it
    QString iconName;
    QColor shade; // of film or cloth, instead of the icon
    QKeySequence keys;
    FinderTarget target;
};

// Best match first, at most `limit`. Every word typed must begin a word of the entry; orders are found by all
// that the order book's search knows. Nothing typed: what waits, the newest orders, then the acts.
std::vector<FinderEntry> findEntries(ShopDesk& desk, const QString& typed, std::size_t limit = 40);

QString finderKindWords(FinderKind kind); // "Order"

} // namespace holdfast::app
