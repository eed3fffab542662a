// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The language in which the window speaks, decided here and nowhere else: the words come out of the
// translation that is installed, and numbers, days and money are written as its locale writes them, so that
// both are always of one language. Without a translation all is English.

#include "core/trade/language.h"

#include <vector>

class QTranslator;

namespace holdfast::app {

// To be called once, when there is an application; a test may call it again. A translation is two files, that
// of the window's own texts and that of the patterns of core and db (docs/decisions/window-language.md). It
// says in its text "en" (context "WindowLanguage") which locale it is of; QLocale() is that one from then on.
// REQUIRES: the files live until others are set.
void setWindowLanguage(std::vector<const QTranslator*> files = {});

class WindowLanguage : public Language {
public:
    std::string pattern(std::string_view english, std::optional<std::int64_t> count) const override;
    std::string written(const Value& value) const override;
    std::string betweenParts() const override;
};

} // namespace holdfast::app
