// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/places.h"

#include "app/places/back_room/back_room_place.h"
#include "app/places/blank_rail/blank_rail_place.h"
#include "app/places/cutting_bench/cutting_bench_place.h"
#include "app/places/fair_table/fair_table_place.h"
#include "app/places/figures/figures_place.h"
#include "app/places/film_shelf/film_shelf_place.h"
#include "app/places/order_book/order_book_place.h"
#include "app/places/press_walk/press_walk_place.h"

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
        {PlaceName::FairTable, 1, PlaceGroup::Stall, "fair-table",
         QT_TRANSLATE_NOOP("holdfast::app::Places", "Fair table"), "fair-table", false, make<FairTablePlace>},
        {PlaceName::PressWalk, 2, PlaceGroup::Bench, "press-walk",
         QT_TRANSLATE_NOOP("holdfast::app::Places", "Press walk"), "press-walk", true, make<PressWalkPlace>},
        {PlaceName::FilmShelf, 3, PlaceGroup::Bench, "film-shelf",
         QT_TRANSLATE_NOOP("holdfast::app::Places", "Film shelf"), "film-shelf", true, make<FilmShelfPlace>},
        {PlaceName::BlankRail, 4, PlaceGroup::Bench, "blank-rail",
         QT_TRANSLATE_NOOP("holdfast::app::Places", "Blank rail"), "blank-rail", false, make<BlankRailPlace>},
        {PlaceName::CuttingBench, 5, PlaceGroup::Bench, "cutting-bench",
         QT_TRANSLATE_NOOP("holdfast::app::Places", "Cutting bench"), "cutting-bench", true,
         make<CuttingBenchPlace>},
        {PlaceName::OrderBook, 6, PlaceGroup::Desk, "order-book",
         QT_TRANSLATE_NOOP("holdfast::app::Places", "Order book"), "order-book", true, make<OrderBookPlace>},
        {PlaceName::Figures, 7, PlaceGroup::Desk, "figures",
         QT_TRANSLATE_NOOP("holdfast::app::Places", "Figures"), "figures", false, make<FiguresPlace>},
        {PlaceName::BackRoom, 8, PlaceGroup::Desk, "back-room",
         QT_TRANSLATE_NOOP("holdfast::app::Places", "Back room"), "back-room", false, make<BackRoomPlace>},
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
