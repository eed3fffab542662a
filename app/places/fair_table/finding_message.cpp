// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/finding_message.h"

#include "app/desk/formats.h"
#include "core/shop/settled_day.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class FindingWords {
    Q_DECLARE_TR_FUNCTIONS(FindingWords)
};

void setDay(TableMessage& message, const Finding& finding) {
    if (!finding.holds())
        return;
    if (!leavesDayTrue(finding.rule))
        message.leavesDayOpen = words(unsettledWords(finding));
    else if (finding.rule == Rule::PressOff || finding.rule == Rule::PressUneven)
        message.dayWaitsFor = FindingWords::tr("once the press is right");
    else
        message.dayWaitsFor = deliveryWords();
}

} // namespace

QString deliveryWords() {
    return FindingWords::tr("if everything arrives in time");
}

TableMessage messageFrom(const Finding& finding) {
    TableMessage message;
    message.tone = finding.grade == Grade::Hold ? Tone::Held : Tone::Caution;
    message.lead = words(finding.what) + u'.';
    message.text = words(finding.why);
    message.matter.film = finding.film;
    message.matter.style = finding.style;
    message.matter.rule = finding.rule;
    message.matter.press = finding.press;
    setDay(message, finding);
    // Another film or blank is chosen right here; other acts have their slips.
    for (const FreeingAct act : finding.frees)
        if (act == FreeingAct::ReadLabel || act == FreeingAct::EnterRecipe ||
            act == FreeingAct::ConfirmRecipe || act == FreeingAct::ChooseWayRound ||
            act == FreeingAct::NoteLawChecked || act == FreeingAct::AddPress || act == FreeingAct::CheckPress)
            message.act = act;
    return message;
}

} // namespace holdfast::app
