#include "app/places/fair_table/lettering_strokes.h"

#include "app/desk/formats.h"

#include <algorithm>

namespace holdfast::app {

double strokeEstimate(const Wording& wording, Millimetres height) {
    const QString text = words(wording.text);
    const auto reaches = [&](const char16_t* letters) {
        return std::ranges::any_of(text, [&](QChar letter) { return QStringView(letters).contains(letter); });
    };
    const bool isBelow = reaches(u"gjpqyQJ,;çş");
    const bool isLow = std::ranges::all_of(
        text, [](QChar letter) { return QStringView(u"acegmnopqrsuvwxyz ,.-").contains(letter); });
    // Shares of the capitals' height: small letters 0.68, what hangs below the line 0.3.
    const double inkHeight = (isLow ? 0.68 : 1.0) + (isBelow ? 0.3 : 0.0);
    const double letterHeight = static_cast<double>(height.value) / inkHeight;
    return letterHeight * (wording.face == Face::BookSerif ? 0.12 : 0.15);
}

} // namespace holdfast::app
