// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Work that takes longer than a hand waits: done on a thread of its own, its progress told to the interface
// thread, stopped when asked. One at a time. What reads the shop opens a reading connection of its own.

#include "core/trade/result.h"

#include <QObject>
#include <QString>

#include <atomic>
#include <functional>
#include <string>
#include <thread>

namespace holdfast::app {

class BackgroundWork : public QObject {
    Q_OBJECT

public:
    // Share done, 0 to 1; false asks the work to stop.
    using Progress = std::function<bool(double)>;
    // Returns what to tell the person.
    using Work = std::function<Result<std::string>(const Progress& progress)>;

    explicit BackgroundWork(QObject* parent = nullptr);
    ~BackgroundWork() override; // stops and waits

    bool isBusy() const { return m_isBusy; }
    // Refused (false) while other work is under way.
    bool begin(const QString& words, Work work);
    void stop() { m_shouldStop = true; }

signals:
    void progressed(const QString& words, double share);
    void succeeded(const QString& words);
    void failed(const QString& reason);

private:
    void end(const Result<std::string>& outcome);

    std::thread m_thread;
    std::atomic<bool> m_shouldStop = false;
    bool m_isBusy = false;
};

} // namespace holdfast::app
