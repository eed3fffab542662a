// SPDX-License-Identifier: GPL-3.0-or-later
// Wash loads: what goes in, what comes out dry.
#include "core/trade/limits.h"
#include "core/trade/unit_words.h"
#include "db/actions/blank_actions.h"
#include "db/actions/kept_blanks.h"
#include "db/actions/rows.h"
#include "db/tables/codes.h"

#include <algorithm>

namespace holdfast::db {
namespace {

constexpr std::int64_t kMostParts = 200;

Result<std::vector<LotRow>> soundParts(Connection& connection, const WashPlan& plan) {
    if (const auto checked =
            within(static_cast<std::int64_t>(plan.parts.size()),
                   {.field = "parts", .what = phrase("The number of lots"), .least = 1, .most = kMostParts});
        !checked.ok())
        return checked.error();
    std::vector<LotRow> lots;
    for (const WashPart& part : plan.parts) {
        auto lot = lotRow(connection, part.lot);
        if (!lot.ok())
            return lot.error();
        if (std::ranges::find(lots, part.lot, &LotRow::id) != lots.end())
            return fieldError("parts", said("The lot {lot} is named twice.", {{"lot", lot->words}}));
        if (lot->isInTheWash)
            return fieldError("parts", said("The lot {lot} is in the wash already. Mark that load dry first.",
                                            {{"lot", lot->words}}));
        if (lot->left < 1)
            return fieldError("units",
                              said("The lot {lot} has no blank left to wash.", {{"lot", lot->words}}));
        if (const auto units =
                within(part.units, {.field = "units",
                                    .what = said("The number of {lot} to wash", {{"lot", lot->words}}),
                                    .least = 1,
                                    .most = lot->left});
            !units.ok())
            return units.error();
        lots.push_back(std::move(lot).value());
    }
    return lots;
}

class Washing {
public:
    Washing(Writer& writer, WashLoadId load)
        : m_writer(writer)
        , m_connection(writer.connection())
        , m_load(load) {}

    void wash(const LotRow& lot, std::int64_t units) {
        const BlankLotId washed = units == lot.left ? lot.id : splitOff(lot, units);
        m_connection.run("UPDATE blank_lot SET last_load_id = ?2 WHERE id = ?1", washed, m_load);
        for (const GarmentId keeper : keepersOf(m_connection, washed))
            if (const auto row = garmentRow(m_connection, keeper); row.ok())
                concernsGarment(m_writer, *row);
        m_writer.concerns(lot.id);
        m_writer.concerns(washed);
        m_writer.concerns(lot.style);
    }

private:
    // The washed units become a lot of their own; who keeps a blank and is promised first moves with them.
    BlankLotId splitOff(const LotRow& lot, std::int64_t units) {
        const auto keepers = keepersOf(m_connection, lot.id);
        const auto part = m_writer.newId<BlankLotId>();
        m_connection.run("INSERT INTO blank_lot (id, style_id, size, colour_id, received_on, parent_id) "
                         "SELECT ?2, style_id, size, colour_id, received_on, id FROM blank_lot WHERE id = ?1",
                         lot.id, part);
        move(lot.id, -units, "washed apart");
        move(part, units, "washed apart");
        for (std::size_t at = 0; at < keepers.size() && at < static_cast<std::size_t>(units); ++at)
            m_connection.run("UPDATE garment SET lot_id = ?2 WHERE id = ?1", keepers[at], part);
        return part;
    }

    void move(BlankLotId lot, std::int64_t units, const char* reason) {
        m_connection.run("INSERT INTO lot_move (id, lot_id, at, units, reason) VALUES (?1, ?2, ?3, ?4, ?5)",
                         m_writer.newId<RowId>(), lot, m_writer.now(), units, reason);
    }

    Writer& m_writer;
    Connection& m_connection;
    WashLoadId m_load;
};

std::vector<BlankLotId> lotsIn(Connection& connection, WashLoadId load) {
    std::vector<BlankLotId> lots;
    Query rows = connection.query("SELECT id FROM blank_lot WHERE last_load_id = ?1", load);
    while (rows.step())
        lots.push_back(rows.id<BlankLotId>(0));
    return lots;
}

} // namespace

Result<WashLoadId> startWash(Shop& shop, const WashPlan& plan) {
    return shop.act([&](Writer& writer) -> Result<WashLoadId> {
        const auto detergent =
            typedText(plan.detergent, {.field = "detergent", .what = phrase("The detergent"), .least = 0});
        if (!detergent.ok())
            return detergent.error();
        if (const auto water = measuredWithin(plan.water.value, {.field = "water",
                                                                 .what = phrase("The water’s temperature"),
                                                                 .least = 10,
                                                                 .most = 95,
                                                                 .unit = " °C"});
            !water.ok())
            return water.error();
        const auto lots = soundParts(writer.connection(), plan);
        if (!lots.ok())
            return lots.error();

        const auto load = writer.newId<WashLoadId>();
        writer.connection().run(
            "INSERT INTO wash_load (id, started_at, detergent, softener, water_c, drying, "
            "dryer_sheet) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
            load, writer.now(), *detergent, plan.softener, plan.water, codeOf(plan.drying), plan.dryerSheet);
        Washing washing{writer, load};
        std::int64_t units = 0;
        for (std::size_t at = 0; at < plan.parts.size(); ++at) {
            washing.wash((*lots)[at], plan.parts[at].units);
            units += plan.parts[at].units;
        }
        writer.describe(said("Washed {n} blank|Washed {n} blanks", {{"n", units}}));
        writer.concerns(load);
        return load;
    });
}

Result<Done> markDry(Shop& shop, WashLoadId load) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        {
            Query found = writer.connection().query("SELECT dry_at FROM wash_load WHERE id = ?1", load);
            if (!found.step())
                return fieldError("load", said("The shop has no such wash load any more."));
            if (!found.isNull(0))
                return plainError(said("This load is dry already."));
        }
        // A clock that was set back must not make it dry before it was washed.
        writer.connection().run("UPDATE wash_load SET dry_at = MAX(started_at, ?2) WHERE id = ?1", load,
                                writer.now());
        std::int64_t units = 0;
        for (const BlankLotId lot : lotsIn(writer.connection(), load)) {
            units += writer.connection().number("SELECT SUM(units) FROM lot_move WHERE lot_id = ?1", lot);
            writer.concerns(lot);
            for (const GarmentId keeper : keepersOf(writer.connection(), lot))
                if (const auto row = garmentRow(writer.connection(), keeper); row.ok())
                    concernsGarment(writer, *row);
        }
        writer.describe(said("{n} blank dry|{n} blanks dry", {{"n", units}}));
        writer.concerns(load);
        return Done{};
    });
}

} // namespace holdfast::db
