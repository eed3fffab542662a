// SPDX-License-Identifier: GPL-3.0-or-later
// How near the search for an order comes to the best known, on public instances and on instances drawn as
// theirs were, and what it does for a day at the press. `schedule_bench [FOLDER]` reads tardiness-wt40.txt
// and tardiness-setups.txt from the folder, where one is given, and prints rows of Markdown:
//
//   | what | ours | best known | ratio | time |
//
// Times are of the processor, one core. A ratio over many instances is the mean of ours / best known, those
// with a best of 0 left out. The best known of drawn instances is in least_tardiness.txt, that of busy days
// in busy_days_best.txt, and what a run finds better goes there: `--drawn` runs only the drawn instances and
// `--busy` only these days, `--better-orders SECONDS SEED` and `--better SECONDS SEED` only look for better
// ones, so long for each.

#include "core/press/day_plan_rules.h"
#include "core/press/day_plan_timing.h"
#include "core/press/one_machine.h"
#include "core/press/tardiness_problem.h"
#include "tests/bench/best_known.h"
#include "tests/bench/busy_days.h"
#include "tests/bench/schedule_instances.h"
#include "tests/core/random_days.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <limits>
#include <span>
#include <string>
#include <vector>

namespace holdfast::bench {
namespace {

double processorSeconds() {
    timespec time{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_nsec) * 1e-9;
}

struct Search {
    double cost = 0;
    double seconds = 0; // until it was last bettered, or reached `enough`
};

Search searched(const OneMachine& machine, double seconds, std::uint64_t seed, double enough = 0) {
    const double begins = processorSeconds();
    TardinessProblem problem{machine};
    SearchLimits limits;
    limits.seed = seed;
    limits.shouldStop = [&] { return problem.cost() <= enough || processorSeconds() - begins >= seconds; };
    const double cost = OrderSearch{problem, limits}.from(dispatchedOrder(machine)).cost;
    return {cost, processorSeconds() - begins};
}

void row(const std::string& what, const std::string& ours, const std::string& best, double ratio,
         const std::string& time) {
    std::printf("| %s | %s | %s | %.4f | %s |\n", what.c_str(), ours.c_str(), best.c_str(), ratio,
                time.c_str());
    std::fflush(stdout);
}

std::string milliseconds(double seconds) {
    char text[32];
    std::snprintf(text, sizeof text, seconds < 0.01 ? "%.2f ms" : "%.0f ms", seconds * 1e3);
    return text;
}

std::string whole(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.0f", value);
    return text;
}

// How many of the optima are reached within 100 ms, and when the last of them.
void optimaRow(const std::vector<MachineInstance>& instances) {
    int reached = 0, counted = 0;
    double slowest = 0, ratios = 0, sum = 0, best = 0;
    for (const MachineInstance& instance : instances) {
        const Search search = searched(instance.machine, 0.1, 1, instance.best);
        sum += search.cost;
        best += instance.best;
        if (instance.best > 0) {
            ratios += search.cost / instance.best;
            ++counted;
        }
        if (search.cost > instance.best)
            continue;
        ++reached;
        slowest = std::max(slowest, search.seconds);
    }
    row("Weighted tardiness, 40 jobs, " + std::to_string(instances.size()) +
            " public instances: " + std::to_string(reached) + " optima within 100 ms",
        whole(sum), whole(best), ratios / counted, "slowest " + milliseconds(slowest));
}

void setupsRow(const std::vector<MachineInstance>& instances, double seconds) {
    double ratios = 0, sum = 0, best = 0;
    int reached = 0;
    for (const MachineInstance& instance : instances) {
        const Search search = searched(instance.machine, seconds, 1);
        sum += search.cost;
        best += instance.best;
        ratios += search.cost / instance.best;
        reached += search.cost <= instance.best ? 1 : 0;
        std::fprintf(stderr, "set-ups, %g s: %.0f, best known %.0f%s\n", seconds, search.cost, instance.best,
                     search.cost < instance.best ? ", LOWER" : "");
    }
    row("Set-ups, 60 jobs, " + std::to_string(instances.size()) +
            " public instances: " + std::to_string(reached) + " at the best known",
        whole(sum), whole(best), ratios / static_cast<double>(instances.size()), whole(seconds) + " s each");
}

// Against the least ever found.
void drawnRow(const std::string& what, std::span<const DrawnInstance> instances, double seconds,
              BestKnown& known) {
    double ratios = 0, sum = 0, best = 0;
    int counted = 0, reached = 0;
    for (const DrawnInstance& instance : instances) {
        const double cost = searched(instance.machine, seconds, 1).cost;
        known.hear(instance.seed, instance.kind, cost, seconds);
        const double least = known.of(instance.seed, instance.kind);
        sum += cost;
        best += least;
        reached += cost <= least ? 1 : 0;
        if (least > 0) {
            ratios += cost / least;
            ++counted;
        }
    }
    row(what + ": " + std::to_string(reached) + " of " + std::to_string(instances.size()) +
            " at the least known",
        whole(sum), whole(best), counted > 0 ? ratios / counted : 1, milliseconds(seconds) + " each");
}

void drawnRows(BestKnown& known) {
    drawnRow("Weighted tardiness, 100 jobs, drawn", drawnPlain(100), 0.1, known);
    for (const double tightness : kTightnessWithSetups)
        drawnRow("Set-ups, 60 jobs, drawn, tightness " + std::to_string(tightness).substr(0, 3),
                 drawnWithSetups(tightness), 1, known);
}

// Looks for better orders than those known, so long for each instance.
void betterOrders(double seconds, std::uint64_t searchSeed, BestKnown& known) {
    const auto search = [&](std::span<const DrawnInstance> instances) {
        for (const DrawnInstance& instance : instances)
            known.hear(instance.seed, instance.kind, searched(instance.machine, seconds, searchSeed).cost,
                       seconds);
    };
    search(drawnPlain(100));
    for (const double tightness : kTightnessWithSetups)
        search(drawnWithSetups(tightness));
}

struct DaySums {
    double seconds = 0;
    double slowest = 0;
    double lateness = 0;
    double ends = 0;

