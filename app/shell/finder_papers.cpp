// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/finder_papers.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

struct FinderPapers {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::FinderPapers)
};

FinderEntry paperEntry(PaperName name, const QString& title, const QString& second,
                       const SlipTarget& matter) {
    return {.kind = FinderKind::Action,
            .title = title,
            .second = second,
            .iconName = QStringLiteral("order-book"),
            .shade = {},
            .keys = {},
            .target = AskPaper{name, matter}};
}

// On the fair table, where it was taken.
FinderEntry changeEntry(const Order& order, const QString& of) {
    SlipTarget matter;
    matter.order = order.id;
    return {.kind = FinderKind::Action,
            .title = FinderPapers::tr("%1  Change the order").arg(order.number),
            .second = of,
            .iconName = QStringLiteral("fair-table"),
            .shade = {},
            .keys = {},
            .target = GoTo{PlaceName::FairTable, matter}};
}

std::vector<FinderEntry> entriesOf(const Order& order, const Customer& customer) {
    SlipTarget matter;
    matter.order = order.id;
    const QString of = words(customer.name);
    std::vector<FinderEntry> entries{
        changeEntry(order, of),
        paperEntry(PaperName::ClaimTicket, FinderPapers::tr("%1  Print the claim ticket").arg(order.number),
                   of, matter),
        paperEntry(PaperName::BagTags, FinderPapers::tr("%1  Print the bag tags").arg(order.number), of,
                   matter),
        paperEntry(PaperName::CareCards, FinderPapers::tr("%1  Print the care cards").arg(order.number), of,
                   matter)};
    if (order.state == OrderState::Quoted)
        entries.push_back(paperEntry(
            PaperName::Quotation, FinderPapers::tr("%1  Print the quotation").arg(order.number), of, matter));
    if (order.paid > Money{})
        entries.push_back(paperEntry(
            PaperName::Receipt, FinderPapers::tr("%1  Print the receipt").arg(order.number), of, matter));
    return entries;
}

FinderEntry labelEntry(const FilmRoll& roll, const Film& film) {
    SlipTarget matter;
    matter.roll = roll.id;
    return paperEntry(PaperName::RollLabel,
                      FinderPapers::tr("%1  Print the roll label").arg(words(roll.label())),
                      words(film.name()), matter);
}

} // namespace

FinderEntry daySheetEntry() {
    return paperEntry(PaperName::DaySheet, FinderPapers::tr("Print the day sheet"),
                      FinderPapers::tr("the press walk on paper, with boxes to tick"), {});
}

FinderEntry buyingListEntry() {
    FinderEntry entry = paperEntry(PaperName::BuyingList, FinderPapers::tr("Print what to buy"),
                                   FinderPapers::tr("by supplier, with boxes to tick"), {});
    entry.also = FinderPapers::tr("reorder purchase order supplier stock list shopping");
    return entry;
}

std::vector<FinderEntry> paperEntries(const ReckonedShop& shop, const QStringList& typed) {
    const auto isNamed = [&](const Order& order) {
        const QString number = QString::number(order.number);
        return std::ranges::any_of(typed, [&](const QString& word) { return number.startsWith(word); });
    };
    std::vector<FinderEntry> entries;
    for (const Order& order : shop.facts.orders)
        if (isNamed(order))
            for (FinderEntry& paper : entriesOf(order, shop.facts.customers.at(order.customer)))
                entries.push_back(std::move(paper));
    for (const FilmRoll& roll : shop.facts.rolls)
        if (roll.state == RollState::OnShelf)
            entries.push_back(labelEntry(roll, shop.facts.films.at(roll.film)));
    return entries;
}

} // namespace holdfast::app
