// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Readings written to the shop on a thread of its own, by a connection of its own, as one action: the window
// goes on, progress is told, and it stops when asked, up to the commit. What was written is loaded there,
// too, and handed to the desk with the news.

#include "app/desk/shop_desk.h"
#include "app/slips/place_pick.h"
#include "db/actions/film_actions.h"

#include <QObject>

#include <atomic>
#include <memory>
#include <thread>

namespace holdfast::app {

class ReadingsImport : public QObject {
    Q_OBJECT

public:
    explicit ReadingsImport(ShopDesk& desk, QObject* parent = nullptr);
    ~ReadingsImport() override; // stops and waits

    // One at a time.
    void begin(ChosenPlace place, ClimateSeries readings);
    void stop() { m_shouldStop = true; }
    bool isBusy() const { return m_isBusy; }

signals:
    void progressed(double share); // 0 to 1
    void ended(const holdfast::Result<holdfast::db::ReadingsImported>& imported);

private:
    struct Outcome;
    Outcome importedBeside(const ChosenPlace& place, const ClimateSeries& readings, const KnownBefore& known);
    void end(Outcome& outcome);

    ShopDesk& m_desk;
    std::thread m_thread;
    std::atomic<bool> m_shouldStop = false;
    bool m_isBusy = false;
};

} // namespace holdfast::app
