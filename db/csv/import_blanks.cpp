// SPDX-License-Identifier: GPL-3.0-or-later
// Lines of customers, blank styles, blanks received and wash loads.
#include "core/film/log_clock.h"
#include "core/film/log_time.h"
#include "core/orders/order_draft.h"
#include "core/trade/limits.h"
#include "db/actions/parts.h"
#include "db/csv/import_kinds.h"
#include "db/csv/import_words.h"

#include <charconv>

namespace holdfast::db {

namespace {

constexpr std::string_view kRetired = " retired"; // after the shade of a colour

std::vector<Colour> coloursOf(ImportRow& row) {
    std::vector<Colour> colours;
    for (const std::string& each : row.list("Colours")) {
        const auto hash = each.rfind(" #");
        std::string_view rgb =
            hash == std::string::npos ? std::string_view{} : std::string_view{each}.substr(hash + 1);
        const bool isRetired = rgb.ends_with(kRetired);
        if (isRetired)
            rgb.remove_suffix(kRetired.size());
        colours.push_back({{}, trimmed(each.substr(0, hash)), row.rgb("Colours", rgb), isRetired});
    }
    return colours;
}

std::vector<FibreShare> fibresOf(ImportRow& row) {
    std::vector<FibreShare> fibres;
    for (const std::string& each : row.list("Fibres")) {
        FibreShare share;
        const auto space = each.find(' ');
        const auto [end, code] = std::from_chars(each.data(), each.data() + each.size(), share.percent);
        if (code != std::errc{} || space == std::string::npos || end != each.data() + space)
            row.wrong("Fibres",
                      said("write each as its percent and name, such as 80 cotton | 20 polyester."));
        else
            share.fibre = fibreOf(row, "Fibres", each.substr(space + 1));
        fibres.push_back(share);
    }
    return fibres;
}

std::vector<ObstacleOnStyle> obstaclesOf(ImportRow& row) {
    std::vector<ObstacleOnStyle> obstacles;
    for (const std::string& each : row.list("Obstacles")) {
        const auto colon = each.find(':');
        ObstacleOnStyle obstacle;
        obstacle.obstacle = row.choiceOf(
            "Obstacles", trimmed(each.substr(0, colon)),
            {Obstacle::Zip, Obstacle::Buttons, Obstacle::Seams, Obstacle::ThickHem}, Obstacle::Zip);
        if (colon != std::string::npos)
            obstacle.way =
                row.choiceOf("Obstacles", trimmed(each.substr(colon + 1)),
                             {WayRound::Pillow, WayRound::Turn, WayRound::SmallPlaten}, WayRound::Pillow);
        obstacles.push_back(obstacle);
    }
    return obstacles;
}

// A style whose label nobody has read has no day of it.
std::optional<FabricLabel> labelOf(ImportRow& row) {
    const auto readOn = row.day("Label read");
    if (!readOn) {
        if (row.has("Fibres"))
            row.wrong("Label read", said("say on which day the label was read, such as 2026-11-25."));
        return std::nullopt;
    }
    FabricLabel label;
    label.readOn = *readOn;
    label.fibres = fibresOf(row);
    label.stretch = stretchOf(row, "Stretch", Stretch::None);
    label.coating =
        row.choice("Coating", {Coating::None, Coating::WaterRepellent, Coating::Waxed}, Coating::None);
    if (row.has("Highest safe (°C)"))
        label.highestSafe = Celsius{row.number("Highest safe (°C)")};
    label.care = careOf(row, label.care);
    return label;
}

// A local time, "2026-11-25 15:00".
std::optional<Instant> momentOf(ImportRow& row, std::string_view heading, const ImportWork& work) {
    if (!row.has(heading))
        return std::nullopt;
    const LogTime time = readLogTime(row.text(heading), Seconds{0});
    if (time.kind != LogTimeKind::Read || time.needsOrder) {
        row.wrong(heading, said("“{typed}” is not a time. Write it as 2026-11-25 15:00.",
                                {{"typed", row.text(heading)}}));
        return std::nullopt;
    }
    return time.hasZone
               ? time.at
               : instantFollowing(LocalTime{time.at.time_since_epoch()}, std::nullopt, work.offsetAt);
}

// Washed only where the file says how: with softener it would be washed again.
std::optional<WashLoad> washOf(const ImportWork& work, ImportRow& row, std::string_view heading) {
    const auto started = momentOf(row, heading, work);
    const auto dry = momentOf(row, "Dry", work);
    if (!started || !row.has("Softener") || !row.has("Dryer sheet"))
        return std::nullopt;
    WashLoad load;
    load.startedAt = *started;
    load.dryAt = dry;
    load.detergent = row.text("Detergent");
    load.softener = row.yesNo("Softener", false);
    load.dryerSheet = row.yesNo("Dryer sheet", false);
    load.water = {row.number("Water (°C)", load.water.value)};
    load.drying = row.choice("Drying", {Drying::Line, Drying::TumbleLow, Drying::Tumble}, load.drying);
    if (*started > work.writer.now() || (dry && (*dry < *started || *dry > work.writer.now())))
        row.wrong(heading, said("it was washed before it was dry, and neither is in the future."));
    const auto detergent =
        typedText(load.detergent, {.field = "Detergent", .what = phrase("The detergent"), .least = 0});
    if (!detergent)
        row.wrong("Detergent", detergent.error().message);
    if (load.water.value < 10 || load.water.value > 95)
        row.wrong("Water (°C)", said("10 to 95 °C."));
    return load;
}

// The washes of which all is as the file says, to the minute: it says no more.
std::vector<WashLoadId> knownLoads(Connection& connection, const WashLoad& load) {
    std::vector<WashLoadId> known;
    Query rows =
        connection.query("SELECT id FROM wash_load WHERE started_at / 60 = ?1 / 60 AND detergent = ?2 "
                         "AND softener = ?3 AND water_c = ?4 AND drying = ?5 AND dryer_sheet = ?6 "
                         "AND dry_at / 60 IS ?7 / 60 ORDER BY id",
                         load.startedAt, load.detergent, load.softener, load.water, codeOf(load.drying),
                         load.dryerSheet, load.dryAt);
    while (rows.step())
        known.push_back(rows.id<WashLoadId>(0));
    return known;
}

WashLoadId addLoad(Writer& writer, const WashLoad& load) {
    const auto id = writer.newId<WashLoadId>();
    writer.connection().run(
        "INSERT INTO wash_load (id, started_at, detergent, softener, water_c, drying, dryer_sheet, dry_at) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
        id, load.startedAt, load.detergent, load.softener, load.water, codeOf(load.drying), load.dryerSheet,
        load.dryAt);
    writer.concerns(id);
    return id;
}

// Lots of which the file says the same were washed together.
WashLoadId loadOf(Writer& writer, const WashLoad& load) {
    const auto known = knownLoads(writer.connection(), load);
    return known.empty() ? addLoad(writer, load) : known.front();
}

// As it was measured, all four lengths or none.
std::optional<Shrinkage> shrinkageOf(ImportRow& row) {
    constexpr std::string_view kHeadings[] = {"Length before (mm)", "Length after (mm)", "Width before (mm)",
                                              "Width after (mm)"};
    if (!row.has(kHeadings[0]))
        return std::nullopt;
    Millimetres lengths[4];
    for (std::size_t at = 0; at < std::size(kHeadings); ++at) {
        lengths[at] = {row.whole(kHeadings[at])};
        if (lengths[at].value < 10 || lengths[at].value > 3000)
            row.wrong(kHeadings[at], said("10 to 3,000 mm."));
    }
    return Shrinkage{lengths[0], lengths[1], lengths[2], lengths[3]};
}

} // namespace

Result<LineWas> importCustomer(ImportWork& work, ImportRow& row) {
    const auto name = typedText(row.text("Customer"),
                                {.field = "Customer", .what = phrase("The customer’s name"), .most = 80});
    if (!name)
        return row.refused(name.error());
    const auto phone =
        typedText(row.text("Telephone"),
                  {.field = "Telephone", .what = phrase("The phone number"), .least = 0, .most = 40});
    if (!phone)
        return row.refused(phone.error());
    const auto note = typedText(row.text("Note"), {.field = "Note",
                                                   .what = phrase("The note"),
                                                   .least = 0,
                                                   .most = kMostNoteCharacters,
                                                   .mayBreakLines = true});
    if (!note)
        return row.refused(note.error());
    Connection& connection = work.writer.connection();
    if (connection.number("SELECT COUNT(*) FROM customer WHERE name = ?1 COLLATE NOCASE AND phone = ?2",
                          *name, *phone) > 0)
        return LineWas::Known;
    const auto customer = work.writer.newId<CustomerId>();
    connection.run("INSERT INTO customer (id, name, phone, note) VALUES (?1, ?2, ?3, ?4)", customer, *name,
                   *phone, *note);
    work.writer.concerns(customer);
    return LineWas::Added;
}

Result<LineWas> importStyle(ImportWork& work, ImportRow& row) {
    BlankStyle style;
    style.name = row.text("Style");
    if (work.writer.connection().number("SELECT COUNT(*) FROM blank_style WHERE name = ?1 COLLATE NOCASE",
                                        style.name) > 0)
        return LineWas::Known;
    style.outline = row.text("Drawing");
    style.weight = {row.whole("Weight (g)")};
    style.cost = row.money("Cost");
    style.sizes = row.list("Sizes");
    style.colours = coloursOf(row);
    style.obstacles = obstaclesOf(row);
    style.notPrewashedBecause = row.text("Not washed first because");
    style.forChild = row.yesNo("For a child", false);
    style.sleepwear = row.yesNo("Sleepwear", false);
    style.hasCords = row.yesNo("Cords", false);
    style.lawCheckedBy = row.text("Law checked by");
    style.label = labelOf(row);
    style.supplier = row.text("Supplier");
    style.isRetired = row.yesNo("Retired", false);
    if (row.whatIsWrong())
        return *row.whatIsWrong();
    const auto added = addStyle(work.writer, style);
    return added ? Result<LineWas>{LineWas::Added} : row.refused(added.error());
}

// A lot has no name. As many as there are of the same kind, day and number are taken for those of the file.
Result<LineWas> importLot(ImportWork& work, ImportRow& row) {
    Connection& connection = work.writer.connection();
    const std::string style = row.text("Style");
    const std::string size = row.text("Size");
    const std::string colour = row.text("Colour");
    const std::int64_t units = row.whole("Units");
    const auto received = row.day("Received");
    if (!received)
        row.wrong("Received", said("a day is needed, such as 2026-11-25."));
    Query found = connection.query(
        "SELECT blank_style.id, style_colour.id FROM blank_style "
        "LEFT JOIN style_colour ON style_id = blank_style.id "
        "AND style_colour.name = ?2 COLLATE NOCASE WHERE blank_style.name = ?1 COLLATE NOCASE",
        style, colour);
    if (!found.step())
        row.wrong("Style", said("the shop has no blank style “{style}”. Read in the blank styles first.",
                                {{"style", style}}));
    else if (found.isNull(1))
        row.wrong("Colour",
                  said("“{style}” has no colour “{colour}”.", {{"style", style}, {"colour", colour}}));
    if (row.whatIsWrong())
        return *row.whatIsWrong();
    if (units == 0)
        return LineWas::Passed;
    const auto styleId = found.id<BlankStyleId>(0);
    const auto colourId = found.id<ColourId>(1);
    const std::int64_t there = connection.number(
        "SELECT COUNT(*) FROM blank_lot JOIN lot_units ON lot_id = blank_lot.id WHERE style_id = ?1 AND size "
        "= ?2 "
        "AND colour_id = ?3 AND received_on = ?4 AND (units = ?5 OR ?5 = (SELECT SUM(units) FROM lot_move "
        "WHERE lot_move.lot_id = blank_lot.id AND units > 0))",
        styleId, size, colourId, *received, units);
    if (work.lotsSeen[{style, size, colour, isoDate(*received), units}]++ < there)
        return LineWas::Known;
    const auto washed = washOf(work, row, "Washed");
    const auto shrinkage = shrinkageOf(row);
    if (row.whatIsWrong())
        return *row.whatIsWrong();
    const auto added = receiveBlanks(work.writer, styleId, size, colourId, units, *received);
    if (added && washed)
        connection.run("UPDATE blank_lot SET last_load_id = ?2 WHERE id = ?1", *added,
                       loadOf(work.writer, *washed));
    if (added && shrinkage)
        connection.run(
            "UPDATE blank_lot SET length_before_mm = ?2, length_after_mm = ?3, width_before_mm = ?4, "
            "width_after_mm = ?5 WHERE id = ?1",
            *added, shrinkage->lengthBefore, shrinkage->lengthAfter, shrinkage->widthBefore,
            shrinkage->widthAfter);
    return added ? Result<LineWas>{LineWas::Added} : row.refused(added.error());
}

// Two that are alike to the minute are two, where the file has two.
Result<LineWas> importWash(ImportWork& work, ImportRow& row) {
    const auto load = washOf(work, row, "Started");
    for (const std::string_view heading : {"Started", "Softener", "Dryer sheet"})
        if (!row.has(heading))
            row.wrong(heading, said("it is needed."));
    if (row.whatIsWrong())
        return *row.whatIsWrong();
    std::string key;
    for (const std::string_view heading :
         {"Started", "Dry", "Detergent", "Softener", "Water (°C)", "Drying", "Dryer sheet"})
        key += row.text(heading) + "\n";
    if (work.loadsSeen[key]++ < std::ssize(knownLoads(work.writer.connection(), *load)))
        return LineWas::Known;
    addLoad(work.writer, *load);
    return LineWas::Added;
}

} // namespace holdfast::db
