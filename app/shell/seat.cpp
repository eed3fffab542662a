#include "app/shell/seat.h"

#include "app/shell/places.h"

#include <string_view>

namespace holdfast::app {

namespace {

constexpr std::string_view kLightNote = "light";
constexpr std::string_view kPlaceNote = "last place";
constexpr std::string_view kEvening = "evening";

// A note that cannot be read is a note that was never kept.
std::optional<std::string> noteOf(db::Shop& shop, std::string_view key) {
    auto found = shop.read([&](db::Connection&) { return shop.note(key); });
    return found.ok() ? std::move(found).value() : std::nullopt;
}

} // namespace

Light keptLight(db::Shop& shop) {
    return noteOf(shop, kLightNote) == kEvening ? Light::Evening : Light::Day;
}

void keepLight(db::Shop& shop, Light light) {
    if (light == Light::Evening)
        shop.keepNote(kLightNote, kEvening);
    else
        shop.dropNote(kLightNote);
}

const BuiltPlace& keptPlace(db::Shop& shop) {
    if (const auto code = noteOf(shop, kPlaceNote))
        if (const BuiltPlace* place = builtPlace(QString::fromStdString(*code)))
            return *place;
    return builtPlaces().front();
}

void keepPlace(db::Shop& shop, const BuiltPlace& place) {
    shop.keepNote(kPlaceNote, place.code);
}

} // namespace holdfast::app
