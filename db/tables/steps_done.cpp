// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/steps_done.h"

#include "db/tables/fact_row.h"

#include <algorithm>
#include <utility>

namespace holdfast::db {

std::vector<StepDone> loadStepsDone(Connection& connection, const Now& now, UnreadFacts& unread) {
    std::vector<StepDone> done;
    Query rows = connection.query("SELECT id, garment_id, attempt, step_key, started_at, finished_at "
                                  "FROM press_step WHERE finished_at IS NOT NULL "
                                  "ORDER BY garment_id, attempt, id");
    std::pair<GarmentId, int> at{};
    int placed = 0; // decals since the last peel: one peel lifts them all
    readFacts(rows, unread, "press_step", [&](const FactRow& row) {
        const std::pair<GarmentId, int> of{row.id<GarmentId>(1), row.count(2)};
        if (of != at)
            placed = 0;
        at = of;
        const auto kind = stepKindOf(row.text(3));
        if (!kind)
            return;
        placed += *kind == StepKind::PlaceDecal;
        done.push_back({.kind = *kind,
                        .from = now.toLocal(row.instant(4)),
                        .until = now.toLocal(row.instant(5)),
                        .decals = *kind == StepKind::PeelCarrier ? std::max(placed, 1) : 1});
        if (*kind == StepKind::PeelCarrier)
            placed = 0;
    });
    std::ranges::stable_sort(done, std::ranges::greater{}, &StepDone::until);
    return done;
}

} // namespace holdfast::db
