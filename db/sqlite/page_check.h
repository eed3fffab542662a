// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether SQLite can find its way through a file. A value that its column must not hold is another matter: it
// takes away its own row, not the file.

#include <string_view>

namespace holdfast::db {

class Connection;

// Reads every page of the tables, about 1.5 ms a megabyte.
bool hasWholePages(Connection& connection);

// Of what SQLite's own check says of the pages: throws where it speaks of a disk that did not give one.
void requireOfTheFile(std::string_view message);

} // namespace holdfast::db
