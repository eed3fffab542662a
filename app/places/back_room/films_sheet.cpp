// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/formats.h"
#include "app/places/back_room/retired_lines.h"
#include "app/places/back_room/tools_sheets.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

class FilmWords {
    Q_DECLARE_TR_FUNCTIONS(BackRoom)

public:
    static QString recipe(const Film& film) {
        if (!film.recipe)
            return tr("No recipe: what is cut from it is held.");
        const Recipe& recipe = *film.recipe;
        return tr("%1, %2, %3 pressure, %4 peel")
            .arg(celsius(recipe.temperature), timeSpan(recipe.dwell), words(pressureName(recipe.pressure)),
                 words(peelName(recipe.peel)));
    }

    static QString keeping(const Film& film) {
        const StorageLimits& limits = film.storage;
        const QString bands =
            tr("%1, %2").arg(humidityBand(limits.humidity), temperatureBand(limits.temperature));
        return film.shelfLife ? tr("Lasts %1 at %2").arg(dayCount(*film.shelfLife), bands)
                              : tr("No limit to its age given; store it at %1").arg(bands);
    }

    static QString onShelf(const ReckonedShop& shop, const Film& film) {
        Millimetres left{};
        int rolls = 0;
        for (const FilmRoll& roll : shop.facts.rolls)
            if (roll.film == film.id && roll.left > Millimetres{}) {
                left += roll.left;
                ++rolls;
            }
        const QString cost =
            tr("%1 a metre of %2")
                .arg(money(film.costPerMetre, shop.facts.settings.currency), millimetres(film.rollWidth));
        if (rolls == 0)
            return tr("%1; no roll on the shelf").arg(cost);
        return tr("%1; %n roll, %2|%1; %n rolls, %2", nullptr, howMany(rolls)).arg(cost, metres(left));
    }

    static void addState(RoomLine& line, const Film& film) {
        if (film.isRetired) {
            markRetired(line);
        } else if (!film.recipe) {
            line.tone = Tone::Held;
            line.stateIcon = QStringLiteral("hold");
            line.state = tr("no recipe");
        } else if (!film.recipe->isConfirmed()) {
            line.tone = Tone::Caution;
            line.stateIcon = QStringLiteral("caution");
            line.state = tr("recipe not confirmed");
        }
    }

    static void add(RoomSheet& sheet, const ReckonedShop& shop, const Film& film) {
        SlipTarget matter;
        matter.film = film.id;
        RoomLine line;
        line.name = words(film.name());
        line.shade = colourOf(film.rgb);
        line.text = recipe(film);
        if (film.recipe && film.recipe->isConfirmed())
            line.text = tr("%1, confirmed by %2").arg(line.text, words(film.recipe->confirmedBy));
        line.detail = tr("%1. %2").arg(keeping(film), onShelf(shop, film));
        addState(line, film);
        line.offer = tr("Recipe");
        line.deed = OpenSlip{SlipName::Recipe, matter};
        line.otherOffer = tr("Change");
        line.otherDeed = OpenSlip{SlipName::FilmSheet, matter};
        sheet.lines.append(line);
    }

    static void addPlace(RoomSheet& sheet, const ReckonedShop& shop, const StoragePlace& place) {
        SlipTarget matter;
        matter.place = place.id;
        RoomLine line;
        line.name = words(place.name);
        const auto rolls = std::ranges::count_if(shop.facts.rolls, [&](const FilmRoll& roll) {
            return roll.state != RollState::UsedUp && roll.placeNow() == place.id;
        });
        line.text = rolls > 0 ? tr("%n roll is there|%n rolls are there", nullptr, howMany(rolls))
                              : tr("No roll is there");
        if (place.isRetired)
            markRetired(line);
        line.offer = tr("Change place");
        line.deed = OpenSlip{SlipName::ChangePlace, matter};
        sheet.lines.append(line);
    }
};

} // namespace

RoomSheet filmsSheet(const ReckonedShop& shop) {
    RoomSheet sheet;
    sheet.title = FilmWords::tr("Films and their recipes");
    int unsure = 0;
    for (const Film& film : shop.facts.films)
        if (!film.isRetired && (!film.recipe || !film.recipe->isConfirmed()))
            ++unsure;
    const int count = addOfferedFirst(sheet, shop.facts.films,
                                      [&](const Film& film) { FilmWords::add(sheet, shop, film); });
    if (!shop.facts.places.empty())
        addHeading(sheet, FilmWords::tr("Storage places"));
    addOfferedFirst(sheet, shop.facts.places,
                    [&](const StoragePlace& place) { FilmWords::addPlace(sheet, shop, place); });
    sheet.summary = count == 0   ? FilmWords::tr("none yet")
                    : unsure > 0 ? FilmWords::tr("%1, %2 to confirm").arg(count).arg(unsure)
                                 : FilmWords::tr("%1, all confirmed").arg(count);
    sheet.intro =
        count == 0 ? FilmWords::tr("Films are listed here, each with its recipe from the maker’s sheet.")
                   : FilmWords::tr("A recipe comes from the film maker’s sheet; compare it and say who did.");
    sheet.acts.append({FilmWords::tr("Add a film"), QStringLiteral("plus"), QKeySequence(Qt::Key_A),
                       OpenSlip{SlipName::AddFilm, SlipTarget{}}});
    return sheet;
}

} // namespace holdfast::app
