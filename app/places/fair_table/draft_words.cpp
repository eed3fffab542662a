// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/draft_words.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

namespace holdfast::app {

QString decalWords(const DecalContent& content) {
    Decal decal;
    decal.content = content;
    return words(decal.describe());
}

QString garmentWords(const TableGarment& garment, const ShopFacts& facts) {
    const BlankStyle* style = facts.styles.find(garment.style);
    if (!style)
        return QCoreApplication::translate("FairTable", "Garment");
    QString text = words(style->name);
    if (!garment.size.empty())
        text += QStringLiteral(", ") + words(garment.size);
    if (const Colour* colour = style->colour(garment.colour))
        text += QStringLiteral(", ") + words(colour->name);
    return text;
}

} // namespace holdfast::app
