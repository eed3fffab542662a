// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/disk_scenes.h"

#include "core/trade/id_maker.h"
#include "db/check/mend.h"
#include "db/check/save.h"
#include "db/csv/export_shop.h"
#include "db/csv/import_shop.h"
#include "db/disk/new_file.h"
#include "db/sqlite/session.h"

#include <sqlite3.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <iterator>
#include <regex>
#include <stdexcept>

namespace holdfast::db {

namespace {

template <class Value>
Value orThrow(Result<Value> outcome) {
    if (!outcome.ok())
        throw std::runtime_error(outcome.error().field + ": " + outcome.error().message.english());
    return std::move(outcome).value();
}

template <class Value>
Result<Done> whether(const Result<Value>& outcome) {
    return outcome.ok() ? Result<Done>{Done{}} : Result<Done>{outcome.error()};
}

std::chrono::seconds anHourAhead(Instant) {
    return Hours{1};
}

std::vector<std::string> namesIn(const std::filesystem::path& folder) {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::recursive_directory_iterator{folder})
        if (!entry.is_directory())
            names.push_back(std::filesystem::relative(entry.path(), folder).string());
    std::ranges::sort(names);
    return names;
}

// Every value of a row as text, but for what is drawn by chance when a file is opened.
std::string wholeRows(Connection& connection, const std::string& table) {
    std::string sql = "SELECT ''";
    Query columns = connection.query("SELECT name FROM pragma_table_info(?1) ORDER BY cid", table);
    while (columns.step())
        if (const std::string name = columns.text(0);
            table != "seat_here" || (name != "incarnation" && name != "home" && name != "last_id"))
            sql += " || '|' || quote(\"" + name + "\")";
    return sql + " FROM \"" + table + "\" ORDER BY 1";
}

std::vector<std::string> tablesIn(Connection& connection) {
    std::vector<std::string> tables;
    Query names = connection.query("SELECT name FROM pragma_table_list WHERE schema = 'main' AND "
                                   "type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY name");
    while (names.step())
        tables.push_back(names.text(0));
    return tables;
}

// As a program of step 4 left it.
void makeOlderShop(const std::filesystem::path& path, const Clock& clock) {
    constexpr std::size_t kStep = 4;
    constexpr int kEntries = 60;
    orThrow(Shop::create(path, clock, schemaSteps().first(kStep))).reset();
    Connection connection = Connection::open(path, Access::ReadWrite);
    IdMaker ids{1};
    for (int count = 0; count < kEntries; ++count) {
        Transaction transaction{connection};
        const std::array<std::string, 1> tables{"setting"};
        Session session{connection, tables};
        connection.run("INSERT INTO setting (name, value) VALUES ('shop-name', ?1) ON CONFLICT (name) DO "
                       "UPDATE SET value = excluded.value",
                       "Tern " + std::to_string(count));
        const std::int64_t entry = ids.next(clock());
        connection.run("INSERT INTO journal_entry (id, seat_id, at, title, changeset) "
                       "VALUES (?1, 1, ?2, 'Named the shop', ?3)",
                       entry, clock(), ChangesetView{session.changeset()});
        connection.run("UPDATE seat_here SET last_id = ?1", entry);
        transaction.commit();
    }
}

template <class Map>
std::string firstDifference(const Map& one, const Map& other) {
    for (const auto& [name, value] : one)
        if (const auto there = other.find(name); there == other.end() || there->second != value)
            return name + ": " + ::testing::PrintToString(value).substr(0, 300) + "\n  not " +
                   (there == other.end() ? "there" : ::testing::PrintToString(there->second).substr(0, 300));
    for (const auto& [name, value] : other)
        if (!one.contains(name))
            return name + " is missing";
    return {};
}

// The letters of an invoice's series follow from what is drawn by chance when a file is opened.
std::string withoutSeries(const std::string& title) {
    static const std::regex series{"(\\d+)[B-Z]{3}-"};
    return std::regex_replace(title, series, "$1-");
}

} // namespace

