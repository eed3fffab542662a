// SPDX-License-Identifier: GPL-3.0-or-later
// A decal that was cut wrong: why, so that it waits again and the history says what happened.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/field.h"
#include "core/trade/limits.h"
#include "db/actions/film_actions.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

class MiscutSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(MiscutSlip)

public:
    MiscutSlip(ShopDesk& shopDesk, const Garment& garment, const Decal& decal, QWidget* parent)
        : FormSlip(shopDesk, tr("Mark miscut"),
                   tr("%1: %2").arg(garmentWords(shopDesk.shop()->facts, garment), words(decal.describe())),
                   parent)
        , m_decal(decal.id) {
        form().segments("kind", tr("What happened"),
                        {tr("Not mirrored"), tr("Cut too deep"), tr("Not cut through"),
                         tr("Torn while weeding"), tr("Film ran askew")});
        form().line("reason", tr("In your own words"))->setPlaceholder(tr("anything else to note"));
        form().optional("reason");
        form().note(
            tr("It waits to be cut again. The film it took stays charged; what the second cutting takes "
               "is charged when it is cut."));
        setAction(tr("Mark miscut"));
        beginAt("kind");
    }

protected:
    void act() override {
        const auto* kinds = form().findChild<Choice*>(QStringLiteral("kind"));
        const std::string own = plain(form().text("reason"));
        if (kinds->chosenAt() < 0 && own.empty())
            return form().setError("kind", tr("Choose what happened, or say it in your own words."));
        // As it is written in the history, in the words of the shop file.
        static constexpr const char* kReasons[] = {"not mirrored", "cut too deep", "not cut through",
                                                   "torn while weeding", "film ran askew"};
        std::string reason = own;
        if (kinds->chosenAt() >= 0) {
            reason = kReasons[kinds->chosenAt()];
            if (!own.empty())
                reason += ": " + own;
        }
        if (const auto sound =
                typedText(reason, {.field = "reason", .what = phrase("The reason"), .least = 3, .most = 200});
            !sound.ok())
            return say(sound.error());
        settle(db::markMiscut(desk().file(), m_decal, reason));
    }

private:
    DecalId m_decal;
};

} // namespace

Slip* makeMiscut(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto garment = garmentIn(desk, matter);
    if (!garment || !matter.decal)
        return nullptr;
    const auto decal = std::ranges::find(garment->decals, *matter.decal, &Decal::id);
    return decal != garment->decals.end() && decal->isCut() ? new MiscutSlip(desk, *garment, *decal, parent)
                                                            : nullptr;
}

} // namespace holdfast::app
