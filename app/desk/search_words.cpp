// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/search_words.h"

#include "app/desk/formats.h"

#include <QCoreApplication>
#include <QLocale>
#include <QRegularExpression>
#include <QStringList>

#include <algorithm>
#include <optional>

namespace holdfast::app {

namespace {

using Kind = db::OrderMeaning::Kind;

constexpr qsizetype kLongestPhrase = 4; // "thursday 26 november 2026"
constexpr qsizetype kShortestName = 3;  // of a month or a day

struct SearchWords {
    Q_DECLARE_TR_FUNCTIONS(SearchWords)
};

db::OrderMeaning onDays(LocalDate first, LocalDate last) {
    return {Kind::OnDays, {{first, last}}};
}

// Weeks begin on Monday (ISO 8601).
db::OrderMeaning inWeek(LocalDate today, int weeksOn) {
    const LocalDate monday = today - (std::chrono::weekday{today} - std::chrono::Monday) + Days{7 * weeksOn};
    return onDays(monday, monday + Days{6});
}

std::optional<db::OrderMeaning> namedMeaning(const QString& phrase, LocalDate today) {
    if (phrase == SearchWords::tr("owing") || phrase == SearchWords::tr("owed"))
        return db::OrderMeaning{Kind::Owing};
    if (phrase == SearchWords::tr("late"))
        return db::OrderMeaning{Kind::Late};
    if (phrase == SearchWords::tr("unconfirmed"))
        return db::OrderMeaning{Kind::Unconfirmed};
    if (phrase == SearchWords::tr("this week"))
        return inWeek(today, 0);
    if (phrase == SearchWords::tr("next week"))
        return inWeek(today, 1);
    if (phrase == SearchWords::tr("last week"))
        return inWeek(today, -1);
    return std::nullopt;
}

// The one before today and the one after; today alone, where it is one.
std::optional<db::OrderMeaning> dayOfWeekMeaning(const QString& phrase, LocalDate today) {
    for (const QLocale& locale : {QLocale(), QLocale(QLocale::English)})
        for (unsigned each = 1; each <= 7; ++each) {
            if (phrase != locale.dayName(static_cast<int>(each)).toLower())
                continue;
            const std::chrono::weekday asked{each};
            const LocalDate before = today - (std::chrono::weekday{today} - asked);
            const LocalDate after = today + (asked - std::chrono::weekday{today});
            db::OrderMeaning meaning = onDays(before, before);
            if (after != before)
                meaning.days.push_back({after, after});
            return meaning;
        }
    return std::nullopt;
}

bool beginsName(const QString& word, const QLocale& locale) {
    for (int month = 1; month <= 12; ++month)
        if (locale.monthName(month).toLower().startsWith(word))
            return true;
    for (int day = 1; day <= 7; ++day)
        if (locale.dayName(day).toLower().startsWith(word))
            return true;
    return false;
}

// "26 nov", "26/11", "2026-11-26", "today"; "26 marbles" are no day of March, and "12 11" are two numbers.
bool mayBeDate(const QStringList& phrase) {
    static const QRegularExpression number(QStringLiteral(R"(^\d+[.,]?$)"));
    static const QRegularExpression written(QStringLiteral(R"(^\d+[./-]\d+([./-]\d*)?$)"));
    if (phrase.size() == 1)
        return written.match(phrase.front()).hasMatch() ||
               !phrase.front().contains(QRegularExpression(QStringLiteral(R"(\d)")));
    bool hasName = false;
    for (QString word : phrase) {
        if (number.match(word).hasMatch())
            continue;
        while (word.endsWith(u'.') || word.endsWith(u','))
            word.chop(1);
        if (word.size() < kShortestName ||
            (!beginsName(word, QLocale()) && !beginsName(word, QLocale(QLocale::English))))
            return false;
        hasName = true;
    }
    return hasName;
}

std::optional<db::OrderMeaning> meaningOf(const QStringList& words, LocalDate today) {
    const QString phrase = words.join(u' ');
    if (auto named = namedMeaning(phrase, today))
        return named;
    if (auto dayOfWeek = dayOfWeekMeaning(phrase, today))
        return dayOfWeek;
    if (!mayBeDate(words))
        return std::nullopt;
    const auto day = readDate(phrase, {}, today);
    return day.ok() ? std::optional{onDays(*day, *day)} : std::nullopt;
}

} // namespace

db::TypedSearch searchIn(const QString& typed, const Now& now) {
    const QStringList words =
        typed.toLower().split(QRegularExpression(QStringLiteral(R"(\s+)")), Qt::SkipEmptyParts);
    db::TypedSearch search{{}, {}, now};
    QStringList others;
    for (qsizetype at = 0; at < words.size();) {
        qsizetype taken = 0;
        for (qsizetype length = std::min(kLongestPhrase, words.size() - at); length > 0 && taken == 0;
             --length)
            if (auto meaning = meaningOf(words.mid(at, length), now.today())) {
                search.meant.push_back({plain(words.mid(at, length).join(u' ')), std::move(*meaning)});
                taken = length;
            }
        if (taken == 0)
            others.append(words[at]);
        at += std::max<qsizetype>(taken, 1);
    }
    search.words = plain(others.join(u' '));
    return search;
}

} // namespace holdfast::app
