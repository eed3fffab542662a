// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/backup_note.h"

#include <charconv>
#include <string>

namespace holdfast::app {

namespace {

constexpr const char* kNote = "last-backup"; // "SECONDS PATH"

} // namespace

void keepBackup(db::Shop& shop, const LastBackup& backup) {
    shop.keepNote(kNote, std::to_string(backup.at.time_since_epoch().count()) + " " + backup.path.string());
}

std::optional<LastBackup> keptBackup(db::Shop& shop) {
    const auto note = shop.read([&](db::Connection&) { return shop.note(kNote); });
    if (!note.ok() || !*note)
        return std::nullopt;
    const std::string& text = **note;
    std::int64_t seconds = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), seconds);
    if (error != std::errc{} || end == text.data() + text.size() || *end != ' ')
        return std::nullopt;
    return LastBackup{Instant{std::chrono::seconds{seconds}},
                      std::string{end + 1, text.data() + text.size()}};
}

} // namespace holdfast::app
