// SPDX-License-Identifier: GPL-3.0-or-later
// Mean kinetic temperature against USP 29 <1160> (read: ΔH 83.144 kJ/mol, R 8.3144e-3, so ΔH/R = 10 000 K)
// and figures computed from its formula with SciPy 1.10. CODATA's R would move results by about 1e-5 K.

#include "core/film/air.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

double meanOf(std::vector<double> values) {
    std::vector<Celsius> readings;
    for (const double value : values)
        readings.push_back({value});
    return meanKineticTemperature(std::span<const Celsius>{readings})->value;
}

// A public worked example (read): 2, 2, 5, 8, 8, 8, 8 °C → 6.25 °C.
TEST(ReferenceMeanKineticTemperature, AgreesWithAWorkedExample) {
    EXPECT_NEAR(meanOf({2, 2, 5, 8, 8, 8, 8}), 6.25, 0.005);
}

TEST(ReferenceMeanKineticTemperature, AgreesWithSciPy) {
    EXPECT_NEAR(meanOf({2, 2, 5, 8, 8, 8, 8}), 6.250264773399181, 1e-9);
    EXPECT_NEAR(meanOf({20, 25}), 22.832025320829644, 1e-9);
    EXPECT_NEAR(meanOf({15, 20, 25, 30}), 24.10405349679047, 1e-9);
    EXPECT_NEAR(meanOf({25, 25, 25, 25, 25, 25, 25, 25, 25, 25, 25, 40}), 27.571377375897157, 1e-9);
    EXPECT_NEAR(meanOf({4, 4, 4, 4, 16}), 8.108857214794057, 1e-9);
    EXPECT_NEAR(meanOf({18, 22, 25, 27, 30, 24, 21}), 24.576442295022844, 1e-9);
}

} // namespace
} // namespace holdfast
