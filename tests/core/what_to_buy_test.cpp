// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stock/what_to_buy.h"

#include "tests/core/reckoned_builder.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace holdfast {
namespace {

using test::GarmentBuilder;
using test::ShopBuilder;
using namespace literals;

// Tees in M and Moss, as the builders have them; four a week were ordered for eight weeks.
class WhatToBuyTest : public testing::Test {
protected:
    WhatToBuyTest() {
        m_shop.settings([](ShopSettings& settings) {
            settings.blankLeadTime = Days{7};
            settings.filmLeadTime = Days{7};
            settings.boughtToLast = Days{7};
            settings.runOutPercent = 5;
        });
        soldAWeek({5, 3, 4, 4, 5, 3, 4, 4});
    }

    void soldAWeek(std::vector<std::int64_t> weeks) {
        m_use.weeks = std::ssize(weeks);
        std::int64_t all = 0;
        for (const std::int64_t week : weeks)
            all += week;
        m_use.sold = {{kind(), all}};
        m_use.soldAWeek = {{test::kTee, std::move(weeks)}};
    }

    static BlankKind kind() { return {test::kTee, "M", test::kMoss}; }

    static void addLot(ShopBuilder& shop, std::int64_t units) {
        BlankLot lot;
        lot.id = BlankLotId{77};
        lot.style = test::kTee;
        lot.size = "M";
        lot.colour = test::kMoss;
        lot.unitsLeft = units;
        shop.withLot(lot);
    }

    WhatToBuy buy() { return whatToBuy(test::reckoned(m_shop, m_recentUse), m_use, m_next, m_bring); }
    ToBuy blank() {
        m_what = buy();
        const auto line =
            std::ranges::find_if(m_what.lines, [](const ToBuy& each) { return !each.isFilm(); });
        return line == m_what.lines.end() ? ToBuy{} : *line;
    }
    ToBuy film(FilmId id = test::kFilm) {
        m_what = buy();
        const auto line = std::ranges::find_if(m_what.lines, [&](const ToBuy& each) {
            return each.isFilm() && std::get<FilmId>(each.what) == id;
        });
        return line == m_what.lines.end() ? ToBuy{} : *line;
    }

