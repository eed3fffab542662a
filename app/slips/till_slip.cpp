// SPDX-License-Identifier: GPL-3.0-or-later
// The till counted at the end of a day: what moved by way of payment, and what is there against what should
// be.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "db/actions/till_actions.h"
#include "db/tables/till.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

class TillSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(TillSlip)

public:
    TillSlip(ShopDesk& shopDesk, QWidget* parent)
        : FormSlip(shopDesk, tr("Count the till"), tr("The cash of a day, against what should be there."),
                   parent) {
        readCounts();
        const QString sign = words(desk().currency().sign);
        form().line("day", tr("Day"), date(today()));
        m_moved = form().note({});
        m_moved->setObjectName(QStringLiteral("dayMoney"));
        form().pair();
        m_float = form().line("float", tr("Cash at the start, %1").arg(sign));
        form().line("counted", tr("Cash counted now, %1").arg(sign));
        m_difference = form().note({});
        m_difference->setObjectName(QStringLiteral("tillDifference"));
        QObject::connect(&form(), &Form::edited, this, [this] { show(); });
        setAction(tr("Save the count"));
        beginAt("counted");
        show();
    }

protected:
    void act() override {
        const LocalDate counted = form().date("day", today());
        const Money atStart = form().money("float", desk().currency());
        const Money cash = form().money("counted", desk().currency());
        if (form().isSound())
            settle(db::countTill(desk().file(), counted, atStart, cash, desk().now()));
    }

private:
    LocalDate today() { return desk().now().today(); }

    void readCounts() {
        const auto read = desk().file().read([](db::Connection& connection) {
            db::UnreadFacts namedByTheCheck;
            return db::readTillCounts(connection, namedByTheCheck);
        });
        if (desk().done(read))
            m_counts = *read;
    }

    // Of the day that is typed; what is in the form of it follows the day.
    void show() {
        const auto typed = readDate(form().text("day"), tr("Day"), today());
        if (!typed.ok()) {
            m_moved->setText({});
            m_difference->setText({});
            return;
        }
        if (m_day != *typed)
            turnTo(*typed);
        const auto amount = [this](const char* name) {
            return readMoney(form().text(name), QString(), desk().currency());
        };
        m_difference->setText(differenceWords(amount("float"), amount("counted")));
    }

    void turnTo(LocalDate day) {
        m_day = day;
        const auto read = desk().file().read(
            [&](db::Connection& connection) { return db::moneyOfDay(connection, day, desk().now()); });
        if (!desk().done(read))
            return;
        m_money = *read;
        const auto before = std::ranges::find(m_counts, day, &TillCount::day);
        m_moved->setText(before == m_counts.end()
                             ? movedWords()
                             : tr("%1 Counted before at %2: %3.")
                                   .arg(movedWords(), clock(desk().now().toLocal(before->at)),
                                        words(tillDifferenceWords(before->difference(), desk().currency()))));
        // A shop mostly begins with the same cash as the last time.
        const TillCount* usual = before != m_counts.end() ? &*before
                                 : m_counts.empty()       ? nullptr
                                                          : &m_counts.front();
        if (m_float->text() == m_suggested) {
            m_suggested = moneyBare(usual ? usual->floatAtStart : Money{}, desk().currency());
            m_float->setText(m_suggested);
        }
    }

    QString movedWords() {
        const QStringList ways{wayWords(tr("In cash"), PaidHow::Cash), wayWords(tr("By card"), PaidHow::Card),
                               wayWords(tr("By transfer"), PaidHow::Transfer)};
        return ways.join(u' ');
    }

    QString wayWords(const QString& way, PaidHow how) {
        const auto kind = [&](MoneyKind of) {
            return m_money.by[static_cast<std::size_t>(how)][static_cast<std::size_t>(of)];
        };
        const auto amount = [this](Money money) { return app::money(money, desk().currency()); };
        QStringList parts;
        if (kind(MoneyKind::Deposit) != Money{})
            parts.append(tr("deposits %1").arg(amount(kind(MoneyKind::Deposit))));
        if (kind(MoneyKind::Payment) != Money{})
            parts.append(tr("payments %1").arg(amount(kind(MoneyKind::Payment))));
        if (m_money.out(how) != Money{})
            parts.append(tr("paid back %1").arg(amount(m_money.out(how))));
        return tr("%1: %2.").arg(way, parts.isEmpty() ? tr("nothing") : parts.join(tr(", ")));
    }

    QString differenceWords(const Result<Money>& atStart, const Result<Money>& counted) {
        if (!atStart.ok())
            return {};
        const Currency currency = desk().currency();
        const TillCount count{
            {}, m_day, {}, *atStart, m_money.of(PaidHow::Cash), counted.ok() ? *counted : Money{}};
        const QString expected = tr("There should be %1.").arg(money(count.expected(), currency));
        if (!counted.ok())
            return expected;
        return tr("%1 Counted: %2.").arg(expected, words(tillDifferenceWords(count.difference(), currency)));
    }

    std::vector<TillCount> m_counts;
    LocalDate m_day{}; // whose money is shown
    DayMoney m_money;
    Label* m_moved = nullptr;
    Label* m_difference = nullptr;
    Field* m_float = nullptr;
    QString m_suggested;
};

} // namespace

Slip* makeCountTill(ShopDesk& desk, const SlipTarget&, QWidget* parent) {
    return new TillSlip(desk, parent);
}

} // namespace holdfast::app
