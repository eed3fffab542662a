// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/window_language.h"

#include <QCoreApplication>

#include <algorithm>
#include <limits>

namespace holdfast::app {

namespace {

// Nothing where no translation has it.
std::optional<QString> translated(const std::string& english, std::optional<std::int64_t> count) {
    const int number =
        count ? static_cast<int>(std::min<std::int64_t>(*count, std::numeric_limits<int>::max())) : -1;
    const QString found = qtTrId(english.c_str(), number);
    return found == QString::fromStdString(english) ? std::nullopt : std::optional{found};
}

} // namespace

std::string WindowLanguage::pattern(std::string_view english, std::optional<std::int64_t> count) const {
    const auto found = translated(std::string{english}, count);
    return found ? found->toStdString() : Language::pattern(english, count);
}

} // namespace holdfast::app
