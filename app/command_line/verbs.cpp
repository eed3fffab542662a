// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/verbs.h"

#include "app/command_line/reports.h"
#include "app/shell/shop_paths.h"
#include "core/trade/unit_words.h"
#include "db/backups/mending.h"
#include "db/check/check.h"
#include "db/check/save.h"
#include "db/journal/backup.h"
#include "db/tables/facts.h"
#include "db/tables/figures.h"

#include <QJsonDocument>

namespace holdfast::app {

namespace {

constexpr std::chrono::minutes kOnTime{9 * 60};

// No window waits for a report: its plan may take a tenth of a second.
constexpr std::uint64_t kPlanWork = 100'000;

Result<std::unique_ptr<db::Shop>> openToRead(const Arguments& arguments, const Clock& clock) {
    const auto path = shopPath(arguments, clock);
    if (!path.ok())
        return path.error();
    return db::Shop::openReadOnly(*path, clock.now);
}

Result<std::shared_ptr<const ReckonedShop>> reckoned(db::Shop& shop, const Now& now) {
    return shop.read([&](db::Connection& connection) {
        ClimateReckoner reckoner;
        PlanSearch search;
        search.work = kPlanWork;
        return reckonShop(db::loadOpenFacts(connection), db::loadClimate(connection),
                          db::loadRecentUse(connection, now.instant), reckoner, now, search);
    });
}

std::string inLines(const std::vector<Sentence>& sentences) {
    std::string lines;
    for (const Sentence& sentence : sentences)
        lines += (lines.empty() ? "" : "\n") + sentence.english();
    return lines;
}

// Since the beginning.
Result<ShopFigures> figuresOf(db::Shop& shop, const Now& now) {
    return shop.read([&](db::Connection& connection) {
        return db::loadFigures(connection, db::firstDay(connection, now), now);
    });
}

} // namespace

Clock clockFor(const Arguments& arguments) {
    if (arguments.isDemo)
        return clockOn(arguments.on.value_or(systemClock().moment().today()), kDemoTime);
    return arguments.on ? clockOn(*arguments.on, kOnTime) : systemClock();
}

Clock standingClock(const Clock& clock) {
    Clock standing = clock;
    standing.now = [at = clock.now()] { return at; };
    standing.steady = [at = clock.steady()] { return at; };
    return standing;
}

Result<std::filesystem::path> shopPath(const Arguments& arguments, const Clock& clock) {
    if (arguments.isDemo)
        return demoShop(clock.moment().today());
    return arguments.shop.value_or(defaultShopPath());
}

Result<std::shared_ptr<const ReckonedShop>> reckonedShop(const Arguments& arguments, const Clock& clock) {
    auto shop = openToRead(arguments, clock);
    if (!shop.ok())
        return shop.error();
    return reckoned(**shop, clock.moment());
}

Result<ShopAndFigures> shopAndFigures(const Arguments& arguments, const Clock& clock) {
    auto file = openToRead(arguments, clock);
    if (!file.ok())
        return file.error();
    const auto shop = reckoned(**file, clock.moment());
    if (!shop.ok())
        return shop.error();
    const auto figures = figuresOf(**file, clock.moment());
    if (!figures.ok())
        return figures.error();
    return ShopAndFigures{*shop, *figures};
}

Result<std::string> report(const Arguments& arguments, const Clock& clock) {
    auto shop = openToRead(arguments, clock);
    if (!shop.ok())
        return shop.error();
    const auto facts = reckoned(**shop, clock.moment());
    if (!facts.ok())
        return facts.error();
    const auto figures = needsFigures(arguments.report) ? figuresOf(**shop, clock.moment())
                                                        : Result<ShopFigures>{ShopFigures{}};
    if (!figures.ok())
        return figures.error();
    const Report made = reportOf(arguments.report, **facts, *figures);
    if (arguments.asCsv && made.csv.empty())
        return plainError(said("This report has no comma-separated values; ask for --json."));
    if (arguments.asCsv)
        return made.csv;
    if (arguments.asJson)
        return QJsonDocument(made.json).toJson(QJsonDocument::Indented).toStdString();
    return made.text.toStdString();
}

Result<std::string> check(const Arguments& arguments, const Clock& clock) {
    auto shop = openToRead(arguments, clock);
    if (!shop.ok())
        return shop.error();
    const auto faults = db::checkShop(**shop);
    if (!faults.ok())
        return faults.error();
    if (faults->empty())
        return std::string{"The shop file is whole: every row is as its history says.\n"};
    return plainError(asItIs(inLines(*faults)));
}

Result<std::string> mend(const Arguments& arguments, const Clock& clock) {
    if (arguments.isDemo)
        return plainError(said("The demo is made again each day: nothing is mended there."));
    const auto path = shopPath(arguments, clock);
    if (!path.ok())
        return path.error();
    auto shop = db::Shop::open(*path, clock.now);
    if (!shop.ok())
        return shop.error();
    const auto done = db::mendWithBackup(**shop, clock.moment().local());
    if (!done.ok())
        return done.error();
    const db::Mended& mended = done->mended;
    const std::string before = done->before.path.string();
    if (!mended.left.empty())
        return plainError(said("Not all could be mended. What was there before is kept in {before}.{left}",
                               {{"before", before}, {"left", "\n" + inLines(mended.left)}}));
    std::string words = "Mended. " + countWords(static_cast<std::int64_t>(mended.rows), "row") +
                        " put right; the order book’s lines and the search were made again.\n";
    for (const Sentence& sentence : mended.putRight)
        words += sentence.english() + "\n";
    return words + "What was there before is kept in " + before + "\n";
}

Result<std::string> saveWhatCanBe(const Arguments& arguments, const Clock& clock) {
    const auto path = shopPath(arguments, clock);
    if (!path.ok())
        return path.error();
    const auto saved = db::saveWhatCanBe(*path, arguments.target);
    if (!saved.ok())
        return saved.error();
    std::string words = "Saved to " + arguments.target.string() + ": " + countWords(saved->rows, "row") +
                        ", and " + countWords(saved->fromHistory, "row") + " from the history.\n";
    words += saved->lost.empty() ? "Nothing was lost.\n" : "What could not be saved:\n";
    for (const Sentence& sentence : saved->lost)
        words += sentence.english() + "\n";
    return words;
}

Result<std::string> backUp(const Arguments& arguments, const Clock& clock) {
    auto shop = openToRead(arguments, clock);
    if (!shop.ok())
        return shop.error();
    const auto found = db::checkQuickly(**shop);
    if (!found.ok())
        return found.error();
    const auto copied = db::backup(**shop, arguments.target);
    if (!copied.ok())
        return copied.error();
    return "Backed up to " + arguments.target.string() + "\n" +
           (found->isWhole() ? ""
                             : "But the shop file is not whole: “holdfast check” says what is wrong. Keep "
                               "the earlier backups.\n");
}

} // namespace holdfast::app
