// SPDX-License-Identifier: GPL-3.0-or-later
// A storage place named otherwise, retired or brought back.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/widgets/label.h"
#include "db/actions/film_actions.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

class ChangePlaceSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(ChangePlaceSlip)

public:
    ChangePlaceSlip(ShopDesk& shopDesk, const StoragePlace& place, QWidget* parent)
        : FormSlip(shopDesk, tr("Change a storage place"), words(place.name), parent)
        , m_before(place) {
        form().line("name", tr("Name"), words(place.name));
        form().turn("retired", tr("Retired: takes no more rolls"), place.isRetired);
        const auto rolls = std::ranges::count_if(shopDesk.shop()->facts.rolls, [&](const FilmRoll& roll) {
            return roll.state != RollState::UsedUp && roll.placeNow() == place.id;
        });
        Label* note = form().note(rolls > 0 ? tr("%n roll is there still; move it when there is time.|"
                                                 "%n rolls are there still; move them when there is time.",
                                                 nullptr, howMany(rolls))
                                            : tr("Its readings stay, for the rolls that were there."));
        const auto show = [this, note] { note->setVisible(form().isOn("retired")); };
        QObject::connect(&form(), &Form::edited, this, show);
        show();
        beginAt("name");
        setAction(tr("Save the storage place"));
    }

protected:
    void act() override {
        StoragePlace place = m_before;
        place.name = plain(form().text("name"));
        place.isRetired = form().isOn("retired");
        settle(db::changePlace(desk().file(), place));
    }

private:
    StoragePlace m_before;
};

} // namespace

Slip* makeChangePlace(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const StoragePlace* place = matter.place ? desk.shop()->facts.places.find(*matter.place) : nullptr;
    return place ? new ChangePlaceSlip(desk, *place, parent) : nullptr;
}

} // namespace holdfast::app
