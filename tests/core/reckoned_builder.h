// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A reckoned shop out of a shop for tests: its waiting decals allotted, its garments assessed, its day
// planned.

#include "core/shop/reckoned_shop.h"
#include "tests/core/builders.h"

namespace holdfast::test {

inline ReckonedShop reckoned(const ShopBuilder& builder, RecentUse recentUse = {}) {
    const TestShop shop = builder.build();
    ReckonedShop made;
    made.now = shop.now;
    made.facts = shop.facts;
    made.conditions = shop.conditions;
    made.recentUse = std::move(recentUse);
    made.allotment = allot(made.facts, made.conditions, made.recentUse, made.now);
    made.assessments = assessAll(made.around());
    made.plan = planDay(planRequest(made.facts, made.assessments, made.now));
    return made;
}

} // namespace holdfast::test
