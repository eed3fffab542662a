// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How fast film will age in a storage place in the months to come: a usual course, and a fast and a slow one
// between which it lies in eight of ten cases. An estimate from the place's own readings.
//
// What is estimated is the temperature of each calendar month: the steady one at which film ages as fast as
// it did in that month. Before any reading, a place is at the model's reference temperature, give or take 4
// °C (one standard deviation), and each month differs from the year's mean by 3.5 °C; two months correlate by
// exp(−2 sin²(π·months apart/12)), so that neighbours are alike and a season half a year away is open. Each
// month of the record then pins its own, the more days it has, and its neighbours in part: Gaussian
// conditioning (kriging), the covariance that of MacKay 1998 [M], here on a circle of twelve months. So a
// record of one winter says little of the summer, and one of a whole year says what each month is like.
//
// Weather varies as well. From one week to the next the place's own record differs by σ√2 (mean square
// successive difference, von Neumann 1941 [M], which no season disturbs); until eight pairs of weeks are
// there, those missing count as differing by 1.4 °C. Four weeks in a row count as one independent draw, and a
// whole year differs from others by σ.
//
// The usual course adds up the factors at the expected temperatures. The logarithm of what is gained by then
// has the standard deviation s by linear propagation; fast and slow are e^(±1.2816 s) times as much. Beyond
// ten years each goes on as in the tenth. *Limits:* 4 °C, 3.5 °C, 1 °C and the four weeks are common practice
// with no source; a place that is rebuilt or heated in another way has another record.

#include "core/film/ageing.h"
#include "core/trade/dates.h"

#include <vector>

namespace holdfast {

// Until that much effective age is gained.
struct DaysAhead {
    double fast = 0; // fast ≤ usual ≤ slow
    double usual = 0;
    double slow = 0;
};

class AgeingOutlook {
public:
    // Of a place in which nothing was read.
    AgeingOutlook(const AgeingModel& model, const Now& now);
    // Of the place whose readings begin then; those after `now` are not looked at.
    AgeingOutlook(const AgeingCurve& record, Instant begins, const AgeingModel& model, const Now& now);

    DaysAhead daysUntil(double effectiveDays) const;

    // Effective age that is gained by then.
    struct Gained {
        double days = 0; // from now
        double fast = 0;
        double usual = 0;
        double slow = 0;
    };

private:
    double reached(double Gained::* course, double effectiveDays) const;

    std::vector<Gained> m_courses; // at the end of each month; the first is now
};

} // namespace holdfast
