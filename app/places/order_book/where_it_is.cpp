// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/order_book/where_it_is.h"

#include "app/desk/formats.h"
#include "core/shop/shared_press.h"

#include <QCoreApplication>

#include <algorithm>
#include <optional>

namespace holdfast::app {

namespace {

class WhereItIs {
    Q_DECLARE_TR_FUNCTIONS(WhereItIs)
};

QString atTime(const ReckonedShop& shop, Instant when) {
    const LocalTime local = shop.now.toLocal(when);
    if (dateOf(local) == shop.now.today())
        return clock(local);
    return WhereItIs::tr("%1 %2").arg(day(dateOf(local)), clock(local));
}

QString stageIcon(Stage stage) {
    switch (stage) {
    case Stage::ToConfirm:
        return QStringLiteral("person");
    case Stage::ToBuy:
        return QStringLiteral("tag");
    case Stage::ToWash:
        return QStringLiteral("unwashed");
    case Stage::Drying:
        return QStringLiteral("wash");
    case Stage::ToCut:
        return QStringLiteral("scissors");
    case Stage::ToPress:
    case Stage::OnPress:
        return QStringLiteral("press-walk");
    case Stage::Cooling:
        return QStringLiteral("cooling");
    case Stage::Resting:
        return QStringLiteral("resting");
    case Stage::Ready:
        return QStringLiteral("ready");
    case Stage::HandedOver:
        return QStringLiteral("done");
    case Stage::Cancelled:
        break;
    }
    return QStringLiteral("close");
}

QString plannedWords(const ReckonedShop& shop, GarmentId garment) {
    const PlannedGarment* planned = shop.plan.find(garment);
    return planned ? WhereItIs::tr("On the walk, %1").arg(atTime(shop, planned->begins))
                   : WhereItIs::tr("To press");
}

WhereWords heldWords(const Assessment& assessment) {
    QString what = words(assessment.firstHold()->what);
    if (!what.isEmpty())
        what[0] = what[0].toLower();
    return {QStringLiteral("hold"), WhereItIs::tr("Held, %1").arg(what), Tone::Held};
}

WhereWords stateWords(OrderState state) {
    switch (state) {
    case OrderState::HandedOver:
        return {QStringLiteral("done"), WhereItIs::tr("Handed over"), Tone::Plain};
    case OrderState::Cancelled:
        return {QStringLiteral("close"), WhereItIs::tr("Cancelled"), Tone::Plain};
    case OrderState::Quoted:
        return {QStringLiteral("person"), WhereItIs::tr("Quoted, not confirmed"), Tone::Plain};
    case OrderState::Confirmed:
        break;
    }
    return {QStringLiteral("person"), WhereItIs::tr("Taken"), Tone::Plain};
}

} // namespace

WhereWords whereIsGarment(const ReckonedShop& shop, const Garment& garment) {
    const Assessment& assessment = shop.of(garment.id);
    if (assessment.isHeld())
        return heldWords(assessment);
    WhereWords where{stageIcon(assessment.stage), words(stageWords(assessment.stage)), Tone::Plain};
    switch (assessment.stage) {
    case Stage::ToPress:
        where.words = plannedWords(shop, garment.id);
        break;
    case Stage::OnPress:
        where.words = WhereItIs::tr("On the press now");
        break;
    case Stage::Resting:
        if (assessment.restUntil)
            where.words = WhereItIs::tr("Resting until %1").arg(atTime(shop, *assessment.restUntil));
        break;
    case Stage::Ready:
        where.words = WhereItIs::tr("Ready on the peg");
        where.tone = Tone::Ready;
        break;
    case Stage::ToConfirm:
    case Stage::ToBuy:
    case Stage::ToWash:
    case Stage::Drying:
    case Stage::ToCut:
    case Stage::Cooling:
    case Stage::HandedOver:
    case Stage::Cancelled:
        break;
    }
    return where;
}

WhereWords whereIsOrder(const ReckonedShop& shop, const db::OrderLine& line) {
    if (line.isUndone)
        return {QStringLiteral("undo"), WhereItIs::tr("Undone"), Tone::Plain};
    const Order* order = shop.facts.orders.find(line.id);
    const bool isLeftOut = std::ranges::find(shop.facts.unread, std::optional{line.id}, &UnreadRow::order) !=
                           shop.facts.unread.end();
    if (line.isUnread || (!order && isLeftOut))
        return {QStringLiteral("hold"), WhereItIs::tr("Cannot be read, left out"), Tone::Held};
    if (const Sentence odd = oddInShort(line.state, line.total, line.paid, line.isAnyHandedOver);
        !odd.empty())
        return {QStringLiteral("caution"), words(odd), Tone::Held};
    if (order && !sharedPresses(shop.facts, line.id).empty())
        return {QStringLiteral("caution"), WhereItIs::tr("Two under one platen"), Tone::Held};
    if (!order || line.state == OrderState::HandedOver || line.state == OrderState::Cancelled ||
        line.state == OrderState::Quoted)
        return stateWords(line.state);

    const auto garments = shop.facts.garmentsOf(line.id);
    const Garment* behind = nullptr;
    int cooling = 0;
    for (const Garment* garment : garments) {
        const Assessment& assessment = shop.of(garment->id);
        if (assessment.isHeld())
            return heldWords(assessment);
        if (assessment.stage == Stage::OnPress)
            return whereIsGarment(shop, *garment);
        cooling += assessment.stage == Stage::Cooling;
        if (!behind || assessment.stage < shop.of(behind->id).stage)
            behind = garment;
    }
    if (!behind)
        return stateWords(line.state);
    if (cooling > 0)
        return {stageIcon(Stage::Cooling),
                garments.size() > 1 ? WhereItIs::tr("Cooling, %1 of %2").arg(cooling).arg(garments.size())
                                    : WhereItIs::tr("Cooling"),
                Tone::Plain};
    WhereWords where = whereIsGarment(shop, *behind);
    if (shop.of(behind->id).stage == Stage::Resting)
        where.words = WhereItIs::tr("Resting");
    return where;
}

} // namespace holdfast::app
