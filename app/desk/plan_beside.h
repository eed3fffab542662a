#pragma once
// Plans the day again on a thread of its own, with more time than the window may wait for it. A plan that was
// dropped says nothing more.

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
    void found(const holdfast::DayPlan& plan);

private:
    std::thread m_thread;
    std::atomic<bool> m_shouldStop = false;
    int m_number = 0; // of the plan that is wanted
};

} // namespace holdfast::app
