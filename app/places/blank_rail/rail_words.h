// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Words that the parts of Blank rail share.

#include "app/desk/formats.h"

#include <QCoreApplication>
#include <QString>

#include <cstdint>

namespace holdfast::app {

inline QString blankCount(std::int64_t units) {
    return QCoreApplication::translate("BlankRail", "%n blank|%n blanks", nullptr, howMany(units));
}

inline QString shortWords(std::int64_t units) {
    return QCoreApplication::translate("BlankRail", "%n short", nullptr, howMany(units));
}

inline QString reservedWords(std::int64_t units) {
    return QCoreApplication::translate("BlankRail", "%n reserved", nullptr, howMany(units));
}

inline QString noneWords() {
    return QCoreApplication::translate("BlankRail", "none");
}

} // namespace holdfast::app
