// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The shop's settings as rows of name and text, as they are in the table setting.

#include "core/facts/settings.h"
#include "db/tables/unread_facts.h"

#include <map>
#include <string>
#include <string_view>

namespace holdfast::db {

using SettingRows = std::map<std::string, std::string>;

// Every setting but those that have tables of their own: closed days, hours of single days, listed prices.
SettingRows settingRows(const ShopSettings& settings);

// What people call a setting, as its form does: "margin" for "margin-percent".
Sentence settingLabel(std::string_view name);

// "600-720", in minutes from midnight; none where it is no time that a day can have.
std::optional<OpeningHours> hoursWritten(std::string_view text);

// Settings without a row keep their usual value; so do those whose value cannot be read, which are noted.
ShopSettings settingsFrom(const SettingRows& rows, UnreadFacts& unread);

} // namespace holdfast::db
