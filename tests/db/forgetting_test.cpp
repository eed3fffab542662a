// SPDX-License-Identifier: GPL-3.0-or-later
// A customer who asked to be forgotten: the money stays, and no name is left anywhere.
#include "db/actions/claim_actions.h"
#include "db/actions/forget_customer.h"
#include "db/backups/backups.h"
#include "db/backups/backups_naming.h"
#include "db/csv/export_shop.h"
#include "db/forgetting/personal_columns.h"
#include "db/journal/built_upon.h"
#include "db/tables/order_book.h"
#include "tests/db/exchange_fixture.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <fstream>
#include <sstream>

namespace holdfast::db {
namespace {

// Each is somewhere in what a person typed about the customer, and nowhere else.
constexpr std::array kSaid{"zyxwanda",  "quellmore", "900771",   "zyxnote",   "zyxword",
                           "zyxagreed", "zyxwhy",    "zyxclaim", "9.87654321"};

std::string lowered(std::string text) {
    std::ranges::transform(text, text.begin(), [](unsigned char each) { return std::tolower(each); });
    return text;
}

std::string bytesIn(const std::filesystem::path& path) {
    std::ifstream file{path, std::ios::binary};
    std::ostringstream bytes;
    bytes << file.rdbuf();
    return lowered(bytes.str());
}

class ForgettingTest : public Laptops {
protected:
    // A shop with a file, in which a customer left as much of themselves as can be left.
    std::unique_ptr<Shop> shopThatKnows() {
        auto known = opened(copyOf(shop()));
        m_customer = fill(*known);
        return known;
    }

    OrderDraft draftOf(const std::string& wording) {
        auto draft = aDraft(1);
        draft.customerName = "Zyxwanda Quellmore";
        draft.customerPhone = "07700 900771";
        draft.note = "zyxnote, soon";
        auto& decal = draft.garments[0].decals.at(0);
        decal.content = Wording{wording, Face::Plain, "M0 0L9.87654321 0L9 9Z"};
        return draft;
    }

    static CustomerId customerOf(Shop& on, OrderId order) {
        return CustomerId{on.connection().number("SELECT customer_id FROM shop_order WHERE id = ?1", order)};
    }

    static GarmentId firstGarmentOf(Shop& on, OrderId order) {
        return GarmentId{on.connection().number("SELECT id FROM garment WHERE order_id = ?1", order)};
    }
    static DecalId firstDecalOf(Shop& on, OrderId order) {
        return DecalId{on.connection().number(
            "SELECT decal.id FROM decal JOIN garment ON garment.id = garment_id WHERE order_id = ?1", order)};
    }

    CustomerId fill(Shop& on) {
        const auto kept = taken(on, draftOf("ZYXWORD"));
        const auto customer = customerOf(on, kept.id);
        cancelledWithEverything(on, kept.id);
        auto again = draftOf("ZYXWORD two");
        again.customer = customer;
        handedOverAndBack(on, taken(on, again).id);
        const auto undone = taken(on, again);
        EXPECT_TRUE(on.undo(on.recent(1).front().id).ok()) << undone.number;
        EXPECT_TRUE(changeCustomer(on, customer, "Zyxwanda Quellmore-Holt", "07700 900771").ok());
        return customer;
    }

    void cancelledWithEverything(Shop& on, OrderId order) {
        const auto decal = firstDecalOf(on, order);
        EXPECT_TRUE(rewordDecal(on, decal, "zyxword again").ok());
        EXPECT_TRUE(confirmWording(on, decal, "zyxagreed by phone").ok());
        EXPECT_TRUE(changeLayer(on, decal, 2).ok());
        EXPECT_TRUE(changeNote(on, order, "zyxnote, later").ok());
        EXPECT_TRUE(waive(on, firstGarmentOf(on, order), Rule::RollPastAge, "zyxwhy so").ok());
        EXPECT_TRUE(moveMoney(on, order, MoneyKind::Payment, {300}, PaidHow::Cash).ok());
        EXPECT_TRUE(cancelOrder(on, order, "zyxwhy: quellmore is ill").ok());
        EXPECT_TRUE(on.undo(on.recent(1).front().id).ok());
        EXPECT_TRUE(cancelOrder(on, order, "zyxwhy: quellmore is ill").ok());
    }

