// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/english_forms.h"

#include "core/trade/language.h"

namespace holdfast::app {

QString EnglishForms::translate(const char*, const char* source, const char*, int count) const {
    const std::string_view text{source};
    if (count < 0 || text.find('|') == std::string_view::npos)
        return {}; // said as it stands
    const std::string_view form = englishForm(text, count);
    return QString::fromUtf8(form.data(), static_cast<qsizetype>(form.size()));
}

} // namespace holdfast::app
