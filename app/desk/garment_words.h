// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a place calls a garment: its number, what it is, what goes on it. Formatted once, here.

#include "core/shop/reckoned_shop.h"

#include <QColor>
#include <QString>

namespace holdfast::app {

QString garmentNumber(const ShopFacts& facts, const Garment& garment);  // "418-b"
QString garmentName(const ShopFacts& facts, const Garment& garment);    // "Zip hoodie, M, Reed"
QString garmentInShort(const ShopFacts& facts, const Garment& garment); // "Zip hoodie, M"
QString decalWords(const Garment& garment);                             // "Tern, left chest and 1 more"
QString customerAndFilm(const ShopFacts& facts, const Garment& garment, const Allotment& allotment);

QString outlineName(const ShopFacts& facts, const Garment& garment);
QColor clothOf(const ShopFacts& facts, const Garment& garment);

// "Peel warm, one motion" → "peel warm", to be used within a line.
QString inShort(const QString& stepTitle);
// The first letter small, so that a step's title can be used within a line.
QString withinLine(const QString& title);

} // namespace holdfast::app
