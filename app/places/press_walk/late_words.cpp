// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/late_words.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <functional>
#include <vector>

namespace holdfast::app {

namespace {

constexpr std::size_t kMostLateNamed = 3;

struct LateWords {
    Q_DECLARE_TR_FUNCTIONS(LateWords)
};

// The latest first.
std::vector<const WalkEntry*> lateOf(const Walk& walk) {
    std::vector<const WalkEntry*> late;
    for (const WalkRun& run : walk.runs)
        for (const WalkEntry& entry : run.entries)
            if (entry.state != WalkState::Pressed && entry.late.count() > 0)
                late.push_back(&entry);
    std::ranges::stable_sort(late, std::greater{}, &WalkEntry::late);
    return late;
}

std::size_t afterClosing(const Walk& walk) {
    std::size_t count = 0;
    for (const WalkRun& run : walk.runs)
        count += static_cast<std::size_t>(std::ranges::count_if(run.entries, [](const WalkEntry& entry) {
            return entry.state == WalkState::Planned && entry.isAfterClosing;
        }));
    return count;
}

QString numberOf(const ReckonedShop& shop, const WalkEntry& entry) {
    return garmentNumber(shop.facts, shop.facts.garments.at(entry.garment));
}

QString latestInWords(const ReckonedShop& shop, const WalkEntry& entry) {
    return LateWords::tr("%1 will be ready %2 late").arg(numberOf(shop, entry), timeSpan(entry.late));
}

// "17:00"; with its day where that is another than today.
QString moment(const ReckonedShop& shop, Instant when) {
    const LocalTime local = shop.now.toLocal(when);
    const QString time = clock(local);
    return dateOf(local) == shop.now.today() ? time : LateWords::tr("%1 on %2").arg(time, day(dateOf(local)));
}

} // namespace

QString lateWords(const ReckonedShop& shop, const Walk& walk) {
    QStringList sentences;
    const auto late = lateOf(walk);
    if (!late.empty()) {
        const WalkEntry& first = *late.front();
        sentences << LateWords::tr("%1: at %2, and its promise needs it by %3.")
                         .arg(latestInWords(shop, first), moment(shop, first.ends),
                              moment(shop, first.ends - first.late));
        QStringList others;
        for (std::size_t at = 1; at < late.size() && at < kMostLateNamed; ++at)
            others << LateWords::tr("%1 %2").arg(numberOf(shop, *late[at]), timeSpan(late[at]->late));
        if (late.size() > kMostLateNamed)
            others << LateWords::tr("%n more", nullptr, howMany(late.size() - kMostLateNamed));
        if (!others.isEmpty())
            sentences << LateWords::tr("Also late: %1.").arg(others.join(QStringLiteral(", ")));
    }
    if (const auto count = afterClosing(walk); count > 0)
        sentences << LateWords::tr("One garment comes after closing.|%n garments come after closing.",
                                   nullptr, howMany(count));
    return sentences.join(QLatin1Char(' '));
}

QString lateInShort(const ReckonedShop& shop, const Walk& walk) {
    const auto late = lateOf(walk);
    if (late.empty())
        return {};
    const QString first = latestInWords(shop, *late.front());
    return late.size() == 1 ? first
                            : LateWords::tr("%1, and %n more", nullptr, howMany(late.size() - 1)).arg(first);
}

} // namespace holdfast::app
