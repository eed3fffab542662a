// SPDX-License-Identifier: GPL-3.0-or-later
// Another film for a decal that is not cut yet: every film with whether it may be pressed on the garment.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/option_list.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "core/holds/assessment.h"
#include "db/actions/order_actions.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

class ChangeFilmSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(ChangeFilmSlip)

public:
    ChangeFilmSlip(ShopDesk& shopDesk, const Garment& garment, const std::vector<Decal>& decals, int chosen,
                   QWidget* parent)
        : FormSlip(shopDesk, tr("Choose another film"), garmentWords(shopDesk.shop()->facts, garment), parent)
        , m_decals(decals)
        , m_style(shopDesk.shop()->facts.styleOf(garment)) {
        QVector<PickItem> names;
        for (const Decal& decal : m_decals)
            names.append({words(decal.describe())});
        m_decal = form().list("decal", tr("Which decal"), names, chosen);
        form().setShown("decal", m_decals.size() > 1);
        m_list = new OptionList(tr("Films"));
        form().own("film", tr("Film for it, those that suit the cloth first"), m_list,
                   [list = m_list] { return list->chosenAt() >= 0; });
        QObject::connect(m_decal, &QComboBox::currentIndexChanged, this, [this] { showFilms(); });
        QObject::connect(m_list, &OptionList::chosen, this, [this] { form().setError("film", {}); });
        showFilms();
        beginAt("film");
        setAction(tr("Use this film"));
    }

protected:
    void act() override {
        const int at = form().chosen("decal");
        if (m_list->chosenAt() < 0)
            form().setError("film", tr("Choose a film."));
        if (form().isSound())
            settle(db::changeFilm(desk().file(), m_decals[static_cast<std::size_t>(at)].id,
                                  m_films[static_cast<std::size_t>(m_list->chosenAt())]));
    }

private:
    struct Offer {
        FilmId film;
        Option option;
        int rank = 0; // lower is better
        Millimetres left;
    };

    Offer offerOf(const Film& film, const Decal& decal) const {
        const auto findings = fitness(film, m_style);
        const auto hold = std::ranges::find(findings, Grade::Hold, &Finding::grade);
        Offer offer{film.id, {}, 0, lengthOnShelf(desk().shop()->facts, film.id)};
        offer.option.text = words(film.name());
        offer.option.shade = colourOf(film.rgb);
        const QString stock =
            offer.left.value > 0 ? tr("%1 on the shelf").arg(metres(offer.left)) : tr("none on the shelf");
        if (hold != findings.end()) {
            offer.option.second = tr("%1. %2").arg(words(hold->what), words(hold->why));
            offer.option.iconName = QStringLiteral("hold");
            offer.option.tone = Tone::Held;
            offer.rank = 4;
        } else if (!findings.empty()) {
            offer.option.second = tr("%1. %2").arg(words(findings.front().what), words(findings.front().why));
            offer.option.iconName = QStringLiteral("caution");
            offer.option.tone = Tone::Caution;
            offer.rank = 2;
        } else {
            offer.option.second = tr("Suits the cloth, %1").arg(stock);
            offer.option.iconName = QStringLiteral("done");
            offer.option.tone = Tone::Ready;
        }
        offer.rank += offer.left < std::min(decal.width, decal.height) ? 1 : 0;
        if (film.id == decal.film)
            offer.option.text = tr("%1, as it is now").arg(offer.option.text);
        return offer;
    }

    void showFilms() {
        const int at = std::max(0, m_decal->currentIndex());
        const Decal& decal = m_decals[static_cast<std::size_t>(at)];
        std::vector<Offer> offers;
        for (const Film& film : desk().shop()->facts.films)
            if (!film.isRetired || film.id == decal.film)
                offers.push_back(offerOf(film, decal));
        std::ranges::stable_sort(offers, [](const Offer& one, const Offer& other) {
            return one.rank != other.rank ? one.rank < other.rank : one.left > other.left;
        });
        m_films.clear();
        QVector<Option> options;
        int best = -1;
        for (const Offer& offer : offers) {
            if (best < 0 && offer.rank == 0 && offer.film != decal.film)
                best = static_cast<int>(options.size());
            m_films.push_back(offer.film);
            options.append(offer.option);
        }
        m_list->setOptions(options, best);
    }

    std::vector<Decal> m_decals;
    BlankStyle m_style;
    std::vector<FilmId> m_films;
    PickList* m_decal = nullptr;
    OptionList* m_list = nullptr;
};

} // namespace

Slip* makeChangeFilm(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto garment = garmentIn(desk, matter);
    if (!garment)
        return nullptr;
    std::vector<Decal> uncut;
    int chosen = 0;
    for (const Decal& decal : garment->decals) {
        if (decal.isCut())
            continue;
        const bool isMeant = matter.decal ? matter.decal == decal.id : matter.film == decal.film;
        if (isMeant)
            chosen = static_cast<int>(uncut.size());
        uncut.push_back(decal);
    }
    if (uncut.empty()) {
        desk.say(QCoreApplication::translate("ChangeFilmSlip",
                                             "Its decals are cut already; the film can no longer change."));
        return nullptr;
    }
    return new ChangeFilmSlip(desk, *garment, uncut, chosen, parent);
}

} // namespace holdfast::app