    ShopBuilder m_shop;
    RecentUse m_recentUse;
    BlankUse m_use;
    std::optional<Fair> m_next;
    WhatToBring m_bring;
    WhatToBuy m_what;
};

// Poisson tables [M]: enough for 4 a week with 95 % are 8, for 8 in two weeks 13 (F(12) = .936, F(13) =
// .966).
TEST_F(WhatToBuyTest, BlanksAreBoughtToWhatTwoWeeksTakeOnceAWeekIsNotSure) {
    m_shop.with(GarmentBuilder{});
    addLot(m_shop, 8);
    const ToBuy line = blank();
    EXPECT_EQ(line.name, "Tee, M, Moss");
    const std::int64_t free = line.there; // and what the builders’ own lot leaves
    EXPECT_EQ(line.reorderPoint, 8);
    EXPECT_NEAR(line.use, 4, 1e-9);
    EXPECT_EQ(line.useLow, 2) << "F(1) = .09158, F(2) = .23810 [M]";
    EXPECT_EQ(line.useHigh, 7) << "F(6) = .88933, F(7) = .94887 [M]";
    EXPECT_EQ(line.buy, free > 8 ? 0 : 13 - free);
}

TEST_F(WhatToBuyTest, MoreThanTheReorderPointIsEnough) {
    m_shop.with(GarmentBuilder{});
    addLot(m_shop, 40);
    const ToBuy line = blank();
    EXPECT_GE(line.there, 40);
    EXPECT_EQ(line.buy, 0);
    EXPECT_EQ(line.why, WhyBuy::Enough);
    EXPECT_EQ(line.cost, Money{});
}

TEST_F(WhatToBuyTest, AGarmentWithoutABlankIsPromisedEvenWhereItIsHeld) {
    m_use = {};
    m_use.weeks = 1;
    m_shop.with(GarmentBuilder{}.onNoBlank());
    m_shop.with(GarmentBuilder{}.onNoBlank().decal([](Decal& decal) { decal.confirmedBy.clear(); }));
    const ToBuy line = blank();
    EXPECT_EQ(line.promised, 2);
    EXPECT_EQ(line.buy, 2);
    EXPECT_EQ(line.why, WhyBuy::Promised);
    EXPECT_FALSE(line.isUseKnown());
}

TEST_F(WhatToBuyTest, AQuotationPromisesNothing) {
    m_use = {};
    m_shop.with(GarmentBuilder{}.onNoBlank().order([](Order& order) { order.state = OrderState::Quoted; }));
    EXPECT_EQ(blank().buy, 0);
    EXPECT_EQ(m_what.cost(), Money{});
}

TEST_F(WhatToBuyTest, TooFewWeeksSayNothingOfUse) {
    soldAWeek({9, 9});
    m_shop.with(GarmentBuilder{});
    EXPECT_TRUE(blank().name.empty()) << "nothing is promised, and nothing is known";
    soldAWeek({9, 9, 9});
    EXPECT_GT(blank().buy, 0);
}

TEST_F(WhatToBuyTest, AFairSoonAsksForWhatIsBroughtThere) {
    m_shop.with(GarmentBuilder{});
    Fair fair;
    fair.name = "Creek Fair";
    fair.firstDay = fair.lastDay = test::theMoment().today() + Days{14};
    m_next = fair;
    ToBring kind;
    kind.kind = this->kind();
    kind.brought.quantity = 30;
    m_bring.kinds = {kind};
    const ToBuy line = blank();
    EXPECT_EQ(line.buy, 30 - line.there);
    EXPECT_EQ(line.why, WhyBuy::Fair);
    m_next->firstDay = test::theMoment().today() + Days{15}; // another purchase comes in time
    EXPECT_NE(blank().why, WhyBuy::Fair);
}

// 400 mm in each week, with nothing on the shelf but 300 mm: 0.4 m are used until it comes, 0.8 m with the
// week after.
TEST_F(WhatToBuyTest, FilmIsBoughtInWholeMetres) {
    m_shop.with(GarmentBuilder{}.roll([](FilmRoll& roll) { roll.left = 300_mm; }));
    m_recentUse[test::kFilm] = {400_mm, 400_mm, 400_mm, 400_mm};
    const ToBuy line = film();
    EXPECT_EQ(line.there, 300);
    EXPECT_NEAR(line.use, 400, 1e-9);
    EXPECT_EQ(line.reorderPoint, 400);
    EXPECT_EQ(line.buy, 1000) << "half a metre is wanted";
    EXPECT_EQ(line.cost, Money{900});
    EXPECT_EQ(line.why, WhyBuy::RunsLow);
}

// Weeks of 200 and 600 mm in turn: mean 400, deviation √(4·200²/3) = 230.94; at 95 % 400 + 1.6449 · 230.94 =
// 779.9.
TEST_F(WhatToBuyTest, FilmThatIsUsedUnevenlyNeedsSafetyStock) {
    m_shop.with(GarmentBuilder{}.roll([](FilmRoll& roll) { roll.left = 780_mm; }));
    m_recentUse[test::kFilm] = {200_mm, 600_mm, 200_mm, 600_mm};
    EXPECT_EQ(film().reorderPoint, 780);
    EXPECT_EQ(film().buy, 1000) << "at the point it is bought";
    EXPECT_NEAR(film().useHigh, 400 + 1.2816 * 230.94, 0.1);
}

TEST_F(WhatToBuyTest, FilmOfWhichNobodyKnowsTheUseIsBoughtForOrdersAlone) {
    m_shop.with(GarmentBuilder{}.roll([](FilmRoll& roll) { roll.left = 5000_mm; }));
    EXPECT_EQ(film().buy, 0);
    EXPECT_FALSE(film().isUseKnown());
    EXPECT_EQ(film().weeks, 0);
}

TEST_F(WhatToBuyTest, DecalsThatNoRollTakesAreBoughtByTheirArea) {
    m_shop.with(
        GarmentBuilder{}.uncut().roll([](FilmRoll& roll) { roll.left = 10_mm; }).decal([](Decal& decal) {
            decal.width = 250_mm, decal.height = 400_mm;
        }));
    const ToBuy line = film();
    // 250 × 400 mm and 20 % round it, from a roll 500 mm wide
    EXPECT_EQ(line.promised, 240);
    EXPECT_EQ(line.buy, 1000);
    EXPECT_EQ(line.why, WhyBuy::Promised);
}

TEST_F(WhatToBuyTest, WhatIsRetiredIsNotBought) {
    m_shop.with(GarmentBuilder{}.film([](Film& film) { film.isRetired = true; }).style([](BlankStyle& style) {
        style.isRetired = true;
    }));
    EXPECT_TRUE(buy().lines.empty());
    EXPECT_FALSE(buy().isAnyBought());
}

TEST_F(WhatToBuyTest, LinesOfASupplierAreTogetherAndThoseWithoutOneLast) {
    m_shop.with(GarmentBuilder{}
                    .style([](BlankStyle& style) { style.supplier = "Lowmoor"; })
                    .withOtherFilm([](Film& film) { film.supplier = "Lowmoor"; }));
    const WhatToBuy what = buy();
    ASSERT_EQ(what.lines.size(), 3U);
    EXPECT_EQ(what.lines[0].supplier, "Lowmoor");
    EXPECT_EQ(what.lines[1].supplier, "Lowmoor");
    EXPECT_TRUE(what.lines[2].supplier.empty());
}

} // namespace
} // namespace holdfast
