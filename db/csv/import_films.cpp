// SPDX-License-Identifier: GPL-3.0-or-later
// Lines of films with their recipes, rolls, storage places and readings.
#include "core/film/log_clock.h"
#include "core/film/log_time.h"
#include "core/trade/limits.h"
#include "core/trade/unit_words.h"
#include "db/actions/changed_fields.h"
#include "db/actions/parts.h"
#include "db/csv/import_kinds.h"
#include "db/csv/import_words.h"

#include <algorithm>
#include <charconv>

namespace holdfast::db {

namespace {

std::optional<Recipe> recipeOf(ImportRow& row) {
    if (!row.has("Temperature (°C)")) {
        for (const std::string_view heading : {"Dwell (s)", "Pressure", "Peel", "Recipe confirmed by"})
            if (row.has(heading))
                row.wrong("Temperature (°C)", said("a recipe needs its temperature."));
        return std::nullopt;
    }
    Recipe recipe;
    recipe.temperature = {row.number("Temperature (°C)")};
    recipe.dwell = Seconds{row.whole("Dwell (s)")};
    recipe.pressure =
        row.choice("Pressure", {Pressure::Light, Pressure::Medium, Pressure::Firm}, recipe.pressure);
    recipe.peel = row.choice("Peel", {Peel::Hot, Peel::Warm, Peel::Cool}, recipe.peel);
    recipe.preheat = Seconds{row.whole("Preheat (s)", recipe.preheat.count())};
    recipe.coolBeforePeel = Seconds{row.whole("Cool before peel (s)", recipe.coolBeforePeel.count())};
    recipe.finishFront = Seconds{row.whole("Finish front (s)", recipe.finishFront.count())};
    recipe.finishBack = Seconds{row.whole("Finish back (s)", recipe.finishBack.count())};
    recipe.tack = Seconds{row.whole("Tack (s)", recipe.tack.count())};
    recipe.confirmedBy = row.text("Recipe confirmed by");
    return recipe;
}

std::optional<FilmId> filmNamed(Connection& connection, const std::string& finish, const std::string& shade) {
    Query found = connection.query(
        "SELECT id FROM film WHERE finish = ?1 COLLATE NOCASE AND shade = ?2 COLLATE NOCASE", finish, shade);
    return found.step() ? std::optional{found.id<FilmId>(0)} : std::nullopt;
}

Result<PlaceId> placeNamed(ImportWork& work, const std::string& name) {
    const std::string small = inSmallLetters(name);
    if (const auto known = work.places.find(small); known != work.places.end())
        return known->second;
    Query found =
        work.writer.connection().query("SELECT id FROM storage_place WHERE name = ?1 COLLATE NOCASE", name);
    if (found.step())
        return work.places[small] = found.id<PlaceId>(0);
    const auto added = addPlace(work.writer, name);
    if (added)
        work.places[small] = *added;
    return added;
}

// "R-09", or 9.
std::optional<int> rollNumberOf(ImportRow& row) {
    const std::string label = row.text("Roll");
    if (label.empty())
        return std::nullopt;
    const std::string_view digits = std::string_view{label}.substr(label.starts_with("R-") ? 2 : 0);
    int number = 0;
    const auto [end, code] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
    if (code != std::errc{} || end != digits.data() + digits.size() || number < 1 || number > 999'999) {
        row.wrong("Roll", said("write its number, such as R-09."));
        return std::nullopt;
    }
    return number;
}

} // namespace

Result<LineWas> importFilm(ImportWork& work, ImportRow& row) {
    Film film;
    film.finish = row.text("Finish");
    film.shade = row.text("Shade");
    if (filmNamed(work.writer.connection(), film.finish, film.shade))
        return LineWas::Known;
    film.rgb = row.rgb("Colour", row.text("Colour"));
    film.recipe = recipeOf(row);
    film.follows = stretchOf(row, "Follows stretch", film.follows);
    film.gripsCoated = row.yesNo("Grips coated cloth", film.gripsCoated);
    for (const std::string& word : row.list("Not for"))
        film.notFor.push_back(fibreOf(row, "Not for", word));
    film.care = careOf(row, film.care);
    if (row.has("Shelf life (days)"))
        film.shelfLife = Days{row.whole("Shelf life (days)")};
    auto& storage = film.storage;
    storage.humidity = {{row.number("Humidity from (%)", storage.humidity.low.percent)},
                        {row.number("Humidity to (%)", storage.humidity.high.percent)}};
    storage.temperature = {{row.number("Stored from (°C)", storage.temperature.low.value)},
                           {row.number("Stored to (°C)", storage.temperature.high.value)}};
    storage.allowedOutside = Hours{row.whole("Allowed outside (h)", storage.allowedOutside.count())};
    film.ageing = {row.number("Ageing factor", film.ageing.q10),
                   {row.number("Ageing reference (°C)", film.ageing.reference.value)}};
    film.testStripExtends = Days{row.whole("Test strip adds (days)", film.testStripExtends.count())};
    film.mayLieUnder = row.yesNo("May lie under", film.mayLieUnder);
    film.mayLieOver = row.yesNo("May lie over", film.mayLieOver);
    film.hasGrain = row.yesNo("Grain", film.hasGrain);
    film.rollWidth = {row.whole("Roll width (mm)", film.rollWidth.value)};
    film.costPerMetre = row.money("Cost of a metre");
    film.supplier = row.text("Supplier");
    film.isRetired = row.yesNo("Retired", false);
    if (row.whatIsWrong())
        return *row.whatIsWrong();
    const auto added = addFilm(work.writer, film);
    return added ? Result<LineWas>{LineWas::Added} : row.refused(added.error());
}

namespace {

// Only that it was there is read in, so that its number is not given again: when its film came and went is in
// no line, and film that came and went today would count as used today.
Result<LineWas> importUsedUp(ImportWork& work, ImportRow& row, RollReceived roll, std::optional<int> number) {
    Connection& connection = work.writer.connection();
    if (!number || connection.number("SELECT COUNT(*) FROM film_roll WHERE number = ?1", *number) > 0)
        return LineWas::Passed;
    constexpr Millimetres kAnyLength{1000};
    roll.length = kAnyLength;
    const auto added = receiveRoll(work.writer, roll, number, work.now);
    if (!added)
        return row.refused(added.error());
    connection.run("DELETE FROM roll_move WHERE roll_id = ?1", added->id);
    connection.run("UPDATE film_roll SET state = ?2 WHERE id = ?1", added->id, codeOf(RollState::UsedUp));
    return LineWas::Added;
}

} // namespace

Result<LineWas> importRoll(ImportWork& work, ImportRow& row) {
    Connection& connection = work.writer.connection();
    const auto number = rollNumberOf(row);
    RollReceived roll;
    roll.width = {row.whole("Width (mm)")};
    roll.length = {row.whole("Length (mm)")};
    const auto received = row.day("Received");
    if (!received)
        row.wrong("Received", said("a day is needed, such as 2026-11-25."));
    roll.madeOn = row.day("Made");
    roll.printedUseBy = row.day("Printed use-by");
    const RollState state =
        row.choice("State", {RollState::OnShelf, RollState::PutAway, RollState::UsedUp}, RollState::OnShelf);
    const auto film = filmNamed(connection, row.text("Finish"), row.text("Shade"));
    if (!film)
        row.wrong("Finish", said("the shop has no film “{finish}, {shade}”. Read in the films first.",
                                 {{"finish", row.text("Finish")}, {"shade", row.text("Shade")}}));
    if (row.whatIsWrong())
        return *row.whatIsWrong();
    roll.receivedOn = *received;
    roll.film = *film;
    if (number) {
        Query known = connection.query("SELECT film_id FROM film_roll WHERE number = ?1", *number);
        if (known.step() && known.id<FilmId>(0) == *film)
            return LineWas::Known;
    }
    if (roll.length.value == 0 || state == RollState::UsedUp)
        return importUsedUp(work, row, roll, number);
    if (row.has("Place")) {
        const auto place = placeNamed(work, row.text("Place"));
        if (!place)
            return row.refused(place.error());
        roll.place = *place;
    }
    const auto added = receiveRoll(work.writer, roll, number, work.now);
    if (!added)
        return row.refused(added.error());
    if (state == RollState::PutAway)
        connection.run("UPDATE film_roll SET state = ?2 WHERE id = ?1", added->id, codeOf(state));
    return LineWas::Added;
}

Result<LineWas> importPlace(ImportWork& work, ImportRow& row) {
    const std::string name = row.text("Place");
    if (work.writer.connection().number("SELECT COUNT(*) FROM storage_place WHERE name = ?1 COLLATE NOCASE",
                                        name) > 0)
        return LineWas::Known;
    const bool isRetired = row.yesNo("Retired", false);
    if (row.whatIsWrong())
        return *row.whatIsWrong();
    const auto added = addPlace(work.writer, name);
    if (added && isRetired)
        writeRetired(work.writer.connection(), "storage_place", *added, true, work.writer.now());
    return added ? Result<LineWas>{LineWas::Added} : row.refused(added.error());
}

// A time without a zone is local. In the hour that comes twice when clocks are put back, the place's lines
// are taken in their order.
LogTime readingTimeOf(ImportRow& row, ImportWork& work) {
    LogTime time = readLogTime(row.text("When"), Seconds{0});
    if (time.kind != LogTimeKind::Read)
        return time;
    std::optional<Instant>& last = work.lastReadingOf[row.text("Place")];
    if (!time.hasZone)
        time.at = instantFollowing(LocalTime{time.at.time_since_epoch()}, last, work.offsetAt);
    last = time.at;
    return time;
}

Result<LineWas> importReading(ImportWork& work, ImportRow& row) {
    const LogTime time = readingTimeOf(row, work);
    if (time.kind != LogTimeKind::Read)
        row.wrong("When", said("“{typed}” is not a time. Write it as 2026-11-25 15:00.",
                               {{"typed", row.text("When")}}));
    const LogTime dayFirst = readLogTime(row.text("When"), Seconds{0});
    const LogTime monthFirst = readLogTime(row.text("When"), Seconds{0}, DateOrder::MonthFirst);
    if (time.needsOrder && monthFirst.kind == LogTimeKind::Read && monthFirst.at != dayFirst.at)
        row.wrong("When", said("“{typed}” may be two days. Write it as 2026-11-25 15:00.",
                               {{"typed", row.text("When")}}));
    if (!row.has("Temperature (°C)"))
        row.wrong("Temperature (°C)", said("a number is needed."));
    const auto humidity =
        row.has("Humidity (%)") ? std::optional{Humidity{row.number("Humidity (%)")}} : std::nullopt;
    const ClimateReading reading = readingOf(time.at, {row.number("Temperature (°C)")}, humidity);
    if (row.whatIsWrong())
        return *row.whatIsWrong();
    if (const auto checked = checkReading(reading, work.writer.now()); !checked)
        return row.refused(checked.error());
    const auto place = placeNamed(work, row.text("Place"));
    if (!place)
        return row.refused(place.error());
    work.readings.push_back({*place, reading});
    return LineWas::Added;
}

} // namespace holdfast::db
