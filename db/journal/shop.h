// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The shop: one SQLite file, read freely and written to only by actions.
//
//   const auto taken = shop.act([&](Writer& writer) -> Result<OrderId> {
//       const auto order = writer.newId<OrderId>();
//       writer.connection().run("INSERT INTO …", order, …);
//       writer.describe("Took order 426");
//       writer.concerns(order);
//       return order;
//   });
//
// One action is one transaction is one journal entry. The journal is the history; undo applies an entry's
// inverse as an action of its own. A Shop is for one thread; work in the background opens its own with
// openReadOnly.
//
// Recorded are all tables except sqlite_*, journal_*, seat*, full-text tables and what triggers keep
// (*_card). A recorded table has a primary key and no generated column, and no trigger writes to another
// recorded table: triggers fire again when a changeset is applied.

#include "core/trade/dates.h"
#include "core/trade/id_maker.h"
#include "core/trade/result.h"
#include "db/journal/action.h"
#include "db/journal/history.h"
#include "db/journal/shop_file.h"
#include "db/journal/subject.h"
#include "db/journal/writer.h"
#include "db/schema/schema_steps.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/failure.h"
#include "db/sqlite/transaction.h"

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

namespace holdfast::db {

using Clock = std::function<Instant()>;
using ChangedTables = std::set<std::string>;
using TellProgress = std::function<bool(double share)>; // 0 to 1; false: stop. May be empty
using ChangeListener = std::function<void(const ChangedTables&)>;

// The note that holds a half-typed order.
inline constexpr std::string_view kNoteOfAnOrderToCome = "fair-table draft";

class Shop {
public:
    using Steps = std::span<const char* const>;

    // Opening refuses in words, and leaves untouched, whatever is not a whole shop file of this version or an
    // older one. An older one is backed up and then brought up to date (see db/disk). `steps` is the
    // schema; only tests hand in another.
    static Result<std::unique_ptr<Shop>> open(const std::filesystem::path& path, Clock clock,
                                              Steps steps = schemaSteps());
    // Refuses a name that is taken.
    static Result<std::unique_ptr<Shop>> create(const std::filesystem::path& path, Clock clock,
                                                Steps steps = schemaSteps());
    // For reports and background work while a window has the shop open. act() and undo() refuse. Where no
    // window has, SQLite's -shm and an empty -wal stay next to the file until one next opens and closes it.
    static Result<std::unique_ptr<Shop>> openReadOnly(const std::filesystem::path& path, Clock clock,
                                                      Steps steps = schemaSteps());
    // A second connection that writes, for one long action in the background while a window has this shop
    // open: on a thread of its own, under the lock this one holds, while this one goes on reading. As long as
    // it acts, this one's actions are refused as busy. Afterwards catchUp() must be called here before
    // anything else is written. REQUIRES: a shop with a file, opened for writing, that outlives it.
    Result<std::unique_ptr<Shop>> openBeside(Clock clock) const;
    // A new shop with no file.
    static std::unique_ptr<Shop> createInMemory(Clock clock, Steps steps = schemaSteps());

    Shop(const Shop&) = delete;
    Shop& operator=(const Shop&) = delete;
    ~Shop();

    // For reading; a statement that writes throws, except inside act(). Functions that read through it throw
    // SqliteFailure on a file that cannot be read; read() is their door.
    Connection& connection() { return m_file.connection; }

    Instant now() const { return m_clock(); }
    // The schema that its file has.
    Steps steps() const { return m_steps; }
    // Empty for a shop with no file.
    const std::filesystem::path& path() const { return m_file.path; }
    bool isReadOnly() const { return m_file.isReadOnly; }

    // Does `work(Connection&)` on one unchanging view of the file; a failure to read comes back in words.
    // `work` returns a value or a Result.
    template <class Work>
    auto read(Work&& work) {
        using Returned = std::invoke_result_t<Work, Connection&>;
        using Outcome = typename AsResult<Returned>::Type;
        try {
            const ReadingView view{connection()};
            return Outcome{std::forward<Work>(work)(connection())};
        } catch (const SqliteFailure& failure) {
            return Outcome{failure.error()};
        }
    }

    // Does `work(Writer&)`, which returns a Result<T>, as one action, and returns that Result. On an error,
    // its own or the file's, nothing has been changed. Listeners are notified after the commit. An action
    // begun inside `work` is a part of this one: what a person does at once is one entry and one undo,
    // whatever is made on the way. Where a part fails, all of it does. The title is the one given last.
    template <class Work>
    auto act(Work&& work) -> std::invoke_result_t<Work, Writer&> {
        if (m_underWay != nullptr)
            return asPart(std::forward<Work>(work));
        ChangedTables touched;
        auto outcome = acted(std::forward<Work>(work), touched);
        tell(touched);
        return outcome;
    }

