// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/formats.h"

#include "app/desk/window_language.h"
#include "app/desk/window_values.h"

#include <QCoreApplication>
#include <QLocale>
#include <QRegularExpression>

#include <cmath>

namespace holdfast::app {

namespace {

class Formats {
    Q_DECLARE_TR_FUNCTIONS(Formats)
};

Error notA(const QString& field, const QString& allowed) {
    return fieldError(field.toStdString(), inWindow(Formats::tr("%1: %2").arg(field, allowed)));
}

// What was typed in the digits and marks of the window's language, in those of C: "٢٦٫٥" as "26.5". Points
// and commas are left as they are: which of them begins the decimals is seen from the number.
QString inPlainDigits(const QString& typed) {
    QString plain;
    for (const QChar letter : typed.trimmed()) {
        if (letter.digitValue() >= 0)
            plain.append(QChar(u'0' + letter.digitValue()));
        else if (letter.isSpace() || letter == u'’' || letter == u'\u066C') // between thousands
            plain.append(u' ');
        else if (letter == u'\u066B')
            plain.append(u'.');
        else if (letter == u'\u2212')
            plain.append(u'-');
        else
            plain.append(letter);
    }
    return plain;
}

// A decimal comma is as good as a point.
std::optional<double> numberIn(const QString& text) {
    bool good = false;
    const double number = QLocale::c().toDouble(inPlainDigits(text).replace(u',', u'.'), &good);
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

// Which month begins so, in the window's language or in English.
std::optional<unsigned> monthNamed(const QString& typed) {
    for (const QLocale& locale : {QLocale(), QLocale(QLocale::English)})
        for (unsigned month = 1; month <= 12; ++month) {
            QString name = locale.monthName(static_cast<int>(month), QLocale::ShortFormat).toLower();
            if (name.endsWith(u'.'))
                name.chop(1);
            if (typed.startsWith(name))
                return month;
        }
    return std::nullopt;
}

// "30 Nov", "Mon 30 Nov", "30 November 2026": as days are shown, with or without the year.
std::optional<LocalDate> dateWithMonthName(const QString& typed, LocalDate today) {
    static const QRegularExpression named(
        QStringLiteral(R"(^(?:\p{L}+[.,]* )?(\d{1,2})\.? (\p{L}+)\.?(?: (\d{4}))?$)"),
        QRegularExpression::UseUnicodePropertiesOption);
    const auto match = named.match(typed);
    if (!match.hasMatch())
        return std::nullopt;
    const auto month = monthNamed(match.captured(2));
    if (!month)
        return std::nullopt;
    const unsigned dayOfMonth = match.captured(1).toUInt();
    if (match.captured(3).isEmpty())
        return nearestYear(dayOfMonth, *month, today);
    const auto whole = std::chrono::year{match.captured(3).toInt()} / std::chrono::month{*month} /
                       std::chrono::day{dayOfMonth};
    return whole.ok() ? std::optional{LocalDate{whole}} : std::nullopt;
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

QString valueWords(const Value& value) {
    return words(WindowLanguage{}.written(value));
}

std::string plain(const QString& text) {
    return text.trimmed().toStdString();
}

Sentence inWindow(const QString& words) {
    return asItIs(words.toStdString());
}

QString money(Money amount, const Currency& currency) {
    return valueWords(Amount{amount, currency});
}

QString moneyBare(Money amount, const Currency& currency) {
    Currency bare = currency;
    bare.sign.clear();
    return valueWords(Amount{amount, std::move(bare)});
}

QString metres(Millimetres length) {
    constexpr Millimetres kLeastShown{50}; // less would be said as nothing
    if (length.value > 0 && length < kLeastShown)
        return Formats::tr("under %1 m").arg(QLocale().toString(0.1, 'f', 1));
    return Formats::tr("%1 m").arg(QLocale().toString(length.metres(), 'f', 1));
}

QString millimetres(Millimetres length) {
    return valueWords(length);
}

QString celsius(Celsius temperature) {
    return Formats::tr("%1 °C").arg(QLocale().toString(temperature.value, 'g', 4));
}

QString humidity(Humidity humidity) {
    return Formats::tr("%1 %").arg(QLocale().toString(std::lround(humidity.percent)));
}

QString percentOf(double share) {
    const double hundredths = share * 100;
    const bool isSmall = hundredths > 0 && hundredths < 1;
    return Formats::tr("%1 %").arg(QLocale().toString(hundredths, 'f', isSmall ? 1 : 0));
}

QString kilograms(Grams weight) {
    return Formats::tr("%1 kg").arg(QLocale().toString(static_cast<double>(weight.value) / 1000.0, 'f', 1));
}

QString humidityBand(const Band<Humidity>& band) {
    return Formats::tr("%1–%2 %").arg(valueWords(Decimal{band.low.percent}),
                                      valueWords(Decimal{band.high.percent}));
}

QString temperatureBand(const Band<Celsius>& band) {
    return Formats::tr("%1–%2 °C")
        .arg(valueWords(Decimal{band.low.value}), valueWords(Decimal{band.high.value}));
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
        return Formats::tr("%1 s").arg(seconds);
    const auto minutes = (seconds + 30) / 60;
    if (minutes < 60)
        return Formats::tr("%1 min").arg(minutes);
    constexpr std::int64_t kInDaysFrom = 96; // hours
    if (minutes >= kInDaysFrom * 60)
        return dayCount(Days{(minutes + 12 * 60) / (24 * 60)});
    return minutes % 60 == 0 ? Formats::tr("%1 h").arg(minutes / 60)
                             : Formats::tr("%1 h %2 min").arg(minutes / 60).arg(minutes % 60);
}

QString dayCount(Days days) {
    return Formats::tr("%n day|%n days", nullptr, howMany(days.count()));
}

QString age(Days days) {
    // A month of an age is a twelfth of a year; the rest is days.
    const auto total = std::max<std::int64_t>(0, days.count());
    const auto months = static_cast<std::int64_t>(static_cast<double>(total) / 30.436875);
    const auto rest = total - static_cast<std::int64_t>(std::lround(static_cast<double>(months) * 30.436875));
    if (months == 0)
        return dayCount(Days{total});
    const QString inMonths = Formats::tr("%n month|%n months", nullptr, howMany(months));
    return Formats::tr("%1 %2", "11 months 4 days")
        .arg(inMonths, dayCount(Days{std::max<std::int64_t>(0, rest)}));
}

QString day(LocalDate date) {
    return valueWords(date);
}

QString dayNear(LocalDate date, LocalDate today) {
    const auto away = (date - today).count();
    if (away == 0)
        return Formats::tr("today");
    if (away == 1)
        return Formats::tr("tomorrow");
    if (away == -1)
        return Formats::tr("yesterday");
    return day(date);
}

QString date(LocalDate date) {
    return valueWords(DateWithYear{date});
}

QString month(std::chrono::year_month month) {
    return monthAsLocaleWrites(LocalDate{month / 1});
}

QString longDay(LocalDate date) {
    return longDayAsLocaleWrites(date);
}

QString clock(LocalTime time) {
    return valueWords(TimeOfDay{time});
}

QString hoursOfDay(LocalDate day, const OpeningHours& hours) {
    const auto at = [&](Minutes minutes) { return clock(LocalTime{day} + minutes); };
    return QStringLiteral("%1 %2–%3").arg(date(day), at(hours.opens), at(hours.closes));
}

QString promise(LocalTime ready, LocalDate today) {
    return Formats::tr("%1 from %2").arg(dayNear(dateOf(ready), today), clock(ready));
}

QColor colourOf(std::uint32_t rgb) {
    return QColor::fromRgb(static_cast<QRgb>(rgb & 0xffffffU));
}

Result<std::int64_t> readWhole(const QString& text, const QString& field, std::int64_t low,
                               std::int64_t high) {
    bool good = false;
    const qlonglong number = inPlainDigits(text).toLongLong(&good);
    if (!good || number < low || number > high)
        return notA(field, Formats::tr("a whole number from %1 to %2.").arg(low).arg(high));
    return static_cast<std::int64_t>(number);
}

Result<double> readNumber(const QString& text, const QString& field, double low, double high) {
    const auto number = numberIn(text);
    if (!number || *number < low || *number > high)
        return notA(field, Formats::tr("a number from %1 to %2.").arg(low).arg(high));
    return *number;
}

Result<Money> readMoney(const QString& text, const QString& field, const Currency& currency) {
    const auto amount = parseAmount(plain(inPlainDigits(text)), currency);
    if (!amount || amount->minor < 0)
        return notA(field, Formats::tr("an amount such as %1.").arg(moneyBare(Money{1050}, currency)));
    return *amount;
}

Result<LocalDate> readDate(const QString& text, const QString& field, LocalDate today) {
    const QString typed = text.trimmed().toLower();
    if (typed == Formats::tr("today"))
        return today;
    if (typed == Formats::tr("yesterday"))
        return today - Days{1};
    if (typed == Formats::tr("tomorrow"))
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
    if (const auto written = dateAsLocaleWrites(text.trimmed()))
        return *written;
    return notA(field, Formats::tr("a day such as %1 or 25/11.").arg(date(today)));
}

Result<LocalDate> readComingDay(const QString& text, const QString& field, LocalDate today) {
    const QString typed = text.trimmed().toLower();
    constexpr qsizetype kShortest = 2; // "mo", "tu": no two days begin alike
    for (const QLocale& locale : {QLocale(), QLocale(QLocale::English)})
        for (int ahead = 1; typed.size() >= kShortest && ahead <= 7; ++ahead) {
            const LocalDate coming = today + Days{ahead};
            const auto weekday = static_cast<int>(std::chrono::weekday{coming}.iso_encoding());
            if (locale.dayName(weekday).toLower().startsWith(typed))
                return coming;
        }
    return readDate(text, field, today);
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
