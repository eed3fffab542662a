// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Things of one kind, sorted by id, found by id.

#include "core/trade/assertion.h"
#include "core/trade/ids.h"

#include <algorithm>
#include <vector>

namespace holdfast {

template <class Thing>
class Roster {
public:
    using IdType = decltype(Thing::id);

    Roster() = default;
    explicit Roster(std::vector<Thing> things)
        : m_things(std::move(things)) {
        std::ranges::sort(m_things, {}, &Thing::id);
    }

    const Thing* find(IdType id) const {
        const auto at = std::ranges::lower_bound(m_things, id, {}, &Thing::id);
        return at != m_things.end() && at->id == id ? &*at : nullptr;
    }
    // REQUIRES: the id is in the roster.
    const Thing& at(IdType id) const {
        const Thing* found = find(id);
        HOLDFAST_ASSERT(found);
        return *found;
    }

    auto begin() const { return m_things.begin(); }
    auto end() const { return m_things.end(); }
    std::size_t size() const { return m_things.size(); }
    bool empty() const { return m_things.empty(); }

    void add(Thing thing) {
        const auto at = std::ranges::lower_bound(m_things, thing.id, {}, &Thing::id);
        m_things.insert(at, std::move(thing));
    }

private:
    std::vector<Thing> m_things;
};

} // namespace holdfast
