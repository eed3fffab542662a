// SPDX-License-Identifier: GPL-3.0-or-later
// What a person types finds the order: any part of a name or word, and a phone number however it is written.
#include "core/trade/folded.h"
#include "db/tables/order_book.h"
#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

class OrderSearching : public SmallShop {
protected:
    void takeFor(const std::string& name, const std::string& phone, const std::string& wording = "Juno") {
        auto draft = aDraft();
        draft.customerName = name;
        draft.customerPhone = phone;
        draft.garments[0].decals[0].content = Wording{wording};
        take(draft);
    }
    std::vector<std::int64_t> found(std::string_view typed) {
        std::vector<std::int64_t> numbers;
        for (const OrderLine& line : findOrders(connection(), typed, OrderFilter::All, 100))
            numbers.push_back(line.number);
        EXPECT_EQ(countOrders(connection(), typed, OrderFilter::All), std::ssize(numbers)) << typed;
        return numbers;
    }
    using Numbers = std::vector<std::int64_t>;
};

TEST_F(OrderSearching, AnyPartOfANameOrWord) {
    takeFor("Ofarantino Sousa", "", "Heron");
    takeFor("Åsa Lindkvist, Malmö", "", "Tern");
    for (const char* typed : {"farant", "ousa", "FARANT", "ofa", "o", "heron", "ero", "sou hero", "1"})
        EXPECT_EQ(found(typed), Numbers{1}) << typed;
    for (const char* typed : {"kvist", "malmo", "almö", "ALMÖ", "asa", "lindk ter"})
        EXPECT_EQ(found(typed), Numbers{2}) << typed;
    for (const char* typed : {"", "  ", "mos", "oss", "dusk", "\"*(-"})
        EXPECT_EQ(found(typed), (Numbers{2, 1})) << typed;
    for (const char* typed : {"xyz", "heron kvist", "farantx", "NEAR", "a OR b"})
        EXPECT_EQ(found(typed), Numbers{}) << typed;
}

// Turkish: I is the capital of ı, and İ that of i.
TEST_F(OrderSearching, AnIWithAndWithoutItsDot) {
    takeFor("Işıl Yıldız", "");
    takeFor("İrem Isik", "");
    for (const char* typed : {"ışıl", "IŞIL", "isil", "şıl", "yıldız", "yildiz", "YILDIZ", "ldız"})
        EXPECT_EQ(found(typed), Numbers{1}) << typed;
    for (const char* typed : {"irem", "İrem", "ırem", "rem", "isik", "ısık", "IŞIK"})
        EXPECT_EQ(found(typed), Numbers{2}) << typed;
    EXPECT_EQ(found("i"), (Numbers{2, 1}));
    EXPECT_EQ(found("irmak"), Numbers{});
}

TEST_F(OrderSearching, OneWrongLetterIsForgivenWhereNothingHasItRight) {
    takeFor("Odile Farrant", "");
    takeFor("Teo Lindqvist", "");
    EXPECT_EQ(found("farant"), Numbers{1});
    EXPECT_EQ(found("lindkvist"), Numbers{2});
    EXPECT_EQ(found("lindk"), Numbers{2}) << "while it is typed";
    EXPECT_EQ(found("teo lindkvist"), Numbers{2});
    takeFor("Åsa Lindkvist", "");
    EXPECT_EQ(found("lindkvist"), Numbers{3}) << "who is written so, and nobody else";
}

TEST_F(OrderSearching, TwoLettersAreABeginning) {
    takeFor("Odile Farrant", "");
    EXPECT_EQ(found("fa"), Numbers{1});
    EXPECT_EQ(found("nt"), Numbers{});
    EXPECT_EQ(found("ant"), Numbers{1});
}

