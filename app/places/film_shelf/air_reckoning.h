// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Figures of places over a window: at once where there are few readings, else beside the window, so that a
// million of them hold nothing up. A new question takes the place of the one before.

#include "app/desk/beside.h"
#include "core/film/climate_window.h"
#include "core/film/exposure.h"

#include <QObject>

#include <functional>
#include <memory>
#include <optional>
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
    using QObject::QObject;

    // Answered by reckoned(), before this returns or later.
    void begin(std::vector<AirAsked> asked);
    bool isBusy() const { return m_beside.isUnderWay(); }

signals:
    void reckoned(const std::vector<holdfast::app::AirAnswer>& answers); // in addition to what was asked

private:
    Beside<std::vector<AirAnswer>> m_beside;
};

} // namespace holdfast::app
