// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a person does with films, rolls and the places they are stored in. Each is one journaled action.

#include "core/facts/climate.h"
#include "core/facts/film.h"
#include "core/facts/film_roll.h"
#include "core/trade/result.h"
#include "db/actions/held.h"
#include "db/journal/shop.h"

#include <span>
#include <string>
#include <vector>

namespace holdfast::db {

Result<FilmId> addFilm(Shop& shop, const Film& film); // id is made here
// What it is, grips and costs, how it is stored and whether it is offered; its recipe stays. Holds follow
// from what is known now. The entry says each field with what it was.
Result<Done> changeFilmSheet(Shop& shop, const Film& film);
// Unconfirms it unless recipe.confirmedBy is given.
Result<Done> enterRecipe(Shop& shop, FilmId film, const Recipe& recipe);
Result<Done> confirmRecipe(Shop& shop, FilmId film, const std::string& by);

struct RollReceived {
    FilmId film;
    Millimetres width;                     // 20–2,000
    Millimetres length;                    // 100–200,000
    LocalDate receivedOn{};                // not in the future
    std::optional<LocalDate> madeOn;       // not after received
    std::optional<LocalDate> printedUseBy; // after made
    PlaceId place;                         // none set: it is held until it is moved to one
};
struct RollOnShelf {
    RollId id;
    int number = 0;
};
Result<RollOnShelf> receiveRoll(Shop& shop, const RollReceived& roll, const Now& now);
Result<Done> useUpRoll(Shop& shop, RollId roll, const std::string& reason); // writes off what is left
Result<Done> putRollAway(Shop& shop, RollId roll, bool away);               // away, or back on the shelf
Result<Done> moveRoll(Shop& shop, RollId roll, PlaceId place);
Result<Done> correctLength(Shop& shop, RollId roll, Millimetres measured, const std::string& reason);
// A strip takes `used` from the roll (0–1,000 mm); one that passed moves its use-by on. Note up to 200
// characters.
Result<Done> recordTestStrip(Shop& shop, RollId roll, bool passed, Millimetres used, const std::string& note);

// A piece of film as it lies on its roll: across it and along it.
struct OffcutSize {
    Millimetres width;
    Millimetres length;
};
// What a wording was cut by (Wording::outline).
struct KeptOutline {
    DecalId decal;
    std::string outline;
};
// Charges `length` to the roll and marks the decals cut from it: decals of confirmed orders, of the roll's
// film, not cut yet. Not from a roll that is put away or used up. Offcuts kept become rolls of their own, as
// old as their roll and kept like it; each 20 mm or more both ways, together no more than was cut. Outlines
// are kept with the decals that have none kept yet. Refused, too, for a decal that is not to be cut yet
// (wording not agreed, film unfit, deposit short …), and from a roll past its use-by, badly stored or with a
// failed test strip, unless each garment was let through.
Result<Done> cutDecals(Shop& shop, RollId roll, std::span<const DecalId> decals, Millimetres length,
                       const Now& now, std::span<const OffcutSize> offcuts = {},
                       std::span<const KeptOutline> outlines = {}, KnownConditions known = nullptr);
// The same of several rolls at once.
struct RollCut {
    RollId roll;
    std::vector<DecalId> decals;
    Millimetres length;
    std::vector<OffcutSize> offcuts;
    std::vector<KeptOutline> outlines{}; // of wordings that none was kept for when they were ordered
};
Result<Done> cutFromRolls(Shop& shop, std::span<const RollCut> cuts, const Now& now,
                          KnownConditions known = nullptr);
// A decal cut wrong: it waits again; what the second cutting takes is charged when it is cut. Not once
// pressing began. Reason 3–200 characters.
Result<Done> markMiscut(Shop& shop, DecalId decal, const std::string& reason);

Result<PlaceId> addPlace(Shop& shop, const std::string& name);
// Its name, and whether more rolls are put there.
Result<Done> changePlace(Shop& shop, const StoragePlace& place);
// −40…80 °C, 0–100 % RH, not in the future; one reading an instant.
Result<Done> recordReading(Shop& shop, PlaceId place, const ClimateReading& reading);
struct ReadingsImported {
    std::int64_t added = 0;
    std::int64_t alreadyThere = 0;
};
// Each as in recordReading; one that is not refuses all. `progress` is asked every 10,000 readings and before
// the commit with the share done; where it answers false, not one is added.
Result<ReadingsImported> importReadings(Shop& shop, PlaceId place, std::span<const ClimateReading> readings,
                                        const std::function<bool(double)>& progress = {});
// The reading of the moment `before` becomes `corrected`, which may have another moment.
Result<Done> correctReading(Shop& shop, PlaceId place, Instant before, const ClimateReading& corrected);
// All readings from the first moment to the last; how many they were. `progress` as in importReadings.
Result<std::int64_t> removeReadings(Shop& shop, PlaceId place, Instant first, Instant last,
                                    const std::function<bool(double)>& progress = {});

} // namespace holdfast::db
