// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/disk/incarnation.h"

#include "core/trade/id_maker.h"
#include "db/disk/digest.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/transaction.h"

#include <sys/stat.h>
#include <sys/xattr.h>

#include <array>
#include <fstream>
#include <optional>
#include <sstream>
#include <string>

namespace holdfast::db {

namespace {

constexpr const char* kAttribute = "user.holdfast.last";
constexpr std::int64_t kHighestIncarnation = std::int64_t{1} << 61;
// A minute of ids: of two files that each go on by as much as chance says, ten thousand ids meet in one case
// of ten thousand.
constexpr std::int64_t kFarthestLeap = std::int64_t{1} << 28;

struct Come {
    std::int64_t incarnation = 0;
    std::int64_t lastId = 0;
};

// The computer and the file on its disk, whatever it is called.
std::string homeOf(const std::filesystem::path& path) {
    std::string machine;
    std::ifstream{"/etc/machine-id"} >> machine;
    struct stat found{};
    (void)::stat(path.c_str(), &found);
    Digest digest;
    digest.add(machine);
    digest.add(static_cast<std::int64_t>(found.st_ino));
    return hex(digest.value());
}

std::optional<Come> notedAt(const std::filesystem::path& path) {
    std::array<char, 64> text{};
    const ssize_t length = ::getxattr(path.c_str(), kAttribute, text.data(), text.size());
    Come come;
    if (length <= 0 || !(std::istringstream{std::string(text.data(), static_cast<std::size_t>(length))} >>
                         come.incarnation >> come.lastId))
        return std::nullopt;
    return come;
}

bool knowsIncarnations(Connection& connection) {
    return connection.number(
               "SELECT COUNT(*) FROM pragma_table_info('seat_here') WHERE name = 'incarnation'") == 1;
}

bool hasGoneBack(const std::filesystem::path& path, const Come& come) {
    const auto noted = notedAt(path);
    return noted && (noted->incarnation != come.incarnation || noted->lastId > come.lastId);
}

} // namespace

std::int64_t settleIncarnation(Connection& connection, const std::filesystem::path& path) {
    if (!knowsIncarnations(connection))
        return 0;
    Query here = connection.query("SELECT incarnation, last_id, home FROM seat_here");
    if (!here.step())
        return 0;
    Come come{here.integer(0), here.integer(1)};
    const std::string homeThen = here.text(2);
    here.reset();
    const std::string home = homeOf(path);
    if (come.incarnation != 0 && home == homeThen && !hasGoneBack(path, come))
        return come.incarnation;
    if (come.lastId != 0)
        come.lastId = IdMaker::movedOn(come.lastId, 1 + randomNumber(kFarthestLeap));
    Transaction transaction{connection};
    connection.run("UPDATE seat_here SET last_id = ?1", come.lastId);
    renewIncarnation(connection, path);
    transaction.commit();
    come.incarnation = connection.number("SELECT incarnation FROM seat_here");
    noteLastId(path, come.incarnation, come.lastId);
    return come.incarnation;
}

void renewIncarnation(Connection& connection, const std::filesystem::path& path) {
    connection.run("UPDATE seat_here SET incarnation = ?1, home = ?2", 1 + randomNumber(kHighestIncarnation),
                   path.empty() ? std::string{} : homeOf(path));
}

void noteLastId(const std::filesystem::path& path, std::int64_t incarnation, std::int64_t lastId) {
    const std::string text = std::to_string(incarnation) + " " + std::to_string(lastId);
    (void)::setxattr(path.c_str(), kAttribute, text.data(), text.size(), 0);
}

void dropIncarnation(Connection& connection) {
    connection.run("UPDATE seat_here SET incarnation = 0, home = ''");
}

} // namespace holdfast::db
