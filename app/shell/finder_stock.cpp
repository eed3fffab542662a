// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/finder_stock.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class StockEntries {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::FinderActions)

public:
    explicit StockEntries(ShopDesk& desk)
        : m_facts(desk.shop()->facts) {}

    std::vector<FinderEntry> all() {
        for (const BlankStyle& style : m_facts.styles)
            addStyle(style);
        for (const Film& film : m_facts.films)
            addFilm(film);
        for (const Press& press : m_facts.presses) {
            SlipTarget matter;
            matter.press = press.id;
            add(tr("Change the press %1").arg(words(press.name)), stateOf(press.isRetired), "press-walk",
                matter, SlipName::ChangePress);
        }
        for (const StoragePlace& place : m_facts.places) {
            SlipTarget matter;
            matter.place = place.id;
            add(tr("Change the storage place %1").arg(words(place.name)), stateOf(place.isRetired),
                "shelf-away", matter, SlipName::ChangePlace);
        }
        return std::move(m_entries);
    }

private:
    void addStyle(const BlankStyle& style) {
        SlipTarget matter;
        matter.style = style.id;
        const QString name = words(style.name);
        add(tr("Change the blank style %1").arg(name), stateOf(style.isRetired), "tag", matter,
            SlipName::ChangeStyle);
        add(tr("Add a style like %1").arg(name), tr("all but its name"), "tag", matter, SlipName::CopyStyle);
    }

    void addFilm(const Film& film) {
        SlipTarget matter;
        matter.film = film.id;
        const QString name = words(film.name());
        add(tr("Change the film %1").arg(name), stateOf(film.isRetired), "film-shelf", matter,
            SlipName::FilmSheet);
        add(tr("Add the next shade after %1").arg(name), tr("with its limits and recipe"), "film-shelf",
            matter, SlipName::NextShade);
    }

    static QString stateOf(bool isRetired) {
        return isRetired ? tr("retired; bring it back") : tr("cost, name, retire it");
    }

    void add(const QString& title, const QString& second, const char* icon, const SlipTarget& matter,
             SlipName slip) {
        m_entries.push_back({.kind = FinderKind::Action,
                             .title = title,
                             .second = second,
                             .also = tr("price rename edit correct"),
                             .iconName = QString::fromLatin1(icon),
                             .shade = {},
                             .keys = {},
                             .target = AskSlip{slip, matter}});
    }

    const ShopFacts& m_facts;
    std::vector<FinderEntry> m_entries;
};

} // namespace

std::vector<FinderEntry> stockEntries(ShopDesk& desk) {
    return StockEntries(desk).all();
}

} // namespace holdfast::app
