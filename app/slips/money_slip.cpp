// SPDX-License-Identifier: GPL-3.0-or-later
// Money of an order: a deposit or payment taken, or paid back.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "core/orders/price.h"
#include "db/actions/order_actions.h"
#include "db/tables/order_book.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace holdfast::app {

namespace {

class TakeMoneySlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(TakeMoneySlip)

public:
    TakeMoneySlip(ShopDesk& shopDesk, const OrderInView& inView, MoneyKind kind, QWidget* parent)
        : FormSlip(shopDesk, tr("Money"), orderWords(inView), parent)
        , m_order(inView.order)
        , m_settings(inView.settings)
        , m_paid(paidBy(shopDesk, inView.order.id)) {
        const Currency& currency = m_settings.currency;
        form().note(accountWords());
        auto* kinds = form().segments("kind", tr("Kind"), {tr("Deposit"), tr("Payment"), tr("Refund")},
                                      static_cast<int>(kind));
        m_amount = form().line("amount", tr("Amount, %1").arg(words(currency.sign)));
        m_how = form().segments("how", tr("How"), {tr("Cash"), tr("Card"), tr("Transfer")}, 0);
        QObject::connect(kinds, &Choice::chosen, this,
                         [this](int chosen) { suggest(static_cast<MoneyKind>(chosen)); });
        suggest(kind);
        beginAt("amount");
    }

protected:
    void act() override {
        const auto kind = static_cast<MoneyKind>(form().chosen("kind"));
        const Money amount = form().money("amount", m_settings.currency);
        const auto how = static_cast<PaidHow>(form().chosen("how"));
        if (form().isSound())
            settle(db::moveMoney(desk().file(), m_order.id, kind, amount, how));
    }

private:
    using PaidBy = std::array<Money, 3>; // by PaidHow, less what was paid back so

    static PaidBy paidBy(ShopDesk& desk, OrderId order) {
        PaidBy paid;
        const auto moves =
            desk.file().read([&](db::Connection& connection) { return db::moneyOf(connection, order); });
        if (desk.done(moves))
            for (const db::MoneyMove& move : *moves)
                paid[static_cast<std::size_t>(move.how)] += move.amount;
        return paid;
    }

    // "Total £26.50, paid £10.00 by card, owed £16.50."
    QString accountWords() const {
        const Currency& currency = m_settings.currency;
        const std::array ways{tr("%1 in cash"), tr("%1 by card"), tr("%1 by transfer")};
        QStringList paid;
        for (std::size_t way = 0; way < ways.size(); ++way)
            if (m_paid[way] != Money{})
                paid.append(ways[way].arg(money(m_paid[way], currency)));
        const QString owed = m_order.owed() > Money{} ? tr("owed %1").arg(money(m_order.owed(), currency))
                                                      : tr("nothing owed");
        return tr("Total %1, paid %2, %3.")
            .arg(money(m_order.total, currency), paid.isEmpty() ? tr("nothing") : paid.join(tr(" and ")),
                 owed);
    }

    // A refund goes back the way most of it came.
    int usualWay(MoneyKind kind) const {
        if (kind != MoneyKind::Refund)
            return 0;
        return static_cast<int>(std::ranges::max_element(m_paid) - m_paid.begin());
    }

    Money usualAmount(MoneyKind kind) const {
        const Money owed = std::max(Money{}, m_order.owed());
        switch (kind) {
        case MoneyKind::Deposit: {
            const Money missing = depositDue(m_order.total, m_settings) - m_order.paid;
            return missing > Money{} ? std::min(missing, owed) : owed;
        }
        case MoneyKind::Payment:
            return owed;
        case MoneyKind::Refund:
            return m_paid[static_cast<std::size_t>(m_how->chosenAt())];
        }
        return {};
    }

    // The usual amount of the kind, until the person says another.
    void suggest(MoneyKind kind) {
        m_how->setChosen(usualWay(kind));
        const bool isOurs = m_amount->text() == m_suggested;
        if (isOurs) {
            m_suggested = moneyBare(usualAmount(kind), m_settings.currency);
            m_amount->setText(m_suggested);
        }
        setAction(kind == MoneyKind::Refund ? tr("Pay back") : tr("Take money"));
    }

    Order m_order;
    ShopSettings m_settings;
    PaidBy m_paid;
    Field* m_amount = nullptr;
    Choice* m_how = nullptr;
    QString m_suggested;
};

} // namespace

Slip* makeTakeMoney(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto inView = orderIn(desk, matter);
    if (!inView)
        return nullptr;
    const Order& order = inView->order;
    MoneyKind kind = MoneyKind::Payment;
    if (order.state == OrderState::Cancelled || order.owed() <= Money{})
        kind = MoneyKind::Refund;
    else if (matter.rule == Rule::DepositShort ||
             (order.paid == Money{} && order.isOpen() && depositDue(order.total, inView->settings) > Money{}))
        kind = MoneyKind::Deposit;
    return new TakeMoneySlip(desk, *inView, kind, parent);
}

} // namespace holdfast::app
