// SPDX-License-Identifier: GPL-3.0-or-later
// A web shop's file read into orders, and taken as one action.
#include "core/film/roll_condition.h"
#include "core/shop/reckoned_shop.h"
#include "db/actions/forget_customer.h"
#include "db/actions/order_file_actions.h"
#include "db/csv/order_file_reading.h"
#include "db/tables/order_file_rows.h"
#include "tests/db/small_shop.h"

#include <chrono>

namespace holdfast::db {
namespace {

const std::string kHead = "Order,Name,Phone,Product,Size,Qty,Due\r\n";

// The letters are the window's matter: here they have no outline.
Result<DecalDraft> plainlyLettered(const DecalDraft& like, const GarmentDraft&, const std::string& wording) {
    DecalDraft decal = like;
    decal.content = Wording{wording};
    return decal;
}

class OrderFile : public SmallShop {
protected:
    OrderFile() {
        const OrderTaken like = takeTees();
        m_naming.shop = "Web shop";
        m_naming.headings = {"Order", "Name", "Phone", "Product", "Size", "Qty", "Due"};
        m_naming.columns = {{OrderColumn::Reference, "Order"}, {OrderColumn::Customer, "Name"},
                            {OrderColumn::Phone, "Phone"},     {OrderColumn::Item, "Product"},
                            {OrderColumn::Size, "Size"},       {OrderColumn::Copies, "Qty"},
                            {OrderColumn::Wanted, "Due"}};
        m_naming.items = {{"Heron tee", garmentOf(like)}};
    }

    Result<OrderFileRead> read(const std::string& text) {
        ClimateReckoner reckoner;
        const auto reckoned = reckonShop(loadOpenFacts(connection()), loadClimate(connection()),
                                         loadRecentUse(connection(), now().instant), reckoner, now(), {});
        return readOrders(connection(), text, m_naming, *reckoned, plainlyLettered);
    }

    // One wrong line, of these words, and nothing can be taken.
    void expectWrong(const std::string& lines, const std::string& words) {
        const auto file = read(kHead + lines);
        ASSERT_TRUE(file.ok()) << file.error().message.english();
        EXPECT_EQ(file->wrongLines(), 1U);
        std::string said;
        for (const FiledLine& line : file->lines)
            said += line.wrong.english();
        EXPECT_NE(said.find(words), std::string::npos) << said;
        const Dump before = dump();
        EXPECT_FALSE(takeOrdersOfFile(shop(), *file, now()).ok());
        EXPECT_EQ(dump(), before);
    }

