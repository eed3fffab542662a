// SPDX-License-Identifier: GPL-3.0-or-later
// A customer is forgotten from the command line.
#include "app/command_line/arguments.h"
#include "app/command_line/verbs.h"
#include "db/actions/invoice_actions.h"
#include "db/backups/backups.h"
#include "db/tables/invoices.h"
#include "tests/app/shop_fixture.h"

namespace holdfast::app::test {
namespace {

using ForgetVerb = ShopFixture;

TEST_F(ForgetVerb, ACustomerIsForgottenAndTheBackupsThatHaveTheNameAreListed) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    takeOrder({aGarment(usual)}, "Teo Farrant");
    const auto made = valueOf(db::makeBackup(file(), db::BackupReason::OfTheDay, now().local()));
    Arguments arguments;
    arguments.shop = path();
    const auto refused = [&](const std::string& who) {
        arguments.target = who;
        const auto outcome = forget(arguments, time().clock());
        return outcome.ok() ? "done" : outcome.error().message.english();
    };
    EXPECT_NE(refused("Odile Farrant").find("open in another window"), std::string::npos)
        << "this desk has it";
    close();
    EXPECT_EQ(refused("Odile"),
              "The shop has no customer “Odile”. Name them in full, or by their phone number "
              "or the number of one of their orders.");
    const std::string number = std::to_string(taken.number);
    EXPECT_EQ(refused("odile farrant"),
              "Order " + number + " is still open. Hand it over or cancel it first.");
    reopen();
    valueOf(db::cancelOrder(file(), taken.id, "moved away"));
    close();
    arguments.target = "odile farrant";
    const std::string done = valueOf(forget(arguments, time().clock()));
    EXPECT_EQ(done,
              "Forgot the customer. The garments, film and money of order " + number +
                  " stay.\nPapers, exported tables and news that were made before still have the name.\n"
                  "1 backup still has the name:\n2026-11-25T10:00  " +
                  made.backup.path.string() + "\n                  goes by itself after 2026-12-08\n");
    EXPECT_EQ(refused("odile farrant").substr(0, 25), "The shop has no customer ");
    reopen();
    EXPECT_EQ(file().connection().number("SELECT COUNT(*) FROM customer WHERE name = '(forgotten)'"), 1);
    EXPECT_EQ(file().connection().number("SELECT COUNT(*) FROM customer WHERE name = 'Teo Farrant'"), 1);
}

TEST_F(ForgetVerb, InvoicesThatStayAreNamed) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    const auto english = [](const Sentence& sentence) { return sentence.english(); };
    valueOf(db::makeInvoice(file(), {taken.id, "Odile Farrant", "1 Quay Street"}, now(), english));
    const std::string label = db::invoicesOf(file().connection(), taken.id).front().label();
    valueOf(db::cancelOrder(file(), taken.id, "moved away"));
    close();
    Arguments arguments;
    arguments.shop = path();
    arguments.target = "Odile Farrant";
    const std::string done = valueOf(forget(arguments, time().clock()));
    EXPECT_NE(done.find("because the law may oblige you to keep them: " + label + ".\n"), std::string::npos)
        << done;
}

TEST_F(ForgetVerb, NobodyIsForgottenWhereSeveralMayBeMeant) {
    const UsualShop usual = stockUsualShop();
    auto draft = anOrder({aGarment(usual)}, "Odile Farrant");
    draft.customerPhone = "07700 900421";
    valueOf(db::takeOrder(file(), draft, now()));
    draft.customerPhone = "07700 900422";
    valueOf(db::takeOrder(file(), draft, now()));
    close();
    Arguments arguments;
    arguments.shop = path();
    arguments.target = "Odile Farrant";
    const auto outcome = forget(arguments, time().clock());
    ASSERT_FALSE(outcome.ok());
    const std::string words = outcome.error().message.english();
    EXPECT_NE(words.find("Nobody was forgotten"), std::string::npos) << words;
    EXPECT_NE(words.find("\n  Odile Farrant, 07700 900421, order "), std::string::npos) << words;
    EXPECT_NE(words.find("\n  Odile Farrant, 07700 900422, order "), std::string::npos) << words;
    arguments.isDemo = true;
    EXPECT_FALSE(forget(arguments, time().clock()).ok()) << "of the demo nobody is forgotten";
}

} // namespace
} // namespace holdfast::app::test
