// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is promised today, or was promised before, and is aside: the plan of the day has no place for it,
// so that no lateness of the walk would say it.

#include "core/shop/reckoned_shop.h"
#include "core/shop/walk.h"

#include <QString>

#include <vector>

namespace holdfast::app {

struct PromisedAside {
    QString what;                    // "411 is promised today and held."; empty where there is none
    QString frees;                   // "Needed first: press a test strip."
    std::vector<GarmentId> garments; // aside, the earliest promise first

    bool isEmpty() const { return garments.empty(); }
};

PromisedAside promisedAside(const ReckonedShop& shop, const Walk& walk);

} // namespace holdfast::app
