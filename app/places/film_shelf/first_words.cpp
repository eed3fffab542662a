// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/first_words.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr Millimetres kToSpeakOf{50};
constexpr std::size_t kNamed = 3;

class FirstWords {
    Q_DECLARE_TR_FUNCTIONS(FirstWords)
};

// The number and its unit stay on one line.
QString length(Millimetres millimetres) {
    return metres(millimetres).replace(QLatin1Char(' '), QChar(QChar::Nbsp));
}

QString rollSentence(const ReckonedShop& shop, const RollOutlook& roll) {
    const QString label = words(shop.facts.rolls.at(roll.roll).label());
    const Millimetres saved = roll.wasteBefore - roll.wasteAfter;
    if (saved >= kToSpeakOf || -saved >= kToSpeakOf)
        return FirstWords::tr("%1: by estimate %2 will go out of date instead of %3.")
            .arg(label, length(roll.wasteAfter), length(roll.wasteBefore));
    if (roll.wasteAfter >= kToSpeakOf)
        return FirstWords::tr("%1: by estimate %2 will go out of date either way.")
            .arg(label, length(roll.wasteAfter));
    return FirstWords::tr("%1: none likely to go out of date.").arg(label);
}

QString listed(const ReckonedShop& shop, const std::vector<GarmentId>& garments) {
    QStringList names;
    for (std::size_t at = 0; at < std::min(kNamed, garments.size()); ++at)
        names << garmentNumber(shop.facts, shop.facts.garments.at(garments[at]));
    if (garments.size() > kNamed)
        names << FirstWords::tr("%1 more").arg(garments.size() - kNamed);
    return names.join(FirstWords::tr(", "));
}

QString promiseSentence(const ReckonedShop& shop, const std::vector<SlippedGarment>& slipped) {
    if (slipped.empty())
        return FirstWords::tr("No promise slips.");
    QStringList parts;
    for (std::size_t at = 0; at < std::min(kNamed, slipped.size()); ++at)
        parts << FirstWords::tr("%1 %2 late")
                     .arg(garmentNumber(shop.facts, shop.facts.garments.at(slipped[at].garment)),
                          timeSpan(slipped[at].lateAfter));
    if (slipped.size() > kNamed)
        parts << FirstWords::tr("%1 more late").arg(slipped.size() - kNamed);
    return FirstWords::tr("Slips: %1.").arg(parts.join(FirstWords::tr(", ")));
}

} // namespace

QString firstWords(const ReckonedShop& shop, RollId roll, const PressedFirst& first) {
    const FilmRoll& from = shop.facts.rolls.at(roll);
    if (first.length <= Millimetres{})
        return FirstWords::tr("Tick what would be cut from %1 and pressed first.").arg(words(from.label()));
    if (!first.fits)
        return FirstWords::tr("It needs %1, %2 has %3.")
            .arg(length(first.length), words(from.label()), length(from.left));
    QStringList sentences;
    for (const RollOutlook& each : first.rolls)
        if (each.roll == roll || each.wasteBefore - each.wasteAfter >= kToSpeakOf ||
            each.wasteAfter - each.wasteBefore >= kToSpeakOf)
            sentences << rollSentence(shop, each);
    sentences << promiseSentence(shop, first.slipped);
    if (!first.notReady.empty())
        sentences << FirstWords::tr("Not ready for the press: %1.").arg(listed(shop, first.notReady));
    return sentences.join(QLatin1Char(' '));
}

} // namespace holdfast::app
