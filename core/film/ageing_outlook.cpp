// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/ageing_outlook.h"

#include "core/trade/unit_normal.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace holdfast {

namespace {

constexpr std::size_t kMonthsInYear = 12;
constexpr double kPlaceSpread = 4;      // °C, of places about the reference temperature
constexpr double kSeasonSpread = 3.5;   // °C, of months about the year's mean
constexpr double kWeekSpreadUnseen = 1; // °C
constexpr double kPairsOfWeeks = 8;     // that are wanted before the record speaks for itself
constexpr double kDaysInDraw = 28;      // of weather; they count as one independent draw
constexpr double kReadingSpread = 1e-6; // °C², so that no month is known beyond its digits
constexpr int kYearsAhead = 10;

using ByMonth = std::array<double, kMonthsInYear>;

double square(double value) {
    return value * value;
}

// One month of one year, by the workshop's calendar, as far as it lies between two instants.
struct MonthPart {
    std::size_t month;
    Instant begins;
    Instant ends;
};

std::vector<MonthPart> monthsBetween(Instant from, Instant to, const Now& now) {
    std::vector<MonthPart> parts;
    const std::chrono::year_month_day day{dateOf(now.toLocal(from))};
    for (auto month = day.year() / day.month(); from < to; month += std::chrono::months{1}) {
        const LocalDate next{(month + std::chrono::months{1}) / 1};
        const Instant ends = std::min(to, now.toInstant(LocalTime{next}));
        parts.push_back({static_cast<unsigned>(month.month()) - 1u, from, ends});
        from = ends;
    }
    return parts;
}

// A mean and a covariance of the temperatures of the twelve months, about the reference.
class MonthlyWarmth {
public:
    MonthlyWarmth() {
        for (std::size_t one = 0; one < kMonthsInYear; ++one) {
            for (std::size_t other = 0; other < kMonthsInYear; ++other) {
                const double apart = (static_cast<double>(one) - static_cast<double>(other)) / kMonthsInYear;
                const double alike = std::exp(-2 * square(std::sin(std::numbers::pi * apart)));
                m_covariance[one][other] = square(kPlaceSpread) + square(kSeasonSpread) * alike;
            }
        }
    }

    double mean(std::size_t month) const { return m_mean[month]; }

    // This month was found to be so warm, with so much variance.
    void learn(std::size_t month, double warmth, double variance) {
        const ByMonth with = m_covariance[month];
        const double whole = with[month] + variance;
        const double surprise = warmth - m_mean[month];
        for (std::size_t one = 0; one < kMonthsInYear; ++one) {
            m_mean[one] += with[one] / whole * surprise;
            for (std::size_t other = 0; other < kMonthsInYear; ++other)
                m_covariance[one][other] -= with[one] * with[other] / whole;
        }
    }

    // Of the sum of the months, each times its weight.
    double variance(const ByMonth& weights) const {
        double sum = 0;
        for (std::size_t one = 0; one < kMonthsInYear; ++one) {
            for (std::size_t other = 0; other < kMonthsInYear; ++other)
                sum += weights[one] * weights[other] * m_covariance[one][other];
        }
        return std::max(0.0, sum);
    }

private:
    ByMonth m_mean{};
    std::array<ByMonth, kMonthsInYear> m_covariance{};
};

// Of the logarithm of the ageing factor, for one degree.
double steepnessOf(const AgeingModel& model) {
    return std::log(model.q10) / 10.0;
}

struct Recorded {
    double days = 0;
    double effectiveDays = 0;

