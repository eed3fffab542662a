// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Watches the counts at the press, whatever place is seen, and says when one ends: heat on the platen or
// cooling on the rack; and once more when a garment has been under heat so long that it is likely scorched.
//
// Heat whose count had ended before the shop was opened is said then: somebody left it. What had cooled by
// then keeps, and is only shown.

#include "app/desk/step_counts.h"

#include <QObject>
#include <QTimer>

#include <map>
#include <vector>

namespace holdfast::app {

struct EndedCount {
    GarmentId garment;
    bool isHeat = false;    // else it has cooled
    bool isTooLong = false; // under heat, beyond what the shop allows

    bool operator==(const EndedCount&) const = default;
};

class CountWatch : public QObject {
    Q_OBJECT

public:
    explicit CountWatch(const Clock& clock, QObject* parent = nullptr);

    // Takes note of steps that were opened or closed.
    void see(const ReckonedShop& shop);
    const StepCounts& counts() const { return m_counts; }
    // Longer than this under heat than the recipe says is too long.
    Seconds mostOver() const { return m_mostOver; }

signals:
    void ended(const std::vector<holdfast::app::EndedCount>& counts);

private:
    struct Said {
        Instant startedAt;
        bool isTooLong = false;
    };

    bool isTooLong(const StepCount& count) const;
    void look();
    void waitForNext();

    StepCounts m_counts;
    Seconds m_mostOver{0};
    std::map<GarmentId, Said> m_said;
    bool m_hasLooked = false;
    QTimer m_next;
};

} // namespace holdfast::app
