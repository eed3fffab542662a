// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Instances of one machine with weighted tardiness: read from the public files as they are (see read below),
// and drawn at random as their makers drew them, so that nothing is good for a few instances only.

#include "core/press/one_machine.h"

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace holdfast::bench {

struct MachineInstance {
    OneMachine machine;
    double best = 0; // the least known
};

// "NUMBER JOBS BEST", then works, weights and due dates; with set-ups also those before the first job and a
// row of them for each job. Lines that begin with # are passed over. Empty: no such file, or not so written.
std::vector<MachineInstance> readInstances(const std::filesystem::path& file, bool hasSetups);

// Works 1 to 100, weights 1 to 10, due dates over a range of `range` of the whole work, about 1 − `tightness`
// of it: C. N. Potts, L. N. Van Wassenhove, "A branch and bound algorithm for the total weighted tardiness
// problem", Operations Research 33 (1985) [from memory].
OneMachine drawnMachine(std::uint64_t seed, std::size_t jobs, double tightness, double range);

// Works 50 to 150, weights 0 to 10, set-ups with a mean of `setups` of the mean work: V. A. Cicirello,
// "Weighted tardiness scheduling with sequence-dependent setups: a benchmark library" (2003) [from memory].
OneMachine drawnMachineWithSetups(std::uint64_t seed, std::size_t jobs, double tightness, double range,
                                  double setups);

struct DrawnInstance {
    unsigned seed = 0;
    std::string kind; // "plain-100"
    OneMachine machine;
};

// 125 each, five at each of the tightnesses and ranges 0.2, 0.4 to 1, as in the public set of that family.
std::vector<DrawnInstance> drawnPlain(std::size_t jobs);

// 20 of 60 jobs each, five at each of the ranges and set-ups 0.25 and 0.75: a class of the public set, which
// has these three.
inline constexpr double kTightnessWithSetups[] = {0.3, 0.6, 0.9};
std::vector<DrawnInstance> drawnWithSetups(double tightness);

} // namespace holdfast::bench
