// A reading of temperature and humidity of a place, just taken or noted earlier.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/place_pick.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/label.h"
#include "db/actions/film_actions.h"

#include <QCoreApplication>

#include <memory>

namespace holdfast::app {

namespace {

constexpr double kColdest = -40; // °C
constexpr double kHottest = 80;

class RecordReadingSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(RecordReadingSlip)

public:
    RecordReadingSlip(ShopDesk& shopDesk, std::optional<PlaceId> place, QWidget* parent)
        : FormSlip(shopDesk, tr("Record a reading"), tr("As the instrument shows it, or showed it earlier."),
                   parent)
        , m_place(std::make_unique<PlacePick>(form(), shopDesk, tr("Place"), place)) {
        m_last = form().note({});
        form().pair();
        form().number("temperature", tr("Temperature"), tr("°C"));
        form().number("humidity", tr("Humidity"), tr("%"));
        form().pair();
        form().line("day", tr("Read on"), tr("today"));
        form().line("time", tr("At"), tr("now"));
        form().alsoNamed("at", "time");
        m_limits = form().note({});
        QObject::connect(&form(), &Form::edited, this, [this] { showWords(); });
        showWords();
        setAction(tr("Record it"));
    }

protected:
    void act() override {
        ClimateReading reading;
        reading.at = readAt();
        reading.temperature = Celsius{form().decimal("temperature", kColdest, kHottest)};
        reading.humidity = Humidity{form().decimal("humidity", 0, 100)};
        m_place->check();
        if (!form().isSound())
            return;
        const auto place = m_place->taken();
        if (!place.ok())
            return say(place.error());
        settle(db::recordReading(desk().file(), *place, reading));
    }

private:
    // A reading noted on paper earlier is recorded with its own day and time.
    Instant readAt() {
        const Now now = desk().now();
        const LocalDate day = form().date("day", now.today());
        const QString time = form().text("time");
        const bool isNow = time.compare(tr("now"), Qt::CaseInsensitive) == 0;
        if (isNow && day == now.today())
            return now.instant;
        if (isNow) {
            form().setError("time", tr("Say at what time that day, such as 9:30."));
            return now.instant;
        }
        return now.toInstant(LocalTime{day} + form().clock("time"));
    }

    void showWords() {
        const auto place = m_place->known();
        const ReckonedShop& shop = *desk().shop();
        const auto last = place ? latestReading(shop, *place) : std::nullopt;
        m_last->setVisible(place.has_value());
        m_last->setText(last ? tr("Last: %1.").arg(readingWords(shop, *last)) : tr("No reading yet."));
        showLimits(place);
    }

    // What the numbers typed mean for the rolls that stand there.
    void showLimits(std::optional<PlaceId> place) {
        const auto temperature = readNumber(form().text("temperature"), {}, kColdest, kHottest);
        const auto humidity = readNumber(form().text("humidity"), {}, 0, 100);
        const bool isTyped = place && temperature.ok() && humidity.ok();
        m_limits->setVisible(isTyped);
        if (!isTyped)
            return;
        std::int64_t rolls = 0;
        std::int64_t outside = 0;
        const ShopFacts& facts = desk().shop()->facts;
        for (const FilmRoll& roll : facts.rolls) {
            if (roll.state != RollState::OnShelf || roll.placeNow() != place)
                continue;
            const StorageLimits& limits = facts.films.at(roll.film).storage;
            const bool fits = limits.humidity.contains(Humidity{*humidity}) &&
                              limits.temperature.contains(Celsius{*temperature});
            ++rolls;
            outside += fits ? 0 : 1;
        }
        m_limits->setInk(outside > 0 ? &Tokens::madder : &Tokens::ink2);
        if (rolls == 0)
            m_limits->setText(tr("No roll stands there."));
        else if (outside == 0)
            m_limits->setText(counted(rolls, "Within the limits of the %1 roll there.",
                                      "Within the limits of all %1 rolls there."));
        else
            m_limits->setText(
                tr("Outside the limits of %1.")
                    .arg(counted(outside, "%1 roll that stands there", "%1 rolls that stand there")));
    }

    std::unique_ptr<PlacePick> m_place;
    Label* m_last = nullptr;
    Label* m_limits = nullptr;
};

} // namespace

Slip* makeRecordReading(ShopDesk& desk, const Matter& matter, QWidget* parent) {
    std::optional<PlaceId> place = matter.place;
    if (!place)
        if (const auto roll = rollIn(desk, matter))
            place = roll->placeNow();
    return new RecordReadingSlip(desk, place ? place : stalestPlace(*desk.shop()), parent);
}

} // namespace holdfast::app