TEST_F(OrderSearching, APhoneNumberHoweverItIsWritten) {
    takeFor("A", "07700 900421");
    takeFor("B", "+44 (0)7700-900.123");
    takeFor("C", "");
    for (const char* typed :
         {"07700900421", "07700 900421", "00900421", "900421", "421", "0421", "07700 421"})
        EXPECT_EQ(found(typed), Numbers{1}) << typed;
    for (const char* typed : {"7700900123", "123", "900123", "44077"})
        EXPECT_EQ(found(typed), Numbers{2}) << typed;
    EXPECT_EQ(found("00900"), (Numbers{2, 1})) << "five digits anywhere in it";
    EXPECT_EQ(found("9004"), Numbers{1}) << "the beginning of a group";
    EXPECT_EQ(found("0042"), Numbers{}) << "four digits inside are no telephone number";
    EXPECT_EQ(found("b 123"), Numbers{2});
    EXPECT_EQ(found("a 123"), Numbers{});
}

TEST_F(OrderSearching, APhoneNumberWithTheCountryOrWithout) {
    takeFor("Anna", "07700 900421");
    takeFor("Bree", "+44 7700 900123");
    for (const char* typed : {"+447700900421", "+44 7700 900421", "0044 7700-900-421", "+44 (0)7700 900 421",
                              "077 00 90 04 21", "anna +44 7700", "447700900421"})
        EXPECT_EQ(found(typed), Numbers{1}) << typed;
    for (const char* typed : {"07700900123", "07700 900 123", "0044 7700 900123", "07700-900123 bree"})
        EXPECT_EQ(found(typed), Numbers{2}) << typed;
    for (const char* typed : {"+44 7700 900422", "+46 7700 900123", "07700 900 124"})
        EXPECT_EQ(found(typed), Numbers{}) << typed;
}

TEST_F(OrderSearching, LettersThatAreNotOnTheKeyboard) {
    takeFor("Sørensen", "");
    takeFor("Łukasz Großmann", "");
    for (const char* typed : {"sorensen", "SORENSEN", "sørensen", "soren", "rensen", "sorenson"})
        EXPECT_EQ(found(typed), Numbers{1}) << typed;
    for (const char* typed : {"lukasz", "łukasz", "grossmann", "GROSSMAN", "lukasz gross"})
        EXPECT_EQ(found(typed), Numbers{2}) << typed;
}

TEST_F(OrderSearching, AWrongLetterIsOnlyLookedForWhereNothingIsFound) {
    takeFor("Anna Reed", "", "Juno");
    takeFor("Bree Juna", "", "Tern");
    EXPECT_EQ(found("juno"), Numbers{1}) << "who has it right, and nobody else";
    EXPECT_EQ(found("bree juno"), Numbers{2}) << "both words are somewhere, but in no order";
    EXPECT_EQ(found("anan reed"), Numbers{1});
    EXPECT_EQ(found("read"), Numbers{1});
    EXPECT_EQ(found("rea"), Numbers{}) << "three letters are too few";
    const OrderQuery right{connection(), "reed"};
    const OrderQuery near{connection(), "read"};
    EXPECT_EQ(right.spelling, Spelling::Right);
    EXPECT_EQ(near.spelling, Spelling::Near);
}

TEST_F(OrderSearching, TheWordingOfADecal) {
    takeFor("Anna", "", "Happy birthday Ossian!");
    takeFor("Bree", "", "Heron");
    for (const char* typed : {"birthday", "happy ossian", "HAPPY BIRTH", "birtday", "\"ossian!\""})
        EXPECT_EQ(found(typed), Numbers{1}) << typed;
}

TEST_F(OrderSearching, TheOrderOfThatNumberComesFirst) {
    takeFor("A", ""); // 1
    for (int more = 2; more <= 9; ++more)
        takeFor("B", "07700 90000" + std::to_string(more));
    takeFor("C", "07700 900001"); // 10
    EXPECT_EQ(found("1"), (Numbers{1, 10}));
    connection();
    EXPECT_EQ(found("001"), Numbers{10});
}

