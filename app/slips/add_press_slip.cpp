// SPDX-License-Identifier: GPL-3.0-or-later
// A press added, or changed: its platen and how it heats, cools and is checked.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/widgets/field.h"
#include "app/widgets/switch.h"
#include "core/trade/limits.h"
#include "db/actions/press_actions.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class PressSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(AddPressSlip)

public:
    // A press of no id is a new one.
    PressSlip(ShopDesk& shopDesk, const QString& title, const Press& press, QWidget* parent)
        : FormSlip(shopDesk, title, tr("Its platen, and how it heats and cools."), parent)
        , m_before(press) {
        const auto number = [](double value) { return valueWords(Decimal{value}); };
        const auto side = [&](Millimetres length) {
            return isNew() ? QString() : QString::number(length.value);
        };
        // At the top: at the foot of a long form it would be cut off where it is to be read.
        form().note(tr("A platen burns and its wiring is mains: repairs are for a licensed electrician."));
        form().line("name", tr("Name"), words(press.name))->setPlaceholder(tr("e.g. Bench press"));
        form().pair();
        form().number("platenWidth", tr("Platen, width"), tr("mm"), side(press.platenWidth));
        form().number("platenHeight", tr("Platen, depth"), tr("mm"), side(press.platenHeight));
        form().turn("hasSmallPlaten", tr("Has a small platen"), press.hasSmallPlaten);
        form().section(tr("Heating and cooling"));
        form().pair();
        form().number("heatsPerMinute", tr("Heats in a minute by"), tr("°C"), number(press.heatsPerMinute));
        form().number("coolsPerMinute", tr("Cools in a minute by"), tr("°C"), number(press.coolsPerMinute));
        form().section(tr("In order if"));
        form().pair();
        form().number("tolerance", tr("Average off by at most"), tr("°C"), number(press.tolerance.value));
        form().number("evenWithin", tr("Spots differ by at most"), tr("°C"), number(press.evenWithin.value));
        form().number("checkEvery", tr("Checked every"), tr("days"),
                      QString::number(press.checkEvery.count()));
        if (!isNew()) {
            form().section(tr("In use"));
            form().turn("retired", tr("Retired: nothing is begun on it"), press.isRetired);
        }
        setAction(isNew() ? tr("Set up the press") : tr("Save the press"));
        setLong();
    }

protected:
    void act() override {
        Press press = m_before;
        press.name = plain(form().text("name"));
        if (const auto sound =
                typedText(press.name, {.field = "name", .what = phrase("The press’s name"), .most = 60});
            !sound.ok())
            say(sound.error());
        press.platenWidth = Millimetres{form().whole("platenWidth", 50, 2000)};
        press.platenHeight = Millimetres{form().whole("platenHeight", 50, 2000)};
        press.hasSmallPlaten = form().isOn("hasSmallPlaten");
        press.heatsPerMinute = form().decimal("heatsPerMinute", 1, 200);
        press.coolsPerMinute = form().decimal("coolsPerMinute", 1, 200);
        press.tolerance = Celsius{form().decimal("tolerance", 1, 30)};
        press.evenWithin = Celsius{form().decimal("evenWithin", 1, 60)};
        press.checkEvery = Days{form().whole("checkEvery", 1, 3650)};
        if (!isNew())
            press.isRetired = form().isOn("retired");
        if (!form().isSound())
            return;
        if (isNew())
            settle(db::addPress(desk().file(), press));
        else
            settle(db::changePress(desk().file(), press));
    }

private:
    bool isNew() const { return m_before.id == PressId{}; }

    Press m_before;
};

} // namespace

Slip* makeAddPress(ShopDesk& desk, const SlipTarget&, QWidget* parent) {
    return new PressSlip(desk, PressSlip::tr("Add a press"), Press{}, parent);
}

Slip* makeChangePress(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const Press* press = matter.press ? desk.shop()->facts.presses.find(*matter.press) : nullptr;
    return press ? new PressSlip(desk, PressSlip::tr("Change a press"), *press, parent) : nullptr;
}

} // namespace holdfast::app
