// SPDX-License-Identifier: GPL-3.0-or-later
// Forgetting a customer for good: what goes and what stays is said before it is done, with every backup that
// still has the name.
#include "app/desk/backup_words.h"
#include "app/desk/backups_beside.h"
#include "app/desk/beside.h"
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/button.h"
#include "app/widgets/label.h"
#include "app/widgets/switch.h"
#include "db/actions/forget_customer.h"
#include "db/backups/backups.h"
#include "db/backups/backups_naming.h"

#include <QCoreApplication>

#include <algorithm>
#include <optional>

namespace holdfast::app {

namespace {

struct ForgetCustomerWords {
    Q_DECLARE_TR_FUNCTIONS(ForgetCustomerWords)
};

QString numbersInWords(const std::vector<std::int64_t>& numbers) {
    QStringList listed;
    for (const std::int64_t number : numbers)
        listed.append(QString::number(number));
    return listed.join(QStringLiteral(", "));
}

// On another thread than the window's.
QString whatStillNames(const db::Shop& shop, const std::filesystem::path& second,
                       const std::vector<CustomerId>& rows, const Now& now) {
    const auto naming = db::backupsNaming(db::backupsOf(shop.path(), second), rows, now.local());
    const QString done = ForgetCustomerWords::tr("The customer is forgotten.");
    if (naming.empty())
        return done;
    std::optional<LocalDate> last = naming.front().lastDay;
    for (const db::BackupNaming& each : naming)
        last = last && each.lastDay ? std::optional{std::max(*last, *each.lastDay)} : std::nullopt;
    const int count = howMany(naming.size());
    const QString still =
        last
            ? ForgetCustomerWords::tr("%n backup still has the name, until %1.|"
                                      "%n backups still have the name, until %1.",
                                      nullptr, count)
                  .arg(date(*last))
            : ForgetCustomerWords::tr("%n backup still has the name, and not all of them go by themselves.|"
                                      "%n backups still have the name, and not all of them go by themselves.",
                                      nullptr, count);
    return done + u' ' + still;
}

// "shop-2026-11-28-091402-of-the-day.holdfast: made Sat 28 Nov 09:14, goes by itself after 11 Dec 2026"
QString backupLine(const db::BackupNaming& naming, const std::filesystem::path& shop, const Now& now) {
    const bool isNextToShop = naming.backup.path.parent_path() == db::backupFolder(shop);
    const std::filesystem::path name = isNextToShop ? naming.backup.path.filename() : naming.backup.path;
    const QString made = backupTitle(naming.backup, now);
    return naming.lastDay ? ForgetCustomerWords::tr("%1: made %2, goes by itself after %3")
                                .arg(breakable(words(name.string())), made, date(*naming.lastDay))
                          : ForgetCustomerWords::tr("%1: made %2, does not go by itself")
                                .arg(breakable(words(name.string())), made);
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
        const auto forget = [id = m_customer.id, rows = m_customer.rows, second = secondBackupFolder(),
                             now = desk().now()](db::Shop& shop,
                                                 const auto& progress) -> Result<std::string> {
            const auto forgotten = db::forgetCustomer(shop, id, progress);
            if (!forgotten.ok())
                return forgotten.error();
            return plain(whatStillNames(shop, second, rows, now));
        };
        desk().doBeside(tr("Forgetting"), forget);
        finish();
    }

private:
    void sayWhatIsOpen() {
        form().note(tr("Order %1 is still open. Hand it over or cancel it first.|"
                       "Orders %1 are still open. Hand them over or cancel them first.",
                       nullptr, howMany(m_customer.open.size()))
                        .arg(numbersInWords(m_customer.open)));
        action()->setEnabled(false);
    }

    void sayWhatGoes() {
        form().note(tr(
            "These go: the name, the phone number, notes, the wording of decals and what was written about "
            "garments that came back or were spoiled. They go from the history and the search too."));
        form().note(m_customer.orders.empty() ? tr("The money stays.")
                                              : tr("These stay: garments, film and money of order %1.")
                                                    .arg(numbersInWords(m_customer.orders)));
        if (m_customer.owed > Money{})
            form().note(tr("%1 is still owed. It will no longer be known by whom.")
                            .arg(money(m_customer.owed, desk().currency())));
        if (!m_customer.invoices.empty())
            form().note(
                tr("Invoices stay as they were made, with the name and the address, because the law may "
                   "oblige you to keep them: %1.")
                    .arg(invoicesInWords()));
        form().note(tr("Another laptop forgets them when it brings in the news. Papers, exported tables and "
                       "backups that were made before still have the name."));
        if (!desk().file().path().empty())
            listBackups();
        form().turn("forGood", tr("Take the name out for good"));
        beginAt("forGood");
        setAction(tr("Forget the customer"));
    }

    QString invoicesInWords() const {
        QStringList listed;
        for (const std::string& label : m_customer.invoices)
            listed.append(app::words(label));
        return listed.join(QStringLiteral(", "));
    }

    // Each of them is opened: on a thread of its own.
    void listBackups() {
        form().section(tr("Backups with the name"));
        m_backups = form().note(tr("The backups are being looked at."));
        m_backups->setObjectName(QStringLiteral("backupsNaming"));
        m_looking.begin(
            [shop = desk().file().path(), second = secondBackupFolder(), rows = m_customer.rows,
             now = desk().now()](auto& reporter) {
                return db::backupsNaming(db::backupsOf(shop, second), rows, now.local(),
                                         [&](double share) { return reporter.report(share); });
            },
            [this](const std::vector<db::BackupNaming>& naming) {
                QStringList lines;
                for (const db::BackupNaming& each : naming)
                    lines.append(backupLine(each, desk().file().path(), desk().now()));
                m_backups->setText(lines.isEmpty() ? tr("No backup has the name.")
                                                   : lines.join(QStringLiteral("\n")));
            });
    }

    db::ToBeForgotten m_customer;
    Label* m_backups = nullptr; // those that have the name, a line each
    Beside<std::vector<db::BackupNaming>> m_looking;
};

} // namespace

Slip* makeForgetCustomer(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto page = customerIn(desk, matter);
    if (!page)
        return nullptr;
    auto found = desk.file().read(
        [&](db::Connection& connection) { return db::toBeForgotten(connection, page->customer.id); });
    return found.ok() ? new ForgetCustomerSlip(desk, std::move(*found), parent) : nullptr;
}

} // namespace holdfast::app
