#pragma once
// Looks for better plans of the day on a thread of its own, each search longer than the one before and going
// on from the best plan so far, until a long one finds nothing more. A search that was dropped says nothing
// more.

#include "core/press/day_plan.h"

#include <QObject>

#include <atomic>
#include <thread>

namespace holdfast::app {

class PlanBeside : public QObject {
    Q_OBJECT

public:
    explicit PlanBeside(QObject* parent = nullptr)
        : QObject(parent) {}
    ~PlanBeside() override { drop(); }

    // Drops what is under way.
    void begin(PlanRequest request);
    void drop();

signals:
    void found(const holdfast::DayPlan& plan); // the best so far, after each search
    void ended();                              // nothing more is found

private:
    void search(int number, PlanRequest& request);
    void say(int number, const DayPlan& plan, bool isDone);

    std::thread m_thread;
    std::atomic<bool> m_shouldStop = false;
    int m_number = 0; // of the plan that is wanted
};

} // namespace holdfast::app
