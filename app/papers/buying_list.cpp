// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/buying_list.h"

#include "app/desk/buy_words.h"
#include "app/desk/formats.h"
#include "app/papers/list_paper.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

struct BuyingWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::BuyingList)
};

} // namespace

std::vector<Paper> buyingList(const ReckonedShop& shop, const WhatToBuy& what) {
    const ShopSettings& settings = shop.facts.settings;
    PaperList list;
    list.name = QStringLiteral("to-buy");
    list.head.title = BuyingWords::tr("To buy, %1").arg(longDay(shop.now.today()));
    list.head.under = words(settings.shopName);
    list.above = what.isAnyBought()
                     ? BuyingWords::tr("%1, for about %2.")
                           .arg(BuyWords::amounts(what), money(what.cost(), settings.currency))
                     : BuyingWords::tr("Nothing is to be bought now, as far as its use is known.");
    const std::string* last = nullptr;
    for (const ToBuy& line : what.lines) {
        if (line.buy == 0)
            continue;
        if (!last || *last != line.supplier)
            list.sections.push_back(
                {BuyWords::supplier(line.supplier),
                 {BuyingWords::tr("Left"), BuyingWords::tr("About"), BuyingWords::tr("Buy")},
                 {}});
        last = &line.supplier;
        list.sections.back().rows.push_back(
            {words(line.name),
             {BuyWords::amount(line, line.there), money(line.cost, settings.currency),
              BuyWords::amount(line, line.buy)},
             BuyWords::reason(line, what.fair)});
    }
    list.note =
        BuyingWords::tr("An estimate from the last %1 weeks, for a risk of %2 % that something runs out "
                        "before more arrives. Costs are those written down.")
            .arg(kUseWeeks)
            .arg(settings.runOutPercent);
    return listPaper(list);
}

} // namespace holdfast::app
