// SPDX-License-Identifier: GPL-3.0-or-later
// News whose sum is right, with entries and a label of any content: what somebody can make who knows how news
// is written. It is taken in or refused whole, and touches nothing that news may not touch.
#include "db/exchange/news_file.h"
#include "tests/long/fuzz/fuzz_target.h"
#include "tests/long/fuzz/prepared_shop.h"

#include <algorithm>
#include <array>

namespace holdfast::fuzz {
namespace {

// Counts of the label, each moved by what the input says.
void changeLabel(db::NewsLabel& label, Parts& parts) {
    const std::array<std::int64_t*, 8> numbers{&label.shop,        &label.schemaStep,  &label.from,
                                               &label.to,          &label.since,       &label.incarnation,
                                               &label.known.place, &label.behind.place};
    for (int count = parts.byte() % 4; count > 0; --count) {
        std::int64_t& number = *numbers[parts.byte() % numbers.size()];
        number = static_cast<std::int64_t>(static_cast<std::uint64_t>(number) +
                                           static_cast<std::uint64_t>(parts.number()));
    }
}

db::CarriedEntry entryFrom(Parts& parts, std::int64_t id, const std::vector<EntryId>& known) {
    const std::uint8_t flags = parts.byte();
    db::CarriedEntry entry;
    entry.id = EntryId{(flags & 1U) != 0 ? parts.number() : id};
    entry.seat = (flags & 2U) != 0 ? parts.byte() : 2;
    entry.at = PreparedShop::instance().moment().instant;
    entry.title = {(flags & 4U) != 0 ? std::string{parts.shortText()} : "A note", {}};
    if ((flags & 8U) != 0)
        entry.undoes = known[parts.byte() % known.size()];
    entry.isAside = (flags & 16U) != 0;
    if ((flags & 32U) != 0)
        entry.words = {std::string{parts.shortText()}, {}};
    if ((flags & 64U) != 0)
        entry.subjects.emplace_back(std::string{parts.shortText()}, parts.number());
    if ((flags & 128U) != 0)
        entry.otherIds.emplace_back(parts.number(), parts.number());
    const std::string_view bytes = parts.longText();
    entry.changeset.resize(bytes.size());
    std::ranges::transform(bytes, entry.changeset.begin(), [](char byte) { return std::byte(byte); });
    entry.identity = db::identityOf(entry);
    return entry;
}

std::string whatNewsMayNotTouch(db::Connection& connection) {
    std::string all;
    for (const char* sql :
         {"SELECT seat_id || ' ' || incarnation FROM seat_here", "SELECT shop FROM journal_shop",
          "SELECT COUNT(*) || ' ' || COALESCE(SUM(LENGTH(text)), 0) FROM seat_note",
          "SELECT name || ' ' || first_order_number FROM seat WHERE id = 1",
          "SELECT group_concat(sql, ';') FROM sqlite_schema"}) {
        db::Query row = connection.query(sql);
        all += (row.step() ? row.text(0) : std::string{}) + "\n";
    }
    return all;
}

void takeInSealed(std::string_view input) {
    PreparedShop& prepared = PreparedShop::instance();
    db::Shop& shop = prepared.workshop();
    static const auto real = [&] {
        auto news = db::NewsReader::open(prepared.realNews());
        std::vector<db::CarriedEntry> entries;
        for (std::int64_t number = 1; number <= news->label().ofTheLine(); ++number)
            entries.push_back(news->entry(number));
        return std::pair{news->label(), entries};
    }();
    static const std::string untouched = whatNewsMayNotTouch(shop.connection());
    std::vector<EntryId> known;
    for (const db::CarriedEntry& entry : real.second)
        known.push_back(entry.id);

    const auto path = prepared.aFile({});
    Parts parts{input};
    {
        db::NewsWriter forged{path};
        db::NewsLabel label = real.first;
        changeLabel(label, parts);
        for (const db::CarriedEntry& entry : real.second)
            forged.add(entry);
        constexpr int kMost = 4;
        std::int64_t id = prepared.fair().connection().number("SELECT last_id FROM seat_here");
        for (int count = 0; count < kMost && !parts.isAtEnd(); ++count)
            forged.add(entryFrom(parts, id += 1024, known));
        forged.close(label);
    }
    const auto taken = db::takeInNews(shop, path);
    require(taken.ok() || !taken.error().message.english().empty(), "a refusal has words");
    require(whatNewsMayNotTouch(shop.connection()) == untouched, "news touched what it may not");
    require(!shop.connection().query("SELECT 1 FROM ledger_fault").step(), "no ledger is below zero");
    if (taken.ok())
        prepared.putBack();
}

const Registered registeredSealed{"sealed_news", takeInSealed};

} // namespace
} // namespace holdfast::fuzz
