// SPDX-License-Identifier: GPL-3.0-or-later
// Taking in news: at the workshop to the end of the line, elsewhere the line and then what was done here over
// it.
#include "db/exchange/forgotten_in_news.h"
#include "db/exchange/laptops.h"
#include "db/exchange/merge_entry.h"
#include "db/exchange/news.h"
#include "db/exchange/orders_of_forgotten.h"
#include "db/exchange/other_ids.h"
#include "db/exchange/written_rows.h"
#include "db/forgetting/forgetting.h"
#include "db/forgetting/personal_columns.h"
#include "db/journal/ledger_faults.h"
#include "db/journal/line.h"
#include "db/journal/unrecorded_transaction.h"
#include "db/sqlite/savepoint.h"
#include "db/sqlite/stopping.h"

#include <algorithm>
#include <functional>

namespace holdfast::db {

namespace {

class TakingIn {
public:
    TakingIn(Connection& connection, NewsReader& news, std::int64_t common, Instant now,
             const TellProgress& progress)
        : m_connection(connection)
        , m_news(news)
        , m_label(news.label())
        , m_common(common)
        , m_now(now)
        , m_progress(progress)
        , m_here(seatHere(connection).number) {
        m_taken.fromName = m_label.fromName;
    }

    NewsTakenIn run() {
        sayWhereItIsAnotherCopy();
        if (m_here == kWorkshopSeat) {
            learnForgottenSeats(m_connection, m_news.seats());
            putOwnInLine(m_connection);
            forget(forgottenByLaptop(m_connection, m_news, m_common));
            applyWithLedgerRetry([this](bool checksLedgers) { toTheEndOfTheLine(checksLedgers); });
            noteKnown(m_connection, m_label.from, {m_common, m_label.incarnation}, m_label.writtenAt);
        } else {
            learnSeats(m_connection, m_news.seats());
            takeInTheLine();
            noteKnown(m_connection, kWorkshopSeat, {m_label.known.place, m_label.incarnation},
                      m_label.writtenAt);
        }
        m_written.requireReadable(m_connection);
        if (const auto kept = m_theirOrders.keepOpenOnes(m_now); kept && m_here == kWorkshopSeat)
            putInLine(m_connection, *kept);
        goOnAboveAllIds(m_connection);
        goOnAboveAllOrderNumbers(m_connection);
        return std::move(m_taken);
    }

    bool mayGoOn() const {
        return !m_progress || m_progress(m_steps == 0 ? 0.0 : std::min(1.0, m_done / m_steps));
    }

private:
    // Applies without checking the ledgers. If a balance goes negative, rolls back and applies again,
    // checking after each entry.
    void applyWithLedgerRetry(const std::function<void(bool)>& apply) {
        const NewsTakenIn before = m_taken;
        for (const bool checksLedgers : {false, true}) {
            Savepoint attempt{m_connection};
            m_taken = before;
            m_done = 0;
            apply(checksLedgers);
            if (checksLedgers || ledgerFaults(m_connection).empty())
                return attempt.keep();
        }
    }

    void step() {
        m_done += 1;
        if (!mayGoOn())
            throw SqliteFailure::inWords(said("Bringing in the news was stopped. Nothing was changed."));
    }

    // Entries that the reader was not known to have: of the rest nothing is said.
    bool isNews(std::int64_t number) const { return m_label.behind.place + number > m_label.since; }

    void sayWhereItIsAnotherCopy() {
        const std::int64_t before = knownOf(m_connection, m_label.from).incarnation;
        if (before != 0 && m_label.incarnation != 0 && before != m_label.incarnation)
            m_taken.isFromAnotherCopy = true;
    }

