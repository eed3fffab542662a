// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The readings of a long climate log loaded and summed up on a thread of their own, by a connection of their
// own, while the window shows what needs none of them.

#include "core/film/roll_condition.h"
#include "core/trade/dates.h"

#include <QObject>

#include <atomic>
#include <filesystem>
#include <memory>
#include <optional>
#include <thread>

namespace holdfast::app {

struct ClimateRead {
    ClimateHistory climate;
    ClimateReckoner reckoner; // with its sums over the climate for the rolls there are
};

class ClimateBeside : public QObject {
    Q_OBJECT

public:
    explicit ClimateBeside(QObject* parent = nullptr)
        : QObject(parent) {}
    ~ClimateBeside() override { drop(); }

    // Drops what is under way. REQUIRES: a shop file.
    void begin(const std::filesystem::path& shop, const Now& now);
    void drop(); // stops within a tenth of a second and waits; nothing more is told
    bool isUnderWay() const { return m_isUnderWay; }

    // Once, after ended(). None: the file could not be read.
    std::optional<ClimateRead> take();

signals:
    void progressed(double share);
    void ended();

private:
    void tell(int number, double share);
    void end(int number, std::shared_ptr<std::optional<ClimateRead>> read);

    std::thread m_thread;
    std::atomic<bool> m_shouldStop = false;
    bool m_isUnderWay = false;
    int m_number = 0; // of the reading that is wanted
    std::optional<ClimateRead> m_read;
};

} // namespace holdfast::app
