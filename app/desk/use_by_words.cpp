// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/use_by_words.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

constexpr Days kSayYearAfter{300};

QString withRange(const RollCondition& condition, bool isYearSaid) {
    const auto spanWords = [isYearSaid](const DaySpan& span) {
        return isYearSaid ? valueWords(span) : valueWords(NearSpan{span});
    };
    const QString day = spanWords({*condition.useBy, *condition.useBy});
    if (condition.useByRange)
        return QCoreApplication::translate("UseBy", "%1 (estimate %2)")
            .arg(day, spanWords(*condition.useByRange));
    return condition.useByIsEstimate ? QCoreApplication::translate("UseBy", "%1 (estimate)").arg(day) : day;
}

} // namespace

QString useByInFull(const RollCondition& condition) {
    return withRange(condition, true);
}

QString useByInShort(const RollCondition& condition, LocalDate today) {
    return withRange(condition, *condition.useBy - today > kSayYearAfter);
}

} // namespace holdfast::app
