// Money of an order: a deposit or payment taken, or paid back.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/field.h"
#include "core/orders/price.h"
#include "db/actions/order_actions.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

class TakeMoneySlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(TakeMoneySlip)

public:
    TakeMoneySlip(ShopDesk& shopDesk, const OrderInView& inView, MoneyKind kind, QWidget* parent)
        : FormSlip(shopDesk, tr("Take money"), orderWords(inView), parent)
        , m_order(inView.order)
        , m_settings(inView.settings) {
        const Currency& currency = m_settings.currency;
        form().note(tr("Total %1, paid %2, owed %3.")
                        .arg(money(m_order.total, currency), money(m_order.paid, currency),
                             money(m_order.owed(), currency)));
        auto* kinds = form().segments("kind", tr("As"), {tr("Deposit"), tr("Payment"), tr("Refund")},
                                      static_cast<int>(kind));
        m_amount = form().line("amount", tr("Amount, %1").arg(words(currency.sign)));
        form().segments("how", tr("How"), {tr("Cash"), tr("Card"), tr("Transfer")}, 0);
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
            return m_order.paid;
        }
        return {};
    }

    // The usual amount of the kind, until the person says another.
    void suggest(MoneyKind kind) {
        const bool isOurs = m_amount->text() == m_suggested;
        if (isOurs) {
            m_suggested = moneyBare(usualAmount(kind), m_settings.currency);
            m_amount->setText(m_suggested);
        }
        setAction(kind == MoneyKind::Refund ? tr("Pay it back") : tr("Take it"));
    }

    Order m_order;
    ShopSettings m_settings;
    Field* m_amount = nullptr;
    QString m_suggested;
};

} // namespace

Slip* makeTakeMoney(ShopDesk& desk, const Matter& matter, QWidget* parent) {
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
