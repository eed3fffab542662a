// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/climate_log.h"

#include "core/film/log_clock.h"
#include "core/film/log_columns.h"
#include "core/film/log_date_order.h"
#include "core/film/log_measures.h"
#include "core/film/log_text.h"
#include "core/film/log_time.h"

#include <algorithm>
#include <utility>

namespace holdfast {

namespace {

constexpr std::size_t kSkippedShown = 20;
constexpr std::size_t kLinesBeforeTable = 60; // of a logger's own remarks
constexpr std::size_t kLinesBetweenProgress = 1 << 14;
constexpr Seconds kAsWritten{0}; // times without a zone, as if they were UTC
constexpr Band<Celsius> kBelievable{{-40}, {80}};

// Bytes of the UTF-8 character that begins with this one; 0 where none does.
std::size_t utf8Length(unsigned char lead) {
    if (lead < 0x80)
        return 1;
    if (lead < 0xC2 || lead > 0xF4)
        return 0;
    return lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
}

// A field as an error shows it: not too long, and valid UTF-8 whatever the file was.
std::string quoted(std::string_view text) {
    constexpr std::size_t kLongest = 40;
    std::string shown;
    for (std::size_t at = 0; at < text.size() && shown.size() < kLongest;) {
        const std::size_t length = utf8Length(static_cast<unsigned char>(text[at]));
        const bool isWhole = length > 0 && at + length <= text.size() &&
                             std::ranges::all_of(text.substr(at + 1, length - 1), [](char next) {
                                 return (static_cast<unsigned char>(next) & 0xC0) == 0x80;
                             });
        if (isWhole && static_cast<unsigned char>(text[at]) >= 0x20) {
            shown += text.substr(at, length);
            at += length;
        } else {
            shown += '?';
            ++at;
        }
    }
    return shown;
}

class LogReader {
public:
    LogReader(std::string_view text, const OffsetAt& offsetAt, std::optional<DateOrder> dateOrder)
        : m_separator(separatorOf(text))
        , m_decimalComma(m_separator != ',')
        , m_offsetAt(offsetAt)
        , m_chosenOrder(dateOrder)
        , m_records(text, m_separator)
        , m_size(text.size()) {}

    Result<ClimateLog> read(const std::function<bool(double)>& progress) {
        findTable();
        std::size_t untilProgress = kLinesBetweenProgress;
        while (!m_failure && !m_log.mustBeAsked() && m_records.next()) {
            readLine();
            if (--untilProgress == 0) {
                untilProgress = kLinesBetweenProgress;
                if (progress &&
                    !progress(static_cast<double>(m_records.position()) / static_cast<double>(m_size)))
                    return plainError(said("Stopped. No reading was added."));
            }
        }
        if (m_log.mustBeAsked())
            return std::move(m_log);
        judge();
        if (m_failure)
            return *m_failure;
        putInOrder();
        if (progress && !progress(1.0))
            return plainError(said("Stopped. No reading was added."));
        return std::move(m_log);
    }

private:
    // Leaves the records at the line before the first that is to be read: after the header, or at the start.
    // A line that names a time and a temperature alone may be a remark: it counts where no fuller one
    // follows.
    void findTable() {
        LogRecords ahead = m_records;
        bool hasHeader = false;
        for (std::size_t looked = 0; looked < kLinesBeforeTable && ahead.next(); ++looked) {
            if (const auto columns = columnsOf(ahead.fields())) {
                takeHeader(*columns, ahead);
                hasHeader = true;
                if (columns->humidity)
                    return;
                continue;
            }
            if (hasHeader && ahead.fields().size() <= lastColumn())
                continue;
            if (hasHeader && timeOf(ahead.fields(), DateOrder::DayFirst).kind != LogTimeKind::NoTime)
                return;
            if (!hasHeader && isTableWithoutHeader(ahead.fields()))
                return;
        }
    }

    void takeHeader(const LogColumns& columns, const LogRecords& behind) {
        m_columns = columns;
        m_log.wasFahrenheit = columns.isFahrenheit;
        m_records = behind;
    }

    // Its columns are in the usual order: time, or day and time, temperature, humidity.
    bool isTableWithoutHeader(const std::vector<std::string_view>& fields) {
        const std::size_t first = isDateAndClockApart(fields) ? 2 : 1;
        if (first == 2)
            m_columns.clock = 1;
        else if (fields.size() < 2 || timeOf(fields, DateOrder::DayFirst).kind == LogTimeKind::NoTime)
            return false;
        m_columns.temperature = first;
        m_columns.humidity.reset();
        if (fields.size() > first + 1)
            m_columns.humidity = first + 1;
        return true;
    }

