// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Figures of places over a window: at once where there are few readings, else on a thread of its own, so that
// a million of them hold nothing up. A new question takes the place of the one before.

#include "core/film/climate_window.h"
#include "core/film/exposure.h"

#include <QObject>

#include <atomic>
#include <memory>
#include <optional>
#include <thread>
#include <vector>

namespace holdfast::app {

struct AirAsked {
    std::shared_ptr<const ClimateSeries> readings;
    ClimateWindow window;
    StorageLimits limits;
};

struct AirAnswer {
    ClimateFigures figures;
    std::vector<Spell> humidSpells; // outside the band, in order of time
    std::vector<Spell> warmSpells;
};

// None: stopped.
std::optional<AirAnswer> airOf(const AirAsked& asked, const std::function<bool()>& shouldStop = {});

class AirReckoning : public QObject {
    Q_OBJECT

public:
    explicit AirReckoning(QObject* parent = nullptr);
    ~AirReckoning() override; // stops and waits

    // Answered by reckoned(), before this returns or later.
    void begin(std::vector<AirAsked> asked);
    bool isBusy() const { return m_isBusy; }

signals:
    void reckoned(const std::vector<holdfast::app::AirAnswer>& answers); // beside what was asked

private:
    void stop();

    std::thread m_thread;
    std::atomic<bool> m_shouldStop = false;
    bool m_isBusy = false;
    int m_question = 0;
};

} // namespace holdfast::app
