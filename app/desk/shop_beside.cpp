#include "app/desk/shop_beside.h"

#include "db/tables/facts.h"

#include <utility>

namespace holdfast::app {

ShopBeside::ShopBeside(std::unique_ptr<db::Shop> file, const Now& now)
    : m_file(std::move(file))
    , m_now(now) {
    m_file->onChanged([this](const db::ChangedTables& tables) { m_touched = tables; });
}

Result<std::unique_ptr<ShopBeside>> ShopBeside::open(const db::Shop& window, const Now& now) {
    auto file = window.openBeside([at = now.instant] { return at; });
    if (!file.ok())
        return file.error();
    return std::unique_ptr<ShopBeside>{new ShopBeside{std::move(*file), now}};
}

WrittenBeside ShopBeside::written() {
    WrittenBeside written;
    written.touched = m_touched;
    if (!m_touched.contains("climate_reading"))
        return written;
    const auto loaded = m_file->read([&](db::Connection& connection) {
        written.climate = db::loadClimate(connection);
        written.reckoner.reckon(db::loadOpenFacts(connection), written.climate, m_now);
        return Done{};
    });
    written.isReckoned = loaded.ok();
    return written;
}

} // namespace holdfast::app
