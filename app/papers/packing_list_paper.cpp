// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/packing_list_paper.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/papers/list_paper.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

class PackingSections {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PackingList)

public:
    PackingSections(const ReckonedShop& shop, const Fair& fair)
        : m_shop(shop)
        , m_facts(shop.facts)
        , m_fair(fair)
        , m_packing(packingList(shop, fair)) {}

    PaperList list() const {
        PaperList list;
        list.name = QStringLiteral("packing-list");
        list.head.title = tr("To pack for %1").arg(words(m_fair.name));
        list.head.under = m_fair.days() == 1
                              ? longDay(m_fair.firstDay)
                              : tr("%1 to %2").arg(longDay(m_fair.firstDay), longDay(m_fair.lastDay));
        addGarments(list, true);
        addGarments(list, false);
        addBlanks(list);
        addFilms(list);
        addPapers(list);
        list.above = list.sections.empty()
                         ? tr("Nothing is to be packed, as far as this shop’s file knows.")
                         : tr("%n finished garment goes along.|%n finished garments go along.", nullptr,
                              howMany(m_packing.careCards));
        list.note =
            tr("Garments are those of confirmed orders that were taken at a fair of this name or are "
               "promised for its days. The table, the cash and the tape are not in this shop’s file.");
        return list;
    }

private:
    void addGarments(PaperList& list, bool arePressed) const {
        ListSection section;
        section.heading = arePressed ? tr("Finished garments") : tr("To be finished before");
        section.heads = {tr("Promised"), arePressed ? tr("To pay") : tr("Now")};
        for (const GarmentToPack& packed : m_packing.garments)
            if (packed.isPressed == arePressed)
                section.rows.push_back(rowOf(packed));
        if (!section.rows.empty())
            list.sections.push_back(std::move(section));
    }

    ListRow rowOf(const GarmentToPack& packed) const {
        const Garment& garment = m_facts.garments.at(packed.garment);
        const Order& order = m_facts.orderOf(garment);
        const QString last = packed.isPressed ? money(order.owed(), m_facts.settings.currency)
                                              : words(stageWords(m_shop.of(garment.id).stage));
        ListRow row{tr("%1  %2").arg(garmentNumber(m_facts, garment), garmentName(m_facts, garment)),
                    {day(dateOf(order.promised)), last},
                    words(m_facts.customers.at(order.customer).name)};
        if (packed.restsUntil) {
            const LocalTime until = m_shop.now.toLocal(*packed.restsUntil);
            row.remark = tr("%1; rests until %2 %3").arg(row.remark, day(dateOf(until)), clock(until));
        }
        return row;
    }

    // A section for each style, a row for each colour and size.
    void addBlanks(PaperList& list) const {
        std::optional<BlankStyleId> last;
        for (const BlanksToPack& blanks : m_packing.blanks) {
            const BlankStyle& style = m_facts.styles.at(blanks.kind.style);
            if (last != style.id)
                list.sections.push_back({tr("Washed blanks: %1").arg(words(style.name)), {tr("Left")}, {}});
            last = style.id;
            list.sections.back().rows.push_back(
                {tr("%1, %2").arg(words(style.colour(blanks.kind.colour)->name), words(blanks.kind.size)),
                 {QString::number(blanks.units)},
                 {}});
        }
    }

    void addFilms(PaperList& list) const {
        if (m_packing.films.empty())
            return;
        ListSection section{tr("A sample of each film"), {tr("Left")}, {}};
        for (const FilmToPack& film : m_packing.films) {
            QStringList rolls;
            for (const RollId roll : film.rolls)
                rolls << words(m_facts.rolls.at(roll).label());
            section.rows.push_back({words(m_facts.films.at(film.film).name()),
                                    {metres(std::max(Millimetres{}, film.left))},
                                    tr("May be used: %1").arg(rolls.join(QStringLiteral(", ")))});
        }
        list.sections.push_back(std::move(section));
    }

    void addPapers(PaperList& list) const {
        if (m_packing.careCards == 0)
            return;
        list.sections.push_back(
            {tr("Papers"),
             {tr("Number")},
             {{tr("Bags with the stub of their claim ticket"), {QString::number(m_packing.claimTickets)}, {}},
              {tr("Care cards"), {QString::number(m_packing.careCards)}, {}}}});
    }

    const ReckonedShop& m_shop;
    const ShopFacts& m_facts;
    const Fair& m_fair;
    PackingList m_packing;
};

} // namespace

std::vector<Paper> packingListPapers(const ReckonedShop& shop, const Fair& fair) {
    return listPaper(PackingSections{shop, fair}.list());
}

} // namespace holdfast::app
