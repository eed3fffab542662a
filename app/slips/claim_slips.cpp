// SPDX-License-Identifier: GPL-3.0-or-later
// Something that came back: what the customer reports, and what was done about it.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/field.h"
#include "core/trade/enumerators.h"
#include "db/actions/claim_actions.h"
#include "db/tables/claims.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr Fault kFaults[] = {Fault::EdgeLifts,    Fault::CameOff,      Fault::Cracked,
                             Fault::Bubbled,      Fault::Faded,        Fault::Scorched,
                             Fault::BlankGaveWay, Fault::NotAsOrdered, Fault::Other};
static_assert(hasEach<Fault>(kFaults));

constexpr ClaimAnswer kAnswers[] = {ClaimAnswer::PressedAgain, ClaimAnswer::MadeAgain, ClaimAnswer::MoneyBack,
                                    ClaimAnswer::Advised, ClaimAnswer::NotOurs};
static_assert(hasEach<ClaimAnswer>(kAnswers));

class CameBackSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(CameBackSlip)

public:
    // REQUIRES: a garment that was handed over.
    CameBackSlip(ShopDesk& shopDesk, const OrderInView& inView, std::optional<GarmentId> about,
                 QWidget* parent)
        : FormSlip(shopDesk, tr("Note what came back"), orderWords(inView), parent) {
        for (const Garment& garment : inView.garments) {
            if (garment.handedOverAt)
                m_garments.push_back(garment);
        }
        const auto named = std::ranges::find_if(
            m_garments, [&](const Garment& garment) { return about && garment.id == *about; });
        const auto first = named == m_garments.end() ? 0 : static_cast<int>(named - m_garments.begin());
        QStringList letters;
        for (const Garment& garment : m_garments)
            letters.append(words(garmentLabel(inView.order, garment)));
        Choice* garments = form().segments("garment", tr("Garment"), letters, first);
        m_parts = form().list("decal", tr("Which decal"), {});
        showParts(first);
        QVector<PickItem> faults;
        for (const Fault fault : kFaults)
            faults.append({withCapital(words(faultWords(fault)))});
        form().list("fault", tr("What is wrong"), faults);
        form().pair();
        form().number("washes", tr("Washed"), tr("times"));
        form().optional("washes");
        form().line("on", tr("Reported on"), date(desk().now().today()));
        form().line("note", tr("Note"))->setPlaceholder(tr("what else the customer said"));
        form().optional("note");
        form().note(
            tr("Leave the washes empty if they are not known. Note what was done about it once it is done."));
        form().setShown("garment", m_garments.size() > 1);
        QObject::connect(garments, &Choice::chosen, this, [this](int garment) { showParts(garment); });
        setAction(tr("Save what came back"));
        beginAt("fault");
    }

protected:
    void act() override {
        const Garment& garment = m_garments.at(static_cast<std::size_t>(form().chosen("garment")));
        db::ClaimTold told;
        told.garment = garment.id;
        if (const int part = form().chosen("decal"); part > 0)
            told.decal = garment.decals.at(static_cast<std::size_t>(part - 1)).id;
        told.fault = kFaults[form().chosen("fault")];
        told.washes = form().optionalWhole("washes", 0, 500);
        told.on = form().date("on", desk().now().today());
        told.note = plain(form().text("note"));
        if (form().isSound())
            settle(db::recordClaim(desk().file(), told, desk().now()));
    }

private:
    static QString withCapital(const QString& text) { return text.left(1).toUpper() + text.mid(1); }

    // The garment as a whole, and each decal on it; with one decal it is that, most likely.
    void showParts(int at) {
        const Garment& garment = m_garments.at(static_cast<std::size_t>(at));
        QVector<PickItem> parts{{tr("The garment as a whole")}};
        for (const Decal& decal : garment.decals)
            parts.append({words(decal.describe())});
        m_parts->setItems(parts, garment.decals.empty() ? 0 : 1);
    }

    std::vector<Garment> m_garments; // that were handed over
    PickList* m_parts = nullptr;
};

class AnswerClaimSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(AnswerClaimSlip)

public:
    AnswerClaimSlip(ShopDesk& shopDesk, const OrderInView& inView, const Claim& claim, QWidget* parent)
        : FormSlip(shopDesk, tr("What was done about it"), orderWords(inView), parent)
        , m_claim(claim.id) {
        form().note(tr("Reported %1: %2.").arg(day(claim.toldOn), words(faultWords(claim.fault))));
        QVector<ChoiceItem> answers;
        int chosen = -1;
        for (const ClaimAnswer answer : kAnswers) {
            if (claim.answer == answer)
                chosen = static_cast<int>(answers.size());
            const QString said = words(answerWords(answer));
            answers.append({said.left(1).toUpper() + said.mid(1)});
        }
        form().tiles("answer", tr("Done"), Choice::Shape::Segment, answers, chosen);
        form().note(tr("This only notes it. Refunds are under Money; what is made again is a new "
                       "order at the fair table."));
        setAction(tr("Save what was done"));
        beginAt("answer");
    }

protected:
    void act() override {
        const int chosen = form().chosen("answer");
        if (form().isSound())
            settle(db::answerClaim(desk().file(), m_claim, kAnswers[chosen], desk().now()));
    }

private:
    ClaimId m_claim;
};

} // namespace

Slip* makeCameBack(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto inView = orderIn(desk, matter);
    if (!inView || std::ranges::none_of(inView->garments, [](const Garment& garment) {
            return garment.handedOverAt.has_value();
        }))
        return nullptr;
    return new CameBackSlip(desk, *inView, matter.garment, parent);
}

Slip* makeAnswerClaim(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto inView = orderIn(desk, matter);
    if (!inView || !matter.claim)
        return nullptr;
    const auto claims = desk.file().read(
        [&](db::Connection& connection) { return db::claimsOf(connection, inView->order.id); });
    if (!desk.done(claims))
        return nullptr;
    const auto claim = std::ranges::find(*claims, *matter.claim, &Claim::id);
    return claim == claims->end() ? nullptr : new AnswerClaimSlip(desk, *inView, *claim, parent);
}

} // namespace holdfast::app
