// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/left_out_words.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

QString inLeftOut(const char* text) {
    return QCoreApplication::translate("LeftOut", text);
}

} // namespace

QString leftOutWords(std::size_t rows) {
    return rows == 1 ? inLeftOut("1 row that cannot be read")
                     : inLeftOut("%1 rows that cannot be read").arg(rows);
}

} // namespace holdfast::app
