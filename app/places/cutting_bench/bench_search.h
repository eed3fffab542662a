// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Looks for a shorter nest on a thread of its own while the maker works on. What is found comes as a signal
// on the interface thread; a search that was dropped says nothing more.

#include "core/cutting/nest.h"
#include "core/shop/films_to_cut.h"

#include <QObject>
#include <QTimer>

#include <atomic>
#include <memory>
#include <thread>

namespace holdfast::app {

class BenchSearch : public QObject {
    Q_OBJECT

public:
    explicit BenchSearch(QObject* parent = nullptr);
    ~BenchSearch() override; // stops and waits

    // Drops a search under way. `how` counts work, so that the same wish gives the same nest however busy the
    // machine is; its shouldStop and worked are set here.
    void begin(std::shared_ptr<const ReckonedShop> shop, const FilmToCut& film, const NestWish& wish,
               StripSearch how);
    void stop(); // found() comes with the best so far
    void drop(); // nothing comes
    bool isSearching() const { return m_isSearching; }

signals:
    void progressed(double share); // of its work, 0 to 1
    void found(const holdfast::FilmNests& nests);
    void ended(); // found, dropped or in vain

private:
    void take(int number, const Result<FilmNests>& nests);
    void wait();

    std::thread m_thread;
    std::atomic<bool> m_shouldStop = false;
    QTimer m_told;
    std::uint64_t m_work = 0; // of the whole search
    std::atomic<std::uint64_t> m_done = 0;
    int m_number = 0; // of the search whose answer is wanted
    bool m_isSearching = false;
};

} // namespace holdfast::app
