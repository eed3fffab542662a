// SPDX-License-Identifier: GPL-3.0-or-later
// What is typed into the order book's search and the finder: days, words such as "owing", phone numbers in
// any form, a wrong letter; and where it is said to be when it is not among the orders shown.

#include "app/places/order_book/order_book_place.h"

#include "app/desk/search_words.h"
#include "app/shell/finder_entries.h"
#include "app/widgets/choice.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/field.h"
#include "tests/app/shop_fixture.h"

#include <QListView>
#include <QTest>

#include <algorithm>

namespace holdfast::app::test {

namespace {

class SearchOfTheBook : public ShopFixture {
protected:
    void open() {
        m_place = std::make_unique<OrderBookPlace>(desk());
        m_place->headerTools();
        showWindow(*m_place, {1270, 708});
        m_place->opened();
    }
    void TearDown() override { m_place.reset(); }

    db::OrderTaken takeFor(const std::string& name, int days, const std::string& phone = "") {
        auto order = anOrder({aGarment(m_usual)}, name);
        order.customerPhone = phone;
        order.promised = LocalTime{now().today()} + Days{days} + 15h;
        return valueOf(db::takeOrder(file(), order, now()));
    }
    void pay(const db::OrderTaken& order) {
        ASSERT_TRUE(db::moveMoney(file(), order.id, MoneyKind::Payment,
                                  desk().shop()->facts.orders.at(order.id).total, PaidHow::Cash)
                        .ok());
    }

    // The customers found, sorted.
    std::string found(const char* typed) {
        auto* search = m_place->findChild<Field*>(QStringLiteral("orderSearch"));
        search->setFocus();
        search->selectAll();
        typeText(QString::fromUtf8(typed));
        const auto* model = m_place->findChild<QListView*>(QStringLiteral("orderList"))->model();
        QStringList names;
        for (int row = 0; row < model->rowCount(); ++row)
            names.append(model->index(row, 0)
                             .data(Qt::AccessibleTextRole)
                             .toString()
                             .section(QStringLiteral(", "), 1, 1));
        names.sort();
        return names.join(u' ').toStdString();
    }
    std::string emptyWords() { return m_place->findChild<EmptyState*>()->accessibleName().toStdString(); }
    void hit(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(m_place->window()->focusWidget(), key, modifiers);
    }
    std::string inFinder(const char* typed) {
        QStringList titles;
        for (const FinderEntry& entry : findEntries(desk(), QString::fromUtf8(typed)))
            if (entry.kind == FinderKind::Order)
                titles.append(entry.title.section(QStringLiteral("  "), 1));
        titles.sort();
        return titles.join(u' ').toStdString();
    }

