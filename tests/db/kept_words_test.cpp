// SPDX-License-Identifier: GPL-3.0-or-later
// The journal keeps what it says as a sentence beside the English.

#include "core/trade/language.h"
#include "tests/db/exchange_fixture.h"

namespace holdfast::db {

namespace {

// A language in which each pattern stands in brackets.
class Brackets : public Language {
public:
    std::string pattern(std::string_view english, std::optional<std::int64_t> count) const override {
        return "[" + std::string{englishForm(english, count)} + "]";
    }
};

std::string inBrackets(const Sentence& sentence) {
    return sentence.in(Brackets{});
}

} // namespace

class KeptTitles : public Laptops {
protected:
    Sentence last() { return shop().recent(1).front().title; }

    void nameTheCustomer(const std::string& name) {
        const CustomerId customer{number("SELECT customer_id FROM shop_order")};
        ASSERT_TRUE(changeCustomer(shop(), customer, name, "").ok());
    }

    void write(const std::string& sql) {
        connection().allowWriting(true);
        connection().run(sql);
        connection().allowWriting(false);
    }
};

TEST_F(KeptTitles, ATitleIsSaidInAnotherLanguage) {
    takeTees(1);
    nameTheCustomer("Odile Farrant");
    EXPECT_EQ(last(), "Customer is now Odile Farrant");
    EXPECT_EQ(inBrackets(last()), "[Customer is now Odile Farrant]");
    ASSERT_TRUE(shop().undo(shop().recent(1).front().id).ok());
    EXPECT_EQ(last(), "Undone: Customer is now Odile Farrant");
    EXPECT_EQ(inBrackets(last()), "[Undone: [Customer is now Odile Farrant]]");
}

TEST_F(KeptTitles, AnEntryWithoutOneSaysItsEnglish) {
    takeTees(1);
    nameTheCustomer("Odile Farrant");
    write("UPDATE journal_entry SET said = NULL");
    EXPECT_EQ(inBrackets(last()), "Customer is now Odile Farrant");
}

TEST_F(KeptTitles, OneThatSaysAnythingElseIsNotSaidAndIsFound) {
    takeTees(1);
    nameTheCustomer("Odile Farrant");
    write("UPDATE journal_entry SET said = replace(said, 'Odile', 'Maren') WHERE title LIKE 'Customer is "
          "now%'");
    EXPECT_EQ(inBrackets(last()), "Customer is now Odile Farrant");
    const auto findings = checkShop(shop());
    ASSERT_TRUE(findings.ok());
    ASSERT_FALSE(findings->empty());
    EXPECT_NE(findings->front().english().find("is not as it was written"), std::string::npos);
}

TEST_F(KeptTitles, TheyAreCarriedToAnotherLaptop) {
    Laptop& fair = aLaptop();
    takeTees(1);
    nameTheCustomer("Odile Farrant");
    fetch(fair);
    EXPECT_EQ(inBrackets(fair.shop->recent(1).front().title), "[Customer is now Odile Farrant]");
}

} // namespace holdfast::db
