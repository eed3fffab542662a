// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Which columns of the shop say who a customer is, and what is there once the customer is forgotten.
// Whatever a person types about an order counts: a note, a wording or a reason may hold a name.

#include <array>
#include <optional>
#include <set>
#include <string>
#include <string_view>

namespace holdfast::db {

inline constexpr std::string_view kForgottenName = "(forgotten)";

struct PersonalColumn {
    std::string_view table;
    std::string_view column;
    std::optional<std::string_view> instead; // nothing: NULL
};

inline constexpr std::array kPersonalColumns{
    PersonalColumn{"customer", "name", kForgottenName},
    PersonalColumn{"customer", "phone", ""},
    PersonalColumn{"customer", "note", ""},
    PersonalColumn{"shop_order", "note", ""},
    PersonalColumn{"order_reference", "reference", kForgottenName},
    PersonalColumn{"bill_line", "words", kForgottenName},
    PersonalColumn{"decal", "wording", kForgottenName},
    PersonalColumn{"decal", "outline", std::nullopt},
    PersonalColumn{"decal", "confirmed_by", ""},
    PersonalColumn{"claim", "note", ""},
    PersonalColumn{"waiver", "reason", kForgottenName},
    PersonalColumn{"spoil", "cause", kForgottenName},
};

// Each of their tables once.
std::set<std::string> tablesOfPeople();

} // namespace holdfast::db
