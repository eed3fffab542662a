// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/cutting_history.h"
#include "core/orders/film_waste.h"
#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

class CuttingOf : public SmallShop {
protected:
    // Each decal is 200 × 220 mm; 240 mm of a roll 500 mm wide are taken for it.
    static constexpr std::int64_t kDecal = 200 * 220;
    static constexpr std::int64_t kFilm = 500 * 240;

    CuttingHistory cutting() { return loadFactsOf(connection(), {}).cutting; }
};

TEST_F(CuttingOf, FilmAndDecalsAreSummedAsAreas) {
    EXPECT_EQ(cutting(), CuttingHistory{});
    cutAll(takeTees(3));
    EXPECT_EQ(cutting(), (CuttingHistory{3, 3 * kFilm, 3 * kDecal}));
    // Test strips and what was found missing are no cuts.
    ASSERT_TRUE(correctLength(shop(), m_roll, Millimetres{10'000}, "measured anew").ok());
    EXPECT_EQ(cutting(), (CuttingHistory{3, 3 * kFilm, 3 * kDecal}));
}

TEST_F(CuttingOf, AKeptOffcutIsNotWastedUntilItIsCut) {
    const auto order = takeTees(2);
    const std::array offcuts{OffcutSize{{280}, {240}}};
    ASSERT_TRUE(cutDecals(shop(), m_roll, std::array{decalOf(order, 0)}, {240}, now(), offcuts).ok());
    EXPECT_EQ(cutting(), (CuttingHistory{1, kFilm - 280 * 240, kDecal}));
    const RollId offcut{number("SELECT MAX(id) FROM film_roll")};
    ASSERT_TRUE(cutDecals(shop(), offcut, std::array{decalOf(order, 1)}, {230}, now()).ok());
    EXPECT_EQ(cutting(), (CuttingHistory{2, kFilm - 280 * 240 + 280 * 230, 2 * kDecal}));
}

TEST_F(CuttingOf, WhatWasCutWrongIsFilmAndNoDecal) {
    const auto order = takeTees();
    cutAll(order);
    ASSERT_TRUE(markMiscut(shop(), decalOf(order), "the knife slipped").ok());
    EXPECT_EQ(cutting(), (CuttingHistory{1, kFilm, 0}));
    cutAll(order);
    EXPECT_EQ(cutting(), (CuttingHistory{2, 2 * kFilm, kDecal}));
}

TEST_F(CuttingOf, OnlyTheLatestCutsCount) {
    for (int cut = 0; cut < kCutsLookedAt + 3; ++cut) {
        wait(Hours{1});
        cutAll(takeTees());
    }
    EXPECT_EQ(cutting(), (CuttingHistory{kCutsLookedAt, kCutsLookedAt * kFilm, kCutsLookedAt * kDecal}));
}

} // namespace
} // namespace holdfast::db
