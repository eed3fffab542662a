// Forgetting a customer for good: what goes and what stays is said before it is done.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/button.h"
#include "app/widgets/label.h"
#include "app/widgets/switch.h"
#include "db/actions/forget_customer.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

QString numbersInWords(const std::vector<std::int64_t>& numbers) {
    QStringList listed;
    for (const std::int64_t number : numbers)
        listed.append(QString::number(number));
    return listed.join(QStringLiteral(", "));
}

class ForgetCustomerSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(ForgetCustomerSlip)

public:
    ForgetCustomerSlip(ShopDesk& shopDesk, db::ToBeForgotten customer, QWidget* parent)
        : FormSlip(shopDesk, tr("Forget the customer"), words(customer.name), parent)
        , m_customer(std::move(customer)) {
        if (m_customer.open.empty())
            sayWhatGoes();
        else
            sayWhatIsOpen();
    }

protected:
    void act() override {
        if (!form().isOn("forGood"))
            return form().setError("forGood", tr("Switch this on: the name cannot be brought back."));
        if (desk().file().path().empty()) {
            settle(db::forgetCustomer(desk().file(), m_customer.id));
            return;
        }
        desk().doBeside(tr("Forgetting"),
                        [id = m_customer.id, done = plain(tr("The customer is forgotten."))](
                            db::Shop& shop, const auto& progress) -> Result<std::string> {
                            const auto forgotten = db::forgetCustomer(shop, id, progress);
                            return forgotten.ok() ? Result<std::string>{done} : forgotten.error();
                        });
        finish();
    }

private:
    void sayWhatIsOpen() {
        form().note(m_customer.open.size() == 1
                        ? tr("Order %1 is still open. Hand it over or cancel it first.")
                              .arg(numbersInWords(m_customer.open))
                        : tr("Orders %1 are still open. Hand them over or cancel them first.")
                              .arg(numbersInWords(m_customer.open)));
        action()->setEnabled(false);
    }

    void sayWhatGoes() {
        form().note(tr("These go: the name, the phone number, notes, what the decals say and what was written "
                       "about claims and spoiled garments. They go from the history and the search too."));
        form().note(m_customer.orders.empty()
                        ? tr("The money stays.")
                        : tr("These stay: garments, film and money of order %1.")
                              .arg(numbersInWords(m_customer.orders)));
        if (m_customer.owed > Money{})
            form().note(tr("%1 is still owed. Nobody will know by whom.")
                            .arg(money(m_customer.owed, desk().currency())));
        form().note(tr("Another laptop forgets them when it takes in the news. Papers, exported tables and "
                       "backups that were made before still hold the name."));
        form().turn("forGood", tr("Take the name out for good"));
        beginAt("forGood");
        setAction(tr("Forget the customer"));
    }

    db::ToBeForgotten m_customer;
};

} // namespace

Slip* makeForgetCustomer(ShopDesk& desk, const Matter& matter, QWidget* parent) {
    const auto inView = orderIn(desk, matter);
    if (!inView)
        return nullptr;
    auto found = desk.file().read([&](db::Connection& connection) {
        return db::toBeForgotten(connection, inView->customer.id);
    });
    return found.ok() ? new ForgetCustomerSlip(desk, std::move(*found), parent) : nullptr;
}

} // namespace holdfast::app
