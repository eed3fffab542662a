// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/bench_words.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

struct BenchWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::BenchWords)
};

} // namespace

QString decalNumber(const ShopFacts& facts, const DecalOnGarment& decal) {
    return decal.garment ? garmentNumber(facts, *decal.garment) : QString();
}

QString decalTitle(const ShopFacts& facts, const DecalOnGarment& decal) {
    if (!decal.garment)
        return {};
    return BenchWords::tr("%1 %2, %3")
        .arg(decalNumber(facts, decal), words(decal.decal->describe()),
             withinLine(words(facts.styleOf(*decal.garment).name)));
}

QString sizeWords(Millimetres width, Millimetres height) {
    return BenchWords::tr("%1 × %2 mm").arg(width.value).arg(height.value);
}

QString areaWords(const FilmArea& area) {
    return sizeWords(area.alongSize, area.acrossSize);
}

QString rollLabel(const ShopFacts& facts, RollId roll) {
    const FilmRoll* found = facts.rolls.find(roll);
    return found ? words(found->label()) : QString();
}

QString decalsToCut(std::size_t count) {
    return BenchWords::tr("%1 to cut").arg(count);
}

QString beingLaidWords() {
    return BenchWords::tr("The decals are being laid out. That takes a moment.");
}

QString lengthWords(const BenchModel& model, const Nest& nest) {
    const QString pins =
        model.onBench().wish.pins.size() > 1 ? BenchWords::tr("the pins") : BenchWords::tr("the pin");
    if (const auto cost = model.costOfPins()) {
        const QString longer = millimetres(*cost);
        if (!model.hasPins())
            return BenchWords::tr("A layout %1 shorter is known: nest again").arg(longer);
        return model.isCostOfPinsProved()
                   ? BenchWords::tr("%1 longer than without %2").arg(longer, pins)
                   : BenchWords::tr("At least %1 longer than without %2").arg(longer, pins);
    }
    if (nest.length <= nest.leastLength) {
        if (model.hasPins())
            return BenchWords::tr("This is the shortest layout possible with %1").arg(pins);
        return model.nests().size() > 1
                   ? BenchWords::tr("This is the shortest layout possible of what is on %1")
                         .arg(rollLabel(model.facts(), nest.roll))
                   : BenchWords::tr("This is the shortest layout possible");
    }
    const double above = std::max(1.0, std::ceil(nest.aboveLeast() * 100 - 1e-9));
    return BenchWords::tr("At most %1 % longer than the shortest possible").arg(above);
}

QString reasonOf(const FilmToCut& film, RollId roll) {
    const auto found = std::ranges::find(film.rolls, roll, &RollOffer::roll);
    return found == film.rolls.end() ? QString() : words(found->reason);
}

} // namespace holdfast::app
