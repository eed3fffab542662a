// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/bench_search.h"

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr std::chrono::milliseconds kTellEvery{100};

} // namespace

BenchSearch::BenchSearch(QObject* parent)
    : QObject(parent) {
    m_told.setInterval(kTellEvery);
    connect(&m_told, &QTimer::timeout, this, [this] {
        emit progressed(std::min(1.0, static_cast<double>(m_done.load()) /
                                          static_cast<double>(std::max<std::uint64_t>(1, m_work))));
    });
}

BenchSearch::~BenchSearch() {
    wait();
}

void BenchSearch::begin(std::shared_ptr<const ReckonedShop> shop, const FilmToCut& film, const NestWish& wish,
                        StripSearch how) {
    drop();
    m_isSearching = true;
    m_shouldStop = false;
    m_work = how.work.value_or(0);
    m_done = 0;
    how.shouldStop = [this] { return m_shouldStop.load(); };
    how.worked = [this](std::uint64_t pieces) { m_done += pieces; };
    m_told.start();
    emit progressed(0);
    m_thread =
        std::thread([this, number = m_number, shop = std::move(shop), film, wish, how = std::move(how)] {
            const Result<FilmNests> nests = nestFilm(*shop, film, wish, &how);
            QMetaObject::invokeMethod(
                this, [this, number, nests] { take(number, nests); }, Qt::QueuedConnection);
        });
}

void BenchSearch::stop() {
    m_shouldStop = true;
}

void BenchSearch::drop() {
    wait();
    ++m_number;
    m_told.stop();
    if (!m_isSearching)
        return;
    m_isSearching = false;
    emit ended();
}

void BenchSearch::wait() {
    m_shouldStop = true;
    if (m_thread.joinable())
        m_thread.join();
}

void BenchSearch::take(int number, const Result<FilmNests>& nests) {
    if (number != m_number)
        return;
    wait();
    m_told.stop();
    m_isSearching = false;
    if (nests.ok())
        emit found(*nests);
    emit ended();
}

} // namespace holdfast::app
