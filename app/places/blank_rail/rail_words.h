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

} // namespace holdfast::app
