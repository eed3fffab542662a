// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/promised_aside.h"

#include "app/desk/aside_words.h"
#include "app/desk/formats.h"
#include "app/desk/garment_words.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr std::size_t kMostNamed = 3; // orders, the first in a sentence of its own

struct AsideWords {
    Q_DECLARE_TR_FUNCTIONS(AsideWords)
};

QString firstInWords(const ReckonedShop& shop, const Order& order, bool isHeld) {
    const LocalDate promised = dateOf(order.promised);
    const LocalDate today = shop.now.today();
    const QString number = QString::number(order.number);
    if (promised == today)
        return isHeld ? AsideWords::tr("%1 is promised today and held.").arg(number)
                      : AsideWords::tr("%1 is promised today and is aside.").arg(number);
    return (isHeld ? AsideWords::tr("%1 was promised for %2 and is held.")
                   : AsideWords::tr("%1 was promised for %2 and is aside."))
        .arg(number, day(promised));
}

QString othersInWords(const std::vector<const Order*>& orders) {
    if (orders.size() < 2)
        return {};
    QStringList named;
    for (std::size_t at = 1; at < std::min(kMostNamed, orders.size()); ++at)
        named << QString::number(orders[at]->number);
    const QString list = named.join(QStringLiteral(", "));
    return orders.size() > kMostNamed
               ? AsideWords::tr(" Also aside: %1 and %2 more.").arg(list).arg(orders.size() - kMostNamed)
               : AsideWords::tr(" Also aside: %1.").arg(list);
}

} // namespace

PromisedAside promisedAside(const ReckonedShop& shop, const Walk& walk) {
    PromisedAside aside;
    std::vector<const Order*> orders;
    bool firstIsHeld = false;
    for (const AsideEntry& entry : walk.aside) {
        const Order& order = shop.facts.orderOf(shop.facts.garments.at(entry.garment));
        if (dateOf(order.promised) > shop.now.today())
            break;
        if (orders.empty() || orders.back()->id != order.id)
            orders.push_back(&order);
        // What frees the first order is said of its first garment that is held.
        const bool isOfFirst = orders.size() == 1;
        if (isOfFirst && (aside.frees.isEmpty() || (entry.isHeld && !firstIsHeld))) {
            const QString act = neededFor(shop, entry);
            aside.frees = act.isEmpty() ? AsideWords::tr("It needs only time.")
                                        : AsideWords::tr("Needed first: %1.").arg(withinLine(act));
        }
        firstIsHeld = firstIsHeld || (isOfFirst && entry.isHeld);
        aside.garments.push_back(entry.garment);
    }
    if (!orders.empty())
        aside.what = firstInWords(shop, *orders.front(), firstIsHeld) + othersInWords(orders);
    return aside;
}

} // namespace holdfast::app