std::string FolderSeen::differenceTo(const FolderSeen& other) const {
    return firstDifference(rows, other.rows);
}

std::string FolderSeen::doneOtherwiseThan(const FolderSeen& other) const {
    return firstDifference(count, other.count);
}

// ── the files ─────────────────────────────────────────────────────────────────────────────────────────

std::filesystem::path DiskScenes::newFolder(const std::string& name) {
    const auto folder = m_folder / (name + "-" + std::to_string(++m_folders));
    std::filesystem::create_directory(folder);
    return folder;
}

const std::filesystem::path& DiskScenes::workshopFiles() {
    if (m_workshop.empty()) {
        m_workshop = newFolder("workshop");
        orThrow(backup(shop(), m_workshop / kShop));
        opened(m_workshop / kShop).reset();
    }
    return m_workshop;
}

// A fair laptop that took an order, and a workshop that went on meanwhile; one thing of the laptop's is set
// aside, since its order was undone.
void DiskScenes::makeExchangeFiles() {
    if (!m_laptopNews.empty())
        return;
    Laptop& fair = aLaptop();
    m_fairSeat = fair.number;
    const OrderTaken undone = takeTees();
    exchange(fair);
    orThrow(shop().undo(shop().recent(1).front().id));
    orThrow(moveMoney(*fair.shop, undone.id, MoneyKind::Payment, {900}, PaidHow::Cash));
    bring(fair);
    OrderDraft draft = aDraft(2);
    draft.customerName = "Teo Lindqvist";
    taken(*fair.shop, draft);
    takeTees();
    orThrow(receiveRoll(shop(), aRoll(), now()));

    m_workshopNews = newFolder("workshop-news");
    orThrow(backup(shop(), m_workshopNews / kShop));
    opened(m_workshopNews / kShop).reset();
    std::filesystem::copy_file(newsFrom(*fair.shop), m_workshopNews / "in.news");

    m_laptopNews = newFolder("laptop-news");
    orThrow(backup(*fair.shop, m_laptopNews / kShop));
    opened(m_laptopNews / kShop).reset();
    std::filesystem::copy_file(newsFrom(shop(), fair.number), m_laptopNews / "in.news");
}

const std::filesystem::path& DiskScenes::workshopWithNews() {
    makeExchangeFiles();
    return m_workshopNews;
}

const std::filesystem::path& DiskScenes::laptopWithNews() {
    makeExchangeFiles();
    return m_laptopNews;
}

const std::filesystem::path& DiskScenes::olderFiles() {
    if (m_older.empty()) {
        m_older = newFolder("older");
        makeOlderShop(m_older / kShop, clock());
    }
    return m_older;
}

const std::filesystem::path& DiskScenes::spoiltFiles() {
    if (m_spoilt.empty()) {
        m_spoilt = newFolder("spoilt");
        std::filesystem::copy_file(workshopFiles() / kShop, m_spoilt / kShop);
        Connection::open(m_spoilt / kShop, Access::ReadWrite)
            .script("UPDATE decal SET width_mm = width_mm + 1; DELETE FROM order_card");
    }
    return m_spoilt;
}

// ── the scenes ────────────────────────────────────────────────────────────────────────────────────────

std::vector<DiskScene> DiskScenes::everyScene() {
    std::vector<DiskScene> all;
    for (std::vector<DiskScene> some :
         std::array{actionScenes(), fileScenes(), exchangeScenes(), openingScenes()})
        std::ranges::move(some, std::back_inserter(all));
    return all;
}

std::vector<DiskScene> DiskScenes::actionScenes() {
    std::vector<DiskScene> scenes;
    for (const Doing& doing : everyAction())
        scenes.push_back(
            {doing.name, workshopFiles(), [act = doing.act](Shop* shop, const auto&) { return act(*shop); }});
    return scenes;
}

