// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/shop_paths.h"

#include "db/actions/shop_actions.h"
#include "db/demo/demo_shop.h"
#include "db/disk/shop_lock.h"
#include "db/schema/schema_steps.h"
#include "db/tables/facts.h"

#include <QCoreApplication>
#include <QStandardPaths>

#include <chrono>
#include <string>
#include <system_error>
#include <unistd.h>

namespace holdfast::app {

namespace fs = std::filesystem;

namespace {

constexpr std::chrono::hours kDemosAreKept{24 * 7};

fs::path folderOf(QStandardPaths::StandardLocation location) {
    return fs::path(QStandardPaths::writableLocation(location).toStdString()) / "holdfast";
}

Result<Done> makeFolder(const fs::path& folder) {
    std::error_code error;
    fs::create_directories(folder, error);
    if (error)
        return plainError(said("The folder {folder} could not be made: {why}.",
                               {{"folder", folder.string()}, {"why", error.message()}}));
    return Done{};
}

void removeShop(const fs::path& path) {
    std::error_code ignored;
    for (const char* ending : {"", "-wal", "-shm"})
        fs::remove(path.string() + ending, ignored);
}

// The schema is part of the name: another version makes its own demo.
std::string demoName(LocalDate on) {
    return "demo-" + isoDate(on) + "-" + std::to_string(db::schemaSteps().size()) + ".holdfast";
}

// Made by this program and not by one built before it.
bool isOfThisProgram(const fs::path& demo) {
    std::error_code missing;
    const auto made = fs::last_write_time(demo, missing);
    if (missing)
        return false;
    const auto built = fs::last_write_time(QCoreApplication::applicationFilePath().toStdString(), missing);
    return missing || made >= built;
}

// Demos of other days are of no more use.
void removeOldDemos(const fs::path& folder) {
    std::error_code ignored;
    const auto now = fs::file_time_type::clock::now();
    for (const auto& entry : fs::directory_iterator(folder, ignored)) {
        std::error_code unknown;
        const auto age = now - entry.last_write_time(unknown);
        if (!unknown && age > kDemosAreKept && entry.path().filename().string().starts_with("demo-"))
            fs::remove(entry.path(), ignored);
    }
}

} // namespace

fs::path defaultShopPath() {
    return folderOf(QStandardPaths::GenericDataLocation) / "shop.holdfast";
}

fs::path freeShopPath() {
    fs::path path = defaultShopPath();
    std::error_code ignored;
    for (int number = 2; fs::exists(path, ignored); ++number)
        path = defaultShopPath().parent_path() / ("shop-" + std::to_string(number) + ".holdfast");
    return path;
}

Result<std::unique_ptr<db::Shop>> startShop(const fs::path& path, const std::string& name,
                                            const Currency& currency, const db::Clock& clock) {
    if (path.has_parent_path())
        if (const auto folder = makeFolder(path.parent_path()); !folder.ok())
            return folder.error();
    auto made = db::Shop::create(path, clock);
    if (!made.ok())
        return made.error();
    ShopSettings settings;
    settings.shopName = name;
    settings.currency = currency;
    if (const auto named = db::changeSettings(**made, settings); !named.ok()) {
        const Error& error = named.error();
        std::move(made).value().reset();
        removeShop(path);
        return error;
    }
    return made;
}

Result<fs::path> demoShop(LocalDate on) {
    const fs::path folder = folderOf(QStandardPaths::GenericCacheLocation);
    const fs::path path = folder / demoName(on);
    if (isOfThisProgram(path))
        return path;
    if (const auto made = makeFolder(folder); !made.ok())
        return made.error();
    removeOldDemos(folder);
    // Under another name until it is whole, so that a demo half made is never opened.
    const fs::path half = folder / ("demo-" + std::to_string(::getpid()) + ".half");
    removeShop(half);
    if (const auto made = db::makeDemoShop(half, on); !made.ok()) {
        removeShop(half);
        return made.error();
    }
    std::error_code error;
    fs::rename(half, path, error);
    if (error) {
        removeShop(half);
        return plainError(said("The demo could not be kept in {folder}: {why}.",
                               {{"folder", folder.string()}, {"why", error.message()}}));
    }
    return path;
}

bool isDemoShop(const fs::path& shop) {
    const std::string name = shop.filename().string();
    std::error_code unknown;
    return name.starts_with("demo-") &&
           fs::equivalent(shop.parent_path(), folderOf(QStandardPaths::GenericCacheLocation), unknown);
}

fs::path demoToWorkIn() {
    return folderOf(QStandardPaths::GenericCacheLocation) / "demo-open.holdfast";
}

Result<std::unique_ptr<db::Shop>> openDemoToWorkIn(LocalDate on, const db::Clock& clock) {
    const auto pristine = demoShop(on);
    if (!pristine.ok())
        return pristine.error();
    const fs::path path = demoToWorkIn();
    {
        // Held while the copy is made again, so that no other window works in it.
        const auto lock = db::ShopLock::take(path);
        if (!lock.ok())
            return lock.error();
        removeShop(path);
        std::error_code error;
        fs::copy_file(*pristine, path, error);
        if (error)
            return plainError(said("The demo could not be copied: {why}.", {{"why", error.message()}}));
    }
    return db::Shop::open(path, clock);
}

} // namespace holdfast::app