    void add(const PlanRequest& request) {
        const double begins = processorSeconds();
        const DayPlan plan = planDay(request);
        const double took = processorSeconds() - begins;
        seconds += took;
        slowest = std::max(slowest, took);
        lateness += static_cast<double>(plan.lateness.count());
        ends += static_cast<double>((plan.ends - request.start).count());
    }
};

void dayRow(std::size_t garments, bool hasTwoPresses, int count) {
    press_days::RandomDays days{static_cast<unsigned>(garments)};
    DaySums searched, dispatched;
    for (int day = 0; day < count; ++day) {
        PlanRequest request = days.day(garments, hasTwoPresses);
        searched.add(request);
        request.search.work = 0;
        dispatched.add(request);
    }
    const std::string what = "Day of " + std::to_string(garments) + " garments, " +
                             (hasTwoPresses ? "two presses" : "one press") + ", against the best rule: ";
    const std::string time =
        milliseconds(searched.seconds / count) + ", slowest " + milliseconds(searched.slowest);
    row(what + "seconds late", whole(searched.lateness), whole(dispatched.lateness),
        searched.lateness / dispatched.lateness, time);
    row(what + "seconds to its end", whole(searched.ends), whole(dispatched.ends),
        searched.ends / dispatched.ends, "dispatch " + milliseconds(dispatched.seconds / count));
}

void dayRows() {
    for (const bool hasTwoPresses : {false, true}) {
        for (const std::size_t garments : {8, 12, 30, 200})
            dayRow(garments, hasTwoPresses, garments < 100 ? 40 : 10);
    }
}

// As much work as fits into so much processor time, by how long the rules alone and a short search of the
// same day take; stopped then at the latest. With another seed it looks elsewhere.
DayPlan plannedFor(PlanRequest request, double seconds, std::uint64_t seed) {
    const double first = processorSeconds();
    request.search.work = 0;
    planDay(request);
    const double second = processorSeconds();
    request.search.work = kWorkAtOnce;
    planDay(request);
    const double begins = processorSeconds();
    const double rules = second - first;
    const double searched = begins - second - rules;
    request.search.work = static_cast<std::uint64_t>(kWorkAtOnce * std::max(0.0, seconds - rules) / searched);
    request.search.seed = seed;
    request.shouldStop = [&] { return processorSeconds() - begins >= seconds; };
    return planDay(request);
}

struct Effort {
    double seconds = 0;
    double lateness = 0;
    double ratios = 0;
    int moreLate = 0; // days with more garments late than by the best rule
};

// The days of one number of presses: mean lateness above the best known, by the time that is spent.
void busyRows(const std::string& what, unsigned seed, char presses, BestKnown& known) {
    Effort efforts[] = {{0.05}, {1}, {8}};
    double sum = 0;
    int days = 0;
    for (const BusyDay& day : busyDays(seed)) {
        if (day.name.front() != presses)
            continue;
        PlanRequest dispatched = day.request;
        dispatched.search.work = 0;
        const int lateByRule = planDay(dispatched).lateGarments();
        std::vector<double> reached;
        for (Effort& effort : efforts) {
            const DayPlan plan = plannedFor(day.request, effort.seconds, 1);
            reached.push_back(static_cast<double>(plan.lateness.count()));
            effort.moreLate += plan.lateGarments() > lateByRule ? 1 : 0;
            known.hear(seed, day.name, reached.back(), effort.seconds);
        }
        const double best = known.of(seed, day.name);
        for (std::size_t at = 0; at < reached.size(); ++at) {
            efforts[at].lateness += reached[at];
            efforts[at].ratios += best > 0 ? reached[at] / best : 1;
        }
        sum += best;
        ++days;
        std::fprintf(stderr, "%u %s: best known %.0f, ours %.4f %.4f %.4f times it\n", seed, day.name.c_str(),
                     best, reached[0] / best, reached[1] / best, reached[2] / best);
    }
    for (const Effort& effort : efforts)
        row(what + ", " + std::to_string(effort.moreLate) + " with more garments late than by the best rule",
            whole(effort.lateness), whole(sum), effort.ratios / days, milliseconds(effort.seconds) + " each");
}

// Looks for better plans than those known, so long for each day.
void betterKnown(unsigned seed, double seconds, std::uint64_t searchSeed, BestKnown& known) {
    for (const BusyDay& day : busyDays(seed)) {
        const DayPlan plan = plannedFor(day.request, seconds, searchSeed);
        known.hear(seed, day.name, static_cast<double>(plan.lateness.count()), seconds);
    }
}

constexpr unsigned kBusySeed = 1000;
constexpr unsigned kOtherSeed = 700'000;

void allBusyRows(BestKnown& known) {
    for (const char presses : {'1', '2'}) {
        const std::string on = presses == '1' ? " on one press" : " on two presses";
        busyRows("12 busy days" + on, kBusySeed, presses, known);
        busyRows("12 other busy days" + on, kOtherSeed, presses, known);
    }
}

} // namespace
} // namespace holdfast::bench

