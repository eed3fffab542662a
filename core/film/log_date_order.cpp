// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/log_date_order.h"

#include "core/facts/climate.h"

#include <algorithm>
#include <map>

namespace holdfast {

namespace {

constexpr double kLeastEven = 0.5; // of the steps; below it a log has no step of its own

// Loggers are a second early or late now and then.
std::chrono::seconds rounded(std::chrono::seconds step) {
    return step < Minutes{2} ? step : std::chrono::round<Minutes>(step);
}

// How many steps are the commonest one. What the log leaves out, or jumps over, is no step.
std::size_t evenSteps(const std::vector<Instant>& times) {
    std::map<std::chrono::seconds, std::size_t> steps;
    std::size_t most = 0;
    for (std::size_t at = 1; at < times.size(); ++at) {
        const auto step = std::chrono::abs(times[at] - times[at - 1]);
        if (step > Seconds{0} && step <= kAllowedGap)
            most = std::max(most, ++steps[rounded(step)]);
    }
    return most;
}

} // namespace

bool DateOrderEvidence::add(const LogTime& dayFirst, const LogTime& monthFirst) {
    if (!dayFirst.needsOrder && !monthFirst.needsOrder)
        return false;
    if (dayFirst.kind != LogTimeKind::Read)
        m_decided = DateOrder::MonthFirst;
    else if (monthFirst.kind != LogTimeKind::Read)
        m_decided = DateOrder::DayFirst;
    m_dayFirst.push_back(dayFirst.at);
    m_monthFirst.push_back(monthFirst.at);
    m_hasDots = m_hasDots || dayFirst.hasDots;
    return m_decided.has_value();
}

std::optional<DateOrder> DateOrderEvidence::verdict() const {
    if (m_decided)
        return m_decided;
    const std::size_t dayFirst = evenSteps(m_dayFirst);
    const std::size_t monthFirst = evenSteps(m_monthFirst);
    const auto least = static_cast<std::size_t>(kLeastEven * static_cast<double>(m_dayFirst.size()));
    if (dayFirst != monthFirst && std::max(dayFirst, monthFirst) >= std::max<std::size_t>(least, 2))
        return dayFirst > monthFirst ? DateOrder::DayFirst : DateOrder::MonthFirst;
    if (m_dayFirst == m_monthFirst || m_hasDots)
        return DateOrder::DayFirst;
    return std::nullopt;
}

} // namespace holdfast
