#include "app/desk/plan_beside.h"

namespace holdfast::app {

namespace {

// No day is known that needs a tenth of it; the measure of PlanSearch ends the search before.
constexpr std::chrono::seconds kAtMost{10};

} // namespace

void PlanBeside::begin(PlanRequest request) {
    drop();
    m_shouldStop = false;
    request.search.atMost = kAtMost;
    request.shouldStop = [this] { return m_shouldStop.load(); };
    m_thread = std::thread([this, number = m_number, request = std::move(request)] {
        DayPlan plan = planDay(request);
        if (m_shouldStop)
            return;
        QMetaObject::invokeMethod(
            this,
            [this, number, plan = std::move(plan)] {
                if (number == m_number)
                    emit found(plan);
            },
            Qt::QueuedConnection);
    });
}

void PlanBeside::drop() {
    m_shouldStop = true;
    ++m_number;
    if (m_thread.joinable())
        m_thread.join();
}

} // namespace holdfast::app