    void add(const AgeingCurve::Age& age) {
        days += age.recordedDays;
        effectiveDays += age.effectiveDays - age.unrecordedDays; // unrecorded days counted one for one
    }
    // The steady temperature at which film ages as fast, above the reference.
    double warmth(double steepness) const { return std::log(effectiveDays / days) / steepness; }
    bool isEnough(double wanted) const { return days >= wanted && effectiveDays > 0; }
};

// σ² of a week's temperature, season apart.
double varianceOfWeeks(const AgeingCurve& record, Instant begins, double steepness, const Now& now) {
    double squares = 0;
    double pairs = 0;
    bool wasRead = false; // the week after
    double later = 0;
    for (Instant ends = now.instant; ends - Days{7} >= begins; ends -= Days{7}) {
        Recorded week;
        week.add(record.between(ends - Days{7}, ends));
        if (!week.isEnough(3.5)) {
            wasRead = false;
            continue;
        }
        const double warmth = week.warmth(steepness);
        if (wasRead) {
            squares += square(later - warmth) / 2;
            ++pairs;
        }
        wasRead = true;
        later = warmth;
    }
    const double missing = std::max(0.0, kPairsOfWeeks - pairs);
    return (squares + missing * square(kWeekSpreadUnseen)) / (pairs + missing);
}

MonthlyWarmth warmthOf(const AgeingCurve& record, Instant begins, double steepness, double weeks,
                       const Now& now) {
    std::array<Recorded, kMonthsInYear> months;
    for (const MonthPart& part : monthsBetween(begins, now.instant, now))
        months[part.month].add(record.between(part.begins, part.ends));
    MonthlyWarmth warmth;
    for (std::size_t month = 0; month < kMonthsInYear; ++month) {
        const Recorded& seen = months[month];
        if (seen.isEnough(1))
            warmth.learn(month, seen.warmth(steepness), weeks * kDaysInDraw / seen.days + kReadingSpread);
    }
    return warmth;
}

// Month by month from now on.
std::vector<AgeingOutlook::Gained> coursesOf(const MonthlyWarmth& warmth, double weeks,
                                             const AgeingModel& model, const Now& now) {
    const double steepness = steepnessOf(model);
    const Instant ends = now.instant + Days{static_cast<int>(365.25 * kYearsAhead)};
    std::vector<AgeingOutlook::Gained> courses{{}};
    ByMonth gained{}; // in each month of the calendar, over all years
    double usual = 0;
    double weather = 0; // variance of what is gained, as months are no copies of each other
    for (const MonthPart& part : monthsBetween(now.instant, ends, now)) {
        const double days = daysBetween(part.begins, part.ends);
        const double more = days * std::exp(steepness * warmth.mean(part.month));
        usual += more;
        gained[part.month] += more;
        weather += square(more) * weeks * kDaysInDraw / days;
        const double variance = (warmth.variance(gained) + weather) / square(usual) + weeks;
        const double factor = std::exp(kEightOfTen * std::abs(steepness) * std::sqrt(variance));
        const AgeingOutlook::Gained& before = courses.back();
        courses.push_back({before.days + days, std::max(before.fast, usual * factor), usual,
                           std::max(before.slow, usual / factor)});
    }
    return courses;
}

} // namespace

AgeingOutlook::AgeingOutlook(const AgeingModel& model, const Now& now)
    : m_courses(coursesOf(MonthlyWarmth{}, square(kWeekSpreadUnseen), model, now)) {}

AgeingOutlook::AgeingOutlook(const AgeingCurve& record, Instant begins, const AgeingModel& model,
                             const Now& now) {
    const double steepness = steepnessOf(model);
    if (steepness == 0) { // warmth ages nothing: a day is a day
        m_courses = coursesOf(MonthlyWarmth{}, 0, model, now);
        return;
    }
    const double weeks = varianceOfWeeks(record, begins, steepness, now);
    m_courses = coursesOf(warmthOf(record, begins, steepness, weeks, now), weeks, model, now);
}

double AgeingOutlook::reached(double Gained::* course, double effectiveDays) const {
    const auto enough = std::ranges::lower_bound(m_courses, effectiveDays, {}, course);
    if (enough == m_courses.begin())
        return 0;
    if (enough == m_courses.end()) {
        const Gained& last = m_courses.back();
        const Gained& yearBefore = m_courses[m_courses.size() - 1 - kMonthsInYear];
        const double pace = (last.*course - yearBefore.*course) / (last.days - yearBefore.days);
        return last.days + (effectiveDays - last.*course) / pace;
    }
    const Gained& before = *std::prev(enough);
    const double share = (effectiveDays - before.*course) / ((*enough).*course - before.*course);
    return std::lerp(before.days, enough->days, share);
}

DaysAhead AgeingOutlook::daysUntil(double effectiveDays) const {
    return {.fast = reached(&Gained::fast, effectiveDays),
            .usual = reached(&Gained::usual, effectiveDays),
            .slow = reached(&Gained::slow, effectiveDays)};
}

} // namespace holdfast
