// SPDX-License-Identifier: GPL-3.0-or-later
// A reading of temperature and humidity of a storage place: just taken, noted earlier, or corrected.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/place_pick.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/label.h"
#include "db/actions/film_actions.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <memory>

namespace holdfast::app {

namespace {

constexpr double kColdest = -40; // °C
constexpr double kHottest = 80;

// Nobody works in such air: whoever types such a number most likely meant another (common practice, no
// source).
constexpr Band<Celsius> kLikelyWarmth{{-10}, {45}};
constexpr Band<Humidity> kLikelyHumidity{{10}, {95}};

QString asTyped(double measured) {
    return QLocale().toString(measured, 'g', 6);
}

class ReadingSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(ReadingSlip)

public:
    static ReadingSlip* ofNewOne(ShopDesk& desk, std::optional<PlaceId> place, QWidget* parent) {
        return new ReadingSlip(desk, tr("Record a reading"),
                               tr("As the instrument shows it, or showed it earlier."), place, {}, parent);
    }
    static ReadingSlip* of(ShopDesk& desk, PlaceId place, const ClimateReading& before, QWidget* parent) {
        return new ReadingSlip(desk, tr("Correct a reading"), {}, place, before, parent);
    }

protected:
    void act() override {
        const Instant at = readAt();
        const Celsius temperature{form().decimal("temperature", kColdest, kHottest)};
        const auto percent = mayLackHumidity() ? form().optionalDecimal("humidity", 0, 100)
                                               : std::optional{form().decimal("humidity", 0, 100)};
        const ClimateReading reading =
            readingOf(at, temperature, percent ? std::optional{Humidity{*percent}} : std::nullopt);
        if (m_place)
            m_place->check();
        if (!form().isSound() || isDoubted())
            return;
        if (m_before) {
            settle(db::correctReading(desk().file(), m_storage, m_before->at, reading));
            return;
        }
        settle(desk().file().asOne([&]() -> Result<Done> {
            const auto place = m_place->chosen().in(desk().file());
            return place.ok() ? db::recordReading(desk().file(), *place, reading) : place.error();
        }));
    }

private:
    ReadingSlip(ShopDesk& shopDesk, const QString& title, const QString& about, std::optional<PlaceId> place,
                const std::optional<ClimateReading>& before, QWidget* parent)
        : FormSlip(shopDesk, title, about, parent)
        , m_before(before)
        , m_storage(place.value_or(PlaceId{})) {
        if (m_before)
            setAbout(tr("%1: %2.").arg(words(shopDesk.shop()->facts.places.at(m_storage).name),
                                       readingWords(*shopDesk.shop(), *m_before)));
        else
            m_place = std::make_unique<PlacePick>(form(), shopDesk, tr("Storage place"), place,
                                                  PlacesFor::Readings);
        m_last = form().note({});
        form().pair();
        form().number("temperature", tr("Temperature"), tr("°C"),
                      m_before ? asTyped(m_before->temperature.value) : QString());
        form().number("humidity", tr("Humidity"), tr("%"),
                      m_before && m_before->hasHumidity ? asTyped(m_before->humidity.percent) : QString());
        if (mayLackHumidity())
            form().optional("humidity");
        form().pair();
        const LocalTime at = m_before ? shopDesk.now().toLocal(m_before->at) : LocalTime{};
        form().line("day", tr("Day"), m_before ? date(dateOf(at)) : tr("today"));
        form().line("time", tr("Time"), m_before ? app::clock(at) : tr("now"));
        form().alsoNamed("at", "time");
        m_limits = form().note({});
        m_doubt = new Banner;
        m_doubt->setObjectName(QStringLiteral("unlikelyReading"));
        form().add(m_doubt);
        QObject::connect(&form(), &Form::edited, this, [this] { showWords(); });
        if (m_before)
            beginAt("temperature");
        m_timeBefore = form().text("time");
        showWords();
    }

    // A logger of temperature alone left it open.
    bool mayLackHumidity() const { return m_before && !m_before->hasHumidity; }

    // A reading noted on paper earlier is recorded with its own day and time. One that is corrected keeps the
    // seconds of its time unless that is changed.
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
        if (m_before && time == m_timeBefore)
            return m_before->at + (day - dateOf(now.toLocal(m_before->at)));
        return now.toInstant(LocalTime{day} + form().clock("time"));
    }

    void showWords() {
        const auto place = m_before ? std::optional{m_storage} : m_place->known();
        const ReckonedShop& shop = *desk().shop();
        const auto last = place ? latestReading(shop, *place) : std::nullopt;
        m_last->setVisible(place.has_value() && !m_before);
        m_last->setText(last ? tr("Last: %1.").arg(readingWords(shop, *last)) : tr("No reading yet."));
        showLimits(place);
        showDoubt();
    }

