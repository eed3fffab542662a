#include "db/tables/codes.h"
#include "db/tables/fact_readers.h"

#include <map>

namespace holdfast::db {

namespace {

std::map<BlankStyleId, std::vector<FibreShare>> readFibres(Connection& connection) {
    std::map<BlankStyleId, std::vector<FibreShare>> fibres;
    Query rows{connection,
               "SELECT style_id, fibre, percent FROM style_fibre ORDER BY style_id, percent DESC, fibre"};
    while (rows.step())
        fibres[rows.id<BlankStyleId>(0)].push_back(
            {fromCode<Fibre>(rows.view(1)), static_cast<int>(rows.integer(2))});
    return fibres;
}

void addSizes(Connection& connection, std::map<BlankStyleId, BlankStyle>& styles) {
    Query rows{connection, "SELECT style_id, size FROM style_size ORDER BY style_id, position"};
    while (rows.step())
        styles[rows.id<BlankStyleId>(0)].sizes.push_back(rows.text(1));
}

void addColours(Connection& connection, std::map<BlankStyleId, BlankStyle>& styles) {
    Query rows{connection,
               "SELECT style_id, id, name, rgb FROM style_colour ORDER BY style_id, position, id"};
    while (rows.step())
        styles[rows.id<BlankStyleId>(0)].colours.push_back(
            {rows.id<ColourId>(1), rows.text(2), static_cast<std::uint32_t>(rows.integer(3))});
}

void addObstacles(Connection& connection, std::map<BlankStyleId, BlankStyle>& styles) {
    Query rows{connection, "SELECT style_id, obstacle, way FROM style_obstacle ORDER BY style_id, obstacle"};
    while (rows.step()) {
        ObstacleOnStyle obstacle{fromCode<Obstacle>(rows.view(1)), std::nullopt};
        if (!rows.isNull(2))
            obstacle.way = fromCode<WayRound>(rows.view(2));
        styles[rows.id<BlankStyleId>(0)].obstacles.push_back(obstacle);
    }
}

FabricLabel labelFrom(const Query& rows, std::vector<FibreShare> fibres) {
    FabricLabel label;
    label.fibres = std::move(fibres);
    label.readOn = rows.date(10);
    label.stretch = fromCode<Stretch>(rows.view(11));
    label.coating = fromCode<Coating>(rows.view(12));
    if (const auto safe = rows.optionalReal(13))
        label.highestSafe = Celsius{*safe};
    label.care = {static_cast<int>(rows.integer(14)), fromCode<Agitation>(rows.view(15)),
                  fromCode<Tumble>(rows.view(16)),    static_cast<int>(rows.integer(17)),
                  fromCode<Bleach>(rows.view(18)),    static_cast<Cleaning>(rows.integer(19))};
    return label;
}

std::optional<Shrinkage> shrinkageFrom(const Query& rows, int first) {
    if (rows.isNull(first))
        return std::nullopt;
    return Shrinkage{Millimetres{rows.integer(first)}, Millimetres{rows.integer(first + 1)},
                     Millimetres{rows.integer(first + 2)}, Millimetres{rows.integer(first + 3)}};
}

} // namespace

std::vector<BlankStyle> readStyles(Connection& connection) {
    auto fibres = readFibres(connection);
    std::map<BlankStyleId, BlankStyle> styles;
    {
        Query rows{connection,
                   "SELECT id, name, outline, weight_g, cost_minor, not_prewashed_because, for_child, "
                   "sleepwear, has_cords, law_checked_by, label_read_on, stretch, coating, "
                   "highest_safe_c, care_wash_c, care_agitation, care_tumble, care_iron_c, care_bleach, "
                   "care_cleaning FROM blank_style"};
        while (rows.step()) {
            BlankStyle& style = styles[rows.id<BlankStyleId>(0)];
            style.id = rows.id<BlankStyleId>(0);
            style.name = rows.text(1);
            style.outline = rows.text(2);
            style.weight = Grams{rows.integer(3)};
            style.cost = Money{rows.integer(4)};
            style.notPrewashedBecause = rows.text(5);
            style.forChild = rows.truth(6);
            style.sleepwear = rows.truth(7);
            style.hasCords = rows.truth(8);
            style.lawCheckedBy = rows.text(9);
            if (!rows.isNull(10))
                style.label = labelFrom(rows, std::move(fibres[style.id]));
        }
    }
    addSizes(connection, styles);
    addColours(connection, styles);
    addObstacles(connection, styles);

    std::vector<BlankStyle> list;
    for (auto& [id, style] : styles)
        list.push_back(std::move(style));
    return list;
}

std::vector<BlankLot> readLots(Connection& connection, const std::string& orders) {
    std::vector<BlankLot> lots;
    Query rows = connection.query(
        "SELECT blank_lot.id, style_id, size, colour_id, received_on, parent_id, last_load_id, "
        "length_before_mm, length_after_mm, width_before_mm, width_after_mm, lot_units.units "
        "FROM blank_lot JOIN lot_units ON lot_units.lot_id = blank_lot.id "
        "WHERE lot_units.units > 0 OR blank_lot.id IN "
        "(SELECT lot_id FROM garment WHERE order_id IN (SELECT value FROM json_each(?1))) "
        "ORDER BY blank_lot.id",
        orders);
    while (rows.step()) {
        BlankLot lot;
        lot.id = rows.id<BlankLotId>(0);
        lot.style = rows.id<BlankStyleId>(1);
        lot.size = rows.text(2);
        lot.colour = rows.id<ColourId>(3);
        lot.receivedOn = rows.date(4);
        lot.parent = rows.optionalId<BlankLotId>(5);
        lot.lastLoad = rows.optionalId<WashLoadId>(6);
        lot.shrinkage = shrinkageFrom(rows, 7);
        lot.unitsLeft = rows.integer(11);
        lots.push_back(std::move(lot));
    }
    return lots;
}

std::vector<WashLoad> readLoads(Connection& connection, const std::vector<BlankLot>& lots) {
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
    while (rows.step())
        loads.push_back({rows.id<WashLoadId>(0), rows.instant(1), rows.text(2), rows.truth(3),
                         Celsius{rows.real(4)}, fromCode<Drying>(rows.view(5)), rows.truth(6),
                         rows.optionalInstant(7)});
    return loads;
}

} // namespace holdfast::db
