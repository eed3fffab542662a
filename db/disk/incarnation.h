// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Which of several copies a shop file is. A copy that is put back, or carried to another computer and used
// there next to the first, holds the same last id and would give out the same ones again. So each file bears
// a number by chance, its incarnation, and what it was when that number was drawn: when it is opened and is
// no longer that file, or has gone back in time, it gets a new number and its ids go on from elsewhere.
//
// Seen: another computer, another file of the same name, and, on a disk that keeps attributes of files, older
// contents written over it. Not seen: a disk put back whole. What is not seen here is put right when news is
// taken in, by the identities of the entries.

#include <cstdint>
#include <filesystem>

namespace holdfast::db {

class Connection;

// The file's incarnation, a new one where there is need; 0 in a file from before there were any.
// REQUIRES: the file is locked by this program and may be written to. Throws SqliteFailure.
std::int64_t settleIncarnation(Connection& connection, const std::filesystem::path& path);

// Notes at the file how far it has come. A disk that keeps no attributes keeps no note.
void noteLastId(const std::filesystem::path& path, std::int64_t incarnation, std::int64_t lastId);

// A new one for a file that becomes another laptop's; without a path, for one that has none on a disk.
// REQUIRES: a transaction in which writing is allowed.
void renewIncarnation(Connection& connection, const std::filesystem::path& path);
// A new one for a copy that is yet to be opened where it belongs.
void dropIncarnation(Connection& connection);

} // namespace holdfast::db
