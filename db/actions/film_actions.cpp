// SPDX-License-Identifier: GPL-3.0-or-later
// Films and their recipes.
#include "db/actions/film_actions.h"

#include "core/trade/limits.h"
#include "core/trade/unit_words.h"
#include "db/actions/care_checks.h"
#include "db/actions/changed_fields.h"
#include "db/actions/film_changes.h"
#include "db/actions/parts.h"
#include "db/actions/rows.h"
#include "db/tables/codes.h"
#include "db/tables/fact_readers.h"
#include "db/tables/facts.h"

#include <algorithm>

namespace holdfast::db {
namespace {

Result<Done> checkBand(double low, double high, const NumberLimits& limits) {
    for (const double end : {low, high})
        if (auto checked = measuredWithin(end, limits); !checked.ok())
            return checked;
    if (low >= high)
        return fieldError(std::string{limits.field},
                          said("{what} must begin below where it ends.", {{"what", limits.what}}));
    return Done{};
}

Result<Done> checkNumbers(const Film& film, const Currency& currency) {
    const std::int64_t shelfLife = film.shelfLife ? film.shelfLife->count() : 1;
    const auto wrong = firstError({
        film.rgb > 0xFFFFFF
            ? Result<Done>{fieldError("shade", said("The colour must be one of red, green and blue, 0 to "
                                                    "255 each."))}
            : Result<Done>{Done{}},
        film.recipe ? checkRecipe(*film.recipe) : Result<Done>{Done{}},
        checkCare(film.care),
        within(shelfLife, {.field = "shelfLife",
                           .what = phrase("The shelf life"),
                           .least = 1,
                           .most = 36'500,
                           .unit = " days"}),
        checkBand(film.storage.humidity.low.percent, film.storage.humidity.high.percent,
                  {.field = "humidity",
                   .what = phrase("The storage humidity"),
                   .least = 0,
                   .most = 100,
                   .unit = " %"}),
        checkBand(film.storage.temperature.low.value, film.storage.temperature.high.value,
                  {.field = "storage",
                   .what = phrase("The storage temperature"),
                   .least = -20,
                   .most = 60,
                   .unit = " °C"}),
        within(film.storage.allowedOutside.count(), {.field = "allowedOutside",
                                                     .what = phrase("The time outside"),
                                                     .least = 0,
                                                     .most = 8784,
                                                     .unit = " h"}),
        measuredWithin(film.ageing.q10,
                       {.field = "q10", .what = phrase("The ageing factor"), .least = 1, .most = 10}),
        measuredWithin(film.ageing.reference.value, {.field = "reference",
                                                     .what = phrase("The ageing reference"),
                                                     .least = -20,
                                                     .most = 60,
                                                     .unit = " °C"}),
        within(film.testStripExtends.count(), {.field = "testStripExtends",
                                               .what = phrase("What a test strip adds"),
                                               .least = 0,
                                               .most = 3650,
                                               .unit = " days"}),
        within(film.rollWidth.value, {.field = "rollWidth",
                                      .what = phrase("The roll’s width"),
                                      .least = 20,
                                      .most = 2000,
                                      .unit = " mm"}),
        checkCost(film.costPerMetre, "costPerMetre", currency),
    });
    return wrong ? Result<Done>{*wrong} : Result<Done>{Done{}};
}

// A film as it may be written: texts trimmed, all within their limits, its name no other film's.
Result<Film> soundFilm(Connection& connection, const Film& typed) {
    Film film = typed;
    auto finish =
        typedText(typed.finish, {.field = "finish", .what = phrase("The film’s finish"), .most = 60});
    if (!finish.ok())
        return finish.error();
    auto shade = typedText(typed.shade, {.field = "shade", .what = phrase("The film’s shade"), .most = 40});
    if (!shade.ok())
        return shade.error();
    film.finish = std::move(finish).value();
    film.shade = std::move(shade).value();
    auto supplier = supplierOf(typed.supplier);
    if (!supplier.ok())
        return supplier.error();
    film.supplier = std::move(supplier).value();
    if (connection.number(
            "SELECT COUNT(*) FROM film WHERE finish = ?1 COLLATE NOCASE AND shade = ?2 COLLATE NOCASE "
            "AND id <> ?3",
            film.finish, film.shade, film.id) > 0)
        return fieldError("shade", said("There is a film {film} already.", {{"film", film.name()}}));
    if (const auto checked = checkNumbers(film, loadSettings(connection).currency); !checked.ok())
        return checked.error();
    std::ranges::sort(film.notFor);
    film.notFor.erase(std::unique(film.notFor.begin(), film.notFor.end()), film.notFor.end());
    return film;
}

Result<std::string> confirmedByOf(const std::string& typed) {
    return typedText(typed,
                     {.field = "confirmedBy", .what = phrase("Who confirmed it"), .least = 0, .most = 80});
}

void writeRecipe(Connection& connection, FilmId film, const Recipe& recipe, const std::string& confirmedBy) {
    connection.run(
        "UPDATE film SET recipe_c = ?2, dwell_s = ?3, pressure = ?4, peel = ?5, preheat_s = ?6, "
        "cool_s = ?7, finish_front_s = ?8, finish_back_s = ?9, tack_s = ?10, recipe_confirmed_by = ?11 "
        "WHERE id = ?1",
        film, recipe.temperature, recipe.dwell, codeOf(recipe.pressure), codeOf(recipe.peel), recipe.preheat,
        recipe.coolBeforePeel, recipe.finishFront, recipe.finishBack, recipe.tack, confirmedBy);
}

// All but its recipe; into a new row, or over the one there is.
void writeSheet(Connection& connection, FilmId id, const Film& film) {
    connection.run(
        "INSERT INTO film (id, finish, shade, rgb, follows, grips_coated, care_wash_c, care_agitation, "
        "care_tumble, care_iron_c, care_bleach, care_cleaning, shelf_life_days, humidity_low, "
        "humidity_high, store_low_c, store_high_c, allowed_outside_h, q10, reference_c, "
        "strip_extends_days, may_lie_under, may_lie_over, has_grain, roll_width_mm, cost_per_metre, "
        "supplier) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, "
        "?20, ?21, ?22, ?23, ?24, ?25, ?26, ?27) "
        "ON CONFLICT (id) DO UPDATE SET finish = excluded.finish, shade = excluded.shade, "
        "rgb = excluded.rgb, follows = excluded.follows, grips_coated = excluded.grips_coated, "
        "care_wash_c = excluded.care_wash_c, care_agitation = excluded.care_agitation, "
        "care_tumble = excluded.care_tumble, care_iron_c = excluded.care_iron_c, "
        "care_bleach = excluded.care_bleach, care_cleaning = excluded.care_cleaning, "
        "shelf_life_days = excluded.shelf_life_days, humidity_low = excluded.humidity_low, "
        "humidity_high = excluded.humidity_high, store_low_c = excluded.store_low_c, "
        "store_high_c = excluded.store_high_c, allowed_outside_h = excluded.allowed_outside_h, "
        "q10 = excluded.q10, reference_c = excluded.reference_c, "
        "strip_extends_days = excluded.strip_extends_days, may_lie_under = excluded.may_lie_under, "
        "may_lie_over = excluded.may_lie_over, has_grain = excluded.has_grain, "
        "roll_width_mm = excluded.roll_width_mm, cost_per_metre = excluded.cost_per_metre, "
        "supplier = excluded.supplier",
        id, film.finish, film.shade, film.rgb, codeOf(film.follows), film.gripsCoated, film.care.washCelsius,
        codeOf(film.care.agitation), codeOf(film.care.tumble), film.care.ironCelsius,
        codeOf(film.care.bleach), static_cast<int>(film.care.cleaning), film.shelfLife,
        film.storage.humidity.low, film.storage.humidity.high, film.storage.temperature.low,
        film.storage.temperature.high, film.storage.allowedOutside, film.ageing.q10, film.ageing.reference,
        film.testStripExtends, film.mayLieUnder, film.mayLieOver, film.hasGrain, film.rollWidth,
        film.costPerMetre, film.supplier);
    connection.run("DELETE FROM film_not_for WHERE film_id = ?1", id);
    for (const Fibre fibre : film.notFor)
        connection.run("INSERT INTO film_not_for (film_id, fibre) VALUES (?1, ?2)", id, codeOf(fibre));
}

} // namespace

Result<FilmId> addFilm(Shop& shop, const Film& film) {
    return shop.act([&](Writer& writer) { return addFilm(writer, film); });
}

Result<FilmId> addFilm(Writer& writer, const Film& film) {
    const auto sound = soundFilm(writer.connection(), film);
    if (!sound.ok())
        return sound.error();
    const auto id = writer.newId<FilmId>();
    writeSheet(writer.connection(), id, *sound);
    writeRetired(writer.connection(), "film", id, sound->isRetired, writer.now());
    if (sound->recipe) {
        const auto by = confirmedByOf(sound->recipe->confirmedBy);
        if (!by.ok())
            return by.error();
        writeRecipe(writer.connection(), id, *sound->recipe, *by);
    }
    writer.describe(said("Film {film} added", {{"film", sound->name()}}));
    writer.concerns(id);
    return id;
}

Result<Done> changeFilmSheet(Shop& shop, const Film& film) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        Connection& connection = writer.connection();
        UnreadFacts unread;
        const std::vector<Film> films = readFilms(connection, unread);
        const auto before = std::ranges::find(films, film.id, &Film::id);
        if (before == films.end())
            return plainError(said("This film is not in the shop any more."));
        Film typed = film;
        typed.recipe.reset();
        const auto sound = soundFilm(connection, typed);
        if (!sound.ok())
            return sound.error();
        const std::vector<Sentence> changes = filmChanges(connection, *before, *sound);
        if (changes.empty())
            return Done{};
        writeSheet(connection, film.id, *sound);
        writeRetired(connection, "film", film.id, sound->isRetired, writer.now());
        writer.describe(
            said("Film {film} changed: {changes}", {{"film", sound->name()}, {"changes", changes}}));
        writer.concerns(film.id);
        return Done{};
    });
}

