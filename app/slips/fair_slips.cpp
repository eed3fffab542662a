// SPDX-License-Identifier: GPL-3.0-or-later
// A fair put into the list, changed, or taken off it.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "core/trade/limits.h"
#include "db/actions/fair_actions.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr OpeningHours kUsualHours{Minutes{10 * 60}, Minutes{16 * 60}};
constexpr double kMostHoursWorked = 24.0 * 31 * 3;

QString clockText(Minutes sinceMidnight) {
    if (sinceMidnight == Days{1})
        return QStringLiteral("24:00");
    return app::clock(LocalTime{sinceMidnight});
}

QString dayText(LocalDate day) {
    return date(day);
}

// What a fair asks, whether new or in the list already.
class FairSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(FairSlip)

protected:
    FairSlip(ShopDesk& shopDesk, const QString& title, const QString& about, QWidget* parent)
        : FormSlip(shopDesk, title, about, parent) {}

    void ask(const Fair& fair, bool isNew) {
        const Currency currency = desk().currency();
        const QString sign = words(currency.sign);
        const auto amount = [&](Money money) { return isNew ? QString() : moneyBare(money, currency); };
        form().line("name", tr("Name"), words(fair.name))->setPlaceholder(tr("same as on the tickets"));
        form().pair();
        form().line("firstDay", tr("First day"), isNew ? QString() : dayText(fair.firstDay));
        form()
            .line("lastDay", tr("Last day"), fair.days() == 1 ? QString() : dayText(fair.lastDay))
            ->setPlaceholder(tr("the same"));
        form().optional("lastDay");
        form().pair();
        form().line("opens", tr("The stall opens"), clockText(fair.hours.opens));
        form().line("closes", tr("and closes"), clockText(fair.hours.closes));
        form().alsoNamed("hours", "opens");
        form().pair();
        form().line("stallCost", tr("The stall costs, %1").arg(sign), amount(fair.stallCost));
        form()
            .line("otherCosts", tr("Other costs, %1").arg(sign), amount(fair.otherCosts))
            ->setPlaceholder(tr("travel"));
        form().optional("otherCosts");
        form()
            .number("worked", tr("Worked there, all together"), tr("h"),
                    fair.worked ? valueWords(Decimal{static_cast<double>(fair.worked->count()) / 60})
                                : QString())
            ->setPlaceholder(tr("same as the stall"));
        form().optional("worked");
        form().line("note", tr("Note"), words(fair.note))->setPlaceholder(tr("e.g. where the table is"));
        form().optional("note");
        setLong();
    }

    // What is in the form; the form is marked where that is no fair.
    Fair read() {
        Fair fair;
        fair.name = plain(form().text("name"));
        if (const auto sound =
                typedText(fair.name, {.field = "name", .what = phrase("The fair’s name"), .most = 60});
            !sound.ok())
            say(sound.error());
        const LocalDate today = desk().now().today();
        fair.firstDay = form().date("firstDay", today);
        fair.lastDay = form().optionalDate("lastDay", today).value_or(fair.firstDay);
        fair.hours = {form().clock("opens"), form().clock("closes")};
        fair.stallCost = form().money("stallCost", desk().currency());
        if (!form().text("otherCosts").isEmpty())
            fair.otherCosts = form().money("otherCosts", desk().currency());
        if (const auto hours = form().optionalDecimal("worked", 0.1, kMostHoursWorked))
            fair.worked = Minutes{std::llround(*hours * 60)};
        fair.note = plain(form().text("note"));
        return fair;
    }
};

class AddFairSlip : public FairSlip {
    Q_DECLARE_TR_FUNCTIONS(AddFairSlip)

public:
    AddFairSlip(ShopDesk& shopDesk, QWidget* parent)
        : FairSlip(shopDesk, tr("Add a fair"), tr("Days, hours and costs of a stall."), parent) {
        ask(likeTheLast(), true);
        form().note(tr("An order taken on these days at a place of this name counts toward this fair. "
                       "Figures then show what it earned."));
        setAction(tr("Add the fair"));
    }

protected:
    void act() override {
        const Fair fair = read();
        if (form().isSound())
            settle(db::addFair(desk().file(), fair));
    }

private:
    // Stalls of one shop keep much the same hours.
    Fair likeTheLast() const {
        const auto& fairs = desk().shop()->facts.fairs;
        Fair fair;
        fair.hours = kUsualHours;
        const auto last = std::ranges::max_element(fairs, {}, &Fair::firstDay);
        if (last != fairs.end())
            fair.hours = last->hours;
        return fair;
    }
};

class ChangeFairSlip : public FairSlip {
    Q_DECLARE_TR_FUNCTIONS(ChangeFairSlip)

public:
    ChangeFairSlip(ShopDesk& shopDesk, const Fair& fair, QWidget* parent)
        : FairSlip(shopDesk, tr("Change a fair"), tr("%1, %2").arg(words(fair.name), date(fair.firstDay)),
                   parent)
        , m_before(fair) {
        ask(fair, false);
        form().note(tr("Orders that were taken there get the new name too."));
        auto* away = new Button(tr("Remove the fair"), Button::Kind::Quiet);
        away->setObjectName(QStringLiteral("takeOff"));
        QObject::connect(away, &Button::clicked, this,
                         [this] { settle(db::takeFairOffList(desk().file(), m_before.id, desk().now())); });
        form().add(away);
        setAction(tr("Save the fair"));
    }

protected:
    void act() override {
        Fair fair = read();
        fair.id = m_before.id;
        if (!form().isSound())
            return;
        if (fair == m_before)
            return finish();
        settle(db::changeFair(desk().file(), fair, desk().now()));
    }

private:
    Fair m_before;
};

} // namespace

Slip* makeAddFair(ShopDesk& desk, const SlipTarget&, QWidget* parent) {
    return new AddFairSlip(desk, parent);
}

Slip* makeChangeFair(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const Fair* fair = matter.fair ? desk.shop()->facts.fairs.find(*matter.fair) : nullptr;
    return fair == nullptr ? nullptr : new ChangeFairSlip(desk, *fair, parent);
}

} // namespace holdfast::app
