// SPDX-License-Identifier: GPL-3.0-or-later
// A film added, or changed: what it is, which cloth it grips, how it is kept. The recipe of a new
// one is entered next; the next shade of a finish has it from the one that is there.
#include "app/desk/formats.h"
#include "app/slips/care_parts.h"
#include "app/slips/fibre_rows.h"
#include "app/slips/form_slip.h"
#include "app/slips/shade_picker.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "app/widgets/switch.h"
#include "core/trade/limits.h"
#include "db/actions/film_actions.h"

#include <QBoxLayout>
#include <QCheckBox>
#include <QCoreApplication>
#include <QGridLayout>

#include <algorithm>

namespace holdfast::app {

namespace {

QString numberText(double number) {
    return valueWords(Decimal{number});
}

// A tick for each fibre, two in a row.
class FibreTicks : public QWidget {
public:
    explicit FibreTicks(const std::vector<Fibre>& ticked) {
        auto* grid = new QGridLayout(this);
        grid->setContentsMargins(0, 0, 0, 0);
        for (int at = 0; at < kFibreCount; ++at) {
            auto* tick = new QCheckBox(words(fibreName(static_cast<Fibre>(at))));
            tick->setChecked(std::ranges::find(ticked, static_cast<Fibre>(at)) != ticked.end());
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

class ShadeWords {
    Q_DECLARE_TR_FUNCTIONS(AddFilmSlip)
};

// The name and the colour; what is wrong with the name, where something is.
std::optional<Error> readShade(Form& form, const ShadePicker& picker, Film& film) {
    film.shade = plain(form.text("shade"));
    if (const auto rgb = picker.shade())
        film.rgb = *rgb;
    else
        form.setError("rgb", ShadeWords::tr("Colour: six digits of red, green and blue, such as 66754c."));
    const auto sound =
        typedText(film.shade, {.field = "shade", .what = phrase("The film’s shade"), .most = 40});
    return sound.ok() ? std::nullopt : std::optional{sound.error()};
}

// The next shade of a finish: all but its name and colour is as it is of the film that is there, its recipe
// too.
class NextShadeSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(NextShadeSlip)

public:
    NextShadeSlip(ShopDesk& shopDesk, const Film& other, QWidget* parent)
        : FormSlip(shopDesk, tr("Add the next shade"),
                   tr("Finish, limits, recipe and cost are those of %1.").arg(words(other.name())), parent)
        , m_film(other)
        , m_shade(new ShadePicker(tr("Colour of the film"))) {
        m_film.id = {};
        m_film.isRetired = false;
        form().line("shade", tr("Shade"))->setPlaceholder(tr("e.g. Dusk"));
        form().own("rgb", {}, m_shade, [picker = m_shade] { return picker->shade().has_value(); });
        m_shade->code()->setText({}); // a shade nobody chose is none
        QObject::connect(m_shade, &ShadePicker::changed, this, [this] { form().setError("rgb", {}); });
        setAction(tr("Add the shade"));
        beginAt("shade");
    }

protected:
    void act() override {
        if (const auto wrong = readShade(form(), *m_shade, m_film))
            say(*wrong);
        if (form().isSound())
            settle(db::addFilm(desk().file(), m_film));
    }

private:
    Film m_film;
    ShadePicker* m_shade;
};

class FilmSheetSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(AddFilmSlip)

public:
    static FilmSheetSlip* ofNewOne(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
        auto* slip = new FilmSheetSlip(desk, tr("Add a film"), Film{}, parent);
        slip->setAction(tr("Add the film"));
        slip->m_then = matter.then;
        return slip;
    }
    static FilmSheetSlip* of(ShopDesk& desk, const Film& film, QWidget* parent) {
        auto* slip = new FilmSheetSlip(desk, tr("Change a film"), film, parent);
        slip->setAction(tr("Save the film"));
        return slip;
    }

protected:
    void act() override {
        Film film = m_before;
        readKind(film);
        readHold(film);
        readKeeping(film);
        if (!form().isSound())
            return;
        film.care = readCare(form());
        if (!form().isSound())
            return;
        if (!isNew()) {
            film.isRetired = form().isOn("retired");
            settle(db::changeFilmSheet(desk().file(), film));
            return;
        }
        const auto added = db::addFilm(desk().file(), film);
        if (!added.ok())
            return say(added.error());
        finish();
        SlipTarget next;
        next.film = *added;
        next.then = m_then;
        emit desk().slipAsked(SlipName::Recipe, next);
    }

private:
    FilmSheetSlip(ShopDesk& shopDesk, const QString& title, const Film& film, QWidget* parent)
        : FormSlip(shopDesk, title, tr("One finish in one shade, as its maker’s sheet describes it."), parent)
        , m_before(film) {
        addKind();
        addHold();
        addKeeping();
        form().section(tr("Care, as its maker allows"));
        addCareParts(form(), film.care);
        if (!isNew())
            addRetiring();
        setLong();
    }

    void addRetiring() {
        form().section(tr("In use"));
        form().turn("retired", tr("Retired: not offered any more"), m_before.isRetired);
        const Millimetres left = lengthOnShelf(desk().shop()->facts, m_before.id);
        Label* note =
            form().note(left.value > 0 ? tr("%1 of it are left, for what is ordered.").arg(metres(left))
                                       : tr("Orders that have it keep it."));
        const auto show = [this, note] { note->setVisible(form().isOn("retired")); };
        QObject::connect(&form(), &Form::edited, this, show);
        show();
    }

    bool isNew() const { return m_before.id == FilmId{}; }

    void addKind() {
        const Film& film = m_before;
        form().line("finish", tr("Finish"), words(film.finish))->setPlaceholder(tr("e.g. Marram Soft"));
        form().line("shade", tr("Shade"), words(film.shade))->setPlaceholder(tr("e.g. Dusk"));
        m_shade = new ShadePicker(tr("Colour of the film"));
        if (!isNew())
            m_shade->setShade(film.rgb);
        form().own("rgb", {}, m_shade);
        QObject::connect(m_shade, &ShadePicker::changed, this, [this] { form().setError("rgb", {}); });
        form().pair();
        form().number("rollWidth", tr("Width of a roll"), tr("mm"), QString::number(film.rollWidth.value));
        form().line("costPerMetre", tr("Cost of a metre, %1").arg(words(desk().currency().sign)),
                    isNew() ? QString() : moneyBare(film.costPerMetre, desk().currency()));
        form().line("supplier", tr("Bought from"), words(film.supplier));
        form().optional("supplier");
        form().turn("hasGrain", tr("Has a grain: keep its direction"), film.hasGrain);
    }

    void readKind(Film& film) {
        film.finish = plain(form().text("finish"));
        if (const auto sound =
                typedText(film.finish, {.field = "finish", .what = phrase("The film’s finish"), .most = 60});
            !sound.ok())
            say(sound.error());
        if (const auto wrong = readShade(form(), *m_shade, film))
            say(*wrong);
        film.rollWidth = Millimetres{form().whole("rollWidth", 20, 2000)};
        film.costPerMetre = form().money("costPerMetre", desk().currency());
        film.supplier = plain(form().text("supplier"));
        film.hasGrain = form().isOn("hasGrain");
    }

    void addHold() {
        const Film& film = m_before;
        form().section(tr("Cloth it grips"));
        form().segments("follows", tr("How much stretch it follows"), {tr("None"), tr("Some"), tr("A lot")},
                        static_cast<int>(film.follows));
        form().turn("gripsCoated", tr("Grips coated cloth"), film.gripsCoated);
        m_notFor = new FibreTicks(film.notFor);
        form().own("notFor", tr("Does not grip"), m_notFor);
        form().turn("mayLieUnder", tr("Another film may lie on it"), film.mayLieUnder);
        form().turn("mayLieOver", tr("May lie on another film"), film.mayLieOver);
    }

    void readHold(Film& film) {
        film.follows = static_cast<Stretch>(form().chosen("follows"));
        film.gripsCoated = form().isOn("gripsCoated");
        film.notFor = m_notFor->ticked();
        film.mayLieUnder = form().isOn("mayLieUnder");
        film.mayLieOver = form().isOn("mayLieOver");
    }

    void addKeeping() {
        const Film& film = m_before;
        form().section(tr("How it is stored"));
        form().number("shelfLife", tr("Shelf life"), tr("days"),
                      film.shelfLife ? QString::number(film.shelfLife->count()) : QString());
        form().optional("shelfLife");
        form().pair();
        form().number("humidity", tr("Humidity from"), tr("%"),
                      numberText(film.storage.humidity.low.percent));
        form().number("humidityHigh", tr("to"), tr("%"), numberText(film.storage.humidity.high.percent));
        form().pair();
        form().number("storage", tr("Temperature from"), tr("°C"),
                      numberText(film.storage.temperature.low.value));
        form().number("storageHigh", tr("to"), tr("°C"), numberText(film.storage.temperature.high.value));
        form().number("allowedOutside", tr("May be outside these for"), tr("h"),
                      QString::number(film.storage.allowedOutside.count()));
        form().number("testStripExtends", tr("A strip that grips adds"), tr("days"),
                      QString::number(film.testStripExtends.count()));
        form().pair();
        form().number("q10", tr("Ages faster by"), tr("× per 10 °C"), numberText(film.ageing.q10));
        form().number("reference", tr("above"), tr("°C"), numberText(film.ageing.reference.value));
        form().note(tr("Where the maker’s sheet says nothing, these are common practice."));
    }

    void readKeeping(Film& film) {
        const auto days = form().optionalWhole("shelfLife", 1, 36'500);
        film.shelfLife = days ? std::optional{Days{*days}} : std::nullopt;
        film.storage.humidity = {Humidity{form().decimal("humidity", 0, 100)},
                                 Humidity{form().decimal("humidityHigh", 0, 100)}};
        film.storage.temperature = {Celsius{form().decimal("storage", -20, 60)},
                                    Celsius{form().decimal("storageHigh", -20, 60)}};
        film.storage.allowedOutside = Hours{form().whole("allowedOutside", 0, 8784)};
        film.testStripExtends = Days{form().whole("testStripExtends", 0, 3650)};
        film.ageing.q10 = form().decimal("q10", 1, 10);
        film.ageing.reference = Celsius{form().decimal("reference", -20, 60)};
    }

    Film m_before;
    std::optional<SlipName> m_then; // after its recipe
    ShadePicker* m_shade = nullptr;
    FibreTicks* m_notFor = nullptr;
};

} // namespace

Slip* makeAddFilm(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    return FilmSheetSlip::ofNewOne(desk, matter, parent);
}

Slip* makeNextShade(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto film = filmIn(desk, matter);
    return film ? new NextShadeSlip(desk, *film, parent) : nullptr;
}

Slip* makeFilmSheet(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto film = filmIn(desk, matter);
    return film ? FilmSheetSlip::of(desk, *film, parent) : nullptr;
}

} // namespace holdfast::app
