// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The second laptop: the shop has a copy a laptop, and news of what was done on each is carried over on a
// stick.
//
// The workshop's copy (seat 1) holds the line: every entry of every laptop, in the order in which the
// workshop brought it in. Another laptop's copy is the line as far as it knows it, and then what it has done
// since. So there are two kinds of news, and two buttons:
//
//   at the fair       writeNews(shop, stick)               what the workshop has not got yet
//   in the workshop   takeInNews(shop, stick)              it goes to the end of the line
//                     writeNews(shop, stick, fairLaptop)   the line since what that laptop knows
//   at the fair       takeInNews(shop, stick)              the line is taken in; what was done here since
//   goes after it
//
// When both have taken in all, both hold the same. A copy is for one laptop, and news goes by way of the
// workshop.
//
// Where two did different things with the same row, what is in the line is kept, column by column; the other
// gets a sentence about it. Nothing is lost: an entry that cannot be applied at all (the row it refers to was
// deleted meanwhile) is set aside whole and named, and can be tried again. How each case goes:
// docs/decisions/second-laptop.md.
//
// What takes a Connection only reads, and throws SqliteFailure: Shop::read is its door.
//
// Long work can run in the background on a shop from Shop::openBeside; afterwards the window's shop catches
// up with `touched`. What is refused is refused in words, and nothing has then been changed.

#include "db/journal/shop.h"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::db {

using SeatNumber = std::int64_t;

inline constexpr SeatNumber kWorkshopSeat = 1;

// One laptop of the shop, as this copy knows it.
struct Seat {
    SeatNumber number = 0;
    std::string name; // "This workshop", "Fair laptop"
    std::int64_t firstOrderNumber = 0;
    std::int64_t lastOrderNumber = 0;
    bool isHere = false;
    std::optional<Instant> newsTakenInAt; // at the workshop, of another; elsewhere, of the workshop
    bool isInUse = true;                  // else it became the workshop's, and nobody has it any more
};

// By number, the workshop first.
std::vector<Seat> seats(Connection& connection);
bool isTheWorkshop(Connection& connection);

// Entries made here that the workshop is not known to have; 0 at the workshop.
std::int64_t entriesToBring(Connection& connection);
// At the workshop: entries of the line, or yet to be put in it, that the laptop is not known to have.
std::int64_t entriesToFetch(Connection& connection, SeatNumber laptop);

// Makes a whole copy of the workshop's shop for another laptop: `name` up to 40 characters and not another's,
// a number of its own and 1,000 order numbers from the top of the workshop's. The file appears under `path`
// only when it is whole, readable by its owner only. Only at the workshop. Stopped by `progress`, nothing is
// left behind.
Result<Seat> makeCopyForLaptop(Shop& shop, const std::filesystem::path& path, const std::string& name,
                               const TellProgress& progress = {});

// When the workshop's file is lost: makes this laptop's copy the workshop's, with all that it knows and has
// done. Its order numbers go on well above the last that is known, for the lost file may have given out more:
// answers the next. What only the lost file held is not here; should it turn up, news from it can still be
// brought in. Not undone.
Result<std::int64_t> becomeWorkshop(Shop& shop);

// Order numbers left to this laptop: the window warns below a hundred. The next news from the workshop brings
// a new range to a laptop that has fewer than a hundred left.
std::int64_t orderNumbersLeft(Connection& connection);

struct NewsWritten {
    std::int64_t entries = 0; // 0: the news says only how much is known here
    std::string to;           // the name of the laptop it is for
};
// Writes what the other has not got into a new file, readable by its owner only; a name that is taken is
// refused. At the workshop `laptop` says for which it is; elsewhere it is for the workshop, and `laptop` is
// not read.
Result<NewsWritten> writeNews(Shop& shop, const std::filesystem::path& path,
                              SeatNumber laptop = kWorkshopSeat, const TellProgress& progress = {});

// What a news file says of itself, before it is taken in: whole, of this shop and for this laptop. Refused in
// words otherwise, as takeInNews would.
struct NewsHead {
    SeatNumber from = 0;
    std::string fromName;
    Instant writtenAt{};
    std::int64_t entries = 0; // in the file; some may be known here already
};
Result<NewsHead> lookAtNews(Shop& shop, const std::filesystem::path& path, const TellProgress& progress = {});

// What was not done as it was entered.
struct Difference {
    EntryId entry;
    Sentence title;          // "Moved the promise of order 426"
    std::string seat;        // whose it was
    Sentence words;          // sentences: what was kept instead
    bool isSetAside = false; // nothing of it was done: it is among setAside()
};
struct NewsTakenIn {
    std::string fromName;
    std::int64_t added = 0;              // entries new here
    std::int64_t alreadyKnown = 0;       // in the file and known before
    std::vector<Difference> differences; // in the order of the line
    bool isFromAnotherCopy = false;      // not of the file that the last news from there was of
    ChangedTables touched;               // for Shop::catchUp
};
// One transaction. Listeners of this shop are notified. Taken in twice, the second changes nothing.
Result<NewsTakenIn> takeInNews(Shop& shop, const std::filesystem::path& path,
                               const TellProgress& progress = {});

// ── what was set aside ───────────────────────────────────────────────────────────────────────────────────

struct SetAside {
    EntryId entry;
    Sentence title;
    std::string seat; // whose it was
    Instant at{};
    Sentence why;
};
// Newest first, without those that were let go here.
std::vector<SetAside> setAside(Connection& connection);

// Does it after all, as an action of this laptop with the same title and subjects: for when what was in its
// way has been put right. Refused in words, naming what is still in the way. It is off the list then.
Result<EntryId> tryAgain(Shop& shop, EntryId entry);

// Off this laptop's list; the entry is kept all the same.
Result<Done> dropSetAside(Shop& shop, EntryId entry);

// What gave way when the entry was taken in; nothing for most.
std::optional<Sentence> remark(Connection& connection, EntryId entry);

} // namespace holdfast::db
