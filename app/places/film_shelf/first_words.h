// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What becomes of the rolls and the promises if some work goes first, in words.

#include "core/shop/press_first.h"

#include <QString>

namespace holdfast::app {

QString firstWords(const ReckonedShop& shop, RollId roll, const PressedFirst& first);

} // namespace holdfast::app
