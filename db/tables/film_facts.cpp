// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/fact_readers.h"
#include "db/tables/fact_row.h"

#include <map>
#include <set>

namespace holdfast::db {

namespace {

constexpr double kMostQ10 = 100;

using FilmIds = std::set<FilmId>;

// A film of which a fibre is not known that it is not for must not be pressed on any.
std::map<FilmId, std::vector<Fibre>> readUnsuited(Connection& connection, UnreadFacts& unread,
                                                  FilmIds& leftOut) {
    std::map<FilmId, std::vector<Fibre>> fibres;
    Query rows{connection, "SELECT film_id, fibre FROM film_not_for ORDER BY film_id, fibre"};
    readFacts(
        rows, unread, "film_not_for",
        [&](const FactRow& row) { fibres[row.id<FilmId>(0)].push_back(row.choice<Fibre>(1)); },
        [&](const Query& row) { leftOut.insert(row.id<FilmId>(0)); }, 2);
    return fibres;
}

Recipe recipeFrom(const FactRow& row) {
    Recipe recipe;
    recipe.temperature = row.temperature(4);
    recipe.dwell = row.lasting<Seconds>(5);
    recipe.pressure = row.choice<Pressure>(6);
    recipe.peel = row.choice<Peel>(7);
    recipe.preheat = row.lasting<Seconds>(8);
    recipe.coolBeforePeel = row.lasting<Seconds>(9);
    recipe.finishFront = row.lasting<Seconds>(10);
    recipe.finishBack = row.lasting<Seconds>(11);
    recipe.tack = row.lasting<Seconds>(12);
    recipe.confirmedBy = row.text(13);
    return recipe;
}

Film filmFrom(const FactRow& row) {
    Film film;
    film.id = row.id<FilmId>(0);
    film.finish = row.text(1);
    film.shade = row.text(2);
    film.rgb = row.shade(3);
    if (!row.isNull(4))
        film.recipe = recipeFrom(row);
    film.follows = row.choice<Stretch>(14);
    film.gripsCoated = row.truth(15);
    film.care = {
        row.count(16),          row.choice<Agitation>(17),
        row.choice<Tumble>(18), row.count(19),
        row.choice<Bleach>(20), static_cast<Cleaning>(row.number(21, 0, static_cast<int>(Cleaning::All)))};
    if (!row.isNull(22))
        film.shelfLife = row.lasting<Days>(22);
    film.storage.humidity = {row.humidity(23), row.humidity(24)};
    film.storage.temperature = {row.temperature(25), row.temperature(26)};
    film.storage.allowedOutside = row.lasting<Hours>(27);
    film.ageing = {row.measure(28, 0, kMostQ10), row.temperature(29)};
    film.testStripExtends = row.lasting<Days>(30);
    film.mayLieUnder = row.truth(31);
    film.mayLieOver = row.truth(32);
    film.hasGrain = row.truth(33);
    film.rollWidth = row.extent(34);
    film.costPerMetre = row.money(35);
    film.isRetired = row.optionalInstant(36).has_value();
    film.supplier = row.text(37);
    return film;
}

// A roll of which a stay or a test strip is not known would be taken for younger than it is.
class RollsReader {
public:
    RollsReader(Connection& connection, UnreadFacts& unread)
        : m_connection(connection)
        , m_unread(unread) {}

    std::vector<FilmRoll> read(const std::string& orders, Stock stock) {
        readRolls(orders, stock);
        readStays();
        readStrips();
        std::vector<FilmRoll> list;
        for (auto& [id, roll] : m_rolls)
            if (!m_leftOut.contains(id))
                list.push_back(std::move(roll));
        return list;
    }

private:
    void readRolls(const std::string& orders, Stock stock) {
        std::vector<RollId> withOddMoves;
        Query rows = m_connection.query(
            "SELECT id, number, film_id, width_mm, received_on, made_on, printed_use_by, state, "
            "(SELECT COALESCE(SUM(mm), 0) FROM roll_move WHERE roll_move.roll_id = film_roll.id "
            "AND mm BETWEEN -?2 AND ?2), "
            "EXISTS (SELECT 1 FROM roll_move WHERE roll_move.roll_id = film_roll.id "
            "AND mm NOT BETWEEN -?2 AND ?2) "
            "FROM film_roll WHERE ?3 OR state <> 'used-up' OR id IN "
            "(SELECT cut_roll_id FROM decal JOIN garment ON garment.id = decal.garment_id "
            "WHERE garment.order_id IN (SELECT value FROM json_each(?1)))",
            orders, kMostMillimetres, stock == Stock::All ? 1 : 0);
        readFacts(rows, m_unread, "film_roll", [&](const FactRow& row) {
            FilmRoll roll;
            roll.id = row.id<RollId>(0);
            roll.number = row.count(1);
            roll.film = row.id<FilmId>(2);
            roll.width = row.extent(3);
            roll.receivedOn = row.date(4);
            roll.madeOn = row.optionalDate(5);
            roll.printedUseBy = row.optionalDate(6);
            roll.state = row.choice<RollState>(7);
            roll.left = Millimetres{row.number(8, -kMostMinor, kMostMinor)};
            if (row.truth(9))
                withOddMoves.push_back(roll.id);
            m_rolls.emplace(roll.id, std::move(roll));
        });
        for (const RollId roll : withOddMoves)
            noteMovesOf(roll);
    }

