// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/shop_beside.h"

#include "db/tables/facts.h"

#include <utility>

namespace holdfast::app {

ShopBeside::ShopBeside(std::unique_ptr<db::Shop> file, KnownBefore known)
    : m_file(std::move(file))
    , m_known(std::move(known)) {
    m_file->onChanged(
        [this](const db::ChangedTables& tables) { m_touched.insert(tables.begin(), tables.end()); });
}

Result<std::unique_ptr<ShopBeside>> ShopBeside::open(const db::Shop& window, KnownBefore known) {
    auto file = window.openBeside([at = known.now.instant] { return at; });
    if (!file.ok())
        return file.error();
    return std::unique_ptr<ShopBeside>{new ShopBeside{std::move(*file), std::move(known)}};
}

WrittenBeside ShopBeside::written() {
    WrittenBeside written;
    written.touched = m_touched;
    const bool hasNewClimate = m_touched.contains("climate_reading");
    if (m_touched.empty() || (!hasNewClimate && !m_known.climate))
        return written;
    PlanSearch search;
    search.goesOnFrom = m_known.orderShown;
    const auto reckoned = m_file->read([&](db::Connection& connection) {
        return reckonShop(
            db::loadOpenFacts(connection), hasNewClimate ? db::loadClimate(connection) : *m_known.climate,
            db::loadRecentUse(connection, m_known.now.instant), written.reckoner, m_known.now, search);
    });
    if (reckoned.ok())
        written.shop = *reckoned;
    return written;
}

} // namespace holdfast::app
