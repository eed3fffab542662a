// SPDX-License-Identifier: GPL-3.0-or-later
// The shop's settings as rows of text, with anything in them: "name=value" a line.
#include "db/tables/settings_rows.h"

#include "core/facts/unread_row.h"
#include "db/tables/unread_facts.h"
#include "tests/long/fuzz/fuzz_target.h"

namespace holdfast::fuzz {
namespace {

void readSettings(std::string_view input) {
    db::SettingRows rows;
    while (!input.empty()) {
        const std::size_t end = std::min(input.find('\n'), input.size());
        const std::string_view line = input.substr(0, end);
        const std::size_t equals = std::min(line.find('='), line.size());
        rows[std::string{line.substr(0, equals)}] =
            equals < line.size() ? std::string{line.substr(equals + 1)} : std::string{};
        input.remove_prefix(std::min(end + 1, input.size()));
    }
    db::UnreadFacts unread;
    const ShopSettings settings = db::settingsFrom(rows, unread);
    db::UnreadFacts none;
    const db::SettingRows written = db::settingRows(settings);
    require(db::settingRows(db::settingsFrom(written, none)) == written, "what is kept reads as it was");
}

const Registered registeredSettings{"shop_settings", readSettings};

} // namespace
} // namespace holdfast::fuzz
