// SPDX-License-Identifier: GPL-3.0-or-later
// A lot counted again, and what washing did to its measures.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/lot_pick.h"
#include "app/slips/slip_makers.h"
#include "app/widgets/label.h"
#include "core/trade/limits.h"
#include "db/actions/blank_actions.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

constexpr std::int64_t kMostCounted = 100'000;
constexpr std::int64_t kShortestMeasure = 10; // mm
constexpr std::int64_t kLongestMeasure = 3000;

class CorrectCountSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(CorrectCountSlip)

public:
    CorrectCountSlip(ShopDesk& shopDesk, const std::vector<BlankLot>& lots, QWidget* parent)
        : FormSlip(shopDesk, tr("Correct the count"), lotsWords(shopDesk.shop()->facts, lots), parent)
        , m_lot(new LotPick(form(), shopDesk, lots, tr("Which of them did you count?"))) {
        m_ledger = form().note({});
        QObject::connect(m_lot, &LotPick::changed, this, [this] { showLedger(); });
        showLedger();
        form().number("counted", tr("Counted"), tr("blanks"));
        form().line("reason", tr("Why it differs"));
        setAction(tr("Save the count"));
    }

protected:
    void act() override {
        m_lot->check();
        const std::int64_t units = form().whole("counted", 0, kMostCounted);
        const std::string reason = plain(form().text("reason"));
        const auto sound =
            typedText(reason, {.field = "reason", .what = phrase("The reason"), .least = 3, .most = 200});
        if (!sound.ok())
            say(sound.error());
        if (form().isSound())
            settle(db::correctCount(desk().file(), m_lot->lot()->id, units, reason));
    }

private:
    void showLedger() {
        const BlankLot* lot = m_lot->lot();
        m_ledger->setVisible(lot != nullptr);
        if (!lot)
            return;
        const auto reserved = lot->unitsLeft - desk().shop()->facts.freeUnits(*lot);
        m_ledger->setText(reserved > 0 ? tr("Its ledger says %1, of which %2 are reserved for orders.")
                                             .arg(lot->unitsLeft)
                                             .arg(reserved)
                                       : tr("Its ledger says %1.").arg(lot->unitsLeft));
    }

    LotPick* m_lot;
    Label* m_ledger = nullptr;
};

class ShrinkageSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(ShrinkageSlip)

public:
    ShrinkageSlip(ShopDesk& shopDesk, const std::vector<BlankLot>& lots, QWidget* parent)
        : FormSlip(shopDesk, tr("Measure the shrinkage"), lotsWords(shopDesk.shop()->facts, lots), parent)
        , m_lot(new LotPick(form(), shopDesk, lots, tr("Which of them did you measure?")))
        , m_limit(shopDesk.shop()->facts.settings.shrinkLimitPercent) {
        const auto text = [&](Millimetres Shrinkage::* measure) {
            const BlankLot* lot = m_lot->lot();
            return lot && lot->shrinkage ? QString::number(((*lot->shrinkage).*measure).value) : QString();
        };
        form().note(tr("One blank laid flat, before and after its wash."));
        form().section(tr("Length"));
        form().pair();
        form().number("lengthBefore", tr("Before"), tr("mm"), text(&Shrinkage::lengthBefore));
        form().number("lengthAfter", tr("After"), tr("mm"), text(&Shrinkage::lengthAfter));
        form().section(tr("Width"));
        form().pair();
        form().number("widthBefore", tr("Before"), tr("mm"), text(&Shrinkage::widthBefore));
        form().number("widthAfter", tr("After"), tr("mm"), text(&Shrinkage::widthAfter));
        m_figures = form().note({});
        QObject::connect(&form(), &Form::edited, this, [this] { showFigures(); });
        showFigures();
        setAction(tr("Save the measures"));
    }

protected:
    void act() override {
        const auto measure = [&](std::string_view name) {
            return Millimetres{form().whole(name, kShortestMeasure, kLongestMeasure)};
        };
        m_lot->check();
        Shrinkage shrinkage;
        shrinkage.lengthBefore = measure("lengthBefore");
        shrinkage.lengthAfter = measure("lengthAfter");
        shrinkage.widthBefore = measure("widthBefore");
        shrinkage.widthAfter = measure("widthAfter");
        if (form().isSound())
            settle(db::measureShrinkage(desk().file(), m_lot->lot()->id, shrinkage));
    }

private:
    QString changeWords(std::string_view before, std::string_view after, bool& isBeyond) const {
        const auto was = readWhole(form().text(before), {}, kShortestMeasure, kLongestMeasure);
        const auto is = readWhole(form().text(after), {}, kShortestMeasure, kLongestMeasure);
        if (!was.ok() || !is.ok())
            return tr("not measured yet");
        const double change = dimensionalChange(Millimetres{*was}, Millimetres{*is});
        isBeyond = isBeyond || -change > m_limit;
        return tr("%1 %").arg(valueWords(Decimal{change, 1}));
    }

    void showFigures() {
        bool isBeyond = false;
        const QString length = changeWords("lengthBefore", "lengthAfter", isBeyond);
        const QString width = changeWords("widthBefore", "widthAfter", isBeyond);
        m_figures->setText(tr("Length %1, width %2. The shop allows %3 % of shrinking.")
                               .arg(length, width, valueWords(Decimal{m_limit})));
        m_figures->setInk(isBeyond ? &Tokens::madder : &Tokens::ink2);
    }

    LotPick* m_lot;
    double m_limit;
    Label* m_figures = nullptr;
};

} // namespace

Slip* makeCorrectCount(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto lots = lotsIn(desk, matter);
    return lots.empty() ? nullptr : new CorrectCountSlip(desk, lots, parent);
}

Slip* makeMeasureShrinkage(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto lots = lotsIn(desk, matter);
    return lots.empty() ? nullptr : new ShrinkageSlip(desk, lots, parent);
}

} // namespace holdfast::app
