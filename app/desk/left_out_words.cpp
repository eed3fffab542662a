// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/left_out_words.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class LeftOutWords {
    Q_DECLARE_TR_FUNCTIONS(LeftOutWords)
};

} // namespace

QString leftOutWords(std::size_t rows) {
    return LeftOutWords::tr("%n row that cannot be read|%n rows that cannot be read", nullptr, howMany(rows));
}

} // namespace holdfast::app
