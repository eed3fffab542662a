// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/disk/kept_backup.h"

#include "core/trade/enumerators.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdio>
#include <utility>

namespace holdfast::db {

namespace {

constexpr std::string_view kEnding = ".holdfast";
constexpr std::string_view kNotWhole = "-not-whole";
constexpr std::size_t kTimeLength = std::string_view{"2026-11-30-091405"}.size();

using ReasonAndCode = std::pair<BackupReason, std::string_view>;
constexpr std::array<ReasonAndCode, 5> kReasonCodes{{
    {BackupReason::OfTheDay, "of-the-day"},
    {BackupReason::BeforeStep, "before-step"},
    {BackupReason::BeforeNews, "before-news"},
    {BackupReason::BeforePuttingBack, "before-putting-back"},
    {BackupReason::BeforeMending, "before-mending"},
}};
static_assert(hasEach<BackupReason>(kReasonCodes, &ReasonAndCode::first));

std::string_view codeOf(BackupReason reason) {
    return kReasonCodes[static_cast<std::size_t>(reason)].second;
}

std::string stemOf(const std::filesystem::path& shop) {
    return shop.extension() == kEnding ? shop.stem().string() : shop.filename().string();
}

std::string timeCode(LocalTime at) {
    const auto second = (at - std::chrono::floor<Minutes>(at)).count();
    std::array<char, 3> seconds{};
    std::snprintf(seconds.data(), seconds.size(), "%02u", static_cast<unsigned>(second) % 60);
    std::string clock = clockTime(at);
    std::erase(clock, ':');
    return isoDate(dateOf(at)) + "-" + clock + seconds.data();
}

bool isAllDigits(std::string_view text) {
    return !text.empty() && text.find_first_not_of("0123456789") == std::string_view::npos;
}

// "2026-11-30-091405"
std::optional<LocalTime> readTimeCode(std::string_view text) {
    if (text.size() != kTimeLength || text[10] != '-' || !isAllDigits(text.substr(11)))
        return std::nullopt;
    const std::string minute = std::string{text.substr(0, 10)} + "T" + std::string{text.substr(11, 2)} + ":" +
                               std::string{text.substr(13, 2)};
    const auto at = parseIsoMinute(minute);
    int seconds = 0;
    std::from_chars(text.data() + 15, text.data() + 17, seconds);
    if (!at || seconds > 59)
        return std::nullopt;
    return *at + std::chrono::seconds{seconds};
}

bool takeEnd(std::string_view& text, std::string_view end) {
    if (!text.ends_with(end))
        return false;
    text.remove_suffix(end.size());
    return true;
}

// The second and further ones of a moment have a number at the end.
void takeNumber(std::string_view& text) {
    const std::size_t dash = text.rfind('-');
    if (dash != std::string_view::npos && isAllDigits(text.substr(dash + 1)))
        text = text.substr(0, dash);
}

} // namespace

std::filesystem::path backupFolder(const std::filesystem::path& shop) {
    return shop.parent_path() / (stemOf(shop) + " backups");
}

std::filesystem::path secondBackupFolder(const std::filesystem::path& chosen) {
    return chosen / "Holdfast backups";
}

std::filesystem::path freeBackupPath(const std::filesystem::path& folder, const std::filesystem::path& shop,
                                     LocalTime at, BackupReason reason, bool isWhole) {
    const std::string name = stemOf(shop) + "-" + timeCode(at) + "-" + std::string{codeOf(reason)} +
                             std::string{isWhole ? "" : kNotWhole};
    std::filesystem::path free = folder / (name + std::string{kEnding});
    for (int copy = 2; std::filesystem::exists(std::filesystem::symlink_status(free)); ++copy)
        free = folder / (name + "-" + std::to_string(copy) + std::string{kEnding});
    return free;
}

std::optional<KeptBackup> readBackupName(const std::filesystem::path& shop,
                                         const std::filesystem::path& backup) {
    const std::string name = backup.filename().string();
    const std::string begin = stemOf(shop) + "-";
    std::string_view rest = name;
    if (!rest.starts_with(begin) || !takeEnd(rest, kEnding))
        return std::nullopt;
    rest.remove_prefix(begin.size());
    const auto at = readTimeCode(rest.substr(0, kTimeLength));
    if (!at || rest.size() <= kTimeLength || rest[kTimeLength] != '-')
        return std::nullopt;
    rest.remove_prefix(kTimeLength + 1);
    takeNumber(rest);
    KeptBackup kept;
    kept.path = backup;
    kept.at = *at;
    kept.isWhole = !takeEnd(rest, kNotWhole);
    const auto reason =
        std::ranges::find_if(kReasonCodes, [&](const auto& each) { return each.second == rest; });
    if (reason == kReasonCodes.end())
        return std::nullopt;
    kept.reason = reason->first;
    return kept;
}

std::vector<KeptBackup> namedBackupsIn(const std::filesystem::path& folder,
                                       const std::filesystem::path& shop) {
    std::vector<KeptBackup> found;
    std::error_code error;
    for (const auto& entry : std::filesystem::directory_iterator(folder, error)) {
        std::error_code gone;
        if (!entry.is_regular_file(gone) || entry.is_symlink(gone))
            continue;
        if (auto kept = readBackupName(shop, entry.path())) {
            kept->bytes = entry.file_size(gone);
            found.push_back(std::move(*kept));
        }
    }
    std::ranges::sort(found, [](const KeptBackup& one, const KeptBackup& other) {
        return one.at != other.at ? one.at > other.at : one.path > other.path;
    });
    return found;
}

} // namespace holdfast::db
