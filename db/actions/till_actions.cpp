// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/till_actions.h"

#include "core/trade/limits.h"
#include "db/actions/care_checks.h"
#include "db/tables/facts.h"
#include "db/tables/till.h"

#include <algorithm>

namespace holdfast::db {
namespace {

Result<Done> checkCount(LocalDate day, Money floatAtStart, Money counted, const Currency& currency,
                        const Now& now) {
    if (day > now.today())
        return fieldError("day", said("The till of a day to come cannot be counted."));
    if (day < localDate(2000, 1, 1))
        return fieldError("day", said("The day must be in 2000 or later."));
    const auto within = [&](Money amount, const char* field, Phrase what) -> Result<Done> {
        if (checkCost(amount, field, currency).ok())
            return Done{};
        return fieldError(field, said("{what} must be 0 or more and below a million.", {{"what", what}}));
    };
    if (auto checked = within(floatAtStart, "float", phrase("The float")); !checked.ok())
        return checked;
    return within(counted, "counted", phrase("The cash counted"));
}

std::optional<TillCount> countOf(Connection& connection, LocalDate day) {
    UnreadFacts unread;
    const std::vector<TillCount> counts = readTillCounts(connection, unread);
    const auto found = std::ranges::find(counts, day, &TillCount::day);
    return found == counts.end() ? std::nullopt : std::optional{*found};
}

} // namespace

Result<TillCount> countTill(Shop& shop, LocalDate day, Money floatAtStart, Money counted, const Now& now) {
    return shop.act([&](Writer& writer) -> Result<TillCount> {
        Connection& connection = writer.connection();
        const Currency currency = loadSettings(connection).currency;
        if (const auto sound = checkCount(day, floatAtStart, counted, currency, now); !sound.ok())
            return sound.error();
        const auto before = countOf(connection, day);
        TillCount count{before ? before->id : writer.newId<TillCountId>(),  day,    now.instant, floatAtStart,
                        moneyOfDay(connection, day, now).of(PaidHow::Cash), counted};
        connection.run("INSERT INTO till_count (id, day, at, float_minor, cash_minor, counted_minor) "
                       "VALUES (?1, ?2, ?3, ?4, ?5, ?6) ON CONFLICT (id) DO UPDATE SET at = excluded.at, "
                       "float_minor = excluded.float_minor, cash_minor = excluded.cash_minor, "
                       "counted_minor = excluded.counted_minor",
                       count.id, count.day, count.at, count.floatAtStart, count.cash, count.counted);
        const std::vector<NamedValue> values{
            {"day", day},
            {"counted", Amount{counted, currency}},
            {"difference", tillDifferenceWords(count.difference(), currency)}};
        writer.describe(before ? said("Counted the till of {day} again: {counted}, {difference}", values)
                               : said("Counted the till of {day}: {counted}, {difference}", values));
        return count;
    });
}

} // namespace holdfast::db
