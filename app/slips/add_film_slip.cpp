// A film written down: what it is, what it holds on, how it is kept. Its recipe is entered next.
#include "app/desk/formats.h"
#include "app/slips/care_parts.h"
#include "app/slips/fibre_rows.h"
#include "app/slips/form_slip.h"
#include "app/slips/shade_picker.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/field.h"
#include "app/widgets/switch.h"
#include "core/trade/limits.h"
#include "core/trade/unit_words.h"
#include "db/actions/film_actions.h"

#include <QBoxLayout>
#include <QCheckBox>
#include <QCoreApplication>
#include <QGridLayout>

namespace holdfast::app {

namespace {

QString numberText(double number) {
    return words(numberWords(number));
}

// A tick for each fibre, two in a row.
class FibreTicks : public QWidget {
public:
    FibreTicks() {
        auto* grid = new QGridLayout(this);
        grid->setContentsMargins(0, 0, 0, 0);
        for (int at = 0; at < kFibreCount; ++at) {
            auto* tick = new QCheckBox(words(fibreName(static_cast<Fibre>(at))));
            tick->setObjectName(QStringLiteral("notFor-%1").arg(at));
            grid->addWidget(tick, at / 2, at % 2);
            m_ticks.append(tick);
        }
    }

    std::vector<Fibre> ticked() const {
        std::vector<Fibre> fibres;
        for (int at = 0; at < kFibreCount; ++at)
            if (m_ticks[at]->isChecked())
                fibres.push_back(static_cast<Fibre>(at));
        return fibres;
    }

private:
    QVector<QCheckBox*> m_ticks;
};

class AddFilmSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(AddFilmSlip)

public:
    AddFilmSlip(ShopDesk& shopDesk, const QString& finish, QWidget* parent)
        : FormSlip(shopDesk, tr("Add a film"),
                   tr("One finish in one shade, as its maker’s sheet describes it."), parent) {
        const Film usual;
        addKind(usual, finish);
        addHold(usual);
        addKeeping(usual);
        form().section(tr("Care, as its maker allows"));
        addCareParts(form(), usual.care);
        setAction(tr("Add the film"));
        setLong();
    }

protected:
    void act() override {
        Film film;
        readKind(film);
        readHold(film);
        readKeeping(film);
        if (!form().isSound())
            return;
        film.care = readCare(form());
        if (!form().isSound())
            return;
        const auto added = db::addFilm(desk().file(), film);
        if (!added.ok())
            return say(added.error());
        finish();
        Matter next;
        next.film = *added;
        emit desk().slipAsked(SlipName::Recipe, next);
    }

private:
    void addKind(const Film& usual, const QString& finish) {
        form().line("finish", tr("Finish"), finish)->setPlaceholder(tr("as Marram Soft"));
        form().line("shade", tr("Shade"))->setPlaceholder(tr("as Dusk"));
        m_shade = new ShadePicker(tr("Colour of the film"));
        form().own("rgb", {}, m_shade);
        QObject::connect(m_shade, &ShadePicker::changed, this, [this] { form().setError("rgb", {}); });
        form().pair();
        form().number("rollWidth", tr("Width of a roll"), tr("mm"), QString::number(usual.rollWidth.value));
        form().line("costPerMetre", tr("Cost of a metre, %1").arg(words(desk().currency().sign)));
        form().turn("hasGrain", tr("Has a grain: keep its direction"), usual.hasGrain);
    }

    void readKind(Film& film) {
        film.finish = plain(form().text("finish"));
        film.shade = plain(form().text("shade"));
        if (const auto sound =
                typedText(film.finish, {.field = "finish", .what = "The film’s finish", .most = 60});
            !sound.ok())
            say(sound.error());
        if (const auto sound =
                typedText(film.shade, {.field = "shade", .what = "The film’s shade", .most = 40});
            !sound.ok())
            say(sound.error());
        if (const auto rgb = m_shade->shade())
            film.rgb = *rgb;
        else
            form().setError("rgb", tr("Colour: six digits of red, green and blue, such as 66754c."));
        film.rollWidth = Millimetres{form().whole("rollWidth", 20, 2000)};
        film.costPerMetre = form().money("costPerMetre", desk().currency());
        film.hasGrain = form().isOn("hasGrain");
    }

