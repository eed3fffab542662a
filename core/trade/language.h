// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A language in which a sentence is said. This one is English as the command line writes it; the window's own
// (app/desk) looks the patterns up in a translation and writes numbers and dates as its locale does.

#include "core/trade/sentence.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace holdfast {

class Language {
public:
    virtual ~Language() = default;

    // The pattern in this language, in the form for `count` where it has forms.
    virtual std::string pattern(std::string_view english, std::optional<std::int64_t> count) const;

    // Each way in which a value is written. REQUIRES: not Parts, which are sentences of their own.
    virtual std::string written(const Value& value) const;

    // What begins with a capital alone, as it begins in the middle of a line.
    virtual std::string withinLine(std::string text) const;

    virtual std::string betweenParts() const { return ", "; }
};

const Language& englishLanguage();

// The form of a pattern that has two, "one|other": English says one of 1 only.
std::string_view englishForm(std::string_view pattern, std::optional<std::int64_t> count);

} // namespace holdfast
