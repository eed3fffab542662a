// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/window_values.h"

#include "core/trade/assertion.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>

#include <cmath>

namespace holdfast::app {

namespace {

class ValueWords {
    Q_DECLARE_TR_FUNCTIONS(ValueWords)
};

// Patterns of QLocale::toString: ddd is the weekday in short, MMM the month.
class DatePatterns {
    Q_DECLARE_TR_FUNCTIONS(DatePatterns)
};

QDate qtDate(LocalDate day) {
    constexpr qint64 kEpoch = 2440588; // the Julian day of 1970-01-01
    return QDate::fromJulianDay(kEpoch + day.time_since_epoch().count());
}

QString written(LocalDate day, const QString& pattern) {
    return QLocale().toString(qtDate(day), pattern);
}

QString asWritten(const std::string& name) {
    return QString::fromStdString(name);
}

// Thousands are marked in long counts and in money only.
QLocale withMarkedThousands() {
    QLocale locale;
    locale.setNumberOptions(QLocale::DefaultNumberOptions);
    return locale;
}

QString asWritten(std::int64_t count) {
    return withMarkedThousands().toString(static_cast<qlonglong>(count));
}

QString asWritten(Numeral numeral) {
    return QLocale().toString(static_cast<qlonglong>(numeral.value));
}

QString asWritten(const Decimal& number) {
    if (number.places)
        return QLocale().toString(number.value, 'f', *number.places);
    const double tenths = std::round(number.value * 10.0) / 10.0 + 0.0; // no "-0"
    return QLocale().toString(tenths, 'f', tenths == std::trunc(tenths) ? 0 : 1);
}

QString asWritten(LocalDate day) {
    return written(day, DatePatterns::tr("ddd d MMM"));
}

QString asWritten(DateWithYear day) {
    return written(day.date, DatePatterns::tr("d MMM yyyy"));
}

QString asWritten(Weekday day) {
    return written(day.date, DatePatterns::tr("ddd"));
}

QString asWritten(DayOfMonth day) {
    return written(day.date, DatePatterns::tr("d MMM"));
}

// "2–20 Jan", "28 Dec – 3 Jan": `last` in whole, the first day as far as it differs.
QString spanWords(const DaySpan& span, const QString& first, const QString& last) {
    if (span.first == span.last)
        return last;
    const std::chrono::year_month_day begins{span.first};
    const std::chrono::year_month_day ends{span.last};
    if (begins.year() == ends.year() && begins.month() == ends.month())
        return ValueWords::tr("%1–%2").arg(written(span.first, DatePatterns::tr("d")), last);
    return ValueWords::tr("%1 – %2").arg(first, last);
}

QString asWritten(const DaySpan& span) {
    const bool isOneYear =
        std::chrono::year_month_day{span.first}.year() == std::chrono::year_month_day{span.last}.year();
    return spanWords(span,
                     isOneYear ? asWritten(DayOfMonth{span.first}) : asWritten(DateWithYear{span.first}),
                     asWritten(DateWithYear{span.last}));
}

QString asWritten(const NearSpan& near) {
    return spanWords(near.span, asWritten(DayOfMonth{near.span.first}),
                     asWritten(DayOfMonth{near.span.last}));
}

QString asWritten(TimeOfDay time) {
    const auto sinceMidnight = time.time - LocalTime{std::chrono::floor<Days>(time.time)};
    return QLocale().toString(QTime::fromMSecsSinceStartOfDay(static_cast<int>(sinceMidnight.count()) * 1000),
                              DatePatterns::tr("HH:mm"));
}

QString asWritten(LocalTime time) {
    return ValueWords::tr("%1 %2").arg(asWritten(dateOf(time)), asWritten(TimeOfDay{time}));
}

QString asWritten(const Amount& amount) {
    const double units =
        static_cast<double>(amount.money.minor) / std::pow(10.0, std::max(amount.currency.exponent, 0));
    return amount.currency.sign.empty()
               ? withMarkedThousands().toString(units, 'f', amount.currency.exponent)
               : withMarkedThousands().toCurrencyString(units, QString::fromStdString(amount.currency.sign),
                                                        amount.currency.exponent);
}

QString asWritten(Millimetres length) {
    return ValueWords::tr("%1 mm").arg(asWritten(Numeral{length.value}));
}

QString asWritten(InMetres length) {
    return ValueWords::tr("%1 m").arg(asWritten(Decimal{length.length.metres(), 2}));
}

QString asWritten(const Extent& size) {
    return ValueWords::tr("%1 × %2 mm")
        .arg(asWritten(Numeral{size.width.value}), asWritten(Numeral{size.height.value}));
}

QString asWritten(Celsius temperature) {
    return ValueWords::tr("%1 °C").arg(asWritten(Decimal{temperature.value}));
}

QString asWritten(Seconds seconds) {
    return ValueWords::tr("%1 s").arg(asWritten(Numeral{seconds.count()}));
}

QString asWritten(const Parts&) {
    HOLDFAST_ASSERT(false);
    return {};
}

} // namespace

QString asLocaleWrites(const Value& value) {
    return std::visit([](const auto& held) { return asWritten(held); }, value.held());
}

QString monthAsLocaleWrites(LocalDate day) {
    return written(day, DatePatterns::tr("MMM yyyy"));
}

QString longDayAsLocaleWrites(LocalDate day) {
    return written(day, DatePatterns::tr("dddd d MMMM"));
}

std::optional<LocalDate> dateAsLocaleWrites(const QString& text) {
    const QDate date = QLocale().toDate(text, DatePatterns::tr("d MMM yyyy"));
    if (!date.isValid())
        return std::nullopt;
    return localDate(date.year(), static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

} // namespace holdfast::app
