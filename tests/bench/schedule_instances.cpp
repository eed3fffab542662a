// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/schedule_instances.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <random>
#include <sstream>
#include <string>

namespace holdfast::bench {

namespace {

class Drawn {
public:
    explicit Drawn(std::uint64_t seed)
        : m_random(seed) {}

    double whole(double low, double high) {
        return std::floor(low + share() * (std::max(high, low) - low + 1));
    }
    double share() { return static_cast<double>(m_random() >> 11) * 0x1p-53; }

private:
    std::mt19937_64 m_random;
};

bool readRow(std::istream& text, std::vector<double>& row, std::size_t count) {
    row.resize(count);
    for (double& value : row)
        text >> value;
    return static_cast<bool>(text);
}

} // namespace

std::vector<MachineInstance> readInstances(const std::filesystem::path& file, bool hasSetups) {
    std::ifstream lines{file};
    std::stringstream text;
    for (std::string line; std::getline(lines, line);) {
        if (!line.starts_with('#'))
            text << line << '\n';
    }
    std::vector<MachineInstance> instances;
    std::size_t number = 0, jobs = 0;
    for (MachineInstance next; text >> number >> jobs >> next.best; next = {}) {
        std::vector<double> work, weight, due;
        bool isWhole = readRow(text, work, jobs) && readRow(text, weight, jobs) && readRow(text, due, jobs);
        if (hasSetups)
            isWhole = isWhole && readRow(text, next.machine.firstSetups, jobs) &&
                      readRow(text, next.machine.setups, jobs * jobs);
        if (!isWhole)
            return {};
        for (std::size_t job = 0; job < jobs; ++job)
            next.machine.tasks.push_back({work[job], due[job], weight[job]});
        instances.push_back(std::move(next));
    }
    return instances;
}

OneMachine drawnMachine(std::uint64_t seed, std::size_t jobs, double tightness, double range) {
    Drawn drawn{seed};
    OneMachine machine;
    double work = 0;
    for (std::size_t job = 0; job < jobs; ++job) {
        machine.tasks.push_back({drawn.whole(1, 100), 0, drawn.whole(1, 10)});
        work += machine.tasks.back().work;
    }
    for (DispatchTask& task : machine.tasks)
        task.due = std::max(
            0.0, drawn.whole(work * (1 - tightness - range / 2), work * (1 - tightness + range / 2)));
    return machine;
}

OneMachine drawnMachineWithSetups(std::uint64_t seed, std::size_t jobs, double tightness, double range,
                                  double setups) {
    Drawn drawn{seed};
    const double count = static_cast<double>(jobs);
    const double meanSetup = setups * 100;
    const double share = 0.4 + 10 / (count * count) - setups / 7; // of a set-up that a good order pays
    const double length = count * (100 + share * meanSetup);
    const double meanDue = (1 - tightness) * length;

    OneMachine machine;
    for (std::size_t job = 0; job < jobs; ++job) {
        DispatchTask task{drawn.whole(50, 150), 0, drawn.whole(0, 10)};
        task.due = drawn.share() < tightness ? drawn.whole(meanDue * (1 - range), meanDue)
                                             : drawn.whole(meanDue, meanDue + (length - meanDue) * range);
        machine.tasks.push_back(task);
        machine.firstSetups.push_back(drawn.whole(0, 2 * meanSetup));
    }
    machine.setups.resize(jobs * jobs);
    for (double& setup : machine.setups)
        setup = drawn.whole(0, 2 * meanSetup);
    return machine;
}

std::vector<DrawnInstance> drawnPlain(std::size_t jobs) {
    std::vector<DrawnInstance> instances;
    for (unsigned tightness = 1; tightness <= 5; ++tightness) {
        for (unsigned range = 1; range <= 5; ++range) {
            for (unsigned one = 0; one < 5; ++one) {
                const unsigned seed = 30'000 + 100 * tightness + 10 * range + one;
                instances.push_back({seed, "plain-" + std::to_string(jobs),
                                     drawnMachine(seed, jobs, 0.2 * static_cast<double>(tightness),
                                                  0.2 * static_cast<double>(range))});
            }
        }
    }
    return instances;
}

std::vector<DrawnInstance> drawnWithSetups(double tightness) {
    std::vector<DrawnInstance> instances;
    // 20,000 and on, 21,000 and 22,000.
    unsigned seed = 20'000 + 1000 * static_cast<unsigned>(std::lround(tightness / 0.3) - 1);
    for (const double range : {0.25, 0.75}) {
        for (const double setups : {0.25, 0.75}) {
            for (int one = 0; one < 5; ++one) {
                ++seed;
                instances.push_back(
                    {seed, "setups-60", drawnMachineWithSetups(seed, 60, tightness, range, setups)});
            }
        }
    }
    return instances;
}

} // namespace holdfast::bench
