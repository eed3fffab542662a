// SPDX-License-Identifier: GPL-3.0-or-later
// A roll that is on the shelf: its test strip, another place for it, its end.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/option_list.h"
#include "app/slips/place_pick.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "core/trade/limits.h"
#include "db/actions/film_actions.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

constexpr std::int64_t kLongestStrip = 1000; // mm
constexpr int kUsualStrip = 60;              // mm, a thumb's length across a scrap of cloth
constexpr Millimetres kLongestRoll{200'000};

class TestStripSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(TestStripSlip)

public:
    TestStripSlip(ShopDesk& shopDesk, const FilmRoll& roll, QWidget* parent)
        : FormSlip(shopDesk, tr("Press a test strip"), rollWords(shopDesk.shop()->facts, roll), parent)
        , m_roll(roll.id) {
        const ReckonedShop& shop = *shopDesk.shop();
        const Film& film = shop.facts.films.at(roll.film);
        form().note(howTo(film));
        form().segments("passed", tr("After peeling and pulling"), {tr("It grips"), tr("It lifts")});
        form().note(tr("If it grips, the roll may be used until %1 at least, and earlier storage no longer "
                       "counts.")
                        .arg(date(shop.now.today() + film.testStripExtends)));
        form().number("used", tr("Film used"), tr("mm"), QString::number(kUsualStrip));
        form().line("note", tr("Note"))->setPlaceholder(tr("if any"));
        form().optional("note");
        setAction(tr("Save the strip"));
    }

protected:
    void act() override {
        const bool passed = form().chosen("passed") == 0;
        const Millimetres used{form().whole("used", 0, kLongestStrip)};
        if (form().isSound())
            settle(db::recordTestStrip(desk().file(), m_roll, passed, used, plain(form().text("note"))));
    }

private:
    static QString howTo(const Film& film) {
        if (!film.recipe)
            return tr("This film has no recipe yet; enter it first, or the strip proves nothing.");
        return tr("Press a strip on a scrap of the cloth it is for: %1, %2 s, %3, peel %4. Let it cool, pull "
                  "its edge and bend it.")
            .arg(celsius(film.recipe->temperature))
            .arg(film.recipe->dwell.count())
            .arg(words(pressureName(film.recipe->pressure)), words(peelName(film.recipe->peel)));
    }

    RollId m_roll;
};

class RollMoveSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(RollMoveSlip)

public:
    RollMoveSlip(ShopDesk& shopDesk, const FilmRoll& roll, QWidget* parent)
        : FormSlip(shopDesk, tr("Move the roll"), rollWords(shopDesk.shop()->facts, roll), parent)
        , m_roll(roll.id) {
        const ReckonedShop& shop = *shopDesk.shop();
        const Film& film = shop.facts.films.at(roll.film);
        int chosen = -1;
        QVector<Option> options;
        for (const StoragePlace& place : shop.facts.places) {
            if (place.isRetired || place.id == roll.placeNow())
                continue;
            const Option option = optionOf(shop, film, place);
            if (chosen < 0 && option.tone == Tone::Ready)
                chosen = static_cast<int>(options.size());
            options.append(option);
            m_places.push_back(place.id);
        }
        options.append({tr("A new place"), tr("give it a name below")});
        if (m_places.empty())
            chosen = 0;
        if (const auto now = roll.placeNow())
            if (const StoragePlace* place = shop.facts.places.find(*now))
                form().note(tr("Stored now at: %1. The film needs %2 and %3.")
                                .arg(words(place->name), humidityBand(film.storage.humidity),
                                     temperatureBand(film.storage.temperature)));
        m_list = new OptionList(tr("Where to"));
        m_list->setOptions(options, chosen);
        form().own("place", tr("Where to"), m_list, [list = m_list] { return list->chosenAt() >= 0; });
        form().line("placeName", tr("Name of the storage place"));
        form().alsoNamed("name", "placeName");
        QObject::connect(m_list, &OptionList::chosen, this, [this] {
            form().setError("place", {});
            form().setShown("placeName", isNew());
        });
        form().setShown("placeName", isNew());
        setAction(tr("Move the roll"));
    }

