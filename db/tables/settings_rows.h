#pragma once
// The shop's settings as rows of name and text, as they stand in the table setting.

#include "core/shop/settings.h"

#include <map>
#include <string>
#include <string_view>

namespace holdfast::db {

using SettingRows = std::map<std::string, std::string>;

// Every setting but the closed days, which have a table of their own.
SettingRows settingRows(const ShopSettings& settings);

// What people call a setting, as its form does: "margin" for "margin-percent".
std::string settingLabel(std::string_view name);

// Settings without a row keep their default; a value that cannot be read throws SqliteFailure.
ShopSettings settingsFrom(const SettingRows& rows);

} // namespace holdfast::db
