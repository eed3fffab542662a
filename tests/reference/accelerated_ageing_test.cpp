// SPDX-License-Identifier: GPL-3.0-or-later
// Ageing by Q10, against public calculators that quote ASTM F1980 (second-hand; the standard's own text was
// not read) and figures computed from the formula with SciPy 1.10.

#include "core/film/ageing.h"

#include <gtest/gtest.h>

#include <cmath>

namespace holdfast {
namespace {

// Q10 = 2, 55 over 25 °C → 8; 730 days → 91.25 days.
TEST(ReferenceAcceleratedAgeing, AgreesWithPublicCalculators) {
    const AgeingModel model{.q10 = 2, .reference = {25}};
    EXPECT_DOUBLE_EQ(ageingFactor(model, {55}), 8);
    EXPECT_DOUBLE_EQ(730 / ageingFactor(model, {55}), 91.25);
    EXPECT_DOUBLE_EQ(ageAlongLine(model, {55}, {55}, 91.25), 730);
}

TEST(ReferenceAcceleratedAgeing, AgreesWithSciPy) {
    EXPECT_NEAR(ageingFactor({2, {22}}, {55}), 9.849155306759329, 1e-12);
    EXPECT_NEAR(365 / ageingFactor({2, {22}}, {55}), 37.05901558375325, 1e-11);
    EXPECT_NEAR(ageingFactor({2, {25}}, {60}), 11.313708498984761, 1e-12);
    EXPECT_NEAR(ageingFactor({1.8, {23}}, {55}), 6.559519331844698, 1e-12);
    EXPECT_NEAR(ageingFactor({2, {22}}, {50}), 6.964404506368992, 1e-12);
}

// Arrhenius with Ea 52 948.86 J/mol is Q10 = 2 from 25 to 35 °C, and leaves it beyond: the two are never
// mixed.
TEST(ReferenceAcceleratedAgeing, ArrheniusMeetsItOnTenDegreesOnly) {
    constexpr double kGas = 8.314462618;
    const auto arrhenius = [](double energy, double from, double to) {
        return std::exp(energy / kGas * (1 / (from + 273.15) - 1 / (to + 273.15)));
    };
    EXPECT_NEAR(arrhenius(52'948.86, 25, 35), ageingFactor({2, {25}}, {35}), 1e-6);
    EXPECT_GT(ageingFactor({2, {25}}, {55}) - arrhenius(52'948.86, 25, 55), 0.5);
}

} // namespace
} // namespace holdfast