    // "68 °C is hotter than any room. 68 °F would be 20 °C."; empty: it is likely.
    QString doubtWords() const {
        const auto temperature = readNumber(form().text("temperature"), {}, kColdest, kHottest);
        const auto air = readNumber(form().text("humidity"), {}, 0, 100);
        QStringList parts;
        if (temperature.ok() && !kLikelyWarmth.contains(Celsius{*temperature})) {
            const Celsius typed{*temperature};
            parts << (typed > kLikelyWarmth.high
                          ? tr("%1 is hotter than a workshop gets.").arg(celsius(typed))
                          : tr("%1 is colder than a workshop gets.").arg(celsius(typed)));
            const Celsius meant{std::round((typed.value - 32) * 5 / 9)};
            if (typed > kLikelyWarmth.high && kLikelyWarmth.contains(meant))
                parts << tr("%1 °F would be %2.").arg(asTyped(typed.value), celsius(meant));
        }
        if (air.ok() && !kLikelyHumidity.contains(Humidity{*air}))
            parts << tr("%1 is hardly ever measured in a room.").arg(humidity(Humidity{*air}));
        return parts.join(QLatin1Char(' '));
    }

    void showDoubt() {
        const QString doubt = doubtWords();
        const bool isAccepted = !doubt.isEmpty() && doubt == m_accepted;
        m_doubt->set(Tone::Caution, tr("Is that right?"), doubt);
        m_doubt->setVisible(!doubt.isEmpty());
        if (isAccepted)
            setAction(tr("Save anyway"));
        else
            setAction(m_before ? tr("Save correction") : tr("Record reading"));
    }

    // What is unlikely is asked about once, before it is written; it may be right.
    bool isDoubted() {
        const QString doubt = doubtWords();
        if (doubt.isEmpty() || doubt == m_accepted)
            return false;
        m_accepted = doubt;
        showDoubt();
        action()->setFocus(Qt::OtherFocusReason);
        return true;
    }

    // What the numbers typed mean for the rolls that are stored there.
    void showLimits(std::optional<PlaceId> place) {
        const auto temperature = readNumber(form().text("temperature"), {}, kColdest, kHottest);
        const auto humidity = readNumber(form().text("humidity"), {}, 0, 100);
        const bool isKnown = !form().text("humidity").isEmpty();
        const bool isTyped = place && temperature.ok() && (humidity.ok() || !isKnown);
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
            const bool fits = (!isKnown || limits.humidity.contains(Humidity{*humidity})) &&
                              limits.temperature.contains(Celsius{*temperature});
            ++rolls;
            outside += fits ? 0 : 1;
        }
        m_limits->setInk(outside > 0 ? &Tokens::madder : &Tokens::ink2);
        if (rolls == 0)
            m_limits->setText(tr("No roll is stored there."));
        else if (outside == 0)
            m_limits->setText(
                tr("Within the limits of the %n roll there.|Within the limits of all %n rolls there.",
                   nullptr, howMany(rolls)));
        else
            m_limits->setText(
                tr("Outside the limits of %n roll stored there.|Outside the limits of %n rolls stored there.",
                   nullptr, howMany(outside)));
    }

    std::optional<ClimateReading> m_before; // that is corrected
    PlaceId m_storage;                      // of that one
    std::unique_ptr<PlacePick> m_place;     // none where one is corrected
    QString m_timeBefore;
    QString m_accepted; // the doubt that the person has seen
    Label* m_last = nullptr;
    Label* m_limits = nullptr;
    Banner* m_doubt = nullptr;
};

} // namespace

Slip* makeRecordReading(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    std::optional<PlaceId> place = matter.place;
    if (!place)
        if (const auto roll = rollIn(desk, matter))
            place = roll->placeNow();
    return ReadingSlip::ofNewOne(desk, place ? place : stalestPlace(*desk.shop()), parent);
}

Slip* makeCorrectReading(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const ReckonedShop& shop = *desk.shop();
    const auto found = matter.place ? shop.climate.find(*matter.place) : shop.climate.end();
    if (!matter.at || found == shop.climate.end() || !found->second)
        return nullptr;
    const auto reading = std::ranges::lower_bound(*found->second, *matter.at, {}, &ClimateReading::at);
    if (reading == found->second->end() || reading->at != *matter.at)
        return nullptr;
    return ReadingSlip::of(desk, *matter.place, *reading, parent);
}

} // namespace holdfast::app
