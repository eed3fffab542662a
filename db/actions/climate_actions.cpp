// SPDX-License-Identifier: GPL-3.0-or-later
// Storage places and their readings.
#include "core/trade/limits.h"
#include "db/actions/changed_fields.h"
#include "db/actions/film_actions.h"
#include "db/actions/parts.h"
#include "db/actions/rows.h"
#include "db/tables/fact_readers.h"

#include <algorithm>

namespace holdfast::db {
namespace {

constexpr std::size_t kProgressEvery = 10'000;
constexpr Instant kEarliest{std::chrono::sys_days{std::chrono::year{2000} / 1 / 1}};

constexpr const char* kInsert =
    "INSERT OR IGNORE INTO climate_reading (place_id, at, celsius, humidity) VALUES (?1, ?2, ?3, ?4)";

// Of climate_reading: place_id and at are its key in this order, celsius and humidity are not in it.
constexpr std::uint8_t kReadingKeys[] = {1, 2, 0, 0};

// What was in the way; then the action is given up.
std::optional<Error> addReadings(Writer& writer, PlaceId place, std::span<const ClimateReading> readings,
                                 const std::function<bool(double)>& progress, InsertedRows& rows,
                                 ReadingsImported& imported) {
    Query insert = readingInsert(writer);
    rows.reserve(readings.size());
    for (std::size_t at = 0; at < readings.size(); ++at) {
        const ClimateReading& reading = readings[at];
        if (const auto checked = checkReading(reading, writer.now()); !checked.ok())
            return fieldError(checked.error().field,
                              said("Reading {reading}: {wrong}",
                                   {{"reading", at + 1}, {"wrong", checked.error().message}}));
        ++(addReading(writer.connection(), insert, place, reading, rows) ? imported.added
                                                                         : imported.alreadyThere);
        const bool isMoment = (at + 1) % kProgressEvery == 0 || at + 1 == readings.size();
        if (isMoment && progress &&
            !progress(static_cast<double>(at + 1) / static_cast<double>(readings.size())))
            return plainError(said("Stopped. Not one reading was added."));
    }
    return std::nullopt;
}

} // namespace

Sentence measuredWords(const ClimateReading& reading) {
    const Decimal temperature{reading.temperature.value, 1};
    return reading.hasHumidity
               ? said("{humidity} %, {temperature} °C",
                      {{"humidity", Decimal{reading.humidity.percent, 0}}, {"temperature", temperature}})
               : said("{temperature} °C", {{"temperature", temperature}});
}

Result<Done> checkReading(const ClimateReading& reading, Instant now) {
    if (reading.at > now)
        return fieldError("at", said("A reading must not lie in the future."));
    if (reading.at < kEarliest)
        return fieldError("at", said("A reading must not lie before the year 2000."));
    if (auto checked = measuredWithin(reading.temperature.value, {.field = "temperature",
                                                                  .what = phrase("The temperature"),
                                                                  .least = -40,
                                                                  .most = 80,
                                                                  .unit = " °C"});
        !checked.ok() || !reading.hasHumidity)
        return checked;
    return measuredWithin(
        reading.humidity.percent,
        {.field = "humidity", .what = phrase("The humidity"), .least = 0, .most = 100, .unit = " %"});
}

Query readingInsert(Writer& writer) {
    return writer.connection().query(kInsert);
}

InsertedRows readingRows() {
    return {"climate_reading", kReadingKeys};
}

bool addReading(Connection& connection, Query& insert, PlaceId place, const ClimateReading& reading,
                InsertedRows& rows) {
    insert.bind(1, place).bind(2, reading.at).bind(3, reading.temperature).bind(4, reading.knownHumidity());
    insert.run();
    if (connection.changes() == 0)
        return false;
    rows.beginRow();
    rows.integer(place.value);
    rows.integer(reading.at.time_since_epoch().count());
    rows.real(reading.temperature.value);
    if (reading.hasHumidity)
        rows.real(reading.humidity.percent);
    else
        rows.null();
    return true;
}

namespace {

// Trimmed, and no other place's.
Result<std::string> soundPlaceName(Connection& connection, const std::string& name, PlaceId id) {
    auto text = typedText(name, {.field = "name", .what = phrase("The place’s name"), .most = 60});
    if (text.ok() &&
        connection.number("SELECT COUNT(*) FROM storage_place WHERE name = ?1 COLLATE NOCASE AND id <> ?2",
                          *text, id) > 0)
        return fieldError("name", said("There is a place “{place}” already; give this one another name.",
                                       {{"place", *text}}));
    return text;
}

Sentence rollsIn(Connection& connection, PlaceId place) {
    const std::int64_t rolls = connection.number(
        "SELECT COUNT(*) FROM film_roll WHERE state <> 'used-up' AND ?1 = (SELECT place_id FROM roll_stay "
        "WHERE roll_id = film_roll.id ORDER BY since DESC, id DESC LIMIT 1)",
        place);
    return rolls > 0 ? said("{n} roll is there still|{n} rolls are there still", {{"n", rolls}}) : Sentence{};
}

} // namespace

Result<PlaceId> addPlace(Shop& shop, const std::string& name) {
    return shop.act([&](Writer& writer) { return addPlace(writer, name); });
}

Result<PlaceId> addPlace(Writer& writer, const std::string& name) {
    const auto text = soundPlaceName(writer.connection(), name, PlaceId{});
    if (!text.ok())
        return text.error();
    const auto place = writer.newId<PlaceId>();
    writer.connection().run("INSERT INTO storage_place (id, name) VALUES (?1, ?2)", place, *text);
    writer.describe(said("Storage place {place} set up", {{"place", *text}}));
    writer.concerns(place);
    return place;
}

Result<Done> changePlace(Shop& shop, const StoragePlace& place) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        Connection& connection = writer.connection();
        UnreadFacts unread;
        const std::vector<StoragePlace> places = readPlaces(connection, unread);
        const auto before = std::ranges::find(places, place.id, &StoragePlace::id);
        if (before == places.end())
            return fieldError("place",
                              said("The shop has no such {what} any more.", {{"what", "storage place"}}));
        const auto name = soundPlaceName(connection, place.name, place.id);
        if (!name.ok())
            return name.error();
        ChangedFields changes;
        changes.note("name", before->name, *name);
        changes.noteRetired(before->isRetired, place.isRetired, rollsIn(connection, place.id));
        if (changes.empty())
            return Done{};
        connection.run("UPDATE storage_place SET name = ?2 WHERE id = ?1", place.id, *name);
        writeRetired(connection, "storage_place", place.id, place.isRetired, writer.now());
        writer.describe(said("Storage place {place} changed: {changes}",
                             {{"place", *name}, {"changes", changes.words()}}));
        writer.concerns(place.id);
        return Done{};
    });
}

