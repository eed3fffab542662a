// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/power_loss.h"

#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <utility>

namespace holdfast::db::testing {

namespace {

constexpr std::size_t kSector = 512;

void apply(std::string& content, std::uint64_t at, std::string_view bytes) {
    if (content.size() < at + bytes.size())
        content.resize(at + bytes.size(), '\0');
    bytes.copy(content.data() + at, bytes.size());
}

std::uint64_t numberOf(const std::string& path) {
    struct stat found{};
    return ::stat(path.c_str(), &found) == 0 ? found.st_ino : 0;
}

std::string absolute(const char* path) {
    return std::filesystem::absolute(path).lexically_normal().string();
}

} // namespace

PowerLoss::PowerLoss(std::filesystem::path folder, std::filesystem::path after, long atCall, unsigned seed)
    : m_folder(std::move(folder))
    , m_after(std::move(after))
    , m_atCall(atCall)
    , m_chance(seed) {
    for (const auto& entry : std::filesystem::recursive_directory_iterator{m_folder}) {
        const std::string name = entry.path().string();
        if (!entry.is_regular_file() || name.ends_with("-shm")) // that one is memory, not disk
            continue;
        std::ifstream in{entry.path(), std::ios::binary};
        m_byNumber[numberOf(name)] = m_files.size();
        m_onDisk[name] = m_files.size();
        m_files.push_back({std::string(std::istreambuf_iterator<char>{in}, {}), {}});
    }
    m_now = m_onDisk;
    watchDisk(this);
}

PowerLoss::~PowerLoss() {
    watchDisk(nullptr);
}

void PowerLoss::called() {
    if (++m_calls == m_atCall)
        lose();
}

PowerLoss::File* PowerLoss::fileOf(int file) {
    struct stat found{};
    if (::fstat(file, &found) != 0)
        return nullptr;
    const auto known = m_byNumber.find(found.st_ino);
    return known == m_byNumber.end() ? nullptr : &m_files[known->second];
}

// A file that had no name before is a new one.
void PowerLoss::opened(int file, const char* path) {
    const std::string name = absolute(path);
    struct stat found{};
    if (!isOurs(name) || name.ends_with("-shm") || m_now.contains(name) || ::fstat(file, &found) != 0 ||
        !S_ISREG(found.st_mode))
        return;
    m_byNumber[found.st_ino] = m_files.size();
    m_now[name] = m_files.size();
    m_namesSince.push_back({{}, name, m_files.size()});
    m_files.emplace_back();
    called();
}

void PowerLoss::wrote(int file, std::uint64_t at, std::string_view bytes) {
    if (File* of = fileOf(file)) {
        of->since.push_back({at, std::string{bytes}, false});
        called();
    }
}

void PowerLoss::cut(int file, std::uint64_t length) {
    if (File* of = fileOf(file)) {
        of->since.push_back({length, {}, true});
        called();
    }
}

void PowerLoss::synced(int file) {
    struct stat found{};
    if (::fstat(file, &found) == 0 && S_ISDIR(found.st_mode)) {
        m_onDisk = m_now;
        m_namesSince.clear();
        called();
    } else if (File* of = fileOf(file)) {
        for (const Change& change : std::exchange(of->since, {})) {
            if (change.isCut)
                of->onDisk.resize(change.at, '\0');
            else
                apply(of->onDisk, change.at, change.bytes);
        }
        called();
    }
}

void PowerLoss::removed(const char* path) {
    const std::string name = absolute(path);
    if (m_now.erase(name) == 0)
        return;
    m_namesSince.push_back({name, {}, 0});
    called();
}

void PowerLoss::renamed(const char* from, const char* to) {
    const auto moved = m_now.extract(absolute(from));
    if (moved.empty())
        return;
    const std::string name = absolute(to);
    m_now[name] = moved.mapped();
    m_namesSince.push_back({moved.key(), name, moved.mapped()});
    called();
}

void PowerLoss::tear(std::string& content, const Change& change) {
    for (std::size_t begin = 0; begin < change.bytes.size();) {
        const std::size_t end =
            std::min(change.bytes.size(), (change.at + begin) / kSector * kSector + kSector - change.at);
        if (m_chance() % 2 == 0)
            apply(content, change.at + begin, std::string_view{change.bytes}.substr(begin, end - begin));
        begin = end;
    }
}

std::string PowerLoss::afterwards(const File& file) {
    std::string content = file.onDisk;
    const auto kind = m_chance() % 4; // all, none, or write by write
    for (const Change& change : file.since) {
        const auto luck = kind < 2 ? kind : m_chance() % 3;
        if (luck == 1)
            continue;
        if (change.isCut)
            content.resize(change.at, '\0');
        else if (luck == 0)
            apply(content, change.at, change.bytes);
        else
            tear(content, change);
    }
    return content;
}

void PowerLoss::lose() {
    watchDisk(nullptr);
    Names names = m_onDisk;
    const std::size_t reached = m_chance() % (m_namesSince.size() + 1);
    for (std::size_t at = 0; at < reached; ++at) {
        const NameChange& change = m_namesSince[at];
        names.erase(change.gone);
        if (!change.given.empty())
            names[change.given] = change.file;
    }
    for (const auto& [name, file] : names) {
        const auto to = m_after / std::filesystem::relative(name, m_folder);
        std::filesystem::create_directories(to.parent_path());
        const std::string content = afterwards(m_files[file]);
        std::ofstream{to, std::ios::binary}.write(content.data(),
                                                  static_cast<std::streamsize>(content.size()));
    }
    ::_exit(0);
}

} // namespace holdfast::db::testing
