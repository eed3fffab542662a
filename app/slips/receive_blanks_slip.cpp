// SPDX-License-Identifier: GPL-3.0-or-later
// A delivery of blanks onto the rail.
#include "app/desk/formats.h"
#include "app/slips/blank_pick.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/label.h"
#include "db/actions/blank_actions.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr std::int64_t kMostUnits = 5000;

class ReceiveBlanksSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(ReceiveBlanksSlip)

public:
    ReceiveBlanksSlip(ShopDesk& shopDesk, const SlipTarget& matter, QWidget* parent)
        : FormSlip(shopDesk, tr("Receive blanks"), tr("What came in, one style, size and colour at a time."),
                   parent)
        , m_pick(new BlankPick(form(), shopDesk, matter, true)) {
        form().number("units", tr("How many"), tr("blanks"));
        m_waiting = form().note({});
        QObject::connect(m_pick, &BlankPick::changed, this, [this] { showWaiting(); });
        showWaiting();
        setAction(tr("Receive the blanks"));
    }

protected:
    void act() override {
        const BlankPick::Kind kind = m_pick->read();
        const std::int64_t units = form().whole("units", 1, kMostUnits);
        if (!form().isSound())
            return;
        settle(desk().file().asOne([&]() -> Result<BlankLotId> {
            const auto colour = m_pick->takenColour();
            if (!colour.ok())
                return colour.error();
            return db::receiveBlanks(desk().file(), kind.style, kind.size, *colour, units, desk().now());
        }));
    }

private:
    // Garments that get theirs out of this delivery.
    void showWaiting() {
        const BlankStyle* style = m_pick->style();
        const auto size = m_pick->size();
        const auto colour = m_pick->colour();
        const ShopFacts& facts = desk().shop()->facts;
        const auto waiting = std::ranges::count_if(facts.garments, [&](const Garment& garment) {
            return style && garment.style == style->id && garment.size == size && colour == garment.colour &&
                   !garment.lot && facts.orderOf(garment).state == OrderState::Confirmed;
        });
        m_waiting->setVisible(waiting > 0);
        m_waiting->setText(tr("%n garment waits for such a blank and gets it first.|"
                              "%n garments wait for such blanks and get theirs first, by promise.",
                              nullptr, howMany(waiting)));
    }

    BlankPick* m_pick;
    Label* m_waiting = nullptr;
};

} // namespace

Slip* makeReceiveBlanks(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    // Before there is any style, that is what is to be written down.
    if (desk.shop()->facts.styles.empty())
        return makeAddStyle(desk, matter, parent);
    return new ReceiveBlanksSlip(desk, matter, parent);
}

} // namespace holdfast::app
