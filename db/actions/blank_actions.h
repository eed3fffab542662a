// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a person does with blanks. Each is one journaled action.

#include "core/facts/blank_lot.h"
#include "core/facts/blank_style.h"
#include "core/trade/result.h"
#include "db/journal/shop.h"

#include <span>
#include <string>
#include <vector>

namespace holdfast::db {

// Name, outline, sizes and colours (ids are made here), weight, cost, obstacles. Its label may be read later.
Result<BlankStyleId> addStyle(Shop& shop, const BlankStyle& style);
Result<ColourId> addColour(Shop& shop, BlankStyleId style, const std::string& name, std::uint32_t rgb);

// All but what its label says. Colours are known by their ids, those without one are new; sizes by their
// place among the others (core/facts/size_changes.h): one that got another name gets it everywhere. Refused
// where a size goes of which blanks hang or garments are ordered, or a colour that was ever used. The entry
// says each field with what it was.
Result<Done> changeStyle(Shop& shop, const BlankStyle& style);

// Fibres add to 100; highest safe temperature, if given, 60–260 °C.
Result<Done> readLabel(Shop& shop, BlankStyleId style, const FabricLabel& label);
// Reason 3–200 characters; an empty reason says that the style is washed first again.
Result<Done> markNotPrewashed(Shop& shop, BlankStyleId style, const std::string& reason);
Result<Done> chooseWayRound(Shop& shop, BlankStyleId style, Obstacle obstacle, WayRound way);
// Round each of these, which all name their way.
Result<Done> chooseWaysRound(Shop& shop, BlankStyleId style, std::span<const ObstacleOnStyle> ways);
Result<Done> noteLawChecked(Shop& shop, BlankStyleId style, const std::string& who);

// 1–5,000 units; not received in the future. Garments that wait for such a blank get theirs, by promise.
Result<BlankLotId> receiveBlanks(Shop& shop, BlankStyleId style, const std::string& size, ColourId colour,
                                 std::int64_t units, const Now& now);
struct DeliveredBlanks {
    std::string size;
    ColourId colour;
    std::int64_t units = 0;
};
// All that came of a style at once: each as in receiveBlanks, one entry for them together. At least one; each
// size and colour once.
Result<Done> receiveDelivery(Shop& shop, BlankStyleId style, std::span<const DeliveredBlanks> blanks,
                             const Now& now);
// A count that differs from the ledger is written as a move with its reason.
Result<Done> correctCount(Shop& shop, BlankLotId lot, std::int64_t counted, const std::string& reason);

struct WashPart {
    BlankLotId lot;
    std::int64_t units = 0;
};
struct WashPlan {
    std::vector<WashPart> parts;
    std::string detergent; // up to 80 characters; empty: nobody said
    bool softener = false;
    Celsius water{30}; // 10–95
    Drying drying = Drying::Line;
    bool dryerSheet = false;
};
// Splits each lot that is washed in part; garments that were kept a unit of it move with the washed part,
// earliest promise first.
Result<WashLoadId> startWash(Shop& shop, const WashPlan& plan);
Result<Done> markDry(Shop& shop, WashLoadId load);
// All four 10–3,000 mm.
Result<Done> measureShrinkage(Shop& shop, BlankLotId lot, const Shrinkage& shrinkage);

} // namespace holdfast::db
