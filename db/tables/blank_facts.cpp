// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/fact_readers.h"
#include "db/tables/fact_row.h"

#include <algorithm>
#include <map>
#include <set>

namespace holdfast::db {

namespace {

// A style is read whole or not at all: with a fibre less it would be pressed too hot.
class StylesReader {
public:
    StylesReader(Connection& connection, UnreadFacts& unread)
        : m_connection(connection)
        , m_unread(unread) {}

    std::vector<BlankStyle> read() {
        readFibres();
        readStyles();
        readSizes();
        readColours();
        readObstacles();
        std::vector<BlankStyle> list;
        for (auto& [id, style] : m_styles)
            if (!m_leftOut.contains(id))
                list.push_back(std::move(style));
        return list;
    }

private:
    // Of the style in the first column.
    template <class Read>
    void readRows(const char* table, const char* sql, Read&& read, int keyColumns, int styleColumn = 0) {
        Query rows{m_connection, sql};
        readFacts(
            rows, m_unread, table, read,
            [&](const Query& row) { m_leftOut.insert(row.id<BlankStyleId>(styleColumn)); }, keyColumns);
    }

    BlankStyle* styleOf(const FactRow& row, int column = 0) {
        const auto found = m_styles.find(row.id<BlankStyleId>(column));
        return found == m_styles.end() ? nullptr : &found->second;
    }

    void readFibres() {
        readRows(
            "style_fibre",
            "SELECT style_id, fibre, percent FROM style_fibre ORDER BY style_id, percent DESC, fibre",
            [this](const FactRow& row) {
                m_fibres[row.id<BlankStyleId>(0)].push_back(
                    {row.choice<Fibre>(1), static_cast<int>(row.number(2, 1, 100))});
            },
            2);
    }

    FabricLabel labelFrom(const FactRow& row, std::vector<FibreShare> fibres) const {
        FabricLabel label;
        label.fibres = std::move(fibres);
        label.readOn = row.date(10);
        label.stretch = row.choice<Stretch>(11);
        label.coating = row.choice<Coating>(12);
        if (!row.isNull(13))
            label.highestSafe = row.temperature(13);
        label.care = {row.count(14),
                      row.choice<Agitation>(15),
                      row.choice<Tumble>(16),
                      row.count(17),
                      row.choice<Bleach>(18),
                      static_cast<Cleaning>(row.number(19, 0, static_cast<int>(Cleaning::All)))};
        return label;
    }

    BlankStyle styleFrom(const FactRow& row) {
        BlankStyle style;
        style.id = row.id<BlankStyleId>(0);
        style.name = row.text(1);
        style.outline = row.text(2);
        style.weight = Grams{row.number(3, 1, kMostCount)};
        style.cost = row.money(4);
        style.notPrewashedBecause = row.text(5);
        style.forChild = row.truth(6);
        style.sleepwear = row.truth(7);
        style.hasCords = row.truth(8);
        style.lawCheckedBy = row.text(9);
        style.isRetired = row.optionalInstant(20).has_value();
        style.supplier = row.text(21);
        if (!row.isNull(10))
            style.label = labelFrom(row, std::move(m_fibres[style.id]));
        return style;
    }

    void readStyles() {
        readRows(
            "blank_style",
            "SELECT id, name, outline, weight_g, cost_minor, not_prewashed_because, for_child, "
            "sleepwear, has_cords, law_checked_by, label_read_on, stretch, coating, highest_safe_c, "
            "care_wash_c, care_agitation, care_tumble, care_iron_c, care_bleach, care_cleaning, retired_at, "
            "supplier FROM blank_style",
            [this](const FactRow& row) {
                BlankStyle style = styleFrom(row);
                m_styles.emplace(style.id, std::move(style));
            },
            1);
    }

    void readSizes() {
        readRows(
            "style_size",
            "SELECT style_id, position, size FROM style_size "
            "ORDER BY style_id, COALESCE(rank, position), position",
            [this](const FactRow& row) {
                // Two laptops may have added the same size.
                BlankStyle* style = styleOf(row);
                if (style && std::ranges::find(style->sizes, row.text(2)) == style->sizes.end())
                    style->sizes.push_back(row.text(2));
            },
            2);
    }

    void readColours() {
        readRows(
            "style_colour",
            "SELECT id, style_id, name, rgb, retired_at FROM style_colour ORDER BY style_id, position, id",
            [this](const FactRow& row) {
                if (BlankStyle* style = styleOf(row, 1))
                    style->colours.push_back(
                        {row.id<ColourId>(0), row.text(2), row.shade(3), row.optionalInstant(4).has_value()});
            },
            1, 1);
    }

