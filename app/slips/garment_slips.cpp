// SPDX-License-Identifier: GPL-3.0-or-later
// A garment let through although it is held, and one that was lost at the press.
#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/banner.h"
#include "app/widgets/field.h"
#include "core/trade/limits.h"
#include "db/actions/press_actions.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class WaiveSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(WaiveSlip)

public:
    WaiveSlip(ShopDesk& shopDesk, const Garment& garment, const std::vector<Finding>& findings,
              QWidget* parent)
        : FormSlip(shopDesk, tr("Let it through"), garmentWords(shopDesk.shop()->facts, garment), parent)
        , m_garment(garment.id)
        , m_rule(findings.front().rule) {
        for (const Finding& finding : findings)
            form().add(new Banner(Tone::Held, tr("%1.").arg(words(finding.what)), words(finding.why)));
        QStringList frees;
        for (const FreeingAct act : findings.front().frees)
            frees.append(withinLine(words(freeingWords(act))));
        if (!frees.isEmpty())
            form().note(tr("What is needed: %1.").arg(frees.join(QStringLiteral(", "))));
        form().line("reason", tr("Why it goes on anyway"));
        form().note(
            tr("The reason stays in the garment’s history for ever. It counts for this attempt only."));
        setAction(tr("Let it through"));
    }

protected:
    void act() override { settle(db::waive(desk().file(), m_garment, m_rule, plain(form().text("reason")))); }

private:
    GarmentId m_garment;
    Rule m_rule;
};

class SpoilSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(SpoilSlip)

public:
    SpoilSlip(ShopDesk& shopDesk, const Garment& garment, QWidget* parent)
        : FormSlip(shopDesk, tr("Mark as spoiled"), garmentWords(shopDesk.shop()->facts, garment), parent)
        , m_garment(garment.id) {
        const ShopFacts& facts = shopDesk.shop()->facts;
        form().segments("kind", tr("What happened"),
                        {tr("Lifted"), tr("Scorched"), tr("Crooked"), tr("Wrong size"), tr("Wrong colour")});
        form().line("cause", tr("In your own words"))->setPlaceholder(tr("anything else to note"));
        form().optional("cause");
        form().note(
            tr("Its decals are cut again and its steps start from the first. On the rail for it: %1.")
                .arg(stockWords(stockOf(facts, facts.styleOf(garment), garment.size, garment.colour))));
        setAction(tr("Mark spoiled"));
    }

protected:
    void act() override {
        const auto* kinds = form().findChild<Choice*>(QStringLiteral("kind"));
        const std::string own = plain(form().text("cause"));
        if (kinds->chosenAt() < 0 && own.empty())
            return form().setError("kind", tr("Choose what happened, or say it in your own words."));
        // As it is written in the history, in the words of the shop file.
        static constexpr const char* kCauses[] = {"lifted", "scorched", "crooked", "wrong size",
                                                  "wrong colour"};
        std::string cause = own;
        if (kinds->chosenAt() >= 0) {
            cause = kCauses[kinds->chosenAt()];
            if (!own.empty())
                cause += ": " + own;
        }
        if (const auto sound =
                typedText(cause, {.field = "cause", .what = phrase("The cause"), .least = 3, .most = 200});
            !sound.ok())
            return say(sound.error());
        settle(db::markSpoiled(desk().file(), m_garment, cause));
    }

private:
    GarmentId m_garment;
};

} // namespace

Slip* makeWaive(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto garment = garmentIn(desk, matter);
    if (!garment)
        return nullptr;
    // A waiver lifts a rule for the whole garment: all that the rule holds is shown.
    std::vector<Finding> findings;
    for (const Finding& finding : desk.shop()->of(garment->id).findings)
        if (finding.holds() && finding.rule == matter.rule.value_or(finding.rule) &&
            (findings.empty() || findings.front().rule == finding.rule))
            findings.push_back(finding);
    return findings.empty() ? nullptr : new WaiveSlip(desk, *garment, findings, parent);
}

Slip* makeSpoil(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto garment = garmentIn(desk, matter);
    return garment ? new SpoilSlip(desk, *garment, parent) : nullptr;
}

} // namespace holdfast::app
