// SPDX-License-Identifier: GPL-3.0-or-later
// An order is split in two, or joined with another one of the same customer.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/label.h"
#include "app/widgets/switch.h"
#include "db/actions/order_actions.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

enum class Parting { Split, Join };

std::string switchName(std::size_t at) {
    return "garment-" + std::to_string(at + 1);
}

class PartOrderSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(PartOrderSlip)

public:
    PartOrderSlip(ShopDesk& shopDesk, const OrderInView& inView, std::vector<Order> others, QWidget* parent)
        : FormSlip(shopDesk, tr("Split or join"), orderWords(inView), parent)
        , m_order(inView.order.id)
        , m_others(std::move(others)) {
        for (const Garment& garment : inView.garments)
            if (!garment.handedOverAt)
                m_garments.push_back(garment);
        form().segments("kind", tr("What is to be done"), {tr("Split"), tr("Join")},
                        m_garments.size() > 1 ? 0 : 1);
        addGarments();
        addOthers();
        QObject::connect(&form(), &Form::edited, this, [this] { showParts(); });
        showParts();
    }

protected:
    void act() override {
        if (kind() == Parting::Split) {
            std::vector<GarmentId> chosen;
            for (std::size_t at = 0; at < m_garments.size(); ++at)
                if (form().isOn(switchName(at)))
                    chosen.push_back(m_garments[at].id);
            settle(db::splitOrder(desk().file(), m_order, chosen));
            return;
        }
        if (m_others.empty())
            return refuse(tr("This customer has no other open order."));
        const int other = form().chosen("order");
        if (form().isSound())
            settle(db::mergeOrders(desk().file(), m_order, m_others.at(static_cast<std::size_t>(other)).id));
    }

private:
    Parting kind() { return form().chosen("kind") == 0 ? Parting::Split : Parting::Join; }

    void addGarments() {
        m_splitWords =
            form().note(tr("These become an order of their own, with a new number and the same day."));
        for (std::size_t at = 0; at < m_garments.size(); ++at)
            form().turn(switchName(at), garmentWords(desk().shop()->facts, m_garments[at]));
        if (!m_garments.empty())
            form().alsoNamed("garments", switchName(0));
    }

    void addOthers() {
        QVector<PickItem> items;
        for (const Order& other : m_others)
            items.append({tr("Order %1, promised for %2")
                              .arg(other.number)
                              .arg(promise(other.promised, desk().now().today()))});
        m_joinWords = form().note(
            m_others.empty() ? tr("This customer has no other open order.")
                             : tr("Its garments and what was paid come into this order; they get its "
                                  "letters, so print their tags again. The later day is kept."));
        form().list("order", tr("Order that comes in"), items, items.size() == 1 ? 0 : -1);
    }

    void showParts() {
        const bool isSplit = kind() == Parting::Split;
        m_splitWords->setVisible(isSplit);
        for (std::size_t at = 0; at < m_garments.size(); ++at)
            form().setShown(switchName(at), isSplit);
        m_joinWords->setVisible(!isSplit);
        form().setShown("order", !isSplit && !m_others.empty());
        setAction(isSplit ? tr("Split the order") : tr("Join the orders"));
    }

    OrderId m_order;
    std::vector<Garment> m_garments; // that are still here
    std::vector<Order> m_others;     // open ones of the same customer
    Label* m_splitWords = nullptr;
    Label* m_joinWords = nullptr;
};

} // namespace

Slip* makePartOrder(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto inView = orderIn(desk, matter);
    if (!inView)
        return nullptr;
    std::vector<Order> others;
    for (const Order& order : desk.shop()->facts.orders)
        if (order.id != inView->order.id && order.customer == inView->order.customer &&
            order.state == inView->order.state)
            others.push_back(order);
    return new PartOrderSlip(desk, *inView, std::move(others), parent);
}

} // namespace holdfast::app