Result<Done> enterRecipe(Shop& shop, FilmId film, const Recipe& recipe) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        if (const auto checked = checkRecipe(recipe); !checked.ok())
            return checked.error();
        const auto by = confirmedByOf(recipe.confirmedBy);
        if (!by.ok())
            return by.error();
        const auto name = filmName(writer.connection(), film);
        if (!name.ok())
            return name.error();
        writeRecipe(writer.connection(), film, recipe, *by);
        std::vector<NamedValue> values{{"film", *name},
                                       {"temperature", recipe.temperature},
                                       {"dwell", recipe.dwell},
                                       {"pressure", pressureName(recipe.pressure)}};
        if (by->empty()) {
            writer.describe(said("Recipe of {film}: {temperature}, {dwell}, {pressure}", values));
        } else {
            values.push_back({"who", *by});
            writer.describe(
                said("Recipe of {film}: {temperature}, {dwell}, {pressure}, confirmed by {who}", values));
        }
        writer.concerns(film);
        return Done{};
    });
}

Result<Done> confirmRecipe(Shop& shop, FilmId film, const std::string& by) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto who = typedText(by, {.field = "by", .what = phrase("Who confirmed it")});
        if (!who.ok())
            return who.error();
        const auto name = filmName(writer.connection(), film);
        if (!name.ok())
            return name.error();
        if (writer.connection().number("SELECT COUNT(*) FROM film WHERE id = ?1 AND recipe_c IS NULL", film) >
            0)
            return plainError(said("{film} has no recipe yet. Enter it first.", {{"film", *name}}));
        writer.connection().run("UPDATE film SET recipe_confirmed_by = ?2 WHERE id = ?1", film, *who);
        writer.describe(said("Recipe of {film} confirmed by {who}", {{"film", *name}, {"who", *who}}));
        writer.concerns(film);
        return Done{};
    });
}

} // namespace holdfast::db
