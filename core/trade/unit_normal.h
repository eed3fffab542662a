// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The normal distribution with mean 0 and variance 1.

namespace holdfast {

// Within this many standard deviations lie eight of ten cases: Φ(z) = 0.9.
inline constexpr double kEightOfTen = 1.2815515655446004;

// Φ(z), the share below z.
double unitNormalShare(double z);
// The z below which that share lies. REQUIRES: 0 < share < 1.
double unitNormalQuantile(double share);
// L(z) = φ(z) − z·(1 − Φ(z)), the mean of what lies above z.
double unitNormalLoss(double z);

} // namespace holdfast
