// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/exchange/forgotten_in_news.h"

#include "db/exchange/other_ids.h"
#include "db/sqlite/changeset.h"

#include <algorithm>

namespace holdfast::db {

namespace {

std::set<std::int64_t> asHere(const std::set<std::int64_t>& ids, const OtherIds& others,
                              const std::set<std::int64_t>& madeThere) {
    std::set<std::int64_t> here;
    for (const std::int64_t id : ids)
        if (!madeThere.contains(id))
            here.insert(others.here(id));
    return here;
}

// What is theirs under `here` was their `was` on this laptop; and who is `was` in the line is somebody else.
void rename(std::set<std::int64_t>& ids, const std::set<std::int64_t>& inLine, std::int64_t was,
            std::int64_t here) {
    if (inLine.contains(here))
        ids.insert(was);
    else
        ids.erase(was);
}

} // namespace

ForgottenPeople forgottenByLaptop(Connection& connection, NewsReader& news, std::int64_t common) {
    ForgottenPeople here;
    OtherIds others{connection};
    std::set<std::int64_t> madeThere;
    for (std::int64_t number = 1; number <= news.label().entries; ++number) {
        if (news.label().behind.place + number <= common)
            continue;
        const CarriedEntry entry = news.entry(number);
        if (const auto known = knownEntry(connection, entry)) {
            others.knownAs(entry, *known);
            continue;
        }
        madeThere.merge(rowsInserted(entry.changeset));
        const ForgottenPeople people = peopleForgottenIn(entry.changeset);
        here.add({asHere(people.customers, others, madeThere), asHere(people.orders, others, madeThere)});
    }
    return here;
}

ForgottenPeople forgottenByLine(NewsReader& news, std::int64_t common) {
    ForgottenPeople people;
    for (std::int64_t number = 1; number <= news.label().entries; ++number)
        if (news.label().behind.place + number > common)
            people.add(peopleForgottenIn(news.entry(number).changeset));
    return people;
}

ForgottenPeople asOwnEntriesNameThem(ForgottenPeople people, NewsReader& news,
                                     const std::vector<CarriedEntry>& own) {
    const ForgottenPeople inLine = people;
    if (people.empty())
        return people;
    for (std::int64_t number = 1; number <= news.label().entries; ++number) {
        const CarriedEntry entry = news.entry(number);
        if (entry.otherIds.empty() ||
            std::ranges::find(own, entry.identity, &CarriedEntry::identity) == own.end())
            continue;
        for (const auto& [was, here] : entry.otherIds) {
            rename(people.customers, inLine.customers, was, here);
            rename(people.orders, inLine.orders, was, here);
        }
    }
    return people;
}

} // namespace holdfast::db