int main(int count, char** arguments) {
    using namespace holdfast::bench;
    const std::string first = count > 1 ? arguments[1] : "";
    BestKnown known{HOLDFAST_BENCH_FOLDER "/busy_days_best.txt"};
    if (first == "--better" && count == 4) {
        for (const unsigned seed : {kBusySeed, kOtherSeed})
            betterKnown(seed, std::atof(arguments[2]), std::strtoull(arguments[3], nullptr, 10), known);
        return 0;
    }
    if (first == "--busy") {
        allBusyRows(known);
        return 0;
    }
    BestKnown orders{HOLDFAST_BENCH_FOLDER "/least_tardiness.txt"};
    if (first == "--better-orders" && count == 4) {
        betterOrders(std::atof(arguments[2]), std::strtoull(arguments[3], nullptr, 10), orders);
        return 0;
    }
    if (first == "--drawn") {
        drawnRows(orders);
        return 0;
    }
    if (count > 1) {
        const std::filesystem::path folder = first;
        const auto plain = readInstances(folder / "tardiness-wt40.txt", false);
        const auto setups = readInstances(folder / "tardiness-setups.txt", true);
        if (plain.empty() || setups.empty()) {
            std::fprintf(stderr, "No instances in %s.\n", arguments[1]);
            return 1;
        }
        optimaRow(plain);
        setupsRow(setups, 1);
        setupsRow(setups, 8);
    }
    drawnRows(orders);
    dayRows();
    allBusyRows(known);
    return 0;
}