    // Actions that `work` does, which returns a Result<T>, as one: a form that makes a storage place on the
    // way.
    template <class Work>
    auto asOne(Work&& work) -> std::invoke_result_t<Work> {
        return act([&](Writer&) { return std::forward<Work>(work)(); });
    }

    // Undoes what the entry did, as a new entry "Undone: …", and returns that one's id. Undoing an undo does
    // the work again: "Redone: …". Refused in words where a later action stands in the way, where a ledger
    // would fall below zero, or where it was undone before. `giveWay` may change, before the ledgers are
    // looked at, what they would not bear. Stopped, nothing has been changed.
    using GiveWay = std::function<void(Writer&)>;
    Result<EntryId> undo(EntryId entry, const TellProgress& progress = {}, const GiveWay& giveWay = {});

    // Newest first.
    std::vector<HistoryEntry> history(Subject subject, int limit);
    std::vector<HistoryEntry> recent(int limit);
    // The last entry of this seat that is not undone and is not itself an undo; nothing where that one is for
    // good.
    std::optional<HistoryEntry> lastUndoable();
    // The undo that undoing once more does again: the last one of this seat, as long as nothing was done here
    // since but undoing and redoing.
    std::optional<HistoryEntry> lastRedoable();

    // Writes the log into the file and empties it, so that what was written over is in neither. As long as
    // something else reads the file it is left for later.
    void emptyLog();

    // What a shop opened in addition to this one did: ids go on from its, and listeners are notified of what
    // it changed.
    Result<Done> catchUp(const ChangedTables& touched);
    // The same for what this shop's own connection did outside of an action: read before its commit, so that
    // nothing can fail after it. Throws SqliteFailure.
    struct GoingOn {
        std::int64_t seat = 0;
        std::int64_t lastId = 0;
        std::int64_t incarnation = 0;
    };
    GoingOn goingOn();
    void goOn(const GoingOn& from, const ChangedTables& touched);

    // `listener` is called once after each action with the tables it changed. The number is for forget().
    int onChanged(ChangeListener listener);
    void forget(int listener);

    // Notes: scratch of this laptop, such as a half-typed order or the last place. They are the single
    // exception to "every write is a journaled action": not journaled, never exchanged, no listener is
    // notified, and losing one loses no fact of the shop. False where the note could not be kept (full disk,
    // open for reading only).
    bool keepNote(std::string_view key, std::string_view text);
    bool dropNote(std::string_view key);
    std::optional<std::string> note(std::string_view key);

private:
    friend class Action;
    friend class Writer;

    template <class T>
    struct AsResult {
        using Type = Result<T>;
    };
    template <class T>
    struct AsResult<Result<T>> {
        using Type = Result<T>;
    };

    struct Listener {
        int number;
        ChangeListener told;
    };

    Shop(ShopFile file, Clock clock, Steps steps);
    static Result<std::unique_ptr<Shop>> opened(Result<ShopFile> file, Clock clock, Steps steps);

    template <class Work>
    auto acted(Work&& work, ChangedTables& touched) -> std::invoke_result_t<Work, Writer&> {
        if (isReadOnly())
            return readOnlyError();
        try {
            Action action{*this};
            auto outcome = std::forward<Work>(work)(action.writer());
            if (action.failedPart() && outcome.ok())
                return *action.failedPart();
            if (outcome.ok()) {
                action.keep();
                touched = action.touched();
            }
            return outcome;
        } catch (const SqliteFailure& failure) {
            return failure.error();
        }
    }

    template <class Work>
    auto asPart(Work&& work) -> std::invoke_result_t<Work, Writer&> {
        auto outcome = std::forward<Work>(work)(m_underWay->writer());
        if (!outcome.ok())
            m_underWay->failPart(outcome.error());
        return outcome;
    }

    Result<EntryId> undone(EntryId entry, const TellProgress& progress, const GiveWay& giveWay,
                           ChangedTables& touched);
    bool undoesAnAct(const HistoryEntry& entry);
    bool isForGood(const HistoryEntry& entry);

    void makeIdsFrom(const GoingOn& from);
    void noteLastId(); // at the file, after each commit
    static Error readOnlyError();
    void tell(const ChangedTables& touched);

    ShopFile m_file;
    Clock m_clock;
    Steps m_steps;
    std::vector<std::string> m_recordedTables;
    std::int64_t m_seat = 0;
    std::optional<IdMaker> m_idMaker;
    Action* m_underWay = nullptr;
    std::vector<Listener> m_listeners;
    int m_lastListener = 0;
};

} // namespace holdfast::db
