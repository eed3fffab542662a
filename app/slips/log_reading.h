// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A logger's file read on a thread of its own, so that the window goes on; its progress is told to the
// interface thread, and it stops when asked.

#include "core/film/climate_log.h"
#include "core/trade/result.h"

#include <QObject>
#include <QString>

#include <atomic>
#include <optional>
#include <thread>

namespace holdfast::app {

class LogReading : public QObject {
    Q_OBJECT

public:
    explicit LogReading(QObject* parent = nullptr);
    ~LogReading() override; // stops and waits

    // Times without a zone are local, as `offsetAt` says, which is asked on another thread; the order of day
    // and month is found in the file unless it was chosen. One at a time.
    void begin(const QString& path, const OffsetAt& offsetAt, std::optional<DateOrder> dateOrder = {});
    void stop() { m_shouldStop = true; }
    bool isBusy() const { return m_isBusy; }

signals:
    void progressed(double share); // 0 to 1
    void ended(const holdfast::Result<holdfast::ClimateLog>& log);

private:
    std::thread m_thread;
    std::atomic<bool> m_shouldStop = false;
    bool m_isBusy = false;
};

} // namespace holdfast::app
