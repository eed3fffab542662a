// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/figures_beside.h"

#include "app/desk/formats.h"

#include "db/sqlite/stopping.h"
#include "db/tables/figures.h"

#include <algorithm>
#include <functional>

namespace holdfast::app {

namespace {

Result<ShopFigures> readFigures(db::Shop& shop, std::optional<Days> last, const Now& now,
                                const std::function<bool()>& mayGoOn) {
    return shop.read([&](db::Connection& connection) {
        const db::Stopping stopping(connection, mayGoOn);
        const LocalDate first = db::firstDay(connection, now);
        return db::loadFigures(connection, last ? std::max(first, now.today() - *last) : first, now);
    });
}

Result<ShopFigures> readByItself(const std::filesystem::path& path, std::optional<Days> last, const Now& now,
                                 const std::function<bool()>& mayGoOn) {
    const auto file = db::Shop::openReadOnly(path, [at = now.instant] { return at; });
    if (!file.ok())
        return file.error();
    return readFigures(**file, last, now, mayGoOn);
}

} // namespace

std::function<Result<ShopFigures>()> figuresReader(db::Shop& shop, std::optional<Days> last, const Now& now) {
    if (shop.path().empty())
        return [read = readFigures(shop, last, now, {})] { return read; };
    return [path = shop.path(), last, now] { return readByItself(path, last, now, {}); };
}

void FiguresBeside::begin(db::Shop& shop, std::optional<Days> last, const Now& now) {
    if (shop.path().empty())
        return end(readFigures(shop, last, now, {}));
    m_beside.begin(
        [path = shop.path(), last, now](auto& reporter) -> Result<ShopFigures> {
            return readByItself(path, last, now, [&] { return !reporter.shouldStop(); });
        },
        [this](const Result<ShopFigures>& read) { end(read); });
}

void FiguresBeside::end(const Result<ShopFigures>& read) {
    if (read.ok())
        emit ended(*read);
    else
        emit failed(words(read.error().message));
}

} // namespace holdfast::app