    bool isDateAndClockApart(const std::vector<std::string_view>& fields) const {
        return fields.size() >= 3 &&
               readLogTime(fields[0], fields[1], kAsWritten).kind != LogTimeKind::NoTime;
    }

    LogTime timeOf(const std::vector<std::string_view>& fields, DateOrder order) const {
        if (m_columns.clock)
            return readLogTime(fields[m_columns.time], fields[*m_columns.clock], kAsWritten, order);
        return readLogTime(fields[m_columns.time], kAsWritten, order);
    }

    // At the first line that needs it: the chosen order, or the one that the lines from here on show.
    void settleDateOrder() {
        m_log.dateOrder = m_chosenOrder;
        DateOrderEvidence evidence;
        bool isCertain = addTo(evidence, m_records.fields());
        for (LogRecords ahead = m_records; !m_chosenOrder && !isCertain && ahead.next();)
            isCertain = addTo(evidence, ahead.fields());
        if (!m_chosenOrder)
            m_log.dateOrder = evidence.verdict();
        if (isCertain)
            m_log.doubtfulDate.reset();
    }

    bool addTo(DateOrderEvidence& evidence, const std::vector<std::string_view>& fields) {
        if (fields.size() <= lastColumn())
            return false;
        const LogTime dayFirst = timeOf(fields, DateOrder::DayFirst);
        const LogTime monthFirst = timeOf(fields, DateOrder::MonthFirst);
        const auto dayOf = [](const LogTime& time) { return dateOf(LocalTime{time.at.time_since_epoch()}); };
        if (!m_log.doubtfulDate && dayFirst.needsOrder && dayFirst.at != monthFirst.at) {
            const std::string_view written = fields[m_columns.time];
            m_log.doubtfulDate = {std::string(written.substr(0, written.find_first_of("T ,"))),
                                  dayOf(dayFirst), dayOf(monthFirst)};
        }
        return evidence.add(dayFirst, monthFirst);
    }

    // None where the line has no time, or the log cannot be read on.
    std::optional<LogTime> readTime(const std::vector<std::string_view>& fields) {
        LogTime time = timeOf(fields, m_log.dateOrder.value_or(DateOrder::DayFirst));
        if (time.needsOrder && !m_log.dateOrder) {
            settleDateOrder();
            if (!m_log.dateOrder)
                return std::nullopt;
            time = timeOf(fields, *m_log.dateOrder);
        }
        const std::string_view written = fields[m_columns.time];
        if (time.kind == LogTimeKind::OtherOrder) {
            const bool dayFirst = m_log.dateOrder == DateOrder::DayFirst;
            const std::vector<NamedValue> values = lineAnd(written);
            m_failure = plainError(
                dayFirst
                    ? said(
                          "Line {line}: “{written}” has the month before the day, unlike the lines above it.",
                          values)
                    : said(
                          "Line {line}: “{written}” has the day before the month, unlike the lines above it.",
                          values));
            return std::nullopt;
        }
        if (time.kind == LogTimeKind::NoTime) {
            skip(said("Line {line}: “{written}” is not a time.", lineAnd(written)));
            return std::nullopt;
        }
        return time;
    }

    std::size_t lastColumn() const {
        return std::max({m_columns.time, m_columns.clock.value_or(0), m_columns.temperature,
                         m_columns.humidity.value_or(0)});
    }

    std::vector<NamedValue> lineAnd(std::string_view written) const {
        return {{"line", m_records.line()}, {"written", quoted(written)}};
    }

    void skip(Sentence reason) {
        ++m_log.skippedCount;
        if (m_log.skipped.size() < kSkippedShown)
            m_log.skipped.push_back(std::move(reason));
    }

    Sentence tooFewFields(std::size_t count) const {
        const std::vector<NamedValue> values{{"line", m_records.line()}, {"n", count}};
        return m_columns.humidity
                   ? said("Line {line}: a time, a temperature and a humidity are needed, there is {n} field.|"
                          "Line {line}: a time, a temperature and a humidity are needed, there are {n} "
                          "fields.",
                          values)
                   : said("Line {line}: a time and a temperature are needed, there is {n} field.|"
                          "Line {line}: a time and a temperature are needed, there are {n} fields.",
                          values);
    }