protected:
    void act() override {
        if (m_list->chosenAt() < 0)
            return form().setError("place", tr("Choose where it is stored."));
        const auto chosen = static_cast<std::size_t>(m_list->chosenAt());
        const ChosenPlace place =
            isNew() ? ChosenPlace{{}, plain(form().text("placeName"))} : ChosenPlace{m_places[chosen], {}};
        settle(desk().file().asOne([&]() -> Result<Done> {
            const auto known = place.in(desk().file());
            return known.ok() ? db::moveRoll(desk().file(), m_roll, *known) : known.error();
        }));
    }

private:
    bool isNew() const { return m_list->chosenAt() == static_cast<int>(m_places.size()); }

    static Option optionOf(const ReckonedShop& shop, const Film& film, const StoragePlace& place) {
        Option option;
        option.text = words(place.name);
        const auto reading = latestReading(shop, place.id);
        if (!reading) {
            option.second = tr("no reading yet");
            option.iconName = QStringLiteral("humidity");
            return option;
        }
        const bool fits = (!reading->hasHumidity || film.storage.humidity.contains(reading->humidity)) &&
                          film.storage.temperature.contains(reading->temperature);
        option.second = fits ? tr("%1, within the film’s limits").arg(readingWords(shop, *reading))
                             : tr("%1, outside the film’s limits").arg(readingWords(shop, *reading));
        option.iconName = fits ? QStringLiteral("done") : QStringLiteral("hold");
        option.tone = fits ? Tone::Ready : Tone::Held;
        return option;
    }

    RollId m_roll;
    std::vector<PlaceId> m_places;
    OptionList* m_list = nullptr;
};

class UseUpRollSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(UseUpRollSlip)

public:
    UseUpRollSlip(ShopDesk& shopDesk, const FilmRoll& roll, QWidget* parent)
        : FormSlip(shopDesk, tr("What is left of the roll"), rollWords(shopDesk.shop()->facts, roll), parent)
        , m_roll(roll.id) {
        form().segments("what", tr("Left on the core"), {tr("Nothing usable"), tr("Measured again")}, 0);
        form().number("measured", tr("Measured"), tr("m"));
        form().line("reason", tr("Why"))->setPlaceholder(tr("e.g. cut to the core"));
        m_writesOff =
            form().note(tr("The %1 that its ledger still has are written off.").arg(metres(roll.left)));
        QObject::connect(&form(), &Form::edited, this, [this] { showWhat(); });
        showWhat();
    }

protected:
    void act() override {
        const bool isMeasured = form().chosen("what") == 1;
        const Millimetres measured =
            isMeasured ? form().metres("measured", Millimetres{0}, kLongestRoll) : Millimetres{0};
        const std::string reason = plain(form().text("reason"));
        const auto sound =
            typedText(reason, {.field = "reason", .what = phrase("The reason"), .least = 3, .most = 200});
        if (!sound.ok())
            say(sound.error());
        if (!form().isSound())
            return;
        if (isMeasured)
            settle(db::correctLength(desk().file(), m_roll, measured, reason));
        else
            settle(db::useUpRoll(desk().file(), m_roll, reason));
    }

private:
    void showWhat() {
        const bool isMeasured = form().findChild<Choice*>(QStringLiteral("what"))->chosenAt() == 1;
        form().setShown("measured", isMeasured);
        m_writesOff->setVisible(!isMeasured);
        setAction(isMeasured ? tr("Correct its length") : tr("Mark it used up"));
    }

    RollId m_roll;
    Label* m_writesOff = nullptr;
};

} // namespace

Slip* makeTestStrip(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto roll = rollIn(desk, matter);
    return roll ? new TestStripSlip(desk, *roll, parent) : nullptr;
}

Slip* makeRollMove(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto roll = rollIn(desk, matter);
    return roll ? new RollMoveSlip(desk, *roll, parent) : nullptr;
}

Slip* makeUseUpRoll(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto roll = rollIn(desk, matter);
    return roll ? new UseUpRollSlip(desk, *roll, parent) : nullptr;
}

} // namespace holdfast::app
