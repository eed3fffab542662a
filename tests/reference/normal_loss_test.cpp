// SPDX-License-Identifier: GPL-3.0-or-later
// The loss function of the unit normal, L(z) = φ(z) − z·(1 − Φ(z)), which expected waste is reckoned from.
// Figures computed with SciPy 1.10 (references.md §8).

#include "core/trade/unit_normal.h"

#include <gtest/gtest.h>

namespace holdfast {

TEST(NormalLoss, AgreesWithSciPy) {
    const std::pair<double, double> known[] = {
        {-1, 1.0833154705876864},  {0, 0.3989422804014327},     {0.5, 0.19779655740130603},
        {1, 0.08331547058768629},  {1.28, 0.04749854331597653}, {2, 0.008490702616829632},
        {3, 0.000382154317047698},
    };
    for (const auto& [z, loss] : known)
        EXPECT_NEAR(unitNormalLoss(z), loss, 1e-12) << z;
}

TEST(NormalLoss, ExpectedShortageOfANormalDemand) {
    // Normal(1000, 200), 1,050.669 to hand: 57.0007 short on the average (SciPy 1.10, references.md §8).
    EXPECT_NEAR(200 * unitNormalLoss((1050.66942062716 - 1000) / 200), 57.00073844850812, 1e-9);
}

} // namespace holdfast
