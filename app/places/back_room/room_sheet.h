// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One section of the Back room as it is on its card: lines of facts, and what can be done about them.

#include "app/desk/shop_desk.h"
#include "app/places/back_room/room_file.h"
#include "app/theme/tokens.h"

#include <QColor>
#include <QKeySequence>
#include <QString>
#include <QVector>

#include <variant>

namespace holdfast::app {

inline constexpr int kRoomSections = 11;

// ── what a line or a button does ──
struct OpenSlip {
    SlipName slip;
    SlipTarget matter;
};
struct DoAgain { // what was set aside
    EntryId entry;
};
struct LetItGo { // off the list of what was set aside
    EntryId entry;
};
struct UsePrinter { // for such papers from now on; no name: the usual one
    PaperUse use;
    QString name;
};
struct PrintPaper {
    PaperName paper;
};
struct PutBackBackup { // opens the form for it
    std::filesystem::path backup;
};
struct LookForPrinters {};
struct MakeAsLoud { // the end of a count
    Loudness loudness;
};
struct HearKnock {};
struct MakeTextAsLarge {
    int percent;
};
struct TurnToSection {
    RoomSection section;
};
using RoomDeed =
    std::variant<std::monostate, OpenSlip, Errand, DoAgain, LetItGo, UsePrinter, PrintPaper, LookForPrinters,
                 MakeAsLoud, HearKnock, MakeTextAsLarge, TurnToSection, PutBackBackup>;

struct RoomLine {
    bool isHeading = false;
    QString name;
    QString text;   // next to the name; may have several lines
    QString detail; // smaller, below the text
    QColor shade;   // of a film, before its name
    QString state;  // on a chip, with its sign
    QString stateIcon;
    Tone tone = Tone::Plain;
    QString offer; // what Enter does, in words at the right end
    RoomDeed deed;
    QString otherOffer; // before it: what Enter does after ←
    RoomDeed otherDeed;

    bool hasDeed() const { return !std::holds_alternative<std::monostate>(deed); }
};

struct RoomAct {
    QString words;
    QString iconName;
    QKeySequence key;
    RoomDeed deed;
};

struct RoomSheet {
    QString title;
    QString summary; // a few words, for the list of sections
    QString intro;   // a sentence above the lines
    QVector<RoomLine> lines;
    QVector<RoomAct> acts;
    QString note; // below the lines
};

RoomSheet roomSheet(RoomSection section, const ReckonedShop& shop, const RoomFile& file);

} // namespace holdfast::app