    void noteMovesOf(RollId roll) {
        Query rows = m_connection.query("SELECT id, mm FROM roll_move WHERE roll_id = ?1", roll);
        readFacts(rows, m_unread, "roll_move", [](const FactRow& row) { (void)row.length(1); });
    }

    // Of the roll in the second column.
    template <class Read>
    void readOfRolls(const char* table, const char* sql, Read&& read) {
        Query rows{m_connection, sql};
        readFacts(
            rows, m_unread, table,
            [&](const FactRow& row) {
                if (const auto roll = m_rolls.find(row.id<RollId>(1)); roll != m_rolls.end())
                    read(roll->second, row);
            },
            [&](const Query& row) { m_leftOut.insert(row.id<RollId>(1)); });
    }

    void readStays() {
        readOfRolls("roll_stay",
                    "SELECT id, roll_id, place_id, since FROM roll_stay ORDER BY roll_id, since, id",
                    [](FilmRoll& roll, const FactRow& row) {
                        roll.stays.push_back({row.id<PlaceId>(2), row.instant(3)});
                    });
    }

    void readStrips() {
        readOfRolls(
            "test_strip",
            "SELECT id, roll_id, at, passed, extends_days, note FROM test_strip ORDER BY roll_id, at, id",
            [](FilmRoll& roll, const FactRow& row) {
                roll.testStrips.push_back({row.instant(2), row.truth(3), row.lasting<Days>(4), row.text(5)});
            });
    }

    Connection& m_connection;
    UnreadFacts& m_unread;
    std::map<RollId, FilmRoll> m_rolls;
    std::set<RollId> m_leftOut;
};

} // namespace

std::vector<Film> readFilms(Connection& connection, UnreadFacts& unread) {
    FilmIds leftOut;
    auto unsuited = readUnsuited(connection, unread, leftOut);
    std::vector<Film> films;
    Query rows{
        connection,
        "SELECT id, finish, shade, rgb, recipe_c, dwell_s, pressure, peel, preheat_s, cool_s, "
        "finish_front_s, "
        "finish_back_s, tack_s, recipe_confirmed_by, follows, grips_coated, care_wash_c, care_agitation, "
        "care_tumble, care_iron_c, care_bleach, care_cleaning, shelf_life_days, humidity_low, humidity_high, "
        "store_low_c, store_high_c, allowed_outside_h, q10, reference_c, strip_extends_days, may_lie_under, "
        "may_lie_over, has_grain, roll_width_mm, cost_per_metre, retired_at, supplier FROM film ORDER BY id"};
    readFacts(rows, unread, "film", [&](const FactRow& row) {
        Film film = filmFrom(row);
        if (leftOut.contains(film.id))
            return;
        film.notFor = std::move(unsuited[film.id]);
        films.push_back(std::move(film));
    });
    return films;
}

std::vector<FilmRoll> readRolls(Connection& connection, UnreadFacts& unread, const std::string& orders,
                                Stock stock) {
    return RollsReader{connection, unread}.read(orders, stock);
}

std::vector<StoragePlace> readPlaces(Connection& connection, UnreadFacts& unread) {
    std::vector<StoragePlace> places;
    Query rows{connection, "SELECT id, name, retired_at FROM storage_place ORDER BY id"};
    readFacts(rows, unread, "storage_place", [&](const FactRow& row) {
        places.push_back({row.id<PlaceId>(0), row.text(1), row.optionalInstant(2).has_value()});
    });
    return places;
}

} // namespace holdfast::db
