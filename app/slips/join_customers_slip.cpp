// SPDX-License-Identifier: GPL-3.0-or-later
// Two customers who are one: the other is looked for by name or phone number, and joined to this one.
#include "app/desk/formats.h"
#include "app/desk/search_words.h"
#include "app/slips/form_slip.h"
#include "app/slips/option_list.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/field.h"
#include "db/actions/customer_actions.h"
#include "db/tables/customer_page.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kMostOffered = 8;

class JoinCustomersSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(JoinCustomersSlip)

public:
    JoinCustomersSlip(ShopDesk& shopDesk, Customer customer, QWidget* parent)
        : FormSlip(shopDesk, tr("Join customers"), words(customer.name), parent)
        , m_customer(std::move(customer)) {
        form().note(
            tr("All orders of the other one go over to this one, who keeps name and phone number. Notes "
               "go one below the other."));
        form().line("other", tr("Who is the same"))->setPlaceholder(tr("Name or phone of the other"));
        m_list = new OptionList(tr("Customers found"));
        m_list->showAll();
        form().own("found", tr("Customers found"), m_list, [this] { return m_list->chosenAt() >= 0; });
        QObject::connect(form().findChild<Field*>(QStringLiteral("other")), &Field::edited, this,
                         [this] { offer(); });
        offer();
        beginAt("other");
        setAction(tr("Join the customers"));
    }

protected:
    void act() override {
        const int chosen = m_list->chosenAt();
        if (chosen < 0 || chosen >= static_cast<int>(m_found.size()))
            return form().setError("other", m_found.empty() ? tr("Nobody else is found so.")
                                                            : tr("Choose who it is."));
        settle(db::joinCustomers(desk().file(), m_customer.id,
                                 m_found[static_cast<std::size_t>(chosen)].customer.id));
    }

private:
    // What was typed; before that, who has the same number or the same first name.
    void offer() {
        m_found.clear();
        if (const QString typed = form().text("other"); !typed.isEmpty()) {
            find(typed);
        } else {
            find(words(m_customer.phone));
            find(words(m_customer.name).section(u' ', 0, 0));
        }
        QVector<Option> options;
        for (const db::CustomerFound& each : m_found) {
            const QString orders = tr("%n order|%n orders", nullptr, howMany(each.orders));
            options.append({breakable(words(each.customer.name)),
                            each.customer.phone.empty()
                                ? orders
                                : tr("%1, %2").arg(words(each.customer.phone), orders)});
        }
        m_list->setOptions(options, m_found.size() == 1 && !form().text("other").isEmpty() ? 0 : -1);
        m_list->updateGeometry();
    }

    void find(const QString& typed) {
        const db::OrderSearch search{searchIn(typed, desk().now())};
        auto found = desk().file().read([&](db::Connection& connection) {
            return db::customersFound(connection, db::OrderQuery{connection, search}, plain(typed),
                                      kMostOffered + 1);
        });
        if (!desk().done(found))
            return;
        for (db::CustomerFound& each : *found) {
            const bool isKnown =
                each.customer.id == m_customer.id || std::ranges::any_of(m_found, [&](const auto& one) {
                    return one.customer.id == each.customer.id;
                });
            if (!isKnown && m_found.size() < kMostOffered)
                m_found.push_back(std::move(each));
        }
    }

    Customer m_customer;
    std::vector<db::CustomerFound> m_found;
    OptionList* m_list = nullptr;
};

} // namespace

Slip* makeJoinCustomers(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto page = customerIn(desk, matter);
    return page ? new JoinCustomersSlip(desk, page->customer, parent) : nullptr;
}

} // namespace holdfast::app
