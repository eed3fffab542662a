// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/formats.h"

#include "app/desk/window_language.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>
#include <QRegularExpression>

#include <cmath>

namespace holdfast::app {

namespace {

QString inFormats(const char* text) {
    return QCoreApplication::translate("Formats", text);
}

Error notA(const QString& field, const QString& allowed) {
    return fieldError(field.toStdString(), inWindow(inFormats("%1: %2").arg(field, allowed)));
}

// A decimal comma is as good as a point.
std::optional<double> numberIn(const QString& text) {
    bool good = false;
    const double number = QLocale::c().toDouble(text.trimmed().replace(u',', u'.'), &good);
    return good && std::isfinite(number) ? std::optional{number} : std::nullopt;
}

// The year that brings a day without a year closest to today.
std::optional<LocalDate> nearestYear(unsigned dayOfMonth, unsigned month, LocalDate today) {
    const int thisYear = static_cast<int>(std::chrono::year_month_day{today}.year());
    std::optional<LocalDate> nearest;
    for (int year = thisYear - 1; year <= thisYear + 1; ++year) {
        const auto date = std::chrono::year{year} / std::chrono::month{month} / std::chrono::day{dayOfMonth};
        if (!date.ok())
            continue;
        const LocalDate candidate{date};
        if (!nearest || std::chrono::abs(candidate - today) < std::chrono::abs(*nearest - today))
            nearest = candidate;
    }
    return nearest;
}

// "30 Nov", "Mon 30 Nov", "30 November 2026": as days are shown, with or without the year.
std::optional<LocalDate> dateWithMonthName(const QString& typed, LocalDate today) {
    static const QRegularExpression named(
        QStringLiteral(R"(^(?:\p{L}+,? )?(\d{1,2}) (\p{L}+)(?: (\d{4}))?$)"),
        QRegularExpression::UseUnicodePropertiesOption);
    const auto match = named.match(typed);
    if (!match.hasMatch())
        return std::nullopt;
    for (unsigned month = 1; month <= 12; ++month) {
        const auto first = std::chrono::year{2000} / std::chrono::month{month} / std::chrono::day{1};
        if (!match.captured(2).startsWith(date(LocalDate{first}).section(u' ', 1, 1).toLower()))
            continue;
        const unsigned dayOfMonth = match.captured(1).toUInt();
        if (match.captured(3).isEmpty())
            return nearestYear(dayOfMonth, month, today);
        const auto whole = std::chrono::year{match.captured(3).toInt()} / std::chrono::month{month} /
                           std::chrono::day{dayOfMonth};
        return whole.ok() ? std::optional{LocalDate{whole}} : std::nullopt;
    }
    return std::nullopt;
}

} // namespace

QString words(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString words(const char* text) {
    return words(std::string_view{text});
}

QString words(const std::string& text) {
    return words(std::string_view{text});
}

QString words(const Sentence& sentence) {
    return words(sentence.in(WindowLanguage{}));
}

std::string plain(const QString& text) {
    return text.trimmed().toStdString();
}

Sentence inWindow(const QString& words) {
    return asItIs(words.toStdString());
}

QString money(Money amount, const Currency& currency) {
    return words(spokenAmount(amount, currency));
}

QString moneyBare(Money amount, const Currency& currency) {
    return words(groupedAmount(amount, currency));
}

QString metres(Millimetres length) {
    constexpr Millimetres kLeastShown{50}; // less would be said as nothing
    if (length.value > 0 && length < kLeastShown)
        return inFormats("under 0.1 m");
    return inFormats("%1 m").arg(QLocale::c().toString(length.metres(), 'f', 1));
}

QString millimetres(Millimetres length) {
    return inFormats("%1 mm").arg(length.value);
}

QString celsius(Celsius temperature) {
    return inFormats("%1 °C").arg(QLocale::c().toString(temperature.value, 'g', 4));
}

QString humidity(Humidity humidity) {
    return inFormats("%1 %").arg(std::lround(humidity.percent));
}

QString percentOf(double share) {
    const double hundredths = share * 100;
    const bool isSmall = hundredths > 0 && hundredths < 1;
    return inFormats("%1 %").arg(QLocale::c().toString(hundredths, 'f', isSmall ? 1 : 0));
}

QString kilograms(Grams weight) {
    return inFormats("%1 kg").arg(QLocale::c().toString(static_cast<double>(weight.value) / 1000.0, 'f', 1));
}

QString countdown(Seconds left) {
    const auto seconds = std::max<std::int64_t>(0, left.count());
    if (seconds < 60)
        return QString::number(seconds);
    if (seconds < 3600)
        return QStringLiteral("%1:%2").arg(seconds / 60).arg(seconds % 60, 2, 10, QLatin1Char('0'));
    return QStringLiteral("%1:%2:%3")
        .arg(seconds / 3600)
        .arg(seconds / 60 % 60, 2, 10, QLatin1Char('0'))
        .arg(seconds % 60, 2, 10, QLatin1Char('0'));
}

QString timeSpan(Seconds span) {
    const auto seconds = std::max<std::int64_t>(0, span.count());
    if (seconds < 60)
        return inFormats("%1 s").arg(seconds);
    const auto minutes = (seconds + 30) / 60;
    if (minutes < 60)
        return inFormats("%1 min").arg(minutes);
    constexpr std::int64_t kInDaysFrom = 96; // hours
    if (minutes >= kInDaysFrom * 60)
        return dayCount(Days{(minutes + 12 * 60) / (24 * 60)});
    return minutes % 60 == 0 ? inFormats("%1 h").arg(minutes / 60)
                             : inFormats("%1 h %2 min").arg(minutes / 60).arg(minutes % 60);
}

QString dayCount(Days days) {
    return days.count() == 1 ? inFormats("1 day") : inFormats("%1 days").arg(days.count());
}

QString age(Days days) {
    // A month of an age is a twelfth of a year; the rest is days.
    const auto total = std::max<std::int64_t>(0, days.count());
    const auto months = static_cast<std::int64_t>(static_cast<double>(total) / 30.436875);
    const auto rest = total - static_cast<std::int64_t>(std::lround(static_cast<double>(months) * 30.436875));
    if (months == 0)
        return dayCount(Days{total});
    const QString inMonths = months == 1 ? inFormats("1 month") : inFormats("%1 months").arg(months);
    return QStringLiteral("%1 %2").arg(inMonths, dayCount(Days{std::max<std::int64_t>(0, rest)}));
}

QString day(LocalDate date) {
    return words(spokenDay(date));
}

QString dayNear(LocalDate date, LocalDate today) {
    const auto away = (date - today).count();
    if (away == 0)
        return inFormats("today");
    if (away == 1)
        return inFormats("tomorrow");
    if (away == -1)
        return inFormats("yesterday");
    return day(date);
}

QString date(LocalDate date) {
    return words(spokenDate(date));
}

QString longDay(LocalDate date) {
    const std::chrono::year_month_day calendar{date};
    const QDate qtDate(static_cast<int>(calendar.year()),
                       static_cast<int>(static_cast<unsigned>(calendar.month())),
                       static_cast<int>(static_cast<unsigned>(calendar.day())));
    return QLocale(QLocale::English).toString(qtDate, QStringLiteral("dddd d MMMM"));
}

QString clock(LocalTime time) {
    return words(clockTime(time));
}

QString promise(LocalTime ready, LocalDate today) {
    return inFormats("%1 from %2").arg(dayNear(dateOf(ready), today), clock(ready));
}

QColor colourOf(std::uint32_t rgb) {
    return QColor::fromRgb(static_cast<QRgb>(rgb & 0xffffffU));
}

Result<std::int64_t> readWhole(const QString& text, const QString& field, std::int64_t low,
                               std::int64_t high) {
    bool good = false;
    const qlonglong number = text.trimmed().toLongLong(&good);
    if (!good || number < low || number > high)
        return notA(field, inFormats("a whole number from %1 to %2.").arg(low).arg(high));
    return static_cast<std::int64_t>(number);
}

Result<double> readNumber(const QString& text, const QString& field, double low, double high) {
    const auto number = numberIn(text);
    if (!number || *number < low || *number > high)
        return notA(field, inFormats("a number from %1 to %2.").arg(low).arg(high));
    return *number;
}

Result<Money> readMoney(const QString& text, const QString& field, const Currency& currency) {
    const auto amount = parseAmount(plain(text), currency);
    if (!amount || amount->minor < 0)
        return notA(field, inFormats("an amount such as %1.").arg(moneyBare(Money{1050}, currency)));
    return *amount;
}

Result<LocalDate> readDate(const QString& text, const QString& field, LocalDate today) {
    const QString typed = text.trimmed().toLower();
    if (typed == inFormats("today"))
        return today;
    if (typed == inFormats("yesterday"))
        return today - Days{1};
    if (typed == inFormats("tomorrow"))
        return today + Days{1};
    if (const auto iso = parseIsoDate(typed.toStdString()))
        return *iso;
    static const QRegularExpression dayFirst(QStringLiteral(R"(^(\d{1,2})[./ ](\d{1,2})[./ ]?(\d{4})?$)"));
    if (const auto match = dayFirst.match(typed); match.hasMatch()) {
        const unsigned dayOfMonth = match.captured(1).toUInt();
        const unsigned month = match.captured(2).toUInt();
        if (match.captured(3).isEmpty()) {
            if (const auto near = nearestYear(dayOfMonth, month, today))
                return *near;
        } else {
            const auto date = std::chrono::year{match.captured(3).toInt()} / std::chrono::month{month} /
                              std::chrono::day{dayOfMonth};
            if (date.ok())
                return LocalDate{date};
        }
    }
    if (const auto named = dateWithMonthName(typed, today))
        return *named;
    return notA(field, inFormats("a day such as %1 or 25/11.").arg(date(today)));
}

Result<std::optional<LocalDate>> readOptionalDate(const QString& text, const QString& field,
                                                  LocalDate today) {
    if (text.trimmed().isEmpty())
        return std::optional<LocalDate>{};
    auto date = readDate(text, field, today);
    if (!date.ok())
        return date.error();
    return std::optional<LocalDate>{*date};
}

Result<Millimetres> readMetres(const QString& text, const QString& field, Millimetres low, Millimetres high) {
    const auto number = readNumber(text, field, low.metres(), high.metres());
    if (!number.ok())
        return number.error();
    return Millimetres{std::llround(*number * 1000.0)};
}

} // namespace holdfast::app
