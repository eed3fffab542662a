// SPDX-License-Identifier: GPL-3.0-or-later
// Readings that were noted wrongly: corrected, or removed.
#include "core/trade/limits.h"
#include "db/actions/film_actions.h"
#include "db/actions/parts.h"
#include "db/actions/rows.h"

namespace holdfast::db {
namespace {

constexpr std::int64_t kRemovedAtOnce = 10'000;

Result<ClimateReading> readingAt(Connection& connection, PlaceId place, Instant at) {
    Query row = connection.query(
        "SELECT celsius, humidity FROM climate_reading WHERE place_id = ?1 AND at = ?2", place, at);
    if (!row.step())
        return fieldError("at", said("There is no reading of that moment any more."));
    const std::optional<double> humidity = row.optionalReal(1);
    return readingOf(at, Celsius{row.real(0)}, humidity ? std::optional{Humidity{*humidity}} : std::nullopt);
}

// Its moment is part of its key, so a reading that moves is taken out and put in.
void replace(Connection& connection, PlaceId place, Instant before, const ClimateReading& corrected) {
    if (corrected.at == before) {
        connection.run(
            "UPDATE climate_reading SET celsius = ?3, humidity = ?4 WHERE place_id = ?1 AND at = ?2", place,
            before, corrected.temperature, corrected.knownHumidity());
        return;
    }
    connection.run("DELETE FROM climate_reading WHERE place_id = ?1 AND at = ?2", place, before);
    connection.run("INSERT INTO climate_reading (place_id, at, celsius, humidity) VALUES (?1, ?2, ?3, ?4)",
                   place, corrected.at, corrected.temperature, corrected.knownHumidity());
}

} // namespace

Result<Done> correctReading(Shop& shop, PlaceId place, Instant before, const ClimateReading& corrected) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        Connection& connection = writer.connection();
        if (const auto checked = checkReading(corrected, writer.now()); !checked.ok())
            return checked.error();
        const auto name = placeName(connection, place);
        if (!name.ok())
            return name.error();
        const auto was = readingAt(connection, place, before);
        if (!was.ok())
            return was.error();
        if (corrected.at != before && readingAt(connection, place, corrected.at).ok())
            return fieldError("at",
                              said("{place} has a reading of that moment already.", {{"place", *name}}));
        if (*was == corrected)
            return fieldError("temperature", said("Nothing was changed."));
        replace(connection, place, before, corrected);
        writer.describe(
            said("{place}: reading corrected from {was} to {corrected}",
                 {{"place", *name}, {"was", measuredWords(*was)}, {"corrected", measuredWords(corrected)}}));
        writer.concerns(place);
        return Done{};
    });
}

Result<std::int64_t> removeReadings(Shop& shop, PlaceId place, Instant first, Instant last,
                                    const std::function<bool(double)>& progress) {
    return shop.act([&](Writer& writer) -> Result<std::int64_t> {
        Connection& connection = writer.connection();
        const auto name = placeName(connection, place);
        if (!name.ok())
            return name.error();
        const std::int64_t count = connection.number(
            "SELECT COUNT(*) FROM climate_reading WHERE place_id = ?1 AND at BETWEEN ?2 AND ?3", place, first,
            last);
        if (count == 0)
            return fieldError("at", said("There is no reading to remove."));
        const auto single = readingAt(connection, place, first);
        for (std::int64_t removed = 0; removed < count; removed += kRemovedAtOnce) {
            if (progress && !progress(static_cast<double>(removed) / static_cast<double>(count)))
                return plainError(said("Stopped. Not one reading was removed."));
            connection.run("DELETE FROM climate_reading WHERE place_id = ?1 AND at IN (SELECT at FROM "
                           "climate_reading WHERE place_id = ?1 AND at BETWEEN ?2 AND ?3 LIMIT ?4)",
                           place, first, last, kRemovedAtOnce);
        }
        writer.describe(count == 1 && single.ok()
                            ? said("{place}: reading removed, {reading}",
                                   {{"place", *name}, {"reading", measuredWords(*single)}})
                            : said("{n} reading of {place} removed|{n} readings of {place} removed",
                                   {{"n", count}, {"place", *name}}));
        writer.concerns(place);
        return count;
    });
}

} // namespace holdfast::db