std::vector<DiskScene> DiskScenes::fileScenes() {
    std::string readings = "Place,When,Temperature (°C),Humidity (%)\n";
    for (int minute = 10; minute < 60; ++minute)
        readings += "Cellar,2026-11-10 10:" + std::to_string(minute) + ",19.5,48\n";
    const std::string customers = "Customer,Telephone\nIda Moss,07700 900001\nGil Tarn,07700 900002\n";
    const auto read = [this](std::string text) {
        return [this, text = std::move(text)](Shop* shop, const std::filesystem::path&) {
            return whether(importText(*shop, text, now(), anHourAhead));
        };
    };
    return {
        {"backup", workshopFiles(),
         [](Shop* shop, const auto& folder) { return backup(*shop, folder / "copy.holdfast"); }},
        {"export", workshopFiles(),
         [](Shop* shop, const auto& folder) {
             return whether(exportShop(*shop, folder / "tables", anHourAhead));
         }},
        {"import readings", workshopFiles(), read(readings)},
        {"import customers", workshopFiles(), read(customers)},
        {"mend", spoiltFiles(), [](Shop* shop, const auto&) { return whether(mendShop(*shop)); }},
        {"save what can be", spoiltFiles(),
         [](Shop*, const auto& folder) {
             return whether(saveWhatCanBe(folder / kShop, folder / "saved.holdfast"));
         },
         true},
    };
}

std::vector<DiskScene> DiskScenes::exchangeScenes() {
    const auto takeIn = [](Shop* shop, const std::filesystem::path& folder) {
        return whether(takeInNews(*shop, folder / "in.news"));
    };
    const auto aside = [](Shop& shop) { return setAside(shop.connection()).at(0).entry; };
    return {
        {"take in at the workshop", workshopWithNews(), takeIn},
        {"take in at a laptop", laptopWithNews(), takeIn},
        {"write news at the workshop", workshopWithNews(),
         [this](Shop* shop, const auto& folder) {
             return whether(writeNews(*shop, folder / "out.news", m_fairSeat));
         },
         false, true},
        {"write news at a laptop", laptopWithNews(),
         [](Shop* shop, const auto& folder) { return whether(writeNews(*shop, folder / "out.news")); }},
        {"copy for a laptop", workshopWithNews(),
         [](Shop* shop, const auto& folder) {
             return whether(makeCopyForLaptop(*shop, folder / "laptop.holdfast", "Second laptop"));
         },
         false, true},
        {"become the workshop", laptopWithNews(),
         [](Shop* shop, const auto&) { return whether(becomeWorkshop(*shop)); }},
        {"let go", workshopWithNews(),
         [aside](Shop* shop, const auto&) { return dropSetAside(*shop, aside(*shop)); }},
    };
}

std::vector<DiskScene> DiskScenes::openingScenes() {
    return {
        {"open", workshopFiles(),
         [this](Shop*, const auto& folder) { return whether(Shop::open(folder / kShop, clock())); }, true},
        {"open and read only", workshopFiles(),
         [this](Shop*, const auto& folder) { return whether(Shop::openReadOnly(folder / kShop, clock())); },
         true},
        {"check", workshopFiles(),
         [this](Shop*, const auto& folder) -> Result<Done> {
             auto shop = Shop::openReadOnly(folder / kShop, clock());
             if (!shop.ok())
                 return shop.error();
             const auto found = checkShop(**shop);
             if (found.ok() && !found->empty())
                 std::abort(); // nothing is wrong with the file, whatever the disk does
             return whether(found);
         },
         true},
        {"schema steps", olderFiles(),
         [this](Shop*, const auto& folder) { return whether(Shop::open(folder / kShop, clock())); }, true,
         false, true},
        {"create", workshopFiles(),
         [this](Shop*, const auto& folder) {
             return whether(Shop::create(folder / "second.holdfast", clock()));
         },
         true},
    };
}

// ── playing and looking ───────────────────────────────────────────────────────────────────────────────

