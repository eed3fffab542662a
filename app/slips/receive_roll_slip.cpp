// SPDX-License-Identifier: GPL-3.0-or-later
// A roll of film onto the shelf.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/place_pick.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/field.h"
#include "core/trade/paper_numbers.h"
#include "db/actions/film_actions.h"

#include <QCoreApplication>

#include <algorithm>
#include <memory>

namespace holdfast::app {

namespace {

constexpr std::int64_t kNarrowest = 20; // mm
constexpr std::int64_t kWidest = 2000;
constexpr Millimetres kShortest{100};
constexpr Millimetres kLongest{200'000};

class ReceiveRollSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(ReceiveRollSlip)

public:
    ReceiveRollSlip(ShopDesk& shopDesk, const SlipTarget& matter, QWidget* parent)
        : FormSlip(shopDesk, tr("Receive a roll"), tr("A roll of film onto the shelf."), parent) {
        const auto wanted = filmIn(shopDesk, matter);
        int at = -1;
        QVector<PickItem> items;
        for (const Film& film : shopDesk.shop()->facts.films) {
            if (film.isRetired)
                continue;
            if (wanted && wanted->id == film.id)
                at = static_cast<int>(m_films.size());
            m_films.push_back(film);
            items.append({words(film.name()), colourOf(film.rgb)});
        }
        if (m_films.size() == 1)
            at = 0;
        auto* film = form().list("film", tr("Film"), items, at);
        form().pair();
        form().number("length", tr("Length"), tr("m"));
        m_width = form().number("width", tr("Width"), tr("mm"));
        form().line("receivedOn", tr("Received"), date(today()));
        form().pair();
        form().line("madeOn", tr("Made on"));
        form().line("printedUseBy", tr("Use-by printed on it"));
        form().optional("madeOn");
        form().optional("printedUseBy");
        m_place = std::make_unique<PlacePick>(form(), shopDesk, tr("Storage place"),
                                              matter.place ? matter.place : lastUsedPlace(*shopDesk.shop()),
                                              PlacesFor::Rolls);
        QObject::connect(film, &QComboBox::currentIndexChanged, this,
                         [this](int chosen) { showWidth(chosen); });
        showWidth(at);
        setAction(tr("Receive the roll"));
    }

protected:
    void act() override {
        db::RollReceived roll;
        roll.film = m_films[static_cast<std::size_t>(form().chosen("film"))].id;
        roll.length = form().metres("length", kShortest, kLongest);
        roll.width = Millimetres{form().whole("width", kNarrowest, kWidest)};
        roll.receivedOn = form().date("receivedOn", today());
        roll.madeOn = form().optionalDate("madeOn", today());
        roll.printedUseBy = form().optionalDate("printedUseBy", today());
        checkDays(roll);
        m_place->check();
        if (!form().isSound())
            return;
        const auto received = desk().file().asOne([&]() -> Result<db::RollOnShelf> {
            const auto place = m_place->chosen().in(desk().file());
            if (!place.ok())
                return place.error();
            roll.place = *place;
            return db::receiveRoll(desk().file(), roll, desk().now());
        });
        if (settle(received))
            desk().say(tr("%1 is on the shelf. Write the number on its core.")
                           .arg(QString::fromStdString(rollLabel(received->number))));
    }

private:
    LocalDate today() const { return desk().now().today(); }

    void checkDays(const db::RollReceived& roll) {
        if (roll.receivedOn > today())
            form().setError("receivedOn", tr("Received: a day that is not in the future."));
        if (roll.madeOn && *roll.madeOn > roll.receivedOn)
            form().setError("madeOn", tr("Made on: not after the day it was received."));
        if (roll.printedUseBy && *roll.printedUseBy <= roll.madeOn.value_or(LocalDate::min()))
            form().setError("printedUseBy", tr("The printed use-by must lie after the day it was made."));
    }

    // The film's usual width, until the person says another.
    void showWidth(int film) {
        const bool isOurs = m_width->text().isEmpty() || m_width->text() == m_usualWidth;
        if (film < 0 || !isOurs)
            return;
        m_usualWidth = QString::number(m_films[static_cast<std::size_t>(film)].rollWidth.value);
        m_width->setText(m_usualWidth);
    }

    std::vector<Film> m_films;
    std::unique_ptr<PlacePick> m_place;
    Field* m_width = nullptr;
    QString m_usualWidth;
};

} // namespace

Slip* makeReceiveRoll(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    // Before there is any film, that is what is to be written down; the roll comes after it.
    const auto& films = desk.shop()->facts.films;
    if (std::ranges::all_of(films, &Film::isRetired)) {
        SlipTarget first = matter;
        first.then = SlipName::ReceiveRoll;
        return makeAddFilm(desk, first, parent);
    }
    return new ReceiveRollSlip(desk, matter, parent);
}

} // namespace holdfast::app
