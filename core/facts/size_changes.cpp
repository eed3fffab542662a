// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/size_changes.h"

#include <algorithm>

namespace holdfast {

namespace {

// How many of both are the same in the same order, from each pair of places on.
using Common = std::vector<std::vector<int>>;

Common commonFrom(std::span<const std::string> before, std::span<const std::string> after) {
    Common common(before.size() + 1, std::vector<int>(after.size() + 1, 0));
    for (std::size_t was = before.size(); was-- > 0;)
        for (std::size_t now = after.size(); now-- > 0;)
            common[was][now] = before[was] == after[now]
                                   ? common[was + 1][now + 1] + 1
                                   : std::max(common[was + 1][now], common[was][now + 1]);
    return common;
}

bool isIn(std::span<const std::string> sizes, const std::string& size) {
    return std::ranges::find(sizes, size) != sizes.end();
}

} // namespace

SizeChanges sizeChanges(std::span<const std::string> before, std::span<const std::string> after,
                        const std::function<bool(const std::string&)>& isInUse) {
    SizeChanges changes;
    std::vector<std::string> gone;
    std::vector<std::string> added;
    const auto endGap = [&] {
        const bool areNames = gone.size() == added.size();
        for (std::size_t at = 0; at < gone.size(); ++at) {
            if (areNames && isInUse(gone[at])) {
                changes.renamed.emplace_back(gone[at], added[at]);
                continue;
            }
            changes.gone.push_back(gone[at]);
            if (areNames)
                changes.added.push_back(added[at]);
        }
        if (!areNames)
            changes.added.insert(changes.added.end(), added.begin(), added.end());
        gone.clear();
        added.clear();
    };
    const Common common = commonFrom(before, after);
    std::size_t was = 0;
    std::size_t now = 0;
    while (was < before.size() || now < after.size()) {
        if (was < before.size() && now < after.size() && before[was] == after[now]) {
            endGap();
            ++was;
            ++now;
        } else if (now == after.size() ||
                   (was < before.size() && common[was + 1][now] >= common[was][now + 1])) {
            // One that is only in another place is neither gone nor new.
            if (!isIn(after, before[was]))
                gone.push_back(before[was]);
            ++was;
        } else {
            if (!isIn(before, after[now]))
                added.push_back(after[now]);
            ++now;
        }
    }
    endGap();
    return changes;
}

} // namespace holdfast
