// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/climate_beside.h"

#include "db/journal/shop.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <functional>
#include <utility>

namespace holdfast::app {

namespace {

// Of the whole; the rest goes into the sums.
constexpr double kLoading = 0.6;

// A hundred tellings are enough.
constexpr double kTold = 0.01;

using GoesOn = std::function<bool(double share)>;

std::optional<ClimateRead> readClimate(const std::filesystem::path& shop, const Now& now,
                                       const GoesOn& goesOn) {
    const auto file = db::Shop::openReadOnly(shop, [at = now.instant] { return at; });
    if (!file.ok())
        return std::nullopt;
    ClimateRead read;
    const auto done = (*file)->read([&](db::Connection& connection) {
        const auto all = std::max<std::int64_t>(1, db::countReadings(connection));
        read.climate = db::loadClimate(connection, [&](std::int64_t loaded) {
            return goesOn(kLoading * static_cast<double>(loaded) / static_cast<double>(all));
        });
        read.reckoner.reckon(db::loadOpenFacts(connection), read.climate, now,
                             [&](double share) { return goesOn(kLoading + (1 - kLoading) * share); });
        return Done{};
    });
    return done.ok() ? std::optional{std::move(read)} : std::nullopt;
}

} // namespace

void ClimateBeside::begin(const std::filesystem::path& shop, const Now& now) {
    drop();
    m_shouldStop = false;
    m_isUnderWay = true;
    m_thread = std::thread([this, shop, now, number = m_number] {
        double told = 0;
        auto read = std::make_shared<std::optional<ClimateRead>>(readClimate(shop, now, [&](double share) {
            if (share - told >= kTold) {
                told = share;
                QMetaObject::invokeMethod(
                    this, [this, number, share] { tell(number, share); }, Qt::QueuedConnection);
            }
            return !m_shouldStop;
        }));
        QMetaObject::invokeMethod(
            this, [this, number, read] { end(number, read); }, Qt::QueuedConnection);
    });
}

void ClimateBeside::drop() {
    m_shouldStop = true;
    ++m_number;
    m_isUnderWay = false;
    m_read.reset();
    if (m_thread.joinable())
        m_thread.join();
}

std::optional<ClimateRead> ClimateBeside::take() {
    return std::exchange(m_read, std::nullopt);
}

void ClimateBeside::tell(int number, double share) {
    if (number == m_number)
        emit progressed(share);
}

void ClimateBeside::end(int number, std::shared_ptr<std::optional<ClimateRead>> read) {
    if (number != m_number)
        return;
    m_thread.join();
    m_isUnderWay = false;
    m_read = std::move(*read);
    emit ended();
}

} // namespace holdfast::app
