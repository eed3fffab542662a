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

QString percent(double share) {
    return BenchWords::tr("%1 %").arg(std::lround(share * 100));
}

QString rollLabel(const ShopFacts& facts, RollId roll) {
    const FilmRoll* found = facts.rolls.find(roll);
    return found ? words(found->label()) : QString();
}

QString decalsToCut(std::size_t count) {
    return BenchWords::tr("%1 to cut").arg(count);
}

QString aboveLeastWords(const Nest& nest) {
    if (nest.length <= nest.leastLength)
        return BenchWords::tr("No nest of these is shorter");
    const double above = nest.aboveLeast() * 100;
    if (above < 1)
        return BenchWords::tr("At most 1 % above the least possible");
    return BenchWords::tr("At most %1 % above the least possible").arg(std::ceil(above - 1e-9));
}

QString reasonOf(const FilmToCut& film, RollId roll) {
    const auto found = std::ranges::find(film.rolls, roll, &RollOffer::roll);
    return found == film.rolls.end() ? QString() : words(found->reason);
}

WholeShares wholeShares(const FilmShares& shares) {
    WholeShares whole;
    whole.decals = std::clamp(static_cast<int>(std::lround(shares.decals * 100)), 0, 100);
    whole.offcuts = std::clamp(static_cast<int>(std::lround(shares.offcuts * 100)), 0, 100 - whole.decals);
    whole.waste = 100 - whole.decals - whole.offcuts;
    return whole;
}

} // namespace holdfast::app