TEST_F(OrderSearching, TheNumberOfAGarmentOrACodeFindsItsOrder) {
    for (int order = 1; order <= 12; ++order)
        takeFor("Bree", "");
    for (const char* typed : {"12-a", "12-B", " 12-a ", "12-a.KHTR", "12.KHTR"})
        EXPECT_EQ(found(typed), Numbers{12}) << typed;
    EXPECT_EQ(found("12 b"), Numbers{12}) << "a number and the beginning of a name";
    EXPECT_EQ(found("12 a"), Numbers{});
    EXPECT_EQ(found("12 dusk"), Numbers{12}) << "all letters of a shade may be check letters";
    EXPECT_EQ(found("12 reed"), Numbers{}) << "and of a word that is nowhere";
}

TEST_F(OrderSearching, TheFilterAndTheSortGoOnCounting) {
    takeFor("Odile Farrant", "07700 900421");
    takeFor("Ferrand", "07700 900422");
    ASSERT_TRUE(cancelOrder(shop(), OrderId{number("SELECT MIN(id) FROM shop_order")}, "changed mind").ok());
    EXPECT_EQ(countOrders(connection(), "ran", OrderFilter::All), 2);
    EXPECT_EQ(countOrders(connection(), "ran", OrderFilter::Open), 1);
    EXPECT_EQ(countOrders(connection(), "00900", OrderFilter::Open), 1);
    EXPECT_EQ(findOrders(connection(), "ran", OrderFilter::All, 1, 1).size(), 1U);
    const std::vector<OrderId> one{OrderId{number("SELECT MIN(id) FROM shop_order")}};
    EXPECT_EQ(findAmong(connection(), "farr", one).size(), 1U);
    EXPECT_EQ(findAmong(connection(), "ferr", one).size(), 0U);
}

// What was typed is looked up among the shop's words once, and found and counted by it.
TEST_F(OrderSearching, OneLookAtTheWordsServesListAndCount) {
    takeFor("Odile Farrant", "07700 900421");
    takeFor("Teo Lindqvist", "");
    takeFor("Teodora Farrow", "");
    for (const char* typed : {"", "farant", "farr", "lindk", "teo", "900421", "teo lindkvist"}) {
        const OrderQuery wanted{connection(), typed};
        Numbers numbers;
        for (const OrderLine& line : findOrders(connection(), wanted, OrderFilter::All, 100))
            numbers.push_back(line.number);
        EXPECT_EQ(numbers, found(typed)) << typed;
        EXPECT_EQ(countOrders(connection(), wanted, OrderFilter::All), std::ssize(numbers)) << typed;
    }
    EXPECT_EQ(found("farant"), Numbers{1}) << "no word has it in it: one letter is forgiven";
    EXPECT_EQ(found("arrow"), Numbers{3}) << "a word has it in it";
}

// Folding is the index's own: SQLite's FTS5 tokenizer is asked for every letter of the two blocks.
TEST_F(OrderSearching, FoldsLettersAsTheIndexDoes) {
    int letters = 0;
    for (int code = 0xC0; code <= 0x45F; ++code) {
        const bool isOurs = code <= 0x17F || (code >= 0x386 && code <= 0x3CE) || code >= 0x400;
        if (!isOurs)
            continue;
        std::string letter;
        letter += static_cast<char>(0xC0 | (code >> 6));
        letter += static_cast<char>(0x80 | (code & 0x3F));
        connection().allowWriting(true);
        connection().script(
            "DROP TABLE IF EXISTS temp.seen; DROP TABLE IF EXISTS temp.typed;"
            "CREATE VIRTUAL TABLE temp.typed USING fts5(w, tokenize = 'unicode61 remove_diacritics 2');"
            "CREATE VIRTUAL TABLE temp.seen USING fts5vocab(temp, typed, row);"
            "INSERT INTO temp.typed VALUES ('x" +
            letter + "x')");
        connection().allowWriting(false);
        Query term{connection(), "SELECT group_concat(term, ' ') FROM temp.seen"};
        ASSERT_TRUE(term.step());
        if (term.text(0) == "x" || term.text(0) == "x x")
            continue; // no letter: it parts words
        EXPECT_EQ(folded("x" + letter + "x"), term.text(0)) << std::hex << code;
        ++letters;
    }
    EXPECT_GT(letters, 300);
}

} // namespace
} // namespace holdfast::db
