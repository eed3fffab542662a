// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How many rows of the shop file cannot be read and are left out, in words.

#include <QString>

#include <cstddef>

namespace holdfast::app {

// "3 rows that cannot be read"
QString leftOutWords(std::size_t rows);

} // namespace holdfast::app
