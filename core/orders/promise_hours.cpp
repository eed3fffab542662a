// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/promise_hours.h"

#include "core/trade/assertion.h"
#include "core/trade/clock_changes.h"

#include <algorithm>
#include <utility>

namespace holdfast {

namespace {

void takeOut(std::vector<OpenStretch>& hours, LocalTime from, LocalTime until) {
    std::vector<OpenStretch> left;
    for (const OpenStretch& stretch : hours) {
        const OpenStretch before{stretch.begins, std::min(stretch.ends, from)};
        const OpenStretch after{std::max(stretch.begins, until), stretch.ends};
        for (const OpenStretch& part : {before, after})
            if (part.begins < part.ends)
                left.push_back(part);
    }
    hours = std::move(left);
}

} // namespace

std::vector<OpenStretch> openHours(const ShopSettings& settings, LocalTime from, Days ahead) {
    constexpr Minutes kDay{24 * 60};
    std::vector<OpenStretch> hours;
    const LocalDate last = dateOf(from) + ahead;
    for (LocalDate date = dateOf(from); date <= last; date += Days{1}) {
        const std::optional<OpeningHours> open = settings.hoursOn(date);
        if (!open)
            continue;
        const LocalTime midnight{date};
        const OpenStretch stretch{std::max(from, midnight + std::clamp(open->opens, Minutes{0}, kDay)),
                                  midnight + std::clamp(open->closes, Minutes{0}, kDay)};
        if (stretch.begins < stretch.ends)
            hours.push_back(stretch);
    }
    return hours;
}

std::vector<OpenStretch> openHours(const ShopSettings& settings, const Now& now, Days ahead) {
    std::vector<OpenStretch> hours = openHours(settings, now.local(), ahead);
    if (now.changes)
        for (const ClockChanges::LeftOut& leftOut : now.changes->leftOut())
            takeOut(hours, leftOut.from, leftOut.until);
    return hours;
}

Seconds outsideHours(const ShopSettings& settings, const Now& now, Instant until) {
    Seconds outside = std::max(Seconds{0}, until - now.instant);
    for (const OpenStretch& open : openHours(settings, now, std::chrono::ceil<Days>(outside) + Days{1}))
        outside -=
            std::max(Seconds{0}, std::min(now.toInstant(open.ends), until) - now.toInstant(open.begins));
    return outside;
}

std::optional<LocalTime> nextOpen(std::span<const OpenStretch> hours, LocalTime from) {
    const auto stretch = std::ranges::upper_bound(hours, from, {}, &OpenStretch::ends);
    if (stretch == hours.end())
        return std::nullopt;
    return std::max(from, stretch->begins);
}

std::vector<OpenStretch> hoursLeft(std::span<const OpenStretch> hours, std::span<const PromisedWork> load) {
    std::vector<PromisedWork> latestFirst(load.begin(), load.end());
    std::ranges::stable_sort(latestFirst, std::ranges::greater{}, &PromisedWork::due);

    std::vector<OpenStretch> left; // latest first
    auto next = hours.rbegin();
    OpenStretch stretch = next == hours.rend() ? OpenStretch{} : *next;
    const auto goOn = [&] {
        if (++next != hours.rend())
            stretch = *next;
    };
    const auto leave = [&](LocalTime begins) {
        if (begins < stretch.ends)
            left.push_back({begins, stretch.ends});
        stretch.ends = begins;
    };

    Seconds tooLate{0};
    for (const PromisedWork& one : latestFirst) {
        while (next != hours.rend() && stretch.begins >= one.due) {
            leave(stretch.begins);
            goOn();
        }
        if (next != hours.rend() && stretch.ends > one.due)
            leave(one.due);
        Seconds work = std::max(one.work, Seconds{0});
        while (next != hours.rend() && work > Seconds{0}) {
            const Seconds taken = std::min(work, stretch.length());
            work -= taken;
            stretch.ends -= taken;
            if (stretch.length() == Seconds{0})
                goOn();
        }
        tooLate += work;
    }
    while (next != hours.rend()) {
        leave(stretch.begins);
        goOn();
    }
    std::ranges::reverse(left);

    auto first = left.begin();
    while (first != left.end() && tooLate > Seconds{0}) {
        const Seconds taken = std::min(tooLate, first->length());
        tooLate -= taken;
        first->begins += taken;
        if (first->length() == Seconds{0})
            ++first;
    }
    left.erase(left.begin(), first);
    return left;
}

std::optional<LocalTime> doneBy(std::span<const OpenStretch> hours, LocalTime from, Seconds work) {
    HOLDFAST_ASSERT(work > Seconds{0});
    for (const OpenStretch& stretch : hours) {
        const LocalTime begins = std::max(from, stretch.begins);
        if (begins >= stretch.ends)
            continue;
        if (work <= stretch.ends - begins)
            return begins + work;
        work -= stretch.ends - begins;
    }
    return std::nullopt;
}

} // namespace holdfast
