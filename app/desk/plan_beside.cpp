#include "app/desk/plan_beside.h"

#include <algorithm>

namespace holdfast::app {

namespace {

// Garments run through: the first search takes some tenths of a second, the longest some seconds. Each
// further one takes twice the work of the one before.
constexpr std::uint64_t kFirstWork = 1'000'000;
constexpr std::uint64_t kMostWork = 16'000'000;

} // namespace

void PlanBeside::begin(PlanRequest request) {
    drop();
    m_shouldStop = false;
    request.shouldStop = [this] { return m_shouldStop.load(); };
    m_thread = std::thread(
        [this, number = m_number, request = std::move(request)]() mutable { search(number, request); });
}

// Until a long search finds nothing more.
void PlanBeside::search(int number, PlanRequest& request) {
    std::optional<DayPlan> best;
    for (std::uint64_t work = kFirstWork;; work = std::min(2 * work, kMostWork)) {
        request.search.work = work;
        DayPlan plan = planDay(request);
        if (m_shouldStop)
            return;
        const bool isBetter = !best || plan.isBetterThan(*best);
        const bool isDone = !plan.isCutShort || (!isBetter && work == kMostWork);
        if (isBetter) {
            request.search.goesOnFrom = plan.order;
            best = std::move(plan);
        }
        say(number, *best, isDone);
        if (isDone)
            return;
    }
}

void PlanBeside::say(int number, const DayPlan& plan, bool isDone) {
    QMetaObject::invokeMethod(
        this,
        [this, number, plan, isDone] {
            if (number != m_number)
                return;
            emit found(plan);
            if (isDone && number == m_number)
                emit ended();
        },
        Qt::QueuedConnection);
}

void PlanBeside::drop() {
    m_shouldStop = true;
    ++m_number;
    if (m_thread.joinable())
        m_thread.join();
}

} // namespace holdfast::app
