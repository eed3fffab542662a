#pragma once
// Whether SQLite can find its way through a file. A value that its column must not hold is another matter: it
// takes away its own row, not the file.

namespace holdfast::db {

class Connection;

// Reads every page of the tables, about 1.5 ms a megabyte.
bool hasWholePages(Connection& connection);

} // namespace holdfast::db
