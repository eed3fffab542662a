// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/day_plan_runs.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace holdfast {

namespace {

constexpr std::size_t kNone = static_cast<std::size_t>(-1);

Seconds rounded(double seconds) {
    constexpr double kMost = 9.0e18;
    return Seconds{static_cast<std::int64_t>(std::llround(std::min(seconds, kMost)))};
}

class Writing {
public:
    Writing(const TimedDay& day, const DayRecord& record)
        : m_day(day)
        , m_record(record)
        , m_placeOf(day.jobs().size(), kNone)
        , m_lastRunOf(day.jobs().size(), kNone)
        , m_isListed(day.jobs().size(), false) {
        for (std::size_t place = 0; place < m_record.jobs.size(); ++place)
            m_placeOf[m_record.jobs[place]] = place;
    }

    DayPlan write(const DayScore& reached) {
        for (std::size_t platen = 0; platen < m_day.request().platens.size(); ++platen) {
            writeRuns(platen);
            writeUnpressed(platen);
        }
        writeSpans();

        m_plan.ends = at(reached.ends);
        m_plan.lateness = rounded(reached.lateness);
        m_plan.changes = reached.changes;
        for (HeatRun& run : m_plan.runs)
            std::ranges::stable_sort(run.garments, {}, &PlannedGarment::begins);
        std::ranges::stable_sort(m_plan.runs, {}, &HeatRun::begins);
        return std::move(m_plan);
    }

private:
    Instant at(std::int64_t seconds) const {
        const auto start = m_day.request().start.time_since_epoch().count();
        constexpr auto kLast = std::numeric_limits<std::int64_t>::max();
        return Instant{Seconds{start > kLast - seconds ? kLast : start + seconds}};
    }

    PressId pressOf(std::size_t platen) const { return m_day.request().platens[platen].press.id; }

    PlannedGarment planned(std::size_t job, Celsius temperature) const {
        const DayRecord::Garment& entry = m_record.garments[m_placeOf[job]];
        const TimedJob& asked = m_day.jobs()[job];
        PlannedGarment garment{asked.garment,    pressOf(entry.platen), temperature,
                               at(entry.begins), at(entry.ends),        {}};
        garment.late = Seconds{std::max<std::int64_t>(0, entry.ends - asked.due)};
        return garment;
    }

    void writeRuns(std::size_t platen) {
        std::optional<std::size_t> run;
        m_nextChange = 0;
        for (const Sitting& sitting : m_record.sittings) {
            if (sitting.platen != platen)
                continue;
            if (!run || m_plan.runs[*run].temperature != Celsius{sitting.temperature}) {
                beginRun(sitting);
                run = m_plan.runs.size() - 1;
            }
            m_plan.runs[*run].ends = at(sitting.ends);
            addTo(m_plan.runs[*run], sitting.job);
            m_lastRunOf[sitting.job] = *run;
        }
        // Over when the last garment that was on the platen for the last time is.
        for (const std::size_t job : m_record.jobs) {
            const DayRecord::Garment& entry = m_record.garments[m_placeOf[job]];
            if (entry.platen != platen || m_lastRunOf[job] == kNone)
                continue;
            HeatRun& last = m_plan.runs[m_lastRunOf[job]];
            last.ends = std::max(last.ends, at(entry.ends));
        }
    }

    void beginRun(const Sitting& sitting) {
        HeatRun run;
        run.press = pressOf(sitting.platen);
        run.temperature = Celsius{sitting.temperature};
        run.begins = at(sitting.begins);
        // The last change before it brought the platen to this temperature.
        for (; m_nextChange < m_record.changes.size(); ++m_nextChange) {
            const HeatChange& change = m_record.changes[m_nextChange];
            if (change.platen != sitting.platen)
                continue;
            if (change.begins > sitting.begins)
                break;
            run.change = Seconds{change.takes};
            run.changedFrom = change.from ? std::optional{Celsius{*change.from}} : std::nullopt;
        }
        m_plan.runs.push_back(std::move(run));
    }

    void addTo(HeatRun& run, std::size_t job) {
        const GarmentId garment = m_day.jobs()[job].garment;
        if (!m_isListed[job]) {
            m_isListed[job] = true;
            run.garments.push_back(planned(job, run.temperature));
            return;
        }
        const bool beganHere =
            std::ranges::find(run.garments, garment, &PlannedGarment::garment) != run.garments.end();
        if (!beganHere && std::ranges::find(run.again, garment) == run.again.end())
            run.again.push_back(garment);
    }

    // Garments whose last passes are done: only to be peeled, finished by hand or looked at.
    void writeUnpressed(std::size_t platen) {
        for (const std::size_t job : m_record.jobs) {
            const DayRecord::Garment& entry = m_record.garments[m_placeOf[job]];
            if (m_isListed[job] || entry.platen != platen)
                continue;
            m_isListed[job] = true;
            HeatRun& run = runGoingOn(platen, entry);
            run.garments.push_back(planned(job, run.temperature));
            run.ends = std::max(run.ends, at(entry.ends));
        }
    }

    HeatRun& runGoingOn(std::size_t platen, const DayRecord::Garment& entry) {
        HeatRun* found = nullptr;
        for (HeatRun& run : m_plan.runs) {
            if (run.press == pressOf(platen) && (!found || run.begins <= at(entry.begins)))
                found = &run;
        }
        if (found)
            return *found;
        HeatRun run;
        run.press = pressOf(platen);
        run.temperature = Celsius{entry.temperature};
        run.begins = at(entry.begins);
        run.ends = at(entry.ends);
        m_plan.runs.push_back(std::move(run));
        return m_plan.runs.back();
    }

    void writeSpans() {
        m_plan.spans.reserve(m_record.spans.size());
        for (const DayRecord::Span& span : m_record.spans) {
            const std::size_t platen = m_record.garments[m_placeOf[span.job]].platen;
            m_plan.spans.push_back({m_day.jobs()[span.job].garment, span.step, span.resource, pressOf(platen),
                                    at(span.begins), at(span.ends)});
        }
        std::ranges::stable_sort(m_plan.spans, {}, &PlannedSpan::begins);
    }

    const TimedDay& m_day;
    const DayRecord& m_record;
    std::vector<std::size_t> m_placeOf;   // of a job in the record
    std::vector<std::size_t> m_lastRunOf; // by job, while the runs are written
    std::vector<bool> m_isListed;         // by job
    std::size_t m_nextChange = 0;         // of the record, while the runs of a platen are written
    DayPlan m_plan;
};

} // namespace

DayPlan writtenOut(const TimedDay& day, const DayRecord& record, const DayScore& reached) {
    return Writing{day, record}.write(reached);
}

} // namespace holdfast
