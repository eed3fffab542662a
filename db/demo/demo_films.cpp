// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/demo/demo_films.h"

#include "db/actions/film_actions.h"
#include "db/demo/demo_workshop.h"

namespace holdfast::db::demo {
namespace {

using namespace literals;

// Shades of one finish differ in their colour only.
struct Shade {
    const char* name;
    std::uint32_t rgb;
};

struct Finish {
    Film film;
    std::vector<Shade> shades;
};

Recipe recipe(Celsius temperature, Seconds dwell, Pressure pressure, Peel peel, Seconds cool) {
    Recipe made;
    made.temperature = temperature;
    made.dwell = dwell;
    made.pressure = pressure;
    made.peel = peel;
    made.coolBeforePeel = cool;
    made.confirmedBy = "Ines, maker’s sheet";
    return made;
}

Film usualFilm(const char* finish) {
    Film film;
    film.finish = finish;
    film.care.ironCelsius = 0;
    film.shelfLife = Days{365};
    film.costPerMetre = {1150};
    film.supplier = "Saltmarsh Film Supplies";
    return film;
}

Finish marramSoft() {
    Finish finish{usualFilm("Marram Soft"),
                  {{"Dusk", 0x34457a}, {"Oyster", 0xc9c0b0}, {"Samphire", 0x5f8552}, {"Chalk", 0xf1efe6}}};
    finish.film.recipe = recipe(150_C, Seconds{12}, Pressure::Medium, Peel::Warm, Seconds{40});
    return finish;
}

Finish fescueStretch() {
    Finish finish{usualFilm("Fescue Stretch"), {{"Gorse", 0xcf9f2b}, {"Slack tide", 0x7d95a3}}};
    finish.film.recipe = recipe(130_C, Seconds{15}, Pressure::Light, Peel::Warm, Seconds{30});
    finish.film.follows = Stretch::High;
    finish.film.shelfLife = Days{300};
    finish.film.costPerMetre = {1480};
    return finish;
}

Finish oxlipFlock() {
    Finish finish{usualFilm("Oxlip Flock"), {{"Rosehip", 0xa63c48}, {"Ink-cap", 0x2e2a2b}}};
    finish.film.recipe = recipe(160_C, Seconds{18}, Pressure::Firm, Peel::Cool, Seconds{180});
    finish.film.gripsCoated = true;
    finish.film.shelfLife = Days{400};
    finish.film.mayLieUnder = false; // nothing grips its pile
    finish.film.hasGrain = true;
    finish.film.costPerMetre = {1790};
    finish.film.care.tumble = Tumble::No;
    return finish;
}

Finish sedgeSatin() {
    Finish finish{usualFilm("Sedge Satin"), {{"Sandbar", 0xd8b98a}, {"Bittern", 0x7a5a38}}};
    finish.film.recipe = recipe(150_C, Seconds{15}, Pressure::Medium, Peel::Cool, Seconds{600});
    finish.film.notFor = {Fibre::Polyester, Fibre::Polyamide};
    finish.film.costPerMetre = {1320};
    return finish;
}

// Bought to try: nobody has the maker's sheet at hand.
Finish lanternGlow() {
    Finish finish{usualFilm("Lantern Glow"), {{"Moonlit", 0xe3ead0}}};
    finish.film.recipe = recipe(140_C, Seconds{15}, Pressure::Medium, Peel::Warm, Seconds{45});
    finish.film.recipe->confirmedBy.clear();
    finish.film.shelfLife = Days{240};
    finish.film.costPerMetre = {2240};
    finish.film.care.washCelsius = 30;
    return finish;
}

// Came without a sheet: no recipe, no limit of age.
Finish tansyFoil() {
    Finish finish{usualFilm("Tansy Foil"), {{"Brass", 0xb08a3e}}};
    finish.film.shelfLife.reset();
    finish.film.follows = Stretch::None;
    finish.film.mayLieUnder = false;
    finish.film.costPerMetre = {1620};
    return finish;
}

void write(Script& script, const Finish& finish) {
    for (const Shade& shade : finish.shades) {
        Film film = finish.film;
        film.shade = shade.name;
        film.rgb = shade.rgb;
        script.named.films[shade.name] = done(addFilm(script.shop(), film));
        script.wait(Seconds{40});
    }
}

} // namespace

void writeFilms(Script& script) {
    script.at(kFirstDay, clockAt(9, 0), [&script] {
        for (const Finish& finish : {marramSoft(), fescueStretch(), oxlipFlock(), sedgeSatin()})
            write(script, finish);
    });
    script.at(kFirstDay, clockAt(9, 20), [&script] { write(script, tansyFoil()); });
    script.at(-40, clockAt(10, 15), [&script] { write(script, lanternGlow()); });
}

} // namespace holdfast::db::demo
