// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/buy_words.h"

#include "app/desk/formats.h"

namespace holdfast::app {

namespace {

QString useIsUnknown(const ToBuy& line) {
    return line.weeks == 0 ? BuyWords::tr("Nobody knows its use yet: none was ever here.")
                           : BuyWords::tr("Nobody knows its use yet: it is known for %n week only.|Nobody "
                                          "knows its use yet: it is known for %n weeks only.",
                                          nullptr, howMany(line.weeks));
}

QString promisedReason(const ToBuy& line) {
    return line.isFilm()
               ? BuyWords::tr("Orders need %1 that no roll has.").arg(BuyWords::amount(line, line.promised))
               : BuyWords::tr("%n garment of an order has none.|%n garments of orders have none.", nullptr,
                              howMany(line.promised));
}

} // namespace

QString BuyWords::amount(const ToBuy& line, std::int64_t amount) {
    return line.isFilm() ? metres(Millimetres{amount}) : QString::number(amount);
}

QString BuyWords::useRange(const ToBuy& line) {
    if (!line.isUseKnown())
        return tr("–");
    const auto whole = [](double use) { return std::llround(use); };
    return tr("%1 to %2").arg(amount(line, whole(line.useLow)), amount(line, whole(line.useHigh)));
}

QString BuyWords::reason(const ToBuy& line, const std::optional<Fair>& fair) {
    switch (line.why) {
    case WhyBuy::Promised:
        return line.isUseKnown() ? promisedReason(line)
                                 : tr("%1 %2").arg(promisedReason(line), useIsUnknown(line));
    case WhyBuy::Fair:
        return fair ? tr("For %1.").arg(words(fair->name)) : QString();
    case WhyBuy::RunsLow:
        return tr("No more than %1 is there.").arg(amount(line, line.reorderPoint));
    case WhyBuy::Enough:
        break;
    }
    if (!line.isUseKnown())
        return useIsUnknown(line);
    return line.isUsed
               ? QString()
               : tr("None was used in %n week.|None was used in %n weeks.", nullptr, howMany(line.weeks));
}

QString BuyWords::supplier(const std::string& supplier) {
    return supplier.empty() ? tr("Supplier not written down") : words(supplier);
}

QString BuyWords::amounts(const WhatToBuy& what) {
    std::int64_t blanks = 0;
    Millimetres film{0};
    for (const ToBuy& line : what.lines) {
        if (line.isFilm())
            film += Millimetres{line.buy};
        else
            blanks += line.buy;
    }
    const QString counted = tr("%n blank|%n blanks", nullptr, howMany(blanks));
    if (film == Millimetres{0})
        return counted;
    return blanks == 0 ? tr("%1 of film").arg(metres(film))
                       : tr("%1 and %2 of film").arg(counted, metres(film));
}

} // namespace holdfast::app
