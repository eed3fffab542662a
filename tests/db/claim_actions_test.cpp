// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/claim_actions.h"

#include "db/tables/claims.h"
#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

class ClaimActions : public SmallShop {
protected:
    // Two pressed tees, handed over today.
    OrderTaken handedOver() {
        const OrderTaken order = readyToPress(2);
        for (const GarmentId garment : garmentsOf(order.id))
            pressAll(garment);
        EXPECT_TRUE(handOver(shop(), order.id, now()).ok());
        return order;
    }

    ClaimTold crackedOn(const OrderTaken& order) {
        return {garmentOf(order), decalOf(order), now().today(), Fault::Cracked, 3, "  left side  "};
    }
};

using Told = Result<ClaimId>;
using Answered = Result<Done>;

TEST_F(ClaimActions, WhatCameBackIsWrittenAsItWasTold) {
    const OrderTaken order = handedOver();
    wait(Days{20});
    const ClaimTold told = crackedOn(order);
    const auto id = recordClaim(shop(), told, now());
    ASSERT_TRUE(id.ok()) << id.error().message.english();
    const auto claims = claimsOf(connection(), order.id);
    ASSERT_EQ(claims.size(), 1U);
    EXPECT_EQ(claims[0].id, *id);
    EXPECT_EQ(claims[0].garment, told.garment);
    EXPECT_EQ(claims[0].decal, told.decal);
    EXPECT_EQ(claims[0].toldOn, now().today());
    EXPECT_EQ(claims[0].fault, Fault::Cracked);
    EXPECT_EQ(claims[0].washes, 3);
    EXPECT_EQ(claims[0].note, "left side");
    EXPECT_FALSE(claims[0].answer);
    EXPECT_EQ(titlesOf(order.id).front(), "1-a came back: Heron, cracked after 3 washes");
    EXPECT_EQ(titlesOf(garmentOf(order)).front(), titlesOf(order.id).front());
}

TEST_F(ClaimActions, TellingIsOneEntryThatCanBeTakenBack) {
    const OrderTaken order = handedOver();
    wait(Days{20});
    expectUndoable<Told>([&] { return recordClaim(shop(), crackedOn(order), now()); },
                         "1-a came back: Heron, cracked after 3 washes");
}

TEST_F(ClaimActions, WashesNeedNotBeKnownAndMayBeNone) {
    const OrderTaken order = handedOver();
    ClaimTold told = crackedOn(order);
    told.decal.reset();
    told.fault = Fault::NotAsOrdered;
    told.washes = 0;
    ASSERT_TRUE(recordClaim(shop(), told, now()).ok());
    EXPECT_EQ(lastTitle(), "1-a came back: not as ordered, not washed yet");
    told.washes.reset();
    ASSERT_TRUE(recordClaim(shop(), told, now()).ok());
    EXPECT_EQ(lastTitle(), "1-a came back: not as ordered");
    EXPECT_FALSE(claimsOf(connection(), order.id)[1].washes);
    EXPECT_FALSE(claimsOf(connection(), order.id)[1].decal);
}

TEST_F(ClaimActions, OnlyWhatWasHandedOverComesBack) {
    const OrderTaken order = readyToPress();
    expectRefused<Told>([&] { return recordClaim(shop(), crackedOn(order), now()); }, "garment",
                        "not handed over");
}

TEST_F(ClaimActions, BadInputNamesItsField) {
    const OrderTaken order = handedOver();
    const auto refused = [&](auto change, const std::string& field, const std::string& words) {
        ClaimTold told = crackedOn(order);
        change(told);
        expectRefused<Told>([&] { return recordClaim(shop(), told, now()); }, field, words);
    };
    refused([&](ClaimTold& told) { told.on += Days{1}; }, "on", "no later than today");
    refused([&](ClaimTold& told) { told.on -= Days{1}; }, "on", "handed over on Wed 11 Nov");
    refused([&](ClaimTold& told) { told.washes = -1; }, "washes", "500");
    refused([&](ClaimTold& told) { told.washes = 501; }, "washes", "500");
    refused([&](ClaimTold& told) { told.note = std::string(301, 'x'); }, "note", "300");
    refused([&](ClaimTold& told) { told.decal = decalOf(order, 1); }, "decal", "1-b");
    refused([&](ClaimTold& told) { told.decal = DecalId{99}; }, "decal", "no such decal");
    refused([&](ClaimTold& told) { told.garment = GarmentId{99}; }, "garment", "no such garment");
}

TEST_F(ClaimActions, WhatWasDoneIsSaidAndMayBeSaidAnew) {
    const OrderTaken order = handedOver();
    const auto claim = recordClaim(shop(), crackedOn(order), now());
    ASSERT_TRUE(claim.ok());
    ASSERT_EQ(openClaims(connection()).size(), 1U);
    EXPECT_EQ(openClaims(connection())[0].claim, *claim);
    EXPECT_EQ(openClaims(connection())[0].order, order.id);
    wait(Days{2});
    expectUndoable<Answered>([&] { return answerClaim(shop(), *claim, ClaimAnswer::PressedAgain, now()); },
                             "1-a came back, done about it: pressed again");
    ASSERT_TRUE(answerClaim(shop(), *claim, ClaimAnswer::MoneyBack, now()).ok());
    EXPECT_TRUE(openClaims(connection()).empty());
    const Claim answered = claimsOf(connection(), order.id).at(0);
    EXPECT_EQ(answered.answer, ClaimAnswer::MoneyBack);
    EXPECT_EQ(answered.answeredOn, now().today());
    expectRefused<Answered>([&] { return answerClaim(shop(), ClaimId{99}, ClaimAnswer::Advised, now()); },
                            "claim", "no longer there");
}

} // namespace
} // namespace holdfast::db
