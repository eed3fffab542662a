// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/garment_words.h"

#include "app/desk/formats.h"

#include <QCoreApplication>
#include <QStringList>

namespace holdfast::app {

namespace {

class GarmentWords {
    Q_DECLARE_TR_FUNCTIONS(GarmentWords)
};

QString filmWords(const ShopFacts& facts, const Decal& decal, const Allotment& allotment) {
    const QString film = words(facts.films.at(decal.film).name());
    const auto allotted = allotment.rollOf.find(decal.id);
    const std::optional<RollId> roll = decal.cutFrom                        ? decal.cutFrom
                                       : allotted != allotment.rollOf.end() ? std::optional{allotted->second}
                                                                            : std::nullopt;
    const FilmRoll* found = roll ? facts.rolls.find(*roll) : nullptr;
    return found ? GarmentWords::tr("film %1, %2").arg(words(found->label()), film)
                 : GarmentWords::tr("film %1").arg(film);
}

} // namespace

QString garmentNumber(const ShopFacts& facts, const Garment& garment) {
    return words(facts.labelOf(garment));
}

QString garmentInShort(const ShopFacts& facts, const Garment& garment) {
    const BlankStyle& style = facts.styleOf(garment);
    // What there is in one size only needs none said.
    return style.sizes.size() == 1 ? words(style.name)
                                   : GarmentWords::tr("%1, %2").arg(words(style.name), words(garment.size));
}

QString garmentName(const ShopFacts& facts, const Garment& garment) {
    const Colour* colour = facts.styleOf(garment).colour(garment.colour);
    const QString name = garmentInShort(facts, garment);
    return colour ? GarmentWords::tr("%1, %2").arg(name, words(colour->name)) : name;
}

QString decalWords(const Garment& garment) {
    if (garment.decals.empty())
        return GarmentWords::tr("No decal");
    const Decal& first = garment.decals.front();
    const QString lead =
        GarmentWords::tr("%1, %2").arg(words(first.describe()), words(placementName(first.placement)));
    const auto more = static_cast<int>(garment.decals.size()) - 1;
    return more > 0 ? GarmentWords::tr("%1 and %n more", nullptr, more).arg(lead) : lead;
}

QString customerAndFilm(const ShopFacts& facts, const Garment& garment, const Allotment& allotment) {
    QStringList parts{words(facts.customers.at(facts.orderOf(garment).customer).name)};
    for (const Decal& decal : garment.decals) {
        const QString film = filmWords(facts, decal, allotment);
        if (!parts.contains(film))
            parts << film;
    }
    return parts.join(QStringLiteral(" · "));
}

QString outlineName(const ShopFacts& facts, const Garment& garment) {
    return words(facts.styleOf(garment).outline);
}

QColor clothOf(const ShopFacts& facts, const Garment& garment) {
    const Colour* colour = facts.styleOf(garment).colour(garment.colour);
    return colourOf(colour ? colour->rgb : 0xE3D8C3);
}

QString withinLine(const QString& title) {
    return title.isEmpty() ? title : title.front().toLower() + title.mid(1);
}

QString inShort(const QString& stepTitle) {
    return withinLine(stepTitle.section(u',', 0, 0));
}

} // namespace holdfast::app