Result<Done> recordReading(Shop& shop, PlaceId place, const ClimateReading& reading) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        if (const auto checked = checkReading(reading, writer.now()); !checked.ok())
            return checked.error();
        const auto name = placeName(writer.connection(), place);
        if (!name.ok())
            return name.error();
        writer.connection().run(kInsert, place, reading.at, reading.temperature, reading.knownHumidity());
        if (writer.connection().changes() == 0)
            return fieldError("at",
                              said("{place} has a reading of that moment already.", {{"place", *name}}));
        writer.describe(said("{place}: {reading}", {{"place", *name}, {"reading", measuredWords(reading)}}));
        writer.concerns(place);
        return Done{};
    });
}

Result<ReadingsImported> importReadings(Shop& shop, PlaceId place, std::span<const ClimateReading> readings,
                                        const std::function<bool(double)>& progress) {
    return shop.act([&](Writer& writer) -> Result<ReadingsImported> {
        const auto name = placeName(writer.connection(), place);
        if (!name.ok())
            return name.error();
        if (readings.empty())
            return fieldError("readings", said("There is no reading to add."));
        ReadingsImported imported;
        std::optional<Error> refused;
        writer.insertMany([&] {
            InsertedRows rows = readingRows();
            refused = addReadings(writer, place, readings, progress, rows, imported);
            return rows;
        });
        if (refused)
            return *refused;
        writer.describe(said("{n} reading of {place} read in|{n} readings of {place} read in",
                             {{"n", imported.added}, {"place", *name}}));
        writer.concerns(place);
        return imported;
    });
}

} // namespace holdfast::db
