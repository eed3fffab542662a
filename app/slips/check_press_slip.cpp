// SPDX-License-Identifier: GPL-3.0-or-later
// A press checked: its platen read at nine marked spots.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/platen_spots.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/banner.h"
#include "app/widgets/field.h"
#include "core/press/check_figures.h"
#include "core/trade/limits.h"
#include "db/actions/press_actions.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr double kLowestSet = 40; // °C
constexpr double kHighestSet = 250;

QString signedDegrees(double degrees) {
    const QString sign = degrees < 0 ? QStringLiteral("−") : QStringLiteral("+");
    return QCoreApplication::translate("CheckPressSlip", "%1%2 °C")
        .arg(std::abs(degrees) < 0.05 ? QString() : sign, valueWords(Decimal{std::abs(degrees), 1}));
}

class CheckPressSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(CheckPressSlip)

public:
    CheckPressSlip(ShopDesk& shopDesk, std::optional<PressId> wanted, QWidget* parent)
        : FormSlip(shopDesk, tr("Check the press"), aboutOf(shopDesk, wanted), parent) {
        int at = 0;
        QVector<PickItem> items;
        for (const Press& press : shopDesk.shop()->facts.presses) {
            if (press.isRetired && wanted != press.id)
                continue;
            if (wanted == press.id)
                at = static_cast<int>(m_presses.size());
            m_presses.push_back(press);
            items.append({words(press.name)});
        }
        auto* press = form().list("press", tr("Press"), items, at);
        form().setShown("press", m_presses.size() > 1);
        form().pair();
        form().number("set", tr("Set to"), tr("°C"));
        form().line("by", tr("Checked by"));
        m_spots = new PlatenSpots;
        form().own("readings", tr("Read at the spots, in °C"), m_spots,
                   [spots = m_spots] { return spots->isFilled(); });
        m_figures = new Banner;
        form().add(m_figures);
        QObject::connect(press, &QComboBox::currentIndexChanged, this, [this] {
            showLast();
            showFigures();
        });
        QObject::connect(m_spots, &PlatenSpots::changed, this, [this] {
            form().setError("readings", {});
            showFigures();
        });
        QObject::connect(&form(), &Form::edited, this, [this] { showFigures(); });
        showLast();
        showFigures();
        setAction(tr("Save the check"));
        setLong();
    }

protected:
    void act() override {
        const int at = form().chosen("press");
        const Celsius set{form().decimal("set", kLowestSet, kHighestSet)};
        const auto readings = m_spots->read();
        if (!m_spots->isSound())
            form().setError("readings", tr("A reading: a number from −20 to 300."));
        else if (readings.empty())
            form().setError("readings", tr("Read at least one spot."));
        const std::string by = plain(form().text("by"));
        if (const auto sound = typedText(by, {.field = "by", .what = phrase("Who checked it")}); !sound.ok())
            say(sound.error());
        if (form().isSound())
            settle(db::recordPressCheck(desk().file(), m_presses[static_cast<std::size_t>(at)].id, set,
                                        readings, by));
    }

private:
    static QString aboutOf(ShopDesk& shopDesk, std::optional<PressId> wanted) {
        const auto& presses = shopDesk.shop()->facts.presses;
        const Press* press = wanted ? presses.find(*wanted) : nullptr;
        std::size_t offered = 0;
        for (const Press& each : presses)
            if (!each.isRetired || &each == press) {
                ++offered;
                press = press ? press : &each;
            }
        const QString how = tr("Let the platen settle at its set temperature, then read each marked spot.");
        return offered > 1 ? how : tr("%1. %2").arg(words(press->name), how);
    }

    const Press& press() const {
        const auto* list = form().findChild<PickList*>(QStringLiteral("press"));
        return m_presses[static_cast<std::size_t>(std::max(0, list->currentIndex()))];
    }

    // What was set and who checked last time, for as long as nothing else is typed.
    void showLast() {
        const PressCheck* last = desk().shop()->facts.lastCheck(press().id);
        if (!last)
            return;
        auto* set = form().findChild<Field*>(QStringLiteral("set"));
        auto* by = form().findChild<Field*>(QStringLiteral("by"));
        if (set->text().isEmpty())
            set->setText(valueWords(Decimal{last->set.value}));
        if (by->text().isEmpty())
            by->setText(words(last->by));
    }

    void showFigures() {
        const auto set = readNumber(form().text("set"), {}, kLowestSet, kHighestSet);
        PressCheck check;
        check.readings = m_spots->readings();
        m_figures->setVisible(set.ok() && !check.readings.empty());
        if (!set.ok() || check.readings.empty())
            return;
        check.set = Celsius{*set};
        const CheckFigures figures = figuresOf(check);
        const bool isOff = std::abs(figures.meanOffset) > press().tolerance.value ||
                           std::abs(figures.largestDeparture) > press().evenWithin.value;
        const bool isUneven = figures.spread > press().evenWithin.value;
        QString words = tr("Average %1, furthest spot %2, hottest to coolest %3 °C. ")
                            .arg(signedDegrees(figures.meanOffset), signedDegrees(figures.largestDeparture),
                                 app::valueWords(Decimal{figures.spread, 1}));
        words += tr("Allowed: average within %1 °C, hottest to coolest %2 °C. ")
                     .arg(app::valueWords(Decimal{press().tolerance.value}),
                          app::valueWords(Decimal{press().evenWithin.value}));
        if (std::abs(figures.dialIn) >= 0.5)
            words += tr("Dial in %1.").arg(signedDegrees(figures.dialIn));
        QString lead = tr("In order.");
        if (isOff)
            lead = tr("Held: off.");
        else if (isUneven)
            lead = tr("Held: uneven.");
        m_figures->set(isOff || isUneven ? Tone::Held : Tone::Ready, lead, words);
    }

    std::vector<Press> m_presses;
    PlatenSpots* m_spots = nullptr;
    Banner* m_figures = nullptr;
};

} // namespace

Slip* makeCheckPress(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    // Before there is any press, that is what is to be set up.
    const auto& presses = desk.shop()->facts.presses;
    if (!matter.press && std::ranges::all_of(presses, &Press::isRetired))
        return makeAddPress(desk, matter, parent);
    return new CheckPressSlip(desk, matter.press, parent);
}

} // namespace holdfast::app