    UsualShop m_usual = stockUsualShop();
    std::unique_ptr<OrderBookPlace> m_place;
};

// Today is Wed 25 Nov 2026.
TEST_F(SearchOfTheBook, DaysAndWordsFindWhatTheyMean) {
    takeFor("Anna", 1);
    pay(takeFor("Bree", 2));
    takeFor("Cleo", 12, "07700 900421");
    time().pass(24h * 3);
    open();
    struct Typed {
        const char* typed;
        const char* found;
    };
    // Sat 28 Nov: Anna was promised for Thu 26, Bree for Fri 27, Cleo for Mon 7 Dec; all were taken on
    // Wed 25.
    for (const auto& [typed, expected] : std::vector<Typed>{{"26 nov", "Anna"},
                                                            {"2026-11-26", "Anna"},
                                                            {"thu 26 nov", "Anna"},
                                                            {"26 November 2026", "Anna"},
                                                            {"26/11", "Anna"},
                                                            {"26 nov 2025", ""},
                                                            {"thursday", "Anna"},
                                                            {"25 nov", "Anna Bree Cleo"},
                                                            {"Wednesday", "Anna Bree Cleo"},
                                                            {"yesterday", "Bree"},
                                                            {"today", ""},
                                                            {"next week", ""},
                                                            {"this week", "Anna Bree Cleo"},
                                                            {"7 dec", "Cleo"},
                                                            {"owing", "Anna Cleo"},
                                                            {"owing anna", "Anna"},
                                                            {"ann owing", "Anna"},
                                                            {"bree owing", ""},
                                                            {"late", "Anna Bree"},
                                                            {"late owing", "Anna"},
                                                            {"owing this week heron", "Anna Cleo"},
                                                            {"owing 07700900421", "Cleo"},
                                                            {"+447700900421 this week", "Cleo"},
                                                            {"unconfirmed", ""}}) {
        EXPECT_EQ(found(typed), expected) << typed;
        EXPECT_EQ(inFinder(typed), expected) << typed << " in the finder";
    }
}

TEST_F(SearchOfTheBook, WordsThatOnlyLookLikeADayAreWords) {
    const auto meant = [&](const char* typed) {
        const auto search = searchIn(QString::fromUtf8(typed), now());
        std::string text = search.words;
        for (const auto& each : search.meant)
            text += " [" + each.words + "]";
        return text;
    };
    for (const char* typed :
         {"26 marbles", "12 11", "11", "2611", "07700-900421", "mon", "thu", "sunday's best", "owings",
          "week", "this", "418-b", "latent", "26", "nov", "26-"})
        EXPECT_EQ(meant(typed), typed);
    EXPECT_EQ(meant("3/4 sleeve"), "sleeve [3/4]") << "and found as words, too";
    EXPECT_EQ(meant(" Anna  OWING\tthis   WEEK 26. Nov "), "anna [owing] [this week] [26. nov]");
    EXPECT_EQ(meant("32 nov"), "32 nov");
    EXPECT_EQ(meant(""), "");
}

TEST_F(SearchOfTheBook, TheDaysOfAWeekBeginOnMonday) {
    const auto days = [&](const char* typed) {
        const auto search = searchIn(QString::fromUtf8(typed), now());
        std::string text;
        for (const auto& each : search.meant)
            for (const DaySpan& span : each.meaning.days)
                text += (text.empty() ? "" : " ") + isoDate(span.first) +
                        (span.first == span.last ? "" : "/" + isoDate(span.last));
        return text;
    };
    EXPECT_EQ(days("this week"), "2026-11-23/2026-11-29");
    EXPECT_EQ(days("next week"), "2026-11-30/2026-12-06");
    EXPECT_EQ(days("last week"), "2026-11-16/2026-11-22");
    EXPECT_EQ(days("wednesday"), "2026-11-25") << "today";
    EXPECT_EQ(days("thursday"), "2026-11-19 2026-11-26");
    EXPECT_EQ(days("monday"), "2026-11-23 2026-11-30");
    EXPECT_EQ(days("sunday"), "2026-11-22 2026-11-29");
    EXPECT_EQ(days("tomorrow"), "2026-11-26");
    EXPECT_EQ(days("5 jan"), "2027-01-05") << "the nearest";
}

TEST_F(SearchOfTheBook, NothingFoundSaysWhereItIs) {
    const auto over = takeFor("Sandling", 2);
    cut(garmentsOf(over.id).front(), m_usual.roll);
    press(garmentsOf(over.id).front());
    ASSERT_TRUE(db::handOver(file(), over.id, now()).ok());
    takeFor("Anna", 2);
    open();
    EXPECT_EQ(found("sandling"), "");
    EXPECT_EQ(emptyWords(), "No open order matches “sandling”. One that was handed over does.");
    hit(Qt::Key_L, Qt::ControlModifier);
    EXPECT_EQ(m_place->findChild<QListView*>(QStringLiteral("orderList"))->model()->rowCount(), 1);
    m_place->findChild<Choice*>(QStringLiteral("orderFilter"))->setChosen(0);
    ASSERT_TRUE(db::cancelOrder(file(), takeFor("Sandling", 2).id, "changed their mind").ok());
    EXPECT_EQ(found("sandlign"), "") << "with a wrong letter";
    EXPECT_EQ(emptyWords(), "No open order matches “sandlign”. 2 under All do.");
    hit(Qt::Key_Return);
    EXPECT_EQ(m_place->findChild<QListView*>(QStringLiteral("orderList"))->model()->rowCount(), 2);
}

TEST_F(SearchOfTheBook, ALongSearchIsShortenedWithASign) {
    takeFor("Anna", 2);
    open();
    const std::string sixty(60, 'x');
    EXPECT_EQ(found(sixty.c_str()), "");
    EXPECT_EQ(emptyWords(), "No order matches “" + sixty + "”.");
    EXPECT_EQ(found((sixty + "y").c_str()), "");
    EXPECT_EQ(emptyWords(), "No order matches “" + std::string(59, 'x') + "…”.");
}

// What has a wrong letter is offered last.
TEST_F(SearchOfTheBook, TheFinderPutsAWrongLetterAfterAllElse) {
    takeFor("Shettings", 2);
    const auto entries = findEntries(desk(), QStringLiteral("settings"));
    ASSERT_GE(entries.size(), 2U);
    EXPECT_EQ(entries.front().title, QStringLiteral("Settings"));
    EXPECT_EQ(entries.back().kind, FinderKind::Customer);
    EXPECT_EQ(entries[entries.size() - 2].kind, FinderKind::Order);
    EXPECT_TRUE(entries[entries.size() - 2].title.contains(QStringLiteral("Shettings")));
}

} // namespace
} // namespace holdfast::app::test