    void addHold(const Film& usual) {
        form().section(tr("What it holds on"));
        form().segments("follows", tr("Cloth that gives: follows"), {tr("none"), tr("some"), tr("high")},
                        static_cast<int>(usual.follows));
        form().turn("gripsCoated", tr("Holds on coated cloth"), usual.gripsCoated);
        m_notFor = new FibreTicks;
        form().own("notFor", tr("Does not hold on"), m_notFor);
        form().turn("mayLieUnder", tr("Another film may lie on it"), usual.mayLieUnder);
        form().turn("mayLieOver", tr("It may lie on another film"), usual.mayLieOver);
    }

    void readHold(Film& film) {
        film.follows = static_cast<Stretch>(form().chosen("follows"));
        film.gripsCoated = form().isOn("gripsCoated");
        film.notFor = m_notFor->ticked();
        film.mayLieUnder = form().isOn("mayLieUnder");
        film.mayLieOver = form().isOn("mayLieOver");
    }

    void addKeeping(const Film& usual) {
        form().section(tr("How it is kept"));
        form().number("shelfLife", tr("Shelf life"), tr("days"));
        form().optional("shelfLife");
        form().pair();
        form().number("humidity", tr("Humidity from"), tr("%"),
                      numberText(usual.storage.humidity.low.percent));
        form().number("humidityHigh", tr("to"), tr("%"), numberText(usual.storage.humidity.high.percent));
        form().pair();
        form().number("storage", tr("Temperature from"), tr("°C"),
                      numberText(usual.storage.temperature.low.value));
        form().number("storageHigh", tr("to"), tr("°C"), numberText(usual.storage.temperature.high.value));
        form().number("allowedOutside", tr("May stand outside these for"), tr("h"),
                      QString::number(usual.storage.allowedOutside.count()));
        form().number("testStripExtends", tr("A strip that holds adds"), tr("days"),
                      QString::number(usual.testStripExtends.count()));
        form().pair();
        form().number("q10", tr("Ages faster by"), tr("× per 10 °C"), numberText(usual.ageing.q10));
        form().number("reference", tr("above"), tr("°C"), numberText(usual.ageing.reference.value));
        form().note(tr("Where the maker’s sheet says nothing, these are common practice."));
    }

    void readKeeping(Film& film) {
        if (const auto days = form().optionalWhole("shelfLife", 1, 36'500))
            film.shelfLife = Days{*days};
        film.storage.humidity = {Humidity{form().decimal("humidity", 0, 100)},
                                 Humidity{form().decimal("humidityHigh", 0, 100)}};
        film.storage.temperature = {Celsius{form().decimal("storage", -20, 60)},
                                    Celsius{form().decimal("storageHigh", -20, 60)}};
        film.storage.allowedOutside = Hours{form().whole("allowedOutside", 0, 8784)};
        film.testStripExtends = Days{form().whole("testStripExtends", 0, 3650)};
        film.ageing.q10 = form().decimal("q10", 1, 10);
        film.ageing.reference = Celsius{form().decimal("reference", -20, 60)};
    }

    ShadePicker* m_shade = nullptr;
    FibreTicks* m_notFor = nullptr;
};

} // namespace

Slip* makeAddFilm(ShopDesk& desk, const Matter& matter, QWidget* parent) {
    // Asked for beside a film, another shade of its finish is meant.
    const auto film = filmIn(desk, matter);
    return new AddFilmSlip(desk, film ? words(film->finish) : QString(), parent);
}

} // namespace holdfast::app
