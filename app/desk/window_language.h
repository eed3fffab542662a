// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The language in which the window says what core and db have to say. Patterns are looked up in the
// translation that the application has installed, under the namespace that lupdate finds them in; without one
// they stay English.

#include "core/trade/language.h"

namespace holdfast::app {

class WindowLanguage : public Language {
public:
    std::string pattern(std::string_view english, std::optional<std::int64_t> count) const override;
};

} // namespace holdfast::app
