#include "db/tables/codes.h"
#include "db/tables/fact_readers.h"

#include <map>

namespace holdfast::db {

namespace {

std::map<FilmId, std::vector<Fibre>> readUnsuited(Connection& connection) {
    std::map<FilmId, std::vector<Fibre>> fibres;
    Query rows{connection, "SELECT film_id, fibre FROM film_not_for ORDER BY film_id, fibre"};
    while (rows.step())
        fibres[rows.id<FilmId>(0)].push_back(fromCode<Fibre>(rows.view(1)));
    return fibres;
}

Recipe recipeFrom(const Query& rows) {
    Recipe recipe;
    recipe.temperature = Celsius{rows.real(4)};
    recipe.dwell = Seconds{rows.integer(5)};
    recipe.pressure = fromCode<Pressure>(rows.view(6));
    recipe.peel = fromCode<Peel>(rows.view(7));
    recipe.preheat = Seconds{rows.integer(8)};
    recipe.coolBeforePeel = Seconds{rows.integer(9)};
    recipe.finishFront = Seconds{rows.integer(10)};
    recipe.finishBack = Seconds{rows.integer(11)};
    recipe.tack = Seconds{rows.integer(12)};
    recipe.confirmedBy = rows.text(13);
    return recipe;
}

void addStays(Connection& connection, std::map<RollId, FilmRoll>& rolls) {
    Query rows{connection, "SELECT roll_id, place_id, since FROM roll_stay ORDER BY roll_id, since, id"};
    while (rows.step())
        if (const auto roll = rolls.find(rows.id<RollId>(0)); roll != rolls.end())
            roll->second.stays.push_back({rows.id<PlaceId>(1), rows.instant(2)});
}

void addStrips(Connection& connection, std::map<RollId, FilmRoll>& rolls) {
    Query rows{connection,
               "SELECT roll_id, at, passed, extends_days, note FROM test_strip ORDER BY roll_id, at, id"};
    while (rows.step())
        if (const auto roll = rolls.find(rows.id<RollId>(0)); roll != rolls.end())
            roll->second.testStrips.push_back(
                {rows.instant(1), rows.truth(2), Days{rows.integer(3)}, rows.text(4)});
}

} // namespace

std::vector<Film> readFilms(Connection& connection) {
    auto unsuited = readUnsuited(connection);
    std::vector<Film> films;
    Query rows{
        connection,
        "SELECT id, finish, shade, rgb, recipe_c, dwell_s, pressure, peel, preheat_s, cool_s, "
        "finish_front_s, "
        "finish_back_s, tack_s, recipe_confirmed_by, follows, grips_coated, care_wash_c, care_agitation, "
        "care_tumble, care_iron_c, care_bleach, care_cleaning, shelf_life_days, humidity_low, humidity_high, "
        "store_low_c, store_high_c, allowed_outside_h, q10, reference_c, strip_extends_days, may_lie_under, "
        "may_lie_over, has_grain, roll_width_mm, cost_per_metre FROM film ORDER BY id"};
    while (rows.step()) {
        Film film;
        film.id = rows.id<FilmId>(0);
        film.finish = rows.text(1);
        film.shade = rows.text(2);
        film.rgb = static_cast<std::uint32_t>(rows.integer(3));
        if (!rows.isNull(4))
            film.recipe = recipeFrom(rows);
        film.follows = fromCode<Stretch>(rows.view(14));
        film.gripsCoated = rows.truth(15);
        film.notFor = std::move(unsuited[film.id]);
        film.care = {static_cast<int>(rows.integer(16)), fromCode<Agitation>(rows.view(17)),
                     fromCode<Tumble>(rows.view(18)),    static_cast<int>(rows.integer(19)),
                     fromCode<Bleach>(rows.view(20)),    static_cast<Cleaning>(rows.integer(21))};
        if (const auto life = rows.optionalInteger(22))
            film.shelfLife = Days{*life};
        film.storage.humidity = {Humidity{rows.real(23)}, Humidity{rows.real(24)}};
        film.storage.temperature = {Celsius{rows.real(25)}, Celsius{rows.real(26)}};
        film.storage.allowedOutside = Hours{rows.integer(27)};
        film.ageing = {rows.real(28), Celsius{rows.real(29)}};
        film.testStripExtends = Days{rows.integer(30)};
        film.mayLieUnder = rows.truth(31);
        film.mayLieOver = rows.truth(32);
        film.hasGrain = rows.truth(33);
        film.rollWidth = Millimetres{rows.integer(34)};
        film.costPerMetre = Money{rows.integer(35)};
        films.push_back(std::move(film));
    }
    return films;
}

std::vector<FilmRoll> readRolls(Connection& connection, const std::string& orders) {
    std::map<RollId, FilmRoll> rolls;
    {
        Query rows = connection.query(
            "SELECT id, number, film_id, width_mm, received_on, made_on, printed_use_by, state, "
            "(SELECT COALESCE(SUM(mm), 0) FROM roll_move WHERE roll_move.roll_id = film_roll.id) "
            "FROM film_roll WHERE state <> 'used-up' OR id IN "
            "(SELECT cut_roll_id FROM decal JOIN garment ON garment.id = decal.garment_id "
            "WHERE garment.order_id IN (SELECT value FROM json_each(?1)))",
            orders);
        while (rows.step()) {
            FilmRoll& roll = rolls[rows.id<RollId>(0)];
            roll.id = rows.id<RollId>(0);
            roll.number = static_cast<int>(rows.integer(1));
            roll.film = rows.id<FilmId>(2);
            roll.width = Millimetres{rows.integer(3)};
            roll.receivedOn = rows.date(4);
            roll.madeOn = rows.optionalDate(5);
            roll.printedUseBy = rows.optionalDate(6);
            roll.state = fromCode<RollState>(rows.view(7));
            roll.left = Millimetres{rows.integer(8)};
        }
    }
    addStays(connection, rolls);
    addStrips(connection, rolls);

    std::vector<FilmRoll> list;
    for (auto& [id, roll] : rolls)
        list.push_back(std::move(roll));
    return list;
}

std::vector<StoragePlace> readPlaces(Connection& connection) {
    std::vector<StoragePlace> places;
    Query rows{connection, "SELECT id, name FROM storage_place ORDER BY id"};
    while (rows.step())
        places.push_back({rows.id<PlaceId>(0), rows.text(1)});
    return places;
}

} // namespace holdfast::db
