// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/figures_beside.h"

#include "app/desk/formats.h"

#include "db/sqlite/stopping.h"
#include "db/tables/figures.h"

#include <algorithm>
#include <functional>
#include <utility>

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

} // namespace

FiguresBeside::~FiguresBeside() {
    m_shouldStop = true;
    if (m_thread.joinable())
        m_thread.join();
}

void FiguresBeside::begin(db::Shop& shop, std::optional<Days> last, const Now& now) {
    if (m_thread.joinable()) {
        m_next = Wanted{&shop, last, now};
        m_shouldStop = true; // nobody wants what is being read any more
        return;
    }
    if (shop.path().empty())
        return end(readFigures(shop, last, now, {}));
    m_shouldStop = false;
    m_thread = std::thread([this, path = shop.path(), last, now] {
        const auto file = db::Shop::openReadOnly(path, [at = now.instant] { return at; });
        const auto read = std::make_shared<Result<ShopFigures>>(
            file.ok() ? readFigures(**file, last, now, [this] { return !m_shouldStop; })
                      : Result<ShopFigures>{file.error()});
        QMetaObject::invokeMethod(
            this, [this, read] { end(*read); }, Qt::QueuedConnection);
    });
}

void FiguresBeside::end(const Result<ShopFigures>& read) {
    if (m_thread.joinable())
        m_thread.join();
    if (const auto next = std::exchange(m_next, std::nullopt))
        return begin(*next->shop, next->last, next->now);
    if (read.ok())
        emit ended(*read);
    else
        emit failed(words(read.error().message));
}

} // namespace holdfast::app