std::filesystem::path DiskScenes::staged(const DiskScene& scene) {
    const auto folder = newFolder("staged");
    std::filesystem::copy(scene.files, folder, std::filesystem::copy_options::recursive);
    return folder;
}

std::string DiskScenes::actedIn(const DiskScene& scene, Shop* shop, const std::filesystem::path& folder) {
    const auto outcome = scene.act(shop, folder);
    return outcome.ok() ? "kept" : outcome.error().message.english();
}

std::string DiskScenes::played(const DiskScene& scene, const std::filesystem::path& folder,
                               const Around& around) {
    return testing::saidByOtherProgram([&]() -> std::string {
        std::unique_ptr<Shop> shop;
        if (!scene.opensItself) {
            shop = opened(folder / kShop);
            sqlite3_busy_timeout(shop->connection().handle(), 0); // SQLite waits for a lock that fails
        }
        return around([&] { return actedIn(scene, shop.get(), folder); });
    });
}

// What whoever uses the other files next does first.
void DiskScenes::startAgain(const std::filesystem::path& folder, FolderSeen& seen) {
    std::vector<std::filesystem::path> locks, shops;
    for (const auto& each : std::filesystem::directory_iterator{folder}) {
        if (each.is_directory())
            removeLeftOver(each.path());
        if (each.path().extension() == ".lock")
            locks.push_back(each.path());
        if (each.path().extension() == ".holdfast" && each.path().filename() != kShop)
            shops.push_back(each.path());
    }
    for (std::filesystem::path& lock : locks)
        (void)ShopLock::take(lock.replace_extension());
    for (const std::filesystem::path& path : shops)
        if (auto shop = Shop::open(path, clock()); !shop.ok())
            seen.wrong = {shop.error().message.english()};
}

FolderSeen DiskScenes::seen(const std::filesystem::path& folder) {
    FolderSeen seen;
    startAgain(folder, seen);
    {
        auto shop = Shop::open(folder / kShop, clock());
        if (!shop.ok()) {
            seen.wrong.push_back(shop.error().message.english());
            return seen;
        }
        Connection& connection = (*shop)->connection();
        for (const std::string& table : tablesIn(connection)) {
            Query rows = connection.query(wholeRows(connection, table));
            while (rows.step())
                seen.rows[table].push_back(rows.text(0));
            seen.count[table] = static_cast<int>(seen.rows[table].size());
        }
        for (const HistoryEntry& entry : (*shop)->recent(10'000))
            ++seen.count[withoutSeries(entry.title.english()) + (entry.isUndone() ? ", undone" : "")];
        const auto found = checkShop(**shop);
        for (const Sentence& finding : found.ok() ? *found : std::vector<Sentence>{found.error().message})
            seen.wrong.push_back(finding.english());
    }
    seen.names = namesIn(folder);
    return seen;
}

std::string DiskScenes::changedIn(const DiskScene& scene, FolderSeen found, FolderSeen before) {
    if (scene.putsInLine)
        for (FolderSeen* each : {&found, &before}) {
            each->rows.erase("journal_line");
            each->count.erase("journal_line");
        }
    return scene.drawsByChance ? found.doneOtherwiseThan(before) : found.differenceTo(before);
}

const FolderSeen& DiskScenes::seenBefore(const DiskScene& scene) {
    const auto known = m_before.find(scene.files);
    if (known != m_before.end())
        return known->second;
    const auto folder = staged(scene);
    FolderSeen before = seen(folder);
    std::filesystem::remove_all(folder);
    return m_before.emplace(scene.files, std::move(before)).first->second;
}

FolderSeen DiskScenes::seenAfter(const DiskScene& scene) {
    const auto folder = staged(scene);
    const std::string said = played(scene, folder, [](const auto& act) { return act(); });
    EXPECT_EQ(said, "kept") << scene.name;
    FolderSeen after = seen(folder);
    std::filesystem::remove_all(folder);
    return after;
}

} // namespace holdfast::db
