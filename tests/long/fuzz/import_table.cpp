// SPDX-License-Identifier: GPL-3.0-or-later
// Tables of every kind that can be read in, into a shop that has some of each. Nothing of it stays.
#include "db/csv/import_shop.h"
#include "tests/long/fuzz/fuzz_target.h"
#include "tests/long/fuzz/prepared_shop.h"

namespace holdfast::fuzz {
namespace {

void importAny(std::string_view input) {
    PreparedShop& prepared = PreparedShop::instance();
    db::Shop& shop = prepared.workshop();
    const auto entries = shop.connection().number("SELECT COUNT(*) FROM journal_entry");
    // A part of an action that fails: whatever was read in is taken back.
    const auto outcome = shop.act([&](db::Writer& writer) -> Result<Done> {
        const auto read = db::importText(shop, input, prepared.moment(), [](Instant) { return Hours{1}; });
        require(read.ok() ? !read->kind.empty() : !read.error().message.english().empty(),
                "it says what it did");
        if (read.ok())
            require(!writer.connection().query("SELECT 1 FROM ledger_fault").step(),
                    "no ledger is below zero");
        return plainError(said("Nothing of it stays."));
    });
    require(!outcome.ok(), "nothing of it stays");
    require(shop.connection().number("SELECT COUNT(*) FROM journal_entry") == entries, "nothing of it stays");
}

const Registered registeredImport{"import_table", importAny};

} // namespace
} // namespace holdfast::fuzz
