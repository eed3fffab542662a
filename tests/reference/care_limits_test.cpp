// SPDX-License-Identifier: GPL-3.0-or-later
// Care axes against the public GINETEX table (read): wash 30/40/50/60/70/95 °C with normal > mild > very mild
// agitation, hand wash at most 40 °C, tumble normal > low > none, iron 200/150/110 °C (110 without steam),
// bleach any > oxygen only > none, professional cleaning P, F, W as sets. "Milder is always permitted" (the
// same). ISO 3758 as of 2012 (from memory) irons at 200/150/110 °C.

#include "core/facts/care_limits.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

TEST(ReferenceCareLimits, StepsAreOrderedAsInTheTable) {
    EXPECT_LT(Agitation::ByHand, Agitation::VeryMild);
    EXPECT_LT(Agitation::VeryMild, Agitation::Mild);
    EXPECT_LT(Agitation::Mild, Agitation::Normal);
    EXPECT_LT(Tumble::No, Tumble::Low);
    EXPECT_LT(Tumble::Low, Tumble::Normal);
    EXPECT_LT(Bleach::No, Bleach::OxygenOnly);
    EXPECT_LT(Bleach::OxygenOnly, Bleach::Any);
}

TEST(ReferenceCareLimits, EveryPairOfTemperaturesTakesTheLower) {
    constexpr int kWash[] = {0, 30, 40, 50, 60, 70, 95};
    for (const int one : kWash) {
        for (const int other : kWash)
            EXPECT_EQ(stricter({.washCelsius = one}, {.washCelsius = other}).washCelsius,
                      std::min(one, other));
    }
    constexpr int kIron[] = {0, 110, 150, 200};
    for (const int one : kIron) {
        for (const int other : kIron)
            EXPECT_EQ(stricter({.ironCelsius = one}, {.ironCelsius = other}).ironCelsius,
                      std::min(one, other));
    }
}

TEST(ReferenceCareLimits, ProfessionalCleaningIsWhatBothSetsHold) {
    const auto both = [](Cleaning one, Cleaning other) {
        return stricter({.cleaning = one}, {.cleaning = other}).cleaning;
    };
    EXPECT_EQ(both(Cleaning::PF, Cleaning::FW), Cleaning::F);
    EXPECT_EQ(both(Cleaning::P, Cleaning::W), Cleaning::None);
    EXPECT_EQ(both(Cleaning::P, Cleaning::F), Cleaning::F) << "P is perchloroethylene and hydrocarbons";
    EXPECT_EQ(both(Cleaning::PW, Cleaning::FW), Cleaning::FW);
    EXPECT_EQ(both(Cleaning::P, Cleaning::P), Cleaning::P);
    EXPECT_EQ(both(Cleaning::All, Cleaning::PW), Cleaning::PW);
    EXPECT_EQ(both(Cleaning::None, Cleaning::All), Cleaning::None);
}

TEST(ReferenceCareLimits, AHandWashIsNeverHotterThanForty) {
    EXPECT_EQ(careWords({.washCelsius = 60, .agitation = Agitation::ByHand}).front(),
              "Wash by hand at up to 40 °C");
    EXPECT_EQ(careWords({.washCelsius = 30, .agitation = Agitation::ByHand}).front(),
              "Wash by hand at up to 30 °C");
}

TEST(ReferenceCareLimits, TheLowestIronIsWithoutSteam) {
    EXPECT_EQ(careWords({.ironCelsius = 110}).at(2), "Iron at up to 110 °C, without steam");
    EXPECT_EQ(careWords({.ironCelsius = 150}).at(2), "Iron at up to 150 °C");
}

// The lowest step of the table, for a label of which nothing is known.
TEST(ReferenceCareLimits, WithoutALabelTheLowestIronIsAssumed) {
    EXPECT_EQ(CareLimits{}.ironCelsius, 110);
}

} // namespace
} // namespace holdfast
