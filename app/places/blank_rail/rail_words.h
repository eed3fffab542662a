// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Words that the parts of Blank rail share.

#include <QCoreApplication>
#include <QString>

#include <cstdint>

namespace holdfast::app {

inline QString blankCount(std::int64_t units) {
    return units == 1 ? QCoreApplication::translate("BlankRail", "1 blank")
                      : QCoreApplication::translate("BlankRail", "%1 blanks").arg(units);
}

inline QString shortWords(std::int64_t units) {
    return QCoreApplication::translate("BlankRail", "%1 short").arg(units);
}

inline QString reservedWords(std::int64_t units) {
    return QCoreApplication::translate("BlankRail", "%1 reserved").arg(units);
}

inline QString noneWords() {
    return QCoreApplication::translate("BlankRail", "none");
}

} // namespace holdfast::app