    void readLine() {
        const std::vector<std::string_view>& fields = m_records.fields();
        if (fields.size() <= lastColumn()) {
            skip(tooFewFields(fields.size()));
            return;
        }
        const auto time = readTime(fields);
        if (!time)
            return;
        bool isFahrenheit = m_columns.isFahrenheit;
        const auto temperature =
            readLoggedTemperature(fields[m_columns.temperature], m_decimalComma, isFahrenheit);
        if (!temperature) {
            skip(said("Line {line}: “{written}” is not a temperature.",
                      lineAnd(fields[m_columns.temperature])));
            return;
        }
        const bool hasHumidity = m_columns.humidity && !fields[*m_columns.humidity].empty();
        std::optional<Humidity> humidity;
        if (hasHumidity) {
            humidity = readLoggedHumidity(fields[*m_columns.humidity], m_decimalComma);
            if (!humidity) {
                skip(said("Line {line}: “{written}” is not a humidity from 0 to 100 %.",
                          lineAnd(fields[*m_columns.humidity])));
                return;
            }
        }
        ++m_measured;
        m_log.wasFahrenheit = m_log.wasFahrenheit || isFahrenheit;
        if (humidity && humidity->percent > 1)
            m_isShare = false;
        if (humidity && m_firstMeasured.empty())
            m_firstMeasured = lineAnd(fields[*m_columns.humidity]);
        if (!kBelievable.contains(*temperature)) {
            if (m_unbelievable++ == 0)
                m_firstUnbelievable = lineAnd(fields[m_columns.temperature]);
            skip(said("Line {line}: “{written}” is outside −40 to 80 °C.",
                      lineAnd(fields[m_columns.temperature])));
            return;
        }
        m_log.readings.push_back(readingOf(time->at, *temperature, humidity));
        m_isLocal.push_back(!time->hasZone);
        m_log.withoutHumidity += humidity ? 0 : 1;
    }

    // What can only be said of the whole log.
    void judge() {
        if (m_failure)
            return;
        if (m_measured == 0) {
            const Sentence words = said("No readings found. Each line needs a time and a temperature.");
            m_failure =
                plainError(m_log.skipped.empty() ? words : oneAfterTheOther(words, m_log.skipped.front()));
        } else if (m_unbelievable * 10 > m_measured) {
            m_firstUnbelievable.push_back({"beyond", m_unbelievable});
            m_firstUnbelievable.push_back({"measured", m_measured});
            m_failure = plainError(said("Line {line}: “{written}” is outside −40 to 80 °C, and so do "
                                        "{beyond} of {measured} lines. If "
                                        "the log is in °F, name the unit in its header.",
                                        m_firstUnbelievable));
        } else if (m_isShare && !m_firstMeasured.empty()) {
            m_failure =
                plainError(said("Line {line}: “{written}” and every other humidity lie between 0 and 1. "
                                "Humidity must be in percent, 0 to 100.",
                                m_firstMeasured));
        }
    }

    // Until all times are known, local ones are kept as if they were UTC.
    void settleLocalTimes() {
        std::vector<LocalTime> written;
        for (std::size_t at = 0; at < m_isLocal.size(); ++at)
            if (m_isLocal[at])
                written.emplace_back(m_log.readings[at].at.time_since_epoch());
        const auto instants = instantsOfLog(written, m_offsetAt);
        auto instant = instants.begin();
        for (std::size_t at = 0; at < m_isLocal.size(); ++at)
            if (m_isLocal[at])
                m_log.readings[at].at = *instant++;
    }

    void putInOrder() {
        settleLocalTimes();
        ClimateSeries& readings = m_log.readings;
        const auto isEarlier = [](const ClimateReading& one, const ClimateReading& other) {
            return one.at < other.at;
        };
        if (!std::ranges::is_sorted(readings, isEarlier))
            std::ranges::stable_sort(readings, isEarlier);
        const auto repeated = std::ranges::unique(readings, {}, &ClimateReading::at);
        m_log.duplicates = repeated.size();
        readings.erase(repeated.begin(), repeated.end());
        for (std::size_t at = 1; at < readings.size(); ++at) {
            if (readings[at].at - readings[at - 1].at > kAllowedGap)
                ++m_log.gaps;
        }
    }

    char m_separator;
    bool m_decimalComma;
    const OffsetAt& m_offsetAt;
    std::optional<DateOrder> m_chosenOrder;
    LogRecords m_records;
    std::size_t m_size;
    LogColumns m_columns;
    ClimateLog m_log;
    std::vector<bool> m_isLocal; // its readings, until they are in order
    std::optional<Error> m_failure;
    std::size_t m_measured = 0; // lines with a time, a temperature and a humidity
    std::size_t m_unbelievable = 0;
    bool m_isShare = true; // no humidity above 1 yet
    // The line and what is written there.
    std::vector<NamedValue> m_firstMeasured;
    std::vector<NamedValue> m_firstUnbelievable;
};

} // namespace

Result<ClimateLog> readClimateLog(std::string_view file, const OffsetAt& offsetAt,
                                  const std::function<bool(double)>& progress,
                                  std::optional<DateOrder> dateOrder) {
    const LogText text{file};
    if (!text.isText())
        return plainError(said("This file is not text. Save the log as CSV or plain text."));
    return LogReader{text.utf8(), offsetAt, dateOrder}.read(progress);
}

} // namespace holdfast
