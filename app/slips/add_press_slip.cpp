// A press set up: its platen and how it heats, cools and is checked.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/widgets/field.h"
#include "app/widgets/switch.h"
#include "core/trade/limits.h"
#include "core/trade/unit_words.h"
#include "db/actions/press_actions.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class AddPressSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(AddPressSlip)

public:
    AddPressSlip(ShopDesk& shopDesk, QWidget* parent)
        : FormSlip(shopDesk, tr("Add a press"), tr("Its platen, and how it heats and cools."), parent) {
        const Press usual;
        const auto number = [](double value) { return words(numberWords(value)); };
        form().line("name", tr("Name"))->setPlaceholder(tr("as Bench press"));
        form().pair();
        form().number("platenWidth", tr("Platen, width"), tr("mm"));
        form().number("platenHeight", tr("Platen, depth"), tr("mm"));
        form().turn("hasSmallPlaten", tr("Has a small platen"), usual.hasSmallPlaten);
        form().section(tr("In a minute it"));
        form().pair();
        form().number("heatsPerMinute", tr("heats by"), tr("°C"), number(usual.heatsPerMinute));
        form().number("coolsPerMinute", tr("cools by"), tr("°C"), number(usual.coolsPerMinute));
        form().section(tr("Still in order"));
        form().pair();
        form().number("tolerance", tr("Mean off by"), tr("°C"), number(usual.tolerance.value));
        form().number("evenWithin", tr("Spots apart by"), tr("°C"), number(usual.evenWithin.value));
        form().number("checkEvery", tr("Checked every"), tr("days"),
                      QString::number(usual.checkEvery.count()));
        form().note(tr("A platen burns and its wiring is mains: repairs are for a licensed electrician."));
        setAction(tr("Set up the press"));
        setLong();
    }

protected:
    void act() override {
        Press press;
        press.name = plain(form().text("name"));
        if (const auto sound =
                typedText(press.name, {.field = "name", .what = "The press’s name", .most = 60});
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
        if (form().isSound())
            settle(db::addPress(desk().file(), press));
    }
};

} // namespace

Slip* makeAddPress(ShopDesk& desk, const Matter&, QWidget* parent) {
    return new AddPressSlip(desk, parent);
}

} // namespace holdfast::app
