// SPDX-License-Identifier: GPL-3.0-or-later
// What a step at the fair table takes, reckoning included: an order opened to be changed, a team's list laid
// on the table, and one more key with the team there. Printed as the medians of a few, in milliseconds; the
// floor is the same step on a garment that is alone.
//
// The shop is a copy of the demo's, as for start_bench.

#include "app/desk/window_language.h"
#include "app/places/fair_table/fair_table_model.h"
#include "app/shell/shop_paths.h"

#include <QApplication>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <functional>
#include <vector>

namespace {

using namespace holdfast;
using namespace holdfast::app;

constexpr int kTimes = 15;

double medianOf(const std::function<void()>& before, const std::function<void()>& step) {
    std::vector<double> times;
    for (int at = 0; at < kTimes; ++at) {
        before();
        const auto begins = std::chrono::steady_clock::now();
        step();
        times.push_back(
            std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begins).count());
    }
    std::ranges::sort(times);
    return times[times.size() / 2];
}

// The open order that has most garments.
OrderId largestOrder(const ShopFacts& facts) {
    const auto largest = std::ranges::max_element(facts.orders, {}, [&](const Order& order) {
        return order.isOpen() ? facts.garmentsOf(order.id).size() : 0;
    });
    return largest->id;
}

std::vector<TeamLine> aTeam(std::size_t players) {
    std::vector<TeamLine> lines;
    for (std::size_t at = 1; at <= players; ++at)
        lines.push_back({at, "Player " + std::to_string(at), std::to_string(at), {}, {}});
    return lines;
}

void measure(FairTableModel& table) {
    const ShopFacts& facts = table.shop().facts;
    const OrderId order = largestOrder(facts);
    std::printf("an order of %zu garments opened: %.2f ms\n", facts.garmentsOf(order).size(),
                medianOf([&] { table.clear(); }, [&] { table.open(order); }));
    table.clear();
    const BlankStyle& style = *facts.styles.begin();
    const auto one = [&] {
        table.clear();
        table.edit(Step::Choice, [&](TableDraft& draft) { chooseStyle(draft, style); });
        table.edit(Step::Choice, [&](TableDraft& draft) {
            chooseSize(draft, &style, style.sizes.front());
            draft.garment().colour = style.colours.front().id;
        });
        table.editWithFilm(Step::Choice, [&](TableDraft& draft) { chooseArtwork(draft, &style, "heron"); });
    };
    const auto words = [&] {
        table.editWithFilm(Step::Words, [&](TableDraft& draft) { typeWords(draft, &style, "Juno"); });
        table.endStep();
    };
    const double alone = medianOf(one, words);
    for (const std::size_t players : {40, 200}) {
        const double laid = medianOf(one, [&] { table.addTeam(aTeam(players)); });
        const double key =
            medianOf([] {}, [&] { table.edit(Step::Note, [](TableDraft& draft) { draft.note += "x"; }); });
        std::printf(
            "a team of %zu laid, priced and promised: %.2f ms, one more key: %.2f ms, %.0f times one garment "
            "alone\n",
            players, laid, key, key / alone);
    }
    std::printf("a wording on one garment alone: %.2f ms\n", alone);
}

} // namespace

int main(int argc, char** argv) {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    setWindowLanguage();
    const LocalDate theDay = localDate(2026, 11, 11);
    const Clock clock = clockOn(theDay, kDemoTime);
    auto opened = openDemoToWorkIn(theDay, clock.now);
    if (!opened.ok()) {
        std::fprintf(stderr, "%s\n", opened.error().message.english().c_str());
        return 1;
    }
    ShopDesk desk(std::move(opened).value(), clock);
    FairTableModel table(desk);
    measure(table);
    return 0;
}