    void readObstacles() {
        readRows(
            "style_obstacle",
            "SELECT style_id, obstacle, way FROM style_obstacle ORDER BY style_id, obstacle",
            [this](const FactRow& row) {
                ObstacleOnStyle obstacle{row.choice<Obstacle>(1), std::nullopt};
                if (!row.isNull(2))
                    obstacle.way = row.choice<WayRound>(2);
                if (BlankStyle* style = styleOf(row))
                    style->obstacles.push_back(obstacle);
            },
            2);
    }

    Connection& m_connection;
    UnreadFacts& m_unread;
    std::map<BlankStyleId, std::vector<FibreShare>> m_fibres;
    std::map<BlankStyleId, BlankStyle> m_styles;
    std::set<BlankStyleId> m_leftOut;
};

std::optional<Shrinkage> shrinkageFrom(const FactRow& row, int first) {
    if (row.isNull(first))
        return std::nullopt;
    return Shrinkage{row.length(first), row.length(first + 1), row.length(first + 2), row.length(first + 3)};
}

// Moves of the lots that no sum can be made with. Most shops have none, and then they are not looked for.
void noteMovesOf(Connection& connection, UnreadFacts& unread, BlankLotId lot) {
    Query rows = connection.query("SELECT id, units FROM lot_move WHERE lot_id = ?1", lot);
    readFacts(rows, unread, "lot_move",
              [](const FactRow& row) { (void)row.number(1, -kMostCount, kMostCount); });
}

} // namespace

std::vector<BlankStyle> readStyles(Connection& connection, UnreadFacts& unread) {
    return StylesReader{connection, unread}.read();
}

std::vector<BlankLot> readLots(Connection& connection, UnreadFacts& unread, const std::string& orders,
                               Stock stock) {
    std::vector<BlankLot> lots;
    std::vector<BlankLotId> withOddMoves;
    Query rows = connection.query(
        "SELECT blank_lot.id, style_id, size, colour_id, received_on, parent_id, last_load_id, "
        "length_before_mm, length_after_mm, width_before_mm, width_after_mm, "
        "COALESCE(SUM(CASE WHEN units BETWEEN -?2 AND ?2 THEN units END), 0) AS units_left, "
        "COALESCE(SUM(units NOT BETWEEN -?2 AND ?2), 0) "
        "FROM blank_lot LEFT JOIN lot_move ON lot_move.lot_id = blank_lot.id GROUP BY blank_lot.id "
        "HAVING ?3 OR units_left > 0 OR blank_lot.id IN "
        "(SELECT garment.lot_id FROM garment WHERE order_id IN (SELECT value FROM json_each(?1))) "
        "ORDER BY blank_lot.id",
        orders, kMostCount, stock == Stock::All ? 1 : 0);
    readFacts(rows, unread, "blank_lot", [&](const FactRow& row) {
        BlankLot lot;
        lot.id = row.id<BlankLotId>(0);
        lot.style = row.id<BlankStyleId>(1);
        lot.size = row.text(2);
        lot.colour = row.id<ColourId>(3);
        lot.receivedOn = row.date(4);
        lot.parent = row.optionalId<BlankLotId>(5);
        lot.lastLoad = row.optionalId<WashLoadId>(6);
        lot.shrinkage = shrinkageFrom(row, 7);
        lot.unitsLeft = row.number(11, -kMostMinor, kMostMinor);
        if (row.number(12, 0, kMostCount) > 0)
            withOddMoves.push_back(lot.id);
        lots.push_back(std::move(lot));
    });
    for (const BlankLotId lot : withOddMoves)
        noteMovesOf(connection, unread, lot);
    return lots;
}

std::vector<WashLoad> readLoads(Connection& connection, UnreadFacts& unread,
                                const std::vector<BlankLot>& lots) {
    std::string wanted = "[0";
    for (const BlankLot& lot : lots)
        if (lot.lastLoad)
            wanted += "," + std::to_string(lot.lastLoad->value);
    wanted += "]";

    std::vector<WashLoad> loads;
    Query rows =
        connection.query("SELECT id, started_at, detergent, softener, water_c, drying, dryer_sheet, dry_at "
                         "FROM wash_load WHERE id IN (SELECT value FROM json_each(?1))",
                         wanted);
    readFacts(rows, unread, "wash_load", [&](const FactRow& row) {
        loads.push_back({row.id<WashLoadId>(0), row.instant(1), row.text(2), row.truth(3), row.temperature(4),
                         row.choice<Drying>(5), row.truth(6), row.optionalInstant(7)});
    });
    return loads;
}

} // namespace holdfast::db
