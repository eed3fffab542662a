// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/film_changes.h"

#include "db/actions/changed_fields.h"
#include "db/tables/facts.h"

namespace holdfast::db {
namespace {

Phrase stretchName(Stretch stretch) {
    switch (stretch) {
    case Stretch::None:
        return phrase("none");
    case Stretch::Some:
        return phrase("some");
    case Stretch::High:
        return phrase("a lot");
    }
    return {};
}

Value fibreWords(const std::vector<Fibre>& fibres) {
    if (fibres.empty())
        return phrase("none");
    std::vector<Sentence> names;
    for (const Fibre fibre : fibres)
        names.emplace_back(fibreName(fibre));
    return listed(std::move(names));
}

Value shelfLifeWords(const std::optional<Days>& life) {
    return life ? Value{daysWords(life->count())} : Value{phrase("no limit")};
}

Sentence percentWords(Humidity humidity) {
    return said("{percent} %", {{"percent", Decimal{humidity.percent}}});
}

void noteStorage(ChangedFields& changes, const Film& before, const Film& after) {
    changes.note("shelf_life_days", shelfLifeWords(before.shelfLife), shelfLifeWords(after.shelfLife));
    const auto& was = before.storage;
    const auto& now = after.storage;
    changes.note("humidity_low", percentWords(was.humidity.low), percentWords(now.humidity.low));
    changes.note("humidity_high", percentWords(was.humidity.high), percentWords(now.humidity.high));
    changes.note("store_low_c", was.temperature.low, now.temperature.low);
    changes.note("store_high_c", was.temperature.high, now.temperature.high);
    changes.note("allowed_outside_h", was.allowedOutside.count(), now.allowedOutside.count());
    changes.note("q10", Decimal{before.ageing.q10}, Decimal{after.ageing.q10});
    changes.note("reference_c", before.ageing.reference, after.ageing.reference);
    changes.note("strip_extends_days", daysWords(before.testStripExtends.count()),
                 daysWords(after.testStripExtends.count()));
}

Sentence rollsLeft(Connection& connection, FilmId film) {
    const std::int64_t rolls =
        connection.number("SELECT COUNT(*) FROM film_roll WHERE film_id = ?1 AND state <> 'used-up'", film);
    return rolls > 0 ? said("{n} roll left|{n} rolls left", {{"n", rolls}}) : Sentence{};
}

} // namespace

std::vector<Sentence> filmChanges(Connection& connection, const Film& before, const Film& after) {
    ChangedFields changes;
    const Currency currency = loadSettings(connection).currency;
    changes.note("finish", before.finish, after.finish);
    changes.note("shade", before.shade, after.shade);
    changes.note("rgb", shadeWords(before.rgb), shadeWords(after.rgb));
    changes.note("cost_per_metre", Amount{before.costPerMetre, currency},
                 Amount{after.costPerMetre, currency});
    changes.noteText("supplier", before.supplier, after.supplier);
    changes.note("roll_width_mm", before.rollWidth, after.rollWidth);
    changes.noteYesNo("has_grain", before.hasGrain, after.hasGrain);
    changes.note("follows", stretchName(before.follows), stretchName(after.follows));
    changes.noteYesNo("grips_coated", before.gripsCoated, after.gripsCoated);
    if (before.notFor != after.notFor)
        changes.add(said("does not grip: {after} (was {before})",
                         {{"after", fibreWords(after.notFor)}, {"before", fibreWords(before.notFor)}}));
    changes.noteYesNo("may_lie_under", before.mayLieUnder, after.mayLieUnder);
    changes.noteYesNo("may_lie_over", before.mayLieOver, after.mayLieOver);
    noteStorage(changes, before, after);
    changes.noteCare(before.care, after.care);
    changes.noteRetired(before.isRetired, after.isRetired, rollsLeft(connection, after.id));
    return changes.words();
}

} // namespace holdfast::db
