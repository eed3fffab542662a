// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/slip.h"
#include "app/slips/slip_makers.h"

#include <QStringList>

namespace holdfast::app {

QString slipKey(SlipName name, const SlipTarget& matter) {
    QStringList parts{QString::number(static_cast<int>(name)), matter.size};
    const auto add = [&](const auto& id) { parts.append(id ? QString::number(id->value) : QString()); };
    add(matter.order);
    add(matter.customer);
    add(matter.garment);
    add(matter.decal);
    add(matter.roll);
    add(matter.film);
    add(matter.lot);
    add(matter.style);
    add(matter.place);
    add(matter.press);
    add(matter.colour);
    add(matter.claim);
    add(matter.fair);
    add(matter.invoice);
    parts.append(matter.at ? QString::number(matter.at->time_since_epoch().count()) : QString());
    parts.append(matter.settings ? QString::number(static_cast<int>(*matter.settings)) : QString());
    parts.append(matter.rule ? QString::number(static_cast<int>(*matter.rule)) : QString());
    for (const DecalId decal : matter.decals)
        parts.append(QString::number(decal.value));
    return parts.join(u'/');
}

Slip* makeSlip(SlipName name, ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    switch (name) {
    case SlipName::ReadLabel:
        return makeReadLabel(desk, matter, parent);
    case SlipName::MarkNotPrewashed:
        return makeMarkNotPrewashed(desk, matter, parent);
    case SlipName::ChooseWayRound:
        return makeChooseWayRound(desk, matter, parent);
    case SlipName::NoteLawChecked:
        return makeNoteLawChecked(desk, matter, parent);
    case SlipName::ReceiveBlanks:
        return makeReceiveBlanks(desk, matter, parent);
    case SlipName::CorrectCount:
        return makeCorrectCount(desk, matter, parent);
    case SlipName::AddStyle:
        return makeAddStyle(desk, matter, parent);
    case SlipName::ChangeStyle:
        return makeChangeStyle(desk, matter, parent);
    case SlipName::CopyStyle:
        return makeCopyStyle(desk, matter, parent);
    case SlipName::ChangeBlank:
        return makeChangeBlank(desk, matter, parent);
    case SlipName::MarkDry:
        return makeMarkDry(desk, matter, parent);
    case SlipName::MeasureShrinkage:
        return makeMeasureShrinkage(desk, matter, parent);
    case SlipName::ReceiveRoll:
        return makeReceiveRoll(desk, matter, parent);
    case SlipName::RollMove:
        return makeRollMove(desk, matter, parent);
    case SlipName::TestStrip:
        return makeTestStrip(desk, matter, parent);
    case SlipName::RecordReading:
        return makeRecordReading(desk, matter, parent);
    case SlipName::CorrectReading:
        return makeCorrectReading(desk, matter, parent);
    case SlipName::ImportReadings:
        return makeImportReadings(desk, matter, parent);
    case SlipName::UseUpRoll:
        return makeUseUpRoll(desk, matter, parent);
    case SlipName::ChangePlace:
        return makeChangePlace(desk, matter, parent);
    case SlipName::AddFilm:
        return makeAddFilm(desk, matter, parent);
    case SlipName::FilmSheet:
        return makeFilmSheet(desk, matter, parent);
    case SlipName::NextShade:
        return makeNextShade(desk, matter, parent);
    case SlipName::Recipe:
        return makeRecipe(desk, matter, parent);
    case SlipName::ChangeFilm:
        return makeChangeFilm(desk, matter, parent);
    case SlipName::Miscut:
        return makeMiscut(desk, matter, parent);
    case SlipName::CheckPress:
        return makeCheckPress(desk, matter, parent);
    case SlipName::AddPress:
        return makeAddPress(desk, matter, parent);
    case SlipName::ChangePress:
        return makeChangePress(desk, matter, parent);
    case SlipName::Layers:
        return makeLayers(desk, matter, parent);
    case SlipName::ConfirmWording:
        return makeConfirmWording(desk, matter, parent);
    case SlipName::TakeMoney:
        return makeTakeMoney(desk, matter, parent);
    case SlipName::MovePromise:
        return makeMovePromise(desk, matter, parent);
    case SlipName::Customer:
        return makeCustomer(desk, matter, parent);
    case SlipName::JoinCustomers:
        return makeJoinCustomers(desk, matter, parent);
    case SlipName::ForgetCustomer:
        return makeForgetCustomer(desk, matter, parent);
    case SlipName::PartOrder:
        return makePartOrder(desk, matter, parent);
    case SlipName::Invoice:
        return makeInvoiceSlip(desk, matter, parent);
    case SlipName::CreditNote:
        return makeCreditNoteSlip(desk, matter, parent);
    case SlipName::OrderNote:
        return makeOrderNote(desk, matter, parent);
    case SlipName::CancelOrder:
        return makeCancelOrder(desk, matter, parent);
    case SlipName::CameBack:
        return makeCameBack(desk, matter, parent);
    case SlipName::AnswerClaim:
        return makeAnswerClaim(desk, matter, parent);
    case SlipName::Waive:
        return makeWaive(desk, matter, parent);
    case SlipName::Spoil:
        return makeSpoil(desk, matter, parent);
    case SlipName::OrdersFile:
        return makeOrdersFile(desk, matter, parent);
    case SlipName::CountTill:
        return makeCountTill(desk, matter, parent);
    case SlipName::AddFair:
        return makeAddFair(desk, matter, parent);
    case SlipName::ChangeFair:
        return makeChangeFair(desk, matter, parent);
    case SlipName::Scanner:
        return makeScanner(desk, matter, parent);
    case SlipName::Settings:
        return makeSettings(desk, matter, parent);
    }
    return nullptr;
}

} // namespace holdfast::app