    void toTheEndOfTheLine(bool checksLedgers) {
        m_steps = static_cast<double>(m_label.entries);
        EntryMerger merger{m_connection};
        OtherIds others{m_connection};
        auto unknownThere = forgottenSince(m_label.known.place);
        for (std::int64_t number = 1; number <= m_label.entries; ++number) {
            step();
            if (m_label.behind.place + number <= m_common) {
                m_taken.alreadyKnown += isNews(number);
                continue;
            }
            CarriedEntry entry = m_news.entry(number);
            if (const auto known = knownEntry(m_connection, entry)) {
                others.knownAs(entry, *known);
                m_taken.alreadyKnown += isNews(number);
                continue;
            }
            if (unknownThere)
                unknownThere->forgetIn(entry);
            putInLine(m_connection, taken(merger, others, std::move(entry), checksLedgers).id);
            ++m_taken.added;
        }
        touched(merger);
    }

    // What a laptop that knows the line up to there cannot have forgotten yet.
    std::optional<Forgetting> forgottenSince(std::int64_t place) {
        auto people = peopleForgottenBehind(m_connection, place);
        return people.empty() ? std::nullopt
                              : std::optional<Forgetting>{std::in_place, m_connection, std::move(people)};
    }

    void forget(ForgottenPeople people) {
        if (people.empty())
            return;
        m_theirOrders.remember(people);
        Forgetting{m_connection, std::move(people)}.forgetHere();
        m_taken.touched.merge(tablesOfPeople());
    }

    void takeInTheLine() {
        if (m_common == m_label.known.place) {
            m_taken.alreadyKnown = m_label.known.place - m_label.since;
            return;
        }
        auto own = setAsideOwn();
        followTheLine(own);
        applyWithLedgerRetry([&](bool checksLedgers) { ownOverTheLine(own, checksLedgers); });
    }

    // What was done here and is not in the line is taken away again, the last first: that always goes, for
    // nothing has come since. So is the rest of a line that another workshop's copy had. In the order in
    // which it is to be done again.
    std::vector<CarriedEntry> setAsideOwn() {
        auto last = lineBehind(m_connection, m_common);
        const auto behind = behindTheLine(m_connection);
        last.insert(last.end(), behind.begin(), behind.end());
        std::vector<CarriedEntry> own;
        for (const EntryId id : last)
            own.push_back(*readEntry(m_connection, id));
        m_steps = static_cast<double>(m_label.entries) + 2 * static_cast<double>(own.size());
        endLineAt(m_connection, m_common);
        for (auto entry = own.rbegin(); entry != own.rend(); ++entry) {
            if (!entry->isAside)
                applyExactly(inverseOf(entry->changeset));
            removeEntry(m_connection, *entry);
            step();
        }
        std::ranges::sort(own, {}, &CarriedEntry::id);
        return own;
    }

    void followTheLine(std::vector<CarriedEntry>& own) {
        MayBeCarried mayBeCarried{m_connection};
        forgetWhoTheLineForgets(own);
        for (std::int64_t number = 1; number <= m_label.entries; ++number) {
            step();
            if (m_label.behind.place + number <= m_common) {
                m_taken.alreadyKnown += isNews(number);
                continue;
            }
            const CarriedEntry entry = m_news.entry(number);
            mayBeCarried.requireOf(entry);
            if (!entry.isAside) {
                applyExactly(entry.changeset);
                m_written.add(entry.changeset);
            }
            writeEntry(m_connection, entry);
            putInLine(m_connection, entry.id);
            const auto before = std::ranges::find(own, entry.identity, &CarriedEntry::identity);
            if (before == own.end())
                ++m_taken.added;
            else if (entry.isAside != before->isAside || entry.words.english != before->words.english)
                differs(entry);
        }
    }

    void forgetWhoTheLineForgets(std::vector<CarriedEntry>& own) {
        const auto people = forgottenByLine(m_news, m_common);
        auto asOwn = asOwnEntriesNameThem(people, m_news, own);
        if (!asOwn.empty()) {
            Forgetting forgetting{m_connection, std::move(asOwn)};
            for (CarriedEntry& entry : own)
                forgetting.forgetIn(entry);
        }
        forget(people);
    }

