// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stock/packing_list.h"

#include "tests/core/reckoned_builder.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

constexpr const char* kCreekFair = "Creek Fair";

Fair theFair() {
    Fair fair;
    fair.id = FairId{1};
    fair.name = kCreekFair;
    fair.firstDay = theMoment().today() + Days{3};
    fair.lastDay = fair.firstDay + Days{1};
    return fair;
}

GarmentBuilder takenAt(const std::string& place, int promisedIn, OrderState state = OrderState::Confirmed) {
    return aGarment().order([=](Order& order) {
        order.takenAtPlace = place;
        order.promised = LocalTime{theMoment().today() + Days{promisedIn}} + Hours{15};
        order.state = state;
    });
}

BlankLot aLotOf(std::int64_t id, const std::string& size, std::int64_t units, bool isWashed) {
    BlankLot lot;
    lot.id = BlankLotId{id};
    lot.style = kTee;
    lot.size = size;
    lot.colour = kMoss;
    lot.unitsLeft = units;
    if (isWashed)
        lot.lastLoad = kLoad;
    return lot;
}

TEST(PackingListOfFair, TakesWhatItsCustomersCollectThere) {
    const ReckonedShop shop = reckoned(aShop()
                                           .with(takenAt("workshop", 20).pressed(daysAgo(9)))
                                           .with(takenAt(kCreekFair, 20))
                                           .with(takenAt(kCreekFair, 1).pressed(daysAgo(9)))
                                           .with(takenAt("workshop", 4).pressed(hoursAgo(1)))
                                           .with(takenAt(kCreekFair, 3, OrderState::Quoted))
                                           .with(takenAt(kCreekFair, 3, OrderState::Cancelled)));
    const PackingList list = packingList(shop, theFair());
    ASSERT_EQ(list.garments.size(), 3U);
    EXPECT_TRUE(list.garments[0].isPressed);
    EXPECT_EQ(list.garments[0].why, WhyPacked::TakenThere);
    EXPECT_FALSE(list.garments[0].restsUntil);
    EXPECT_TRUE(list.garments[1].isPressed);
    EXPECT_EQ(list.garments[1].why, WhyPacked::PromisedThen);
    EXPECT_TRUE(list.garments[1].restsUntil) << "pressed an hour ago";
    EXPECT_FALSE(list.garments[2].isPressed);
    EXPECT_EQ(list.careCards, 2);
    EXPECT_EQ(list.claimTickets, 2) << "two orders";
}

TEST(PackingListOfFair, ADayOfTheFairIsAnyFromItsFirstToItsLast) {
    for (const auto& [promisedIn, isPacked] :
         {std::pair{2, false}, std::pair{3, true}, std::pair{4, true}, std::pair{5, false}}) {
        const ReckonedShop shop = reckoned(aShop().with(takenAt("workshop", promisedIn)));
        EXPECT_EQ(packingList(shop, theFair()).garments.size(), isPacked ? 1U : 0U) << promisedIn;
    }
}

TEST(PackingListOfFair, TakesWashedBlanksThatNobodyHas) {
    const auto packed = [](bool isRetired) {
        GarmentBuilder garment = takenAt("workshop", 20).onNoBlank();
        garment.style([&](BlankStyle& style) { style.isRetired = isRetired; });
        ShopBuilder shop = aShop().with(garment).with(takenAt("workshop", 20));
        shop.withLot(aLotOf(71, "L", 5, true))
            .withLot(aLotOf(72, "L", 2, true))
            .withLot(aLotOf(73, "S", 7, false));
        return packingList(reckoned(shop), theFair()).blanks;
    };
    const auto blanks = packed(false);
    const auto large =
        std::ranges::find(blanks, "L", [](const BlanksToPack& each) { return each.kind.size; });
    ASSERT_NE(large, blanks.end());
    EXPECT_EQ(large->units, 7);
    EXPECT_TRUE(std::ranges::none_of(blanks, [](const BlanksToPack& each) { return each.kind.size == "S"; }))
        << "unwashed";
    EXPECT_TRUE(packed(true).empty()) << "retired";
}

TEST(PackingListOfFair, TakesASampleOfFilmsThatMayBeUsed) {
    const auto films = [](const std::function<void(GarmentBuilder&)>& change) {
        GarmentBuilder garment = takenAt("workshop", 20);
        change(garment);
        return packingList(reckoned(aShop().with(garment)), theFair()).films;
    };
    const auto usual = films([](GarmentBuilder&) {});
    ASSERT_EQ(usual.size(), 1U);
    EXPECT_EQ(usual[0].film, kFilm);
    EXPECT_EQ(usual[0].rolls, std::vector<RollId>{kRoll});
    EXPECT_TRUE(films([](GarmentBuilder& garment) {
                    garment.film([](Film& film) { film.isRetired = true; });
                }).empty());
    EXPECT_TRUE(films([](GarmentBuilder& garment) {
                    garment.condition(
                        [](RollCondition& condition) { condition.useBy = theMoment().today() - Days{30}; });
                }).empty())
        << "past its age";
}

TEST(PackingListOfFair, OfAnEmptyShopIsEmpty) {
    const PackingList list = packingList(reckoned(aShop()), theFair());
    EXPECT_TRUE(list.garments.empty() && list.blanks.empty() && list.films.empty());
    EXPECT_EQ(list.claimTickets + list.careCards, 0);
}

} // namespace
} // namespace holdfast::test
