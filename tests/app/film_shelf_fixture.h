// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The film shelf over a shop of its own, driven by its keys.

#include "app/places/film_shelf/film_shelf_place.h"
#include "db/actions/film_actions.h"
#include "tests/app/shop_fixture.h"

#include <QLabel>
#include <QListView>
#include <QTest>

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::app::test {

class FilmShelf : public ShopFixture {
protected:
    void open() {
        place = std::make_unique<FilmShelfPlace>(desk());
        QObject::connect(&desk(), &ShopDesk::slipAsked, place.get(),
                         [this](SlipName slip, const SlipTarget& matter) {
                             asked.push_back(slip);
                             askedFor = matter;
                         });
        QObject::connect(&desk(), &ShopDesk::failed, place.get(),
                         [this](const QString& reason) { refused = reason; });
        place->headerTools()->setParent(place.get());
        showWindow(*place, {1270, 708});
        place->opened();
    }

    template <class Widget>
    Widget* part(const char* name) {
        auto* found = place->findChild<Widget*>(QLatin1String(name));
        if (!found)
            stopBecause(std::string("no widget is called ") + name);
        return found;
    }
    QListView* shelf() { return part<QListView>("shelf"); }
    QString row(int at) { return shelf()->model()->index(at, 0).data().toString(); }
    QString text(const char* label) { return part<QLabel>(label)->text(); }
    void key(Qt::Key key) { QTest::keyClick(place->focusWidget() ? place->focusWidget() : place.get(), key); }

    RollId rollReceived(FilmId film, PlaceId where, LocalDate made,
                        std::optional<LocalDate> printedUseBy = std::nullopt) {
        db::RollReceived roll;
        roll.film = film;
        roll.width = 500_mm;
        roll.length = 4000_mm;
        roll.receivedOn = now().today();
        roll.madeOn = made;
        roll.printedUseBy = printedUseBy;
        roll.place = where;
        return valueOf(db::receiveRoll(file(), roll, now())).id;
    }
    const FilmRoll& roll(RollId id) { return desk().shop()->facts.rolls.at(id); }

    std::unique_ptr<FilmShelfPlace> place;
    std::vector<SlipName> asked;
    SlipTarget askedFor;
    QString refused;
};

} // namespace holdfast::app::test
