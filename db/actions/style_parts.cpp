// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/style_parts.h"

#include "core/trade/limits.h"
#include "db/actions/care_checks.h"
#include "db/actions/changed_fields.h"
#include "db/tables/codes.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <array>

namespace holdfast::db {
namespace {

constexpr std::array<std::string_view, 8> kOutlines{"tee", "long-sleeve", "hoodie", "tote",
                                                    "bib", "bodysuit",    "cap",    "apron"};
constexpr TextLimits kStyleReason{.field = "reason", .what = phrase("The reason"), .least = 3, .most = 200};

} // namespace

Result<std::string> noneOrReason(const std::string& typed) {
    if (trimmed(typed).empty())
        return std::string{};
    return typedText(typed, kStyleReason);
}

Result<Done> checkRgb(std::uint32_t rgb) {
    if (rgb > 0xFFFFFF)
        return fieldError("colour", said("The colour must be one of red, green and blue, 0 to 255 each."));
    return Done{};
}

Result<BlankStyle> soundStyle(Connection& connection, const BlankStyle& typed) {
    BlankStyle style = typed;
    auto name = typedText(typed.name, {.field = "name", .what = phrase("The style’s name"), .most = 60});
    if (!name.ok())
        return name.error();
    style.name = std::move(name).value();
    if (connection.number("SELECT COUNT(*) FROM blank_style WHERE name = ?1 COLLATE NOCASE AND id <> ?2",
                          style.name, style.id) > 0)
        return fieldError("name",
                          said("There is a blank style “{style}” already; give this one another name.",
                               {{"style", style.name}}));
    if (std::ranges::find(kOutlines, style.outline) == kOutlines.end())
        return fieldError(
            "outline",
            said("Choose a drawing: tee, long-sleeve, hoodie, tote, bib, bodysuit, cap or apron."));
    if (const auto wrong = firstError({
            within(
                style.weight.value,
                {.field = "weight", .what = phrase("The weight"), .least = 1, .most = 10'000, .unit = " g"}),
            checkCost(style.cost, "cost", loadSettings(connection).currency),
            within(static_cast<std::int64_t>(style.sizes.size()),
                   {.field = "sizes", .what = phrase("The number of sizes"), .least = 1, .most = 40}),
            within(static_cast<std::int64_t>(style.colours.size()),
                   {.field = "colours", .what = phrase("The number of colours"), .least = 1, .most = 60}),
        }))
        return *wrong;

    for (auto size = style.sizes.begin(); size != style.sizes.end(); ++size) {
        auto text = typedText(*size, {.field = "sizes", .what = phrase("A size"), .most = 20});
        if (!text.ok())
            return text.error();
        *size = std::move(text).value();
        if (std::find(style.sizes.begin(), size, *size) != size)
            return fieldError("sizes", said("The size “{size}” is named twice.", {{"size", *size}}));
    }
    for (auto colour = style.colours.begin(); colour != style.colours.end(); ++colour) {
        auto text =
            typedText(colour->name, {.field = "colours", .what = phrase("A colour’s name"), .most = 40});
        if (!text.ok())
            return text.error();
        colour->name = std::move(text).value();
        if (const auto rgb = checkRgb(colour->rgb); !rgb.ok())
            return rgb.error();
        if (std::ranges::find(style.colours.begin(), colour, colour->name, &Colour::name) != colour)
            return fieldError("colours",
                              said("The colour “{colour}” is named twice.", {{"colour", colour->name}}));
    }
    for (auto obstacle = style.obstacles.begin(); obstacle != style.obstacles.end(); ++obstacle)
        if (std::ranges::find(style.obstacles.begin(), obstacle, obstacle->obstacle,
                              &ObstacleOnStyle::obstacle) != obstacle)
            return fieldError("obstacles", said("The {obstacle} is named twice.",
                                                {{"obstacle", obstacleName(obstacle->obstacle)}}));

    auto reason = noneOrReason(typed.notPrewashedBecause);
    if (!reason.ok())
        return reason.error();
    style.notPrewashedBecause = std::move(reason).value();
    auto supplier = supplierOf(typed.supplier);
    if (!supplier.ok())
        return supplier.error();
    style.supplier = std::move(supplier).value();
    auto who = typedText(typed.lawCheckedBy,
                         {.field = "lawCheckedBy", .what = phrase("Who checked"), .least = 0, .most = 80});
    if (!who.ok())
        return who.error();
    style.lawCheckedBy = std::move(who).value();
    return style;
}

ColourId writeColour(Writer& writer, BlankStyleId style, std::int64_t position, const Colour& colour) {
    const auto id = writer.newId<ColourId>();
    writer.connection().run(
        "INSERT INTO style_colour (id, style_id, position, name, rgb) VALUES (?1, ?2, ?3, ?4, ?5)", id, style,
        position, colour.name, colour.rgb);
    writeRetired(writer.connection(), "style_colour", id, colour.isRetired, writer.now());
    return id;
}

void writeObstacle(Connection& connection, BlankStyleId style, const ObstacleOnStyle& obstacle) {
    const std::optional<std::string> way =
        obstacle.way ? std::optional<std::string>{codeOf(*obstacle.way)} : std::nullopt;
    connection.run("INSERT INTO style_obstacle (style_id, obstacle, way) VALUES (?1, ?2, ?3) "
                   "ON CONFLICT (style_id, obstacle) DO UPDATE SET way = excluded.way",
                   style, codeOf(obstacle.obstacle), way);
}

} // namespace holdfast::db
