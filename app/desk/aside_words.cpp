// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/aside_words.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

struct AsideWords {
    Q_DECLARE_TR_FUNCTIONS(AsideWords)
};

} // namespace

QString neededFor(const ReckonedShop& shop, const AsideEntry& entry) {
    if (entry.cutFrom)
        if (const FilmRoll* roll = shop.facts.rolls.find(*entry.cutFrom))
            return AsideWords::tr("Cut from %1").arg(words(roll->label()));
    if (entry.frees)
        return words(freeingWords(*entry.frees));
    return entry.stage == Stage::ToCut && !entry.isHeld ? AsideWords::tr("Cut its decals") : QString();
}

QString neededInWords(const ReckonedShop& shop, const AsideEntry& entry) {
    const QString act = neededFor(shop, entry);
    return act.isEmpty() ? AsideWords::tr("Only time") : act;
}

} // namespace holdfast::app