    OrderFileNaming m_naming;
};

TEST_F(OrderFile, AllOrdersAreOneActionAndTheirReferencesAreTakenOnce) {
    const std::string text = kHead + "W-1,Juno Ash,07700 900111,Heron tee,M,2,\r\n"
                                     "W-2,Wren Ash,,Heron tee,M,,\r\n"
                                     "W-1,,,Heron tee,M,1,\r\n";
    const auto file = read(text);
    ASSERT_TRUE(file.ok()) << file.error().message.english();
    ASSERT_EQ(file->wrongLines(), 0U);
    ASSERT_EQ(file->orders.size(), 2U);
    EXPECT_EQ(file->orders[0].draft.garments.size(), 3U);
    expectUndoable<Result<OrdersOfFile>>([&] { return takeOrdersOfFile(shop(), *file, now()); },
                                         "2 orders of Web shop taken from a file");
    EXPECT_EQ(namingOf(connection(), m_naming.headings), m_naming);
    const auto again = read(text);
    ASSERT_TRUE(again.ok());
    EXPECT_TRUE(again->orders.empty());
    EXPECT_EQ(again->knownOrders(), 2U);
    EXPECT_FALSE(takeOrdersOfFile(shop(), *file, now()).ok()) << "it was taken meanwhile";
}

TEST_F(OrderFile, WhatIsWrongIsSaidByLineAndHeading) {
    expectWrong("W-1,Juno,,Heron tee,XXXXL,1,\n", "Line 2, Size: ");
    expectWrong("W-1,Juno,,Owl mug,M,1,\n", "Line 2, Product: ");
    expectWrong("W-1,Juno,,Heron tee,M,0,\n", "Line 2, Qty: ");
    expectWrong("W-1,Juno,,Heron tee,M,1000000000,\n", "Line 2, Qty: ");
    expectWrong("W-1,Juno,,Heron tee,M,1,31.02.2027\n", "Line 2, Due: ");
    expectWrong("W-1,Juno,,Heron tee,M,1,25.257.2027\n", "Line 2, Due: ");
    expectWrong("W-1,Juno,,Heron tee,M,1,1.1.67562\n", "Line 2, Due: ");
    expectWrong("W-1,Juno,,Heron tee,M,200,\nW-1,Juno,,Heron tee,M,200,\n", "Line 2, Qty: ");
    expectWrong(",Juno,,Heron tee,M,1,\n", "Line 2, Order: ");
    expectWrong("W-1,Juno,,Heron tee,M,1,\nW-1,Wren,,Heron tee,M,1,\n", "Line 3, Name: ");
}

TEST_F(OrderFile, FilesThatAreNoneAreRefused) {
    EXPECT_FALSE(headingsOfOrders("").ok());
    EXPECT_FALSE(headingsOfOrders("Order,Order\n").ok());
    EXPECT_FALSE(headingsOfOrders("Order,N\xE9\n").ok()) << "Latin-1";
    EXPECT_FALSE(read(kHead + "W-1,Juno\n").ok()) << "too few fields";
}

// RFC 4180, section 2: rules 5 to 7 (fields in quotation marks, with commas and line breaks, and doubled
// marks).
TEST_F(OrderFile, FieldsAreReadAsTheStandardHasThem) {
    const auto file = read(kHead + "W-1,\"Ash, Juno \"\"J\"\"\",,\"Heron tee\",M,1,\r\n");
    ASSERT_TRUE(file.ok()) << file.error().message.english();
    ASSERT_EQ(file->orders.size(), 1U);
    EXPECT_EQ(file->orders[0].draft.customerName, "Ash, Juno \"J\"");
    const auto items = itemsOfOrders("Product,Order\r\n\"a\r\nb\",1\r\n", "Product");
    ASSERT_TRUE(items.ok());
    ASSERT_EQ(items->size(), 1U);
    EXPECT_EQ(items->front(), "a\r\nb");
}

TEST_F(OrderFile, ReadingCanBeStopped) {
    ClimateReckoner reckoner;
    const auto reckoned = reckonShop(loadOpenFacts(connection()), loadClimate(connection()),
                                     loadRecentUse(connection(), now().instant), reckoner, now(), {});
    EXPECT_FALSE(readOrders(connection(), kHead + "W-1,Juno,,Heron tee,M,1,\n", m_naming, *reckoned,
                            plainlyLettered, [](double) { return false; })
                     .ok());
}

// By name and phone, as at the fair table.
TEST_F(OrderFile, ACustomerWhoIsKnownIsNotANewOne) {
    const auto first = read(kHead + "W-1,Juno Ash,07700 900111,Heron tee,M,1,\n");
    ASSERT_TRUE(first.ok());
    ASSERT_TRUE(takeOrdersOfFile(shop(), *first, now()).ok());
    const auto customers = number("SELECT COUNT(*) FROM customer");
    const auto next = read(kHead + "W-2,Juno Ash,07700 900111,Heron tee,M,1,\n");
    ASSERT_TRUE(next.ok());
    ASSERT_TRUE(takeOrdersOfFile(shop(), *next, now()).ok());
    EXPECT_EQ(number("SELECT COUNT(*) FROM customer"), customers);
}

TEST_F(OrderFile, AReferenceIsForgottenWithItsCustomer) {
    const auto file = read(kHead + "W-77X,Juno Ash,,Heron tee,M,1,\n");
    ASSERT_TRUE(file.ok());
    ASSERT_TRUE(takeOrdersOfFile(shop(), *file, now()).ok());
    const OrderId order{number("SELECT order_id FROM order_reference")};
    const CustomerId customer{
        number("SELECT customer_id FROM shop_order WHERE id = " + std::to_string(order.value))};
    ASSERT_TRUE(cancelOrder(shop(), order, "not wanted").ok());
    const auto forgotten = forgetCustomer(shop(), customer);
    ASSERT_TRUE(forgotten.ok()) << forgotten.error().message.english();
    EXPECT_EQ(number("SELECT COUNT(*) FROM order_reference WHERE reference LIKE '%77X%'"), 0);
    EXPECT_EQ(number("SELECT COUNT(*) FROM shop_order WHERE note LIKE '%77X%'"), 0);
    EXPECT_FALSE(referencesOf(connection(), "Web shop").contains("W-77X"));
}

// A thousand orders of five lines; half a year of work at the press.
TEST_F(OrderFile, FiveThousandLinesAreRead) {
    std::string text = kHead;
    for (int order = 0; order < 1000; ++order)
        for (int line = 0; line < 5; ++line)
            text += "W-" + std::to_string(order) + ",Juno Ash,,Heron tee,M,1,\n";
    const auto began = std::chrono::steady_clock::now();
    const auto file = read(text);
    ASSERT_TRUE(file.ok()) << file.error().message.english();
    EXPECT_EQ(file->lines.size(), 5000U);
    EXPECT_EQ(file->orders.size() + file->wrongLines(), 1000U) << "a day for each, or why there is none";
    EXPECT_LT(std::chrono::steady_clock::now() - began, std::chrono::minutes{2});
}

} // namespace
} // namespace holdfast::db
