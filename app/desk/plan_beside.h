// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Looks for better plans of the day beside the window, each search longer than the one before and going
// on from the best plan so far, until a long one finds nothing more. A search that was dropped says nothing
// more. Where only the moment is another, the same work is not looked through again: the next search goes on
// with as much work as the last one had, and a day that was searched through is left alone, for a laptop
// that lies on a table has a battery.

#include "app/desk/beside.h"
#include "core/press/day_plan.h"
#include "core/trade/result.h"

#include <QObject>

#include <cstdint>
#include <vector>

namespace holdfast::app {

class PlanBeside : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    // Drops what is under way. Says nothing where the same garments at the same steps were searched through.
    void begin(PlanRequest request);
    void drop() { m_beside.drop(); }

signals:
    void found(const holdfast::DayPlan& plan); // the best so far, after each search
    void ended();                              // nothing more is found

private:
    struct Found {
        DayPlan plan; // the best so far
        std::uint64_t nextWork;
        bool isDone;
    };
    using Search = Beside<Done, Found>;
    static Done search(Search::Reporter& reporter, PlanRequest& request, std::uint64_t work);

    std::vector<double> m_of; // the day that is searched, see outlineOf
    std::uint64_t m_work = 0; // of the next search of it
    bool m_isThrough = false; // nothing more is found in it
    Search m_beside;
};

} // namespace holdfast::app
