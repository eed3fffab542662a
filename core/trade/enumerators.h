// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Asks the compiler how many enumerators an enum has, so that a table over them cannot forget one:
//
//   static_assert(hasEach<Stage>(kStageNames, &StageName::stage));
//
// For enums whose enumerators are numbered from 0 without a gap, as those are that name no numbers.
// Source: g++ ("[with auto kValue = holdfast::Stage::Ready]") and Clang ("[kValue = holdfast::Stage::Ready]")
// write an enumerator by its name and any other value as a cast, "(holdfast::Stage)12".

#include <algorithm>
#include <cstddef>
#include <functional>
#include <string_view>

namespace holdfast {

template <auto kValue>
consteval bool isEnumerator() {
    const std::string_view signature = __PRETTY_FUNCTION__;
    const std::size_t value = signature.find("kValue = ");
    static_assert(std::string_view{__PRETTY_FUNCTION__}.find("kValue = ") != std::string_view::npos,
                  "this compiler writes a template's values another way");
    return signature[value + std::string_view{"kValue = "}.size()] != '(';
}

template <class Enum, std::size_t kFrom = 0>
consteval std::size_t enumeratorCount() {
    if constexpr (isEnumerator<static_cast<Enum>(kFrom)>())
        return enumeratorCount<Enum, kFrom + 1>();
    else
        return kFrom;
}

// Whether each enumerator is in the table, once.
template <class Enum, class Table, class Which = std::identity>
constexpr bool hasEach(const Table& table, Which which = {}) {
    if (std::size(table) != enumeratorCount<Enum>())
        return false;
    for (std::size_t at = 0; at < std::size(table); ++at)
        if (std::ranges::count(table, static_cast<Enum>(at), which) != 1)
            return false;
    return true;
}

} // namespace holdfast