    // Pressing is told as rows, for it is not what is looked at here.
    void handedOverAndBack(Shop& on, OrderId order) {
        const auto garment = firstGarmentOf(on, order);
        EXPECT_TRUE(on.act([&](Writer& writer) -> Result<Done> {
                          writer.connection().run("UPDATE garment SET handed_over_at = ?2 WHERE id = ?1",
                                                  garment, writer.now());
                          writer.connection().run("UPDATE shop_order SET state = 'handed-over', "
                                                  "handed_over_at = ?2 WHERE id = ?1",
                                                  order, writer.now());
                          writer.connection().run(
                              "INSERT INTO spoil (id, garment_id, attempt, at, cause) VALUES (?1, ?2, 1, ?3, "
                              "'zyxwhy scorched')",
                              writer.newId<EntryId>(), garment, writer.now());
                          writer.describe(said("Handed over"));
                          writer.concerns(order);
                          return Done{};
                      }).ok());
        ClaimTold told;
        told.garment = garment;
        told.on = now().today();
        told.note = "zyxclaim: came off";
        EXPECT_TRUE(recordClaim(on, told, now()).ok());
    }

    static std::vector<std::string> leftIn(const std::filesystem::path& path) {
        std::vector<std::string> left;
        for (const char* ending : {"", "-wal"}) {
            const std::string bytes = bytesIn(path.string() + ending);
            for (const std::string said : kSaid)
                if (bytes.find(said) != std::string::npos)
                    left.push_back(ending + std::string{" "} + said);
        }
        return left;
    }

    static std::int64_t takingsIn(Shop& on) { return numberOf(on, "SELECT SUM(minor) FROM money_move"); }

