// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Press walk in a shop of its own: real widgets, keys that are pressed, a clock that is moved by hand.

#include "app/places/press_walk/count_panel.h"
#include "app/places/press_walk/press_walk_place.h"
#include "app/widgets/button.h"
#include "tests/app/shop_fixture.h"

#include <QTest>

#include <functional>
#include <memory>
#include <optional>
#include <string_view>

namespace holdfast::app::test {

class PressWalkFixture : public ShopFixture {
protected:
    static constexpr int kTicks = 2000; // real milliseconds in which the place must have noticed the time

    PressWalkFixture() { usual = stockUsualShop(); }
    ~PressWalkFixture() override { place.reset(); }

    // One order of garments that are ready to press.
    std::vector<GarmentId> readyToPress(int count) {
        std::vector<GarmentDraft> drafts(static_cast<std::size_t>(count), aGarment(usual));
        const auto garments = garmentsOf(takeOrder(drafts).id);
        for (const GarmentId garment : garments)
            cut(garment, usual.roll);
        return garments;
    }

    void open() {
        place = std::make_unique<PressWalkPlace>(desk());
        connectAsked();
        showWindow(*place, {1270, 708});
        place->opened();
    }

    void connectAsked() {
        QObject::connect(&desk(), &ShopDesk::slipAsked, place.get(),
                         [this](SlipName slip, const SlipTarget& matter) {
                             askedSlip = slip;
                             askedMatter = matter;
                         });
        QObject::connect(&desk(), &ShopDesk::placeAsked, place.get(),
                         [this](PlaceName name, const SlipTarget& matter) {
                             askedPlace = name;
                             askedMatter = matter;
                         });
        QObject::connect(&desk(), &ShopDesk::failed, place.get(),
                         [this](const QString& reason) { failures << reason; });
        QObject::connect(&desk(), &ShopDesk::said, place.get(), [this](const QString& text) { said = text; });
    }

    template <class Widget>
    Widget& part(const char* name) {
        auto* found = place->findChild<Widget*>(QString::fromLatin1(name));
        if (!found)
            stopBecause(std::string{"no widget is called "} + name);
        return *found;
    }

    void key(Qt::Key key) {
        QWidget* focus = place->focusWidget() ? place->focusWidget() : place.get();
        QTest::keyClick(focus, key);
    }

    QString digits() { return part<CountPanel>("countPanel").digits(); }
    const PanelWords& panel() { return part<CountPanel>("countPanel").shown(); }
    QString nextText() { return part<Button>("nextStep").text(); }
    const RouteStep* openStepOf(GarmentId garment) {
        const Assessment& assessment = desk().shop()->of(garment);
        return assessment.progress.underway ? &assessment.route.steps[*assessment.progress.underway]
                                            : nullptr;
    }
    std::string openKey(GarmentId garment) {
        const RouteStep* step = openStepOf(garment);
        return step ? step->key : std::string{};
    }
    bool waitsUntil(const std::function<bool()>& holds) { return QTest::qWaitFor(holds, kTicks); }

    // By Space, each count waited for, until the garment's open step begins so.
    void walkTo(GarmentId garment, std::string_view stem) {
        for (int guard = 0; guard < 40 && !openKey(garment).starts_with(stem); ++guard) {
            if (const RouteStep* step = openStepOf(garment); step && step->isTimed())
                time().pass(step->counted());
            key(Qt::Key_Space);
        }
        ASSERT_TRUE(openKey(garment).starts_with(stem)) << "open: " << openKey(garment);
    }

    UsualShop usual;
    std::unique_ptr<PressWalkPlace> place;
    std::optional<SlipName> askedSlip;
    std::optional<PlaceName> askedPlace;
    SlipTarget askedMatter;
    QStringList failures;
    QString said;
};

} // namespace holdfast::app::test
