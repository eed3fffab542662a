// SPDX-License-Identifier: GPL-3.0-or-later
// Writing news, and looking whether news may be taken in.
#include "db/exchange/news.h"

#include "db/disk/new_file.h"
#include "db/exchange/common_place.h"
#include "db/exchange/laptops.h"
#include "db/journal/schema_upgrade.h"
#include "db/journal/unrecorded_transaction.h"
#include "db/sqlite/stopping.h"

#include <algorithm>

namespace holdfast::db {

namespace {

Sentence nameOf(Connection& connection, SeatNumber seat) {
    Query found = connection.query("SELECT name FROM seat WHERE id = ?1", seat);
    return found.step() ? said("“{laptop}”", {{"laptop", found.text(0)}})
                        : said("a laptop that is not known here");
}

Result<Done> mayWriteFor(Connection& connection, SeatNumber laptop) {
    if (!isTheWorkshop(connection))
        return Done{};
    if (laptop == kWorkshopSeat)
        return plainError(said("News is saved for another laptop: say for which."));
    if (connection.number("SELECT COUNT(*) FROM seat WHERE id = ?1", laptop) == 0)
        return plainError(said("The shop has no such laptop."));
    return Done{};
}

// News reaches back further than the reader is known to be along the line, so that a file that was put back
// from an older copy, there or here, still joins on: by this many entries, or this many bytes of them.
constexpr std::int64_t kReachesBack = 1000;
constexpr std::int64_t kReachesBackBytes = 2 << 20;

PlaceInLine reachedBack(Connection& connection, std::int64_t since) {
    std::int64_t place = since;
    std::int64_t bytes = 0;
    Query line = connection.query(
        "SELECT place, COALESCE((SELECT LENGTH(changeset) FROM journal_entry WHERE id = entry_id), "
        "(SELECT LENGTH(changeset) FROM journal_aside WHERE id = entry_id), 0) FROM journal_line "
        "WHERE place <= ?1 AND place > ?2 ORDER BY place DESC",
        since, since - kReachesBack);
    while (line.step() && (bytes += line.integer(1)) <= kReachesBackBytes)
        place = line.integer(0) - 1;
    return placeInLine(connection, place);
}

// What the writer says of itself; at the workshop, with all of its own entries in the line.
NewsLabel labelHere(Shop& shop, SeatNumber laptop) {
    Connection& connection = shop.connection();
    const Seat here = seatHere(connection);
    NewsLabel label;
    label.shop = shopNumber(connection);
    label.schemaStep = appliedSteps(connection);
    label.from = here.number;
    label.fromName = here.name;
    label.to = here.number == kWorkshopSeat ? laptop : kWorkshopSeat;
    label.writtenAt = shop.now();
    label.known = endOfLine(connection);
    label.since = std::min(knownOf(connection, label.to).place, label.known.place);
    label.behind = reachedBack(connection, label.since);
    label.incarnation = incarnationHere(connection);
    return label;
}

void writeTo(const std::filesystem::path& path, Connection& connection, const NewsLabel& label,
             const TellProgress& progress) {
    auto entries = lineBehind(connection, label.behind.place);
    const auto own = behindTheLine(connection);
    entries.insert(entries.end(), own.begin(), own.end());
    NewsWriter file{path};
    for (const Seat& seat : seats(connection))
        file.add(seat);
    for (const EntryId id : entries) {
        file.add(*readEntry(connection, id));
        if (progress && !progress(static_cast<double>(file.entries()) / static_cast<double>(entries.size())))
            throw SqliteFailure::inWords(said("Saving the news was stopped. Nothing was left behind."));
    }
    file.close(label);
}

} // namespace

Result<NewsWritten> writeNews(Shop& shop, const std::filesystem::path& path, SeatNumber laptop,
                              const TellProgress& progress) {
    if (shop.isReadOnly())
        return plainError(said("This shop is open for reading only."));
    auto file = NewFile::begin(path);
    if (!file)
        return file.error();
    Connection& connection = shop.connection();
    try {
        if (auto may = mayWriteFor(connection, laptop); !may)
            return may.error();
        NewsWritten written;
        {
            UnrecordedTransaction transaction{connection};
            if (isTheWorkshop(connection)) {
                putOwnInLine(connection);
                giveRangeIfFew(connection, laptop);
            }
            const NewsLabel label = labelHere(shop, laptop);
            writeTo(file->temporaryPath(), connection, label, progress);
            const auto everyone = seats(connection);
            const auto to = std::ranges::find(everyone, label.to, &Seat::number);
            written.to = to == everyone.end() ? std::string{} : to->name;
            written.entries = label.known.place - label.since + entriesToBring(connection);
            transaction.commit();
        }
        if (auto kept = file->keep(); !kept)
            return kept.error();
        return written;
    } catch (const SqliteFailure& failure) {
        return failure.error();
    }
}

Result<PlaceInLine> joinOf(Connection& connection, NewsReader& news) {
    const NewsLabel& label = news.label();
    if (label.shop != shopNumber(connection))
        return plainError(said("This is news of another shop. Nothing was brought in."));
    if (const int here = appliedSteps(connection); label.schemaStep != here)
        return plainError(
            label.schemaStep > here
                ? said("This news was saved by a newer version of Holdfast. Bring this laptop to the same "
                       "version first. Nothing was brought in.")
                : said("This news was saved by an older version of Holdfast. Bring the other laptop to the "
                       "same version and save the news again. Nothing was brought in."));
    const Seat here = seatHere(connection);
    if (label.from == here.number)
        return plainError(said("This news was saved on this laptop: it is for {to}.",
                               {{"to", nameOf(connection, label.to)}}));
    if (label.to != here.number)
        return plainError(
            said("This news is for {to}, not for this laptop.", {{"to", nameOf(connection, label.to)}}));
    const auto common = commonPlace(connection, news);
    if (common)
        return *common;
    return plainError(
        here.number == kWorkshopSeat
            ? said("That laptop goes on from work that is not in this copy of the shop: its file was "
                   "put back from an older one. Save news for that laptop here, bring it in there, "
                   "and save its news again. Nothing was brought in.")
            : said("This news does not join on to what this laptop knows. Save news here, bring it "
                   "in in the workshop, and save the workshop’s news again. Nothing was brought in."));
}

Result<NewsHead> lookAtNews(Shop& shop, const std::filesystem::path& path, const TellProgress& progress) {
    auto news = NewsReader::open(path, progress);
    if (!news)
        return news.error();
    const NewsLabel label = news->label();
    return shop.read([&](Connection& connection) -> Result<NewsHead> {
        if (const auto join = joinOf(connection, *news); !join)
            return join.error();
        return NewsHead{label.from, label.fromName, label.writtenAt,
                        label.entries - (label.since - label.behind.place)};
    });
}

} // namespace holdfast::db