    void ownOverTheLine(const std::vector<CarriedEntry>& own, bool checksLedgers) {
        EntryMerger merger{m_connection};
        OtherIds others{m_connection};
        for (const CarriedEntry& entry : own) {
            if (const auto known = knownEntry(m_connection, entry))
                others.knownAs(entry, *known);
            else
                taken(merger, others, entry, checksLedgers);
            step();
        }
        touched(merger);
    }

    // Applied and in the journal, or set aside.
    CarriedEntry taken(EntryMerger& merger, OtherIds& others, CarriedEntry entry, bool checksLedgers) {
        const std::string before = entry.words.english;
        CarriedEntry kept = others.asHere(std::move(entry));
        kept.sealedAs.reset();
        forget(peopleForgottenIn(kept.changeset));
        if (!kept.isAside) {
            m_written.add(kept.changeset);
            kept = merger.merge(std::move(kept), checksLedgers);
        }
        writeEntry(m_connection, kept);
        if (kept.words.english != before)
            differs(kept);
        return kept;
    }

    void applyExactly(ChangesetView changeset) {
        for (const TableChanges& changes : tablesOf(changeset))
            m_taken.touched.insert(changes.table);
        if (applyChangeset(m_connection, changeset))
            throw SqliteFailure::inWords(
                said("This copy of the shop does not hold what its history says. Make a new copy "
                     "for this laptop in the workshop. Nothing was brought in."));
    }

    void touched(const EntryMerger& merger) {
        m_taken.touched.insert(merger.touched().begin(), merger.touched().end());
    }

    void differs(const CarriedEntry& entry) {
        Query seat = m_connection.query("SELECT name FROM seat WHERE id = ?1", entry.seat);
        m_taken.differences.push_back({entry.id, entry.title.sentence(),
                                       seat.step() ? seat.text(0) : std::string{}, entry.words.sentence(),
                                       entry.isAside});
    }

    Connection& m_connection;
    NewsReader& m_news;
    const NewsLabel m_label;
    const std::int64_t m_common; // up to this place the line is the same here
    const Instant m_now;
    const TellProgress& m_progress;
    const SeatNumber m_here;
    NewsTakenIn m_taken;
    WrittenRows m_written;
    OrdersOfForgotten m_theirOrders{m_connection};
    double m_steps = 0;
    double m_done = 0;
};

Result<NewsTakenIn> takenIn(Shop& shop, NewsReader& news, const TellProgress& progress) {
    Connection& connection = shop.connection();
    const auto common = joinOf(connection, news);
    if (!common)
        return common.error();
    NewsTakenIn taken;
    Shop::GoingOn from;
    {
        TakingIn taking{connection, news, common->place, shop.now(), progress};
        const Stopping stopping{connection,
                                progress ? std::function<bool()>{[&] { return taking.mayGoOn(); }} : nullptr};
        UnrecordedTransaction transaction{connection};
        taken = taking.run();
        from = shop.goingOn();
        transaction.commit();
    }
    shop.goOn(from, taken.touched);
    return taken;
}

// The file is read through once before anything of it is done: about this much of the whole.
constexpr double kReading = 0.1;

TellProgress between(const TellProgress& progress, double from, double to) {
    if (!progress)
        return {};
    return [&progress, from, to](double share) { return progress(from + (to - from) * share); };
}

} // namespace

Result<NewsTakenIn> takeInNews(Shop& shop, const std::filesystem::path& path, const TellProgress& progress) {
    if (shop.isReadOnly())
        return plainError(said("This shop is open for reading only."));
    auto news = NewsReader::open(path, between(progress, 0, kReading));
    if (!news)
        return news.error();
    try {
        auto taken = takenIn(shop, *news, between(progress, kReading, 1));
        if (taken && taken->touched.contains("forgotten_customer"))
            shop.emptyLog();
        return taken;
    } catch (const SqliteFailure& failure) {
        return failure.error();
    }
}

} // namespace holdfast::db
