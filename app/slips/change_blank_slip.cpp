// SPDX-License-Identifier: GPL-3.0-or-later
// Another blank for a garment that was not begun.
#include "app/desk/formats.h"
#include "app/slips/blank_pick.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/banner.h"
#include "core/holds/assessment.h"
#include "db/actions/order_actions.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class ChangeBlankSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(ChangeBlankSlip)

public:
    ChangeBlankSlip(ShopDesk& shopDesk, const Garment& garment, QWidget* parent)
        : FormSlip(shopDesk, tr("Choose a blank"), garmentWords(shopDesk.shop()->facts, garment), parent)
        , m_garment(garment)
        , m_pick(new BlankPick(form(), shopDesk, matterOf(garment)))
        , m_fit(new Banner) {
        form().add(m_fit);
        QObject::connect(m_pick, &BlankPick::changed, this, [this] { showFit(); });
        showFit();
        setAction(tr("Use this blank"));
        beginAt("colour");
    }

protected:
    void act() override {
        const BlankPick::Kind kind = m_pick->read();
        if (form().isSound())
            settle(db::changeBlank(desk().file(), m_garment.id, kind.style, kind.size, kind.colour));
    }

private:
    static SlipTarget matterOf(const Garment& garment) {
        SlipTarget matter;
        matter.style = garment.style;
        matter.size = words(garment.size);
        matter.colour = garment.colour;
        return matter;
    }

    // Whether the garment's films may be pressed on the style chosen.
    void showFit() {
        const BlankStyle* style = m_pick->style();
        m_fit->setVisible(style != nullptr);
        if (!style)
            return;
        for (const Decal& decal : m_garment.decals) {
            const Film* film = desk().shop()->facts.films.find(decal.film);
            const auto findings = film ? fitness(*film, *style) : std::vector<Finding>{};
            if (findings.empty())
                continue;
            m_fit->set(Tone::Held, tr("%1: %2.").arg(words(film->name()), words(findings.front().what)),
                       words(findings.front().why));
            return;
        }
        m_fit->set(Tone::Ready, tr("Its films suit this style."), QString());
    }

    Garment m_garment;
    BlankPick* m_pick;
    Banner* m_fit;
};

} // namespace

Slip* makeChangeBlank(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto garment = garmentIn(desk, matter);
    return garment ? new ChangeBlankSlip(desk, *garment, parent) : nullptr;
}

} // namespace holdfast::app
