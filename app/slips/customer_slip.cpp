// SPDX-License-Identifier: GPL-3.0-or-later
// A customer's page: name, phone and note, to be changed; every order, the sizes taken, what came back;
// joining with another one who is the same, and forgetting.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/orders_of_customer.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "app/widgets/long_field.h"
#include "db/actions/customer_actions.h"
#include "db/tables/customer_page.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class CustomerSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(CustomerSlip)

public:
    CustomerSlip(ShopDesk& shopDesk, const SlipTarget& matter, const QString& about, db::CustomerPage page,
                 QWidget* parent)
        : FormSlip(shopDesk, tr("Customer"), about, parent)
        , m_matter(matter)
        , m_page(std::move(page)) {
        m_matter.customer = m_page.customer.id;
        sayWhatIsOwed();
        form().line("customerName", tr("Name"), words(m_page.customer.name));
        form().line("customerPhone", tr("Phone"), words(m_page.customer.phone));
        form().optional("customerPhone");
        form()
            .longLine("customerNote", tr("Note"), words(m_page.note))
            ->setPlaceholder(tr("likes long sleeves; rings back in the evening"));
        form().optional("customerNote");
        form().note(tr("Changes on every order of this customer."));
        listOrders();
        listSizes();
        listClaims();
        addButtons();
        // Whoever comes from an order has it before them, and whoever comes by the name looks for one.
        beginAt(matter.order || m_page.orders.empty() ? "customerName" : "orders");
        setAction(tr("Save the customer"));
    }

protected:
    void act() override {
        if (plain(form().text("customerName")) == m_page.customer.name &&
            plain(form().text("customerPhone")) == m_page.customer.phone &&
            plain(form().text("customerNote")) == m_page.note)
            return finish(); // nothing to write down
        settle(db::changeCustomer(desk().file(), m_page.customer.id, plain(form().text("customerName")),
                                  plain(form().text("customerPhone")), plain(form().text("customerNote"))));
    }

private:
    void sayWhatIsOwed() {
        const QString orders =
            tr("%n order|%n orders", nullptr, howMany(static_cast<std::int64_t>(m_page.orders.size())));
        auto* owed =
            form().note(m_page.owed > Money{}
                            ? tr("%1, %2 owed in all").arg(orders, money(m_page.owed, desk().currency()))
                            : tr("%1, nothing owed").arg(orders));
        owed->setObjectName(QStringLiteral("owedInAll"));
        owed->setInk(m_page.owed > Money{} ? &Tokens::weld : &Tokens::ink2);
        QStringList others;
        for (const std::string& name : m_page.alsoCalled)
            others.append(words(name));
        if (!others.isEmpty())
            form().note(tr("Also called %1.").arg(others.join(tr(", "))));
    }

    void listOrders() {
        if (m_page.orders.empty())
            return;
        auto* lines = new OrdersOfCustomer(desk(), m_page.orders);
        QObject::connect(lines, &OrdersOfCustomer::orderAsked, this, [this](OrderId order) {
            SlipTarget matter;
            matter.order = order;
            emit desk().placeAsked(PlaceName::OrderBook, matter);
        });
        form().section(tr("Orders"));
        form().own("orders", {}, lines);
    }

    // "Tee: 3 × M, 1 × L"
    void listSizes() {
        if (m_page.sizes.empty())
            return;
        form().section(tr("Sizes taken"));
        QStringList lines;
        std::string style;
        for (const db::SizeTaken& taken : m_page.sizes) {
            const QString size = tr("%1 × %2").arg(taken.garments).arg(words(taken.size));
            if (taken.style == style)
                lines.back() = tr("%1, %2").arg(lines.back(), size);
            else
                lines.append(tr("%1: %2").arg(breakable(words(taken.style)), size));
            style = taken.style;
        }
        form().note(lines.join(u'\n'))->setObjectName(QStringLiteral("sizesTaken"));
    }

    void listClaims() {
        if (m_page.claims.empty())
            return;
        form().section(tr("Came back"));
        QStringList lines;
        for (const db::ClaimOfCustomer& each : m_page.claims) {
            const LocalDate today = desk().now().today();
            const QString reported = tr("%1: %2, reported %3")
                                         .arg(words(each.garment), words(faultWords(each.claim.fault)),
                                              dayNear(each.claim.toldOn, today));
            lines.append(each.claim.answer
                             ? tr("%1, %2").arg(reported, words(answerWords(*each.claim.answer)))
                             : tr("%1, nothing was done yet").arg(reported));
        }
        form().note(lines.join(u'\n'))->setObjectName(QStringLiteral("cameBackOfCustomer"));
    }

    void addButtons() {
        const auto add = [&](const QString& text, const char* name, SlipName slip) {
            auto* button = new Button(text, Button::Kind::Quiet);
            button->setObjectName(QString::fromLatin1(name));
            QObject::connect(button, &Button::clicked, this,
                             [this, slip] { emit desk().slipAsked(slip, m_matter); });
            form().add(button);
        };
        add(tr("Join with another customer"), "joinCustomer", SlipName::JoinCustomers);
        add(tr("Forget this customer"), "forgetCustomer", SlipName::ForgetCustomer);
    }

    SlipTarget m_matter;
    db::CustomerPage m_page;
};

} // namespace

Slip* makeCustomer(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto inView = orderIn(desk, matter);
    auto page = customerIn(desk, matter);
    if (!page)
        return nullptr;
    const QString about = inView ? orderWords(*inView) : words(page->customer.name);
    return new CustomerSlip(desk, matter, about, std::move(*page), parent);
}

} // namespace holdfast::app
