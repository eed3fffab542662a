// SPDX-License-Identifier: GPL-3.0-or-later
// Blank styles: what they are, what their label says, how they are pressed all the same.
#include "core/trade/limits.h"
#include "db/actions/blank_actions.h"
#include "db/actions/care_checks.h"
#include "db/actions/changed_fields.h"
#include "db/actions/parts.h"
#include "db/actions/rows.h"
#include "db/actions/style_parts.h"
#include "db/tables/codes.h"

namespace holdfast::db {
namespace {

constexpr TextLimits kColourName{.field = "colour", .what = phrase("The colour’s name"), .most = 40};

Result<Done> checkLabel(const FabricLabel& label, Instant now) {
    if (auto fibres = checkFibres(label.fibres); !fibres.ok())
        return fibres;
    if (label.highestSafe)
        if (auto safe =
                measuredWithin(label.highestSafe->value, {.field = "highestSafe",
                                                          .what = phrase("The highest safe temperature"),
                                                          .least = 60,
                                                          .most = 260,
                                                          .unit = " °C"});
            !safe.ok())
            return safe;
    if (auto care = checkCare(label.care); !care.ok())
        return care;
    return checkDay(label.readOn, "readOn", phrase("The day the label was read"), now);
}

void writeLabel(Connection& connection, BlankStyleId style, const FabricLabel& label) {
    connection.run(
        "UPDATE blank_style SET label_read_on = ?2, stretch = ?3, coating = ?4, highest_safe_c = ?5, "
        "care_wash_c = ?6, care_agitation = ?7, care_tumble = ?8, care_iron_c = ?9, care_bleach = ?10, "
        "care_cleaning = ?11 WHERE id = ?1",
        style, label.readOn, codeOf(label.stretch), codeOf(label.coating), label.highestSafe,
        label.care.washCelsius, codeOf(label.care.agitation), codeOf(label.care.tumble),
        label.care.ironCelsius, codeOf(label.care.bleach), static_cast<int>(label.care.cleaning));
    connection.run("DELETE FROM style_fibre WHERE style_id = ?1", style);
    for (const FibreShare& share : label.fibres)
        connection.run("INSERT INTO style_fibre (style_id, fibre, percent) VALUES (?1, ?2, ?3)", style,
                       codeOf(share.fibre), share.percent);
}

void writeStyle(Writer& writer, BlankStyleId id, const BlankStyle& style) {
    Connection& connection = writer.connection();
    connection.run("INSERT INTO blank_style (id, name, outline, weight_g, cost_minor, not_prewashed_because, "
                   "for_child, sleepwear, has_cords, law_checked_by, supplier) "
                   "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11)",
                   id, style.name, style.outline, style.weight, style.cost, style.notPrewashedBecause,
                   style.forChild, style.sleepwear, style.hasCords, style.lawCheckedBy, style.supplier);
    for (std::size_t at = 0; at < style.sizes.size(); ++at)
        connection.run("INSERT INTO style_size (style_id, position, size) VALUES (?1, ?2, ?3)", id, at + 1,
                       style.sizes[at]);
    for (std::size_t at = 0; at < style.colours.size(); ++at)
        writeColour(writer, id, static_cast<std::int64_t>(at) + 1, style.colours[at]);
    writeRetired(connection, "blank_style", id, style.isRetired, writer.now());
    for (const ObstacleOnStyle& each : style.obstacles)
        writeObstacle(connection, id, each);
    if (style.label)
        writeLabel(connection, id, *style.label);
}

} // namespace

Result<BlankStyleId> addStyle(Shop& shop, const BlankStyle& style) {
    return shop.act([&](Writer& writer) { return addStyle(writer, style); });
}

Result<BlankStyleId> addStyle(Writer& writer, const BlankStyle& style) {
    const auto sound = soundStyle(writer.connection(), style);
    if (!sound.ok())
        return sound.error();
    if (sound->label)
        if (const auto label = checkLabel(*sound->label, writer.now()); !label.ok())
            return label.error();
    const auto id = writer.newId<BlankStyleId>();
    writeStyle(writer, id, *sound);
    writer.describe(said("Blank style {style} added", {{"style", sound->name}}));
    writer.concerns(id);
    return id;
}

Result<ColourId> addColour(Shop& shop, BlankStyleId style, const std::string& name, std::uint32_t rgb) {
    return shop.act([&](Writer& writer) -> Result<ColourId> {
        const auto text = typedText(name, kColourName);
        if (!text.ok())
            return text.error();
        if (const auto checked = checkRgb(rgb); !checked.ok())
            return checked.error();
        const auto styled = styleName(writer.connection(), style);
        if (!styled.ok())
            return styled.error();
        if (writer.connection().number(
                "SELECT COUNT(*) FROM style_colour WHERE style_id = ?1 AND name = ?2 COLLATE NOCASE", style,
                *text) > 0)
            return fieldError("colour", said("{style} has a colour “{colour}” already.",
                                             {{"style", *styled}, {"colour", *text}}));
        const std::int64_t last = writer.connection().number(
            "SELECT COALESCE(MAX(position), 0) FROM style_colour WHERE style_id = ?1", style);
        const ColourId colour = writeColour(writer, style, last + 1, {{}, *text, rgb});
        writer.describe(said("{style} now also in {colour}", {{"style", *styled}, {"colour", *text}}));
        writer.concerns(style);
        return colour;
    });
}

Result<Done> readLabel(Shop& shop, BlankStyleId style, const FabricLabel& label) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        if (const auto checked = checkLabel(label, writer.now()); !checked.ok())
            return checked.error();
        const auto name = styleName(writer.connection(), style);
        if (!name.ok())
            return name.error();
        writeLabel(writer.connection(), style, label);
        writer.describe(
            said("Label of {style} read: {fibres}", {{"style", *name}, {"fibres", fibreText(label.fibres)}}));
        writer.concerns(style);
        return Done{};
    });
}