    CustomerId m_customer;
};

TEST_F(ForgettingTest, NothingInTheFileNamesThem) {
    auto known = shopThatKnows();
    const auto path = known->path();
    EXPECT_FALSE(leftIn(path).empty());
    const auto takings = takingsIn(*known);
    const auto entries = known->recent(10'000).size();
    ASSERT_TRUE(forgetCustomer(*known, m_customer).ok());
    EXPECT_EQ(leftIn(path), std::vector<std::string>{}) << "while it is open";
    EXPECT_EQ(takingsIn(*known), takings);
    EXPECT_EQ(known->recent(10'000).size(), entries + 1);
    EXPECT_EQ(known->recent(1).front().title, "Forgot the customer of 3 orders");
    expectWhole(*known);
    known.reset();
    EXPECT_EQ(leftIn(path), std::vector<std::string>{}) << "closed";
    expectWhole(*opened(path));
}

TEST_F(ForgettingTest, TheOrdersStayAndNobodyIsOfferedTheName) {
    auto known = shopThatKnows();
    ASSERT_TRUE(forgetCustomer(*known, m_customer).ok());
    auto& connection = known->connection();
    EXPECT_EQ(findOrders(connection, "zyxwanda", OrderFilter::All, 10).size(), 0U);
    EXPECT_EQ(findOrders(connection, "", OrderFilter::All, 10).size(), 2U);
    EXPECT_EQ(findOrders(connection, "", OrderFilter::All, 10)[0].customer, kForgottenName);
    EXPECT_TRUE(findCustomers(connection, "(", 10).empty());
    // The same person comes again: it is somebody new.
    const auto order = taken(*known, draftOf("NEW"));
    EXPECT_NE(customerOf(*known, order.id), m_customer);
    // Also where a half-typed order still has the one who is forgotten.
    auto draft = draftOf("NEW");
    draft.customer = m_customer;
    EXPECT_NE(customerOf(*known, taken(*known, draft).id), m_customer);
    expectWhole(*known);
}

TEST_F(ForgettingTest, WhatCameBeforeCanBeUndoneAndTheForgettingCannot) {
    auto known = shopThatKnows();
    ASSERT_TRUE(forgetCustomer(*known, m_customer).ok());
    const auto forgetting = known->recent(1).front();
    const auto ofTheOrder = known->history(Subject{m_customer}, 10);
    EXPECT_TRUE(builtUpon(known->connection(), ofTheOrder).contains(forgetting.id)) << "no undo is offered";
    EXPECT_FALSE(known->lastUndoable()) << "the undo key does not go past it";
    const auto refused = known->undo(forgetting.id);
    ASSERT_FALSE(refused.ok());
    EXPECT_NE(refused.error().message.english().find("Who was forgotten stays forgotten."),
              std::string::npos);
    for (const HistoryEntry& entry : known->recent(10'000))
        if (!entry.isUndone() && entry.id != forgetting.id && !entry.undoes)
            (void)known->undo(entry.id); // some stand in each other's way, as before
    EXPECT_EQ(leftIn(known->path()), std::vector<std::string>{});
    expectWhole(*known);
}

TEST_F(ForgettingTest, WhoHasAnOpenOrderIsNotForgotten) {
    const auto order = taken(shop(), draftOf("ZYXWORD"));
    const auto customer = customerOf(shop(), order.id);
    expectRefused<Result<Done>>([&] { return forgetCustomer(shop(), customer); }, "",
                                "Order " + std::to_string(order.number) +
                                    " is still open. Hand it over or cancel it first.");
    expectRefused<Result<Done>>([&] { return forgetCustomer(shop(), CustomerId{12345}); }, "customer",
                                "no such customer");
}

TEST_F(ForgettingTest, StoppedItChangesNothing) {
    auto known = shopThatKnows();
    const Dump before = dumpOf(*known);
    int asked = 0;
    const auto stopped = forgetCustomer(*known, m_customer, [&](double) { return ++asked < 3; });
    ASSERT_FALSE(stopped.ok());
    EXPECT_EQ(stopped.error().message.english(), "Stopped. Nobody was forgotten.");
    EXPECT_EQ(dumpOf(*known), before);
    expectWhole(*known);
}

TEST_F(ForgettingTest, ALaptopForgetsWhenItTakesItIn) {
    m_customer = fill(shop());
    Laptop& fair = aLaptop();
    // It says more about them, which the workshop is yet to hear.
    ASSERT_TRUE(changeCustomer(*fair.shop, m_customer, "Zyxwanda Quellmore", "").ok());
    const auto early = newsFrom(*fair.shop);
    ASSERT_TRUE(forgetCustomer(shop(), m_customer).ok());
    fetch(fair);
    EXPECT_EQ(leftIn(fair.shop->path()), std::vector<std::string>{});
    EXPECT_EQ(textOf(*fair.shop, "SELECT name FROM customer WHERE id = " + std::to_string(m_customer.value)),
              kForgottenName);
    takenIn(shop(), early); // news of before it knew
    exchange(fair);
    expectSame(shop(), *fair.shop);
    for (Shop* each : {&shop(), fair.shop})
        expectWhole(*each);
    EXPECT_EQ(leftIn(copyOf(shop())), std::vector<std::string>{});
    EXPECT_EQ(leftIn(newsFrom(shop(), fair.number)), std::vector<std::string>{});
}

TEST_F(ForgettingTest, TheWorkshopForgetsWhomALaptopForgot) {
    m_customer = fill(shop());
    Laptop& fair = aLaptop();
    Laptop& attic = aLaptop("Attic laptop");
    ASSERT_TRUE(
        changeNote(shop(), OrderId{numberOf(shop(), "SELECT MAX(id) FROM shop_order")}, "zyxnote 3").ok());
    ASSERT_TRUE(forgetCustomer(*fair.shop, m_customer).ok());
    bring(fair);
    EXPECT_EQ(leftIn(copyOf(shop())), std::vector<std::string>{});
    fetch(fair);
    exchange(attic);
    for (Shop* each : {fair.shop, attic.shop}) {
        expectSame(shop(), *each);
        expectWhole(*each);
        EXPECT_EQ(leftIn(each->path()), std::vector<std::string>{});
    }
    expectWhole(shop());
}

TEST_F(ForgettingTest, AnOpenOrderThatTheOtherDidNotKnowOfKeepsItsName) {
    m_customer = fill(shop());
    Laptop& fair = aLaptop();
    auto draft = draftOf("NEW");
    draft.customer = m_customer;
    const auto open = taken(*fair.shop, draft);
    ASSERT_TRUE(forgetCustomer(shop(), m_customer).ok());
    exchange(fair);
    exchange(fair);
    for (Shop* each : {&shop(), fair.shop}) {
        EXPECT_EQ(
            textOf(*each, "SELECT name FROM customer JOIN shop_order ON customer.id = customer_id WHERE "
                          "number = " +
                              std::to_string(open.number)),
            "Zyxwanda Quellmore-Holt");
        expectWhole(*each);
    }
    expectSame(shop(), *fair.shop);
}

TEST_F(ForgettingTest, WhatALaptopSaidSinceOfItsOwnOrderIsForgottenToo) {
    Laptop& fair = aLaptop();
    m_customer = fill(*fair.shop);
    bring(fair);
    ASSERT_TRUE(changeCustomer(*fair.shop, m_customer, "Zyxwanda", "07700 900771").ok());
    ASSERT_TRUE(forgetCustomer(shop(), m_customer).ok());
    fetch(fair);
    EXPECT_EQ(leftIn(fair.shop->path()), std::vector<std::string>{});
    exchange(fair);
    EXPECT_EQ(leftIn(copyOf(shop())), std::vector<std::string>{});
    expectSame(shop(), *fair.shop);
    expectWhole(*fair.shop);
    expectWhole(shop());
}

TEST_F(ForgettingTest, BackupsThatStillNameThemAreListedWithTheirLastDay) {
    auto known = shopThatKnows();
    const auto made = makeBackup(*known, BackupReason::OfTheDay, now().local());
    ASSERT_TRUE(made.ok()) << made.error().message.english();
    wait(Hours{24});
    ASSERT_TRUE(forgetCustomer(*known, m_customer).ok());
    ASSERT_TRUE(makeBackup(*known, BackupReason::OfTheDay, now().local()).ok());
    const auto backups = backupsOf(known->path());
    ASSERT_EQ(backups.size(), 2U);
    const auto naming = backupsNaming(backups, std::span{&m_customer, 1}, now().local());
    ASSERT_EQ(naming.size(), 1U);
    EXPECT_EQ(naming[0].backup.path, made->backup.path);
    EXPECT_EQ(naming[0].lastDay, localDate(2026, 11, 24)) << "made on 11 November, kept for 14 days";
    EXPECT_TRUE(backupsNaming(backups, std::vector{CustomerId{12345}}, now().local()).empty());
    EXPECT_TRUE(backupsNaming(backups, std::span{&m_customer, 1}, now().local(), [](double) { return false; })
                    .empty())
        << "stopped before the first";
}

// A column that is added must be thought of.
TEST_F(ForgettingTest, EveryTextOfTheShopIsKnownToNameNobodyOrIsForgotten) {
    const std::set<std::string> ofTheShop{
        "blank_lot.received_on", "blank_lot.size", "bill_line.kind", "blank_style.care_agitation",
        "blank_style.care_bleach", "blank_style.care_tumble", "blank_style.coating",
        "blank_style.label_read_on", "blank_style.law_checked_by", "blank_style.name",
        "blank_style.not_prewashed_because", "blank_style.outline", "blank_style.stretch",
        "blank_style.supplier", "claim.answer", "claim.answered_on", "claim.fault", "claim.told_on",
        "closed_day.day", "decal.artwork", "decal.face", "decal.placement", "fair.first_day", "fair.last_day",
        "fair.name", "fair.note", "film.care_agitation", "film.care_bleach", "film.care_tumble",
        "film.finish", "film.follows", "film.peel", "film.pressure", "film.recipe_confirmed_by", "film.shade",
        "film.supplier", "film_not_for.fibre", "film_roll.made_on", "film_roll.printed_use_by",
        "film_roll.received_on", "film_roll.state", "garment.size",
        // A law may oblige the shop to keep invoices as they were made:
        // docs/decisions/invoices.md. They say no wording of a decal.
        "invoice.currency_code", "invoice.currency_sign", "invoice.customer_address", "invoice.customer_name",
        "invoice.handed_over_on", "invoice.kind", "invoice.made_on", "invoice.reason", "invoice.series",
        "invoice.shop_address", "invoice.shop_lines", "invoice.shop_name", "invoice.tax_kind",
        "invoice.tax_name", "invoice.tax_number", "invoice.tax_rounding", "invoice.taxed_by",
        "invoice_row.words", "lot_move.reason", "money_move.how", "money_move.kind", "other_hours.day",
        // What a web shop calls its things and columns: nothing of who bought there.
        "order_file.headings", "order_file.shop", "order_file_column.heading", "order_file_column.meaning",
        "order_file_item.item", "order_reference.shop", "press.name", "press_check.by_whom",
        "press_step.step_key", "roll_move.kind", "roll_move.reason", "setting.name", "setting.value",
        "shop_order.promised", "shop_order.state", "shop_order.taken_at_place", "shop_order.tax_kind",
        "shop_order.tax_rounding", "shop_order.taxed_by", "shop_order.valid_until", "storage_place.name",
        "style_colour.name", "style_fibre.fibre", "style_obstacle.obstacle", "style_obstacle.way",
        "style_size.size", "test_strip.note", "till_count.day", "waiver.rule", "wash_load.detergent",
        "wash_load.drying"};
    std::set<std::string> personal;
    for (const PersonalColumn& each : kPersonalColumns)
        personal.insert(std::string{each.table} + "." + std::string{each.column});
    std::set<std::string> seen;
    Query columns{
        connection(),
        "SELECT tables.name || '.' || columns.name FROM pragma_table_list AS tables, "
        "pragma_table_info(tables.name) AS columns WHERE tables.schema = 'main' AND tables.type = "
        "'table' AND columns.type = 'TEXT' AND tables.name NOT LIKE 'sqlite%' AND tables.name NOT "
        "LIKE 'journal%' AND tables.name NOT LIKE 'seat%' AND tables.name NOT LIKE '%\\_card' ESCAPE '\\'"};
    while (columns.step()) {
        seen.insert(columns.text(0));
        EXPECT_NE(ofTheShop.contains(columns.text(0)), personal.contains(columns.text(0)))
            << columns.text(0) << ": may it hold a customer’s name? See db/forgetting/personal_columns.h";
    }
    for (const std::string& column : personal)
        EXPECT_TRUE(seen.contains(column)) << column;
}

} // namespace
} // namespace holdfast::db
