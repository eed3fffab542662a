// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/table_files.h"

#include "app/command_line/verbs.h"
#include "app/desk/due_days_file.h"
#include "core/trade/limits.h"
#include "core/trade/unit_words.h"
#include "db/csv/export_shop.h"
#include "db/csv/import_shop.h"

namespace holdfast::app {

Result<std::string> exportTables(const Arguments& arguments, const Clock& clock) {
    const auto path = shopPath(arguments, clock);
    if (!path.ok())
        return path.error();
    auto shop = db::Shop::openReadOnly(*path, clock.now);
    if (!shop.ok())
        return shop.error();
    const auto done = db::exportShop(**shop, arguments.target, clock.offsetAt);
    if (!done.ok())
        return done.error();
    return "Wrote " + groupedNumber(done->lines) + " lines in " + groupedNumber(done->files) + " files to " +
           arguments.target.string() + "\n";
}

Result<std::string> importTable(const Arguments& arguments, const Clock& clock) {
    if (arguments.isDemo)
        return plainError(
            said("The demo is the same each time: nothing is read into it. Name a shop with --shop."));
    const auto path = shopPath(arguments, clock);
    if (!path.ok())
        return path.error();
    auto shop = db::Shop::open(*path, clock.now);
    if (!shop.ok())
        return shop.error();
    const auto done = db::importFile(**shop, arguments.target, clock.moment(), clock.offsetAt);
    if (!done.ok())
        return done.error();
    std::string said = "Read in " + groupedNumber(done->added) + " " + std::string{done->kind.english};
    if (done->known > 0)
        said += "; " + groupedNumber(done->known) + " were known";
    if (done->passed > 0)
        said += "; of " + groupedNumber(done->passed) + " nothing is left";
    return said + "\n";
}

Result<std::string> saveDueDays(const Arguments& arguments, const Clock& clock) {
    const auto path = shopPath(arguments, clock);
    if (!path.ok())
        return path.error();
    auto shop = db::Shop::openReadOnly(*path, clock.now);
    if (!shop.ok())
        return shop.error();
    const auto done = writeDueDays(**shop, arguments.target, clock.moment(),
                                   arguments.isNameless ? Names::LeftOut : Names::Shown);
    if (!done.ok())
        return done.error();
    return "Wrote the due days of " + countWords(static_cast<std::int64_t>(done->days), "open order") +
           " to " + arguments.target.string() + "\n" +
           (done->isWhole ? "" : "Orders that cannot be read are left out: “holdfast check” says which.\n");
}

} // namespace holdfast::app