Result<Done> markNotPrewashed(Shop& shop, BlankStyleId style, const std::string& reason) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto why = noneOrReason(reason);
        if (!why.ok())
            return why.error();
        const auto name = styleName(writer.connection(), style);
        if (!name.ok())
            return name.error();
        writer.connection().run("UPDATE blank_style SET not_prewashed_because = ?2 WHERE id = ?1", style,
                                *why);
        writer.describe(why->empty()
                            ? said("{style} is washed first again", {{"style", *name}})
                            : said("{style} is pressed unwashed: {why}", {{"style", *name}, {"why", *why}}));
        writer.concerns(style);
        return Done{};
    });
}

Result<Done> chooseWayRound(Shop& shop, BlankStyleId style, Obstacle obstacle, WayRound way) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto name = styleName(writer.connection(), style);
        if (!name.ok())
            return name.error();
        const std::vector<NamedValue> values{{"style", *name}, {"obstacle", obstacleName(obstacle)}};
        if (writer.connection().number(
                "SELECT COUNT(*) FROM style_obstacle WHERE style_id = ?1 AND obstacle = ?2", style,
                codeOf(obstacle)) == 0)
            return fieldError("obstacle", said("No {obstacle} is in the way on {style}.", values));
        writer.connection().run("UPDATE style_obstacle SET way = ?3 WHERE style_id = ?1 AND obstacle = ?2",
                                style, codeOf(obstacle), codeOf(way));
        writer.describe(
            said("{style}, {obstacle}: {way}", {values.front(), values.back(), {"way", wayRoundName(way)}}));
        writer.concerns(style);
        return Done{};
    });
}

Result<Done> chooseWaysRound(Shop& shop, BlankStyleId style, std::span<const ObstacleOnStyle> ways) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto name = styleName(writer.connection(), style);
        if (!name.ok())
            return name.error();
        std::vector<Sentence> chosenWays;
        for (const ObstacleOnStyle& each : ways) {
            if (!each.way)
                return fieldError("obstacle", said("Choose a way round the {obstacle}.",
                                                   {{"obstacle", obstacleName(each.obstacle)}}));
            if (const auto chosen = chooseWayRound(shop, style, each.obstacle, *each.way); !chosen.ok())
                return chosen;
            chosenWays.push_back(said("{obstacle}: {way}", {{"obstacle", obstacleName(each.obstacle)},
                                                            {"way", wayRoundName(*each.way)}}));
        }
        writer.describe(said("{style}, {ways}", {{"style", *name}, {"ways", std::move(chosenWays)}}));
        return Done{};
    });
}

Result<Done> noteLawChecked(Shop& shop, BlankStyleId style, const std::string& who) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto text = typedText(who, {.field = "who", .what = phrase("Who checked")});
        if (!text.ok())
            return text.error();
        const auto name = styleName(writer.connection(), style);
        if (!name.ok())
            return name.error();
        writer.connection().run("UPDATE blank_style SET law_checked_by = ?2 WHERE id = ?1", style, *text);
        writer.describe(said("Local law for {style} checked by {who}", {{"style", *name}, {"who", *text}}));
        writer.concerns(style);
        return Done{};
    });
}

} // namespace holdfast::db
