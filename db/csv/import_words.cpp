// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/csv/import_words.h"

namespace holdfast::db {

namespace {

Cleaning solventsOf(ImportRow& row, Cleaning fallback) {
    const std::string letters = row.text("Solvents");
    if (letters.empty())
        return fallback;
    int set = 0;
    for (const char letter : letters) {
        const auto at = std::string_view{"PFW"}.find(letter);
        if (at == std::string_view::npos) {
            row.wrong("Solvents", said("write the letters a professional cleaner may go by: P, F, W, such as "
                                       "PF; nothing for none."));
            return fallback;
        }
        set |= 1 << at;
    }
    return static_cast<Cleaning>(set);
}

} // namespace

Fibre fibreOf(ImportRow& row, std::string_view heading, const std::string& word) {
    return row.choiceOf(heading, word,
                        {Fibre::Cotton, Fibre::Linen, Fibre::Viscose, Fibre::Wool, Fibre::Silk,
                         Fibre::Polyester, Fibre::Polyamide, Fibre::Acrylic, Fibre::Elastane, Fibre::Other},
                        Fibre::Other);
}

Stretch stretchOf(ImportRow& row, std::string_view heading, Stretch fallback) {
    return row.choice(heading, {Stretch::None, Stretch::Some, Stretch::High}, fallback);
}

CareLimits careOf(ImportRow& row, const CareLimits& fallback) {
    CareLimits care = fallback;
    care.washCelsius = static_cast<int>(row.whole("Wash (°C)", fallback.washCelsius));
    care.agitation =
        row.choice("Agitation", {Agitation::ByHand, Agitation::VeryMild, Agitation::Mild, Agitation::Normal},
                   fallback.agitation);
    care.tumble = row.choice("Tumble", {Tumble::No, Tumble::Low, Tumble::Normal}, fallback.tumble);
    care.ironCelsius = static_cast<int>(row.whole("Iron (°C)", fallback.ironCelsius));
    care.bleach = row.choice("Bleach", {Bleach::No, Bleach::OxygenOnly, Bleach::Any}, fallback.bleach);
    care.cleaning = solventsOf(row, fallback.cleaning);
    return care;
}

} // namespace holdfast::db
