// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The nine marked spots of a platen, laid out as they lie on it, seen from the maker's side.

#include "core/trade/units.h"

#include <QWidget>

#include <array>
#include <optional>
#include <vector>

namespace holdfast::app {

class Field;

class PlatenSpots : public QWidget {
    Q_OBJECT

public:
    explicit PlatenSpots(QWidget* parent = nullptr);

    static constexpr int kAcross = 3;
    static constexpr int kSpots = kAcross * kAcross;

    // In order, far left first; spots left empty are left out. Marks what is no temperature.
    std::vector<Celsius> read();
    // What can be read of what is typed so far.
    std::vector<Celsius> readings() const;
    bool isSound() const { return m_isSound; } // of the last read()
    bool isFilled() const;                     // every spot

signals:
    void changed();

private:
    std::array<Field*, kSpots> m_fields{};
    bool m_isSound = true;
};

} // namespace holdfast::app
