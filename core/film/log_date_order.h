// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether the day or the month comes first in a log's dates such as 03/04/2026.
//
// A day above 12 decides. Without one the step between readings does: a logger writes at an even step, and
// read the wrong way round a log jumps by a month at each midnight. Where neither decides, dates with dots
// are read with the day first (common practice, no source), and any other has to be asked about.

#include "core/film/log_time.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace holdfast {

class DateOrderEvidence {
public:
    // The same time read both ways, of each line in turn. True: this line alone decides, and no more are
    // needed.
    bool add(const LogTime& dayFirst, const LogTime& monthFirst);

    // None where the log does not say it.
    std::optional<DateOrder> verdict() const;

private:
    std::vector<Instant> m_dayFirst;
    std::vector<Instant> m_monthFirst;
    std::optional<DateOrder> m_decided;
    bool m_hasDots = false;
};

} // namespace holdfast
