#include "app/shell/places.h"

#if __has_include("app/places/blank_rail/blank_rail_place.h")
#include "app/places/blank_rail/blank_rail_place.h"
#define HOLDFAST_BLANK_RAIL
#endif
#if __has_include("app/places/fair_table/fair_table_place.h")
#include "app/places/fair_table/fair_table_place.h"
#define HOLDFAST_FAIR_TABLE
#endif
#if __has_include("app/places/film_shelf/film_shelf_place.h")
#include "app/places/film_shelf/film_shelf_place.h"
#define HOLDFAST_FILM_SHELF
#endif
#if __has_include("app/places/order_book/order_book_place.h")
#include "app/places/order_book/order_book_place.h"
#define HOLDFAST_ORDER_BOOK
#endif
#if __has_include("app/places/press_walk/press_walk_place.h")
#include "app/places/press_walk/press_walk_place.h"
#define HOLDFAST_PRESS_WALK
#endif

#include <QCoreApplication>

#include <algorithm>
#include <vector>

namespace holdfast::app {

namespace {

template <class Made>
Place* make(ShopDesk& desk, QWidget* parent) {
    return new Made(desk, parent);
}

std::vector<BuiltPlace> allBuilt() {
    return {
#ifdef HOLDFAST_FAIR_TABLE
        {PlaceName::FairTable, 1, PlaceGroup::Stall, "fair-table",
         QT_TRANSLATE_NOOP("holdfast::app::Places", "Fair table"), "fair-table", make<FairTablePlace>},
#endif
#ifdef HOLDFAST_PRESS_WALK
        {PlaceName::PressWalk, 2, PlaceGroup::Bench, "press-walk",
         QT_TRANSLATE_NOOP("holdfast::app::Places", "Press walk"), "press-walk", make<PressWalkPlace>},
#endif
#ifdef HOLDFAST_FILM_SHELF
        {PlaceName::FilmShelf, 3, PlaceGroup::Bench, "film-shelf",
         QT_TRANSLATE_NOOP("holdfast::app::Places", "Film shelf"), "film-shelf", make<FilmShelfPlace>},
#endif
#ifdef HOLDFAST_BLANK_RAIL
        {PlaceName::BlankRail, 4, PlaceGroup::Bench, "blank-rail",
         QT_TRANSLATE_NOOP("holdfast::app::Places", "Blank rail"), "blank-rail", make<BlankRailPlace>},
#endif
#ifdef HOLDFAST_ORDER_BOOK
        {PlaceName::OrderBook, 6, PlaceGroup::Desk, "order-book",
         QT_TRANSLATE_NOOP("holdfast::app::Places", "Order book"), "order-book", make<OrderBookPlace>},
#endif
    };
}

} // namespace

QString BuiltPlace::words() const {
    return QCoreApplication::translate("holdfast::app::Places", title);
}

QString BuiltPlace::icon() const {
    return QString::fromLatin1(iconName);
}

QKeySequence BuiltPlace::keys() const {
    return QKeySequence(static_cast<int>(Qt::CTRL) | (Qt::Key_0 + key));
}

std::span<const BuiltPlace> builtPlaces() {
    static const std::vector<BuiltPlace> places = allBuilt();
    return places;
}

const BuiltPlace* builtPlace(PlaceName name) {
    const auto places = builtPlaces();
    const auto found = std::ranges::find(places, name, &BuiltPlace::name);
    return found == places.end() ? nullptr : &*found;
}

const BuiltPlace* builtPlace(const QString& code) {
    const auto places = builtPlaces();
    const auto found = std::ranges::find_if(
        places, [&](const BuiltPlace& place) { return code == QLatin1String(place.code); });
    return found == places.end() ? nullptr : &*found;
}

} // namespace holdfast::app
