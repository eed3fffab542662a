// SPDX-License-Identifier: GPL-3.0-or-later
// The form that takes the orders of a web shop's file: from the file to the orders, and what it refuses.
#include "app/slips/order_lettering.h"
#include "app/slips/orders_file.h"
#include "app/slips/orders_file_slip.h"
#include "app/widgets/banner.h"
#include "tests/app/slips_fixture.h"

#include <QTemporaryDir>
#include <QTest>

#include <fstream>

namespace holdfast::app::test {

class OrdersFileSlips : public SlipsFixture {
protected:
    std::filesystem::path write(const std::string& text) {
        const std::filesystem::path path = m_folder.filePath(QStringLiteral("orders.csv")).toStdString();
        std::ofstream{path, std::ios::binary} << text;
        return path;
    }

    void settle() {
        auto& form = static_cast<OrdersFileSlip&>(slip());
        ASSERT_TRUE(QTest::qWaitFor([&] { return !form.isBusy(); }, 120'000));
    }

    // Chooses the file, names the web shop, and says that its one item is like the garment.
    void showOrders(const std::filesystem::path& path, std::int64_t likeOrder) {
        ASSERT_TRUE(open(SlipName::OrdersFile));
        type(QStringLiteral("path"), QString::fromStdString(path.string()));
        submit();
        settle();
        type(QStringLiteral("shop"), QStringLiteral("Web shop"));
        submit(); // the items are asked for
        EXPECT_FALSE(errorAt("item0").isEmpty());
        type(QStringLiteral("item0"), QString::number(likeOrder));
        submit();
        settle();
    }

    std::int64_t count(const std::string& table) {
        return file().connection().number("SELECT COUNT(*) FROM " + table);
    }

    QTemporaryDir m_folder;
};

TEST_F(OrdersFileSlips, AFileThatIsNotThereIsSaidAtItsField) {
    ASSERT_TRUE(open(SlipName::OrdersFile));
    submit();
    EXPECT_FALSE(errorAt("path").isEmpty());
    type(QStringLiteral("path"), QStringLiteral("/no/such/orders.csv"));
    submit();
    EXPECT_TRUE(QTest::qWaitFor([&] { return errorAt("path").contains(QStringLiteral("no file")); }));
}

TEST_F(OrdersFileSlips, AFileThatWasChangedMeanwhileIsNotTaken) {
    const auto path = write("Order,Name\nW-1,Juno\n");
    const auto text = orderFileText(path);
    ASSERT_TRUE(text.ok());
    EXPECT_TRUE(requireUnchanged(path, *text).ok());
    write("Order,Name\nW-1,Wren\n");
    const auto changed = requireUnchanged(path, *text);
    ASSERT_FALSE(changed.ok());
    EXPECT_EQ(changed.error().field, "path");
}

TEST_F(OrdersFileSlips, FromTheFileToOrdersInOneActionAndASecondTimeAtOnce) {
    const auto usual = stockUsualShop();
    const auto like = takeOrder({aGarment(usual)});
    const auto path =
        write("Order,Customer,Product,Size\nW-1,Juno Ash,Heron tee,M\nW-2,Wren Ash,Heron tee,L\n");
    showOrders(path, like.number);
    EXPECT_TRUE(find<Banner>(QStringLiteral("foundOrders"))->isVisible());
    EXPECT_EQ(count("order_reference"), 0) << "nothing is taken before it is seen";
    const auto before = entries();
    submit();
    settle();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(entries(), before + 1);
    EXPECT_EQ(count("order_reference"), 2);
    // The same headings again: read at once, and nothing of it is new.
    ASSERT_TRUE(open(SlipName::OrdersFile));
    type(QStringLiteral("path"), QString::fromStdString(path.string()));
    submit();
    settle();
    EXPECT_TRUE(find<Banner>(QStringLiteral("foundOrders"))->isVisible());
    submit();
    settle();
    EXPECT_EQ(count("order_reference"), 2);
    EXPECT_EQ(entries(), before + 1);
}

TEST_F(OrdersFileSlips, NothingIsTakenWhileALineIsWrong) {
    const auto usual = stockUsualShop();
    const auto like = takeOrder({aGarment(usual)});
    const auto before = entries();
    showOrders(write("Order,Customer,Product,Size\nW-1,Juno,Heron tee,M\nW-2,Wren,Heron tee,XXXXL\n"),
               like.number);
    submit(); // reads again, takes nothing
    settle();
    EXPECT_FALSE(isFinished());
    EXPECT_EQ(count("order_reference"), 0);
    EXPECT_EQ(entries(), before);
}

DecalDraft aWording() {
    DecalDraft like;
    like.content = Wording{"Robin", {}, {}};
    like.width = 200_mm;
    like.height = 60_mm;
    return like;
}

TEST(OrderLettering, AnotherWordingFitsWhereTheFirstWas) {
    for (const char* wording : {"Al", "Robin", "Maximilienne of the Marsh"}) {
        const auto decal = lettered(aWording(), {}, wording);
        ASSERT_TRUE(decal.ok()) << decal.error().message.english();
        EXPECT_LE(decal->width, 200_mm);
        EXPECT_LE(decal->height, 60_mm);
        EXPECT_EQ(std::get<Wording>(decal->content).text, wording);
        EXPECT_FALSE(std::get<Wording>(decal->content).outline.empty());
    }
}

TEST(OrderLettering, WhatCannotBeCutIsRefused) {
    EXPECT_FALSE(lettered(aWording(), {}, std::string(61, 'W')).ok());
    EXPECT_FALSE(lettered(aWording(), {}, std::string(1'000'000, 'W')).ok()) << "before it is drawn";
}

} // namespace holdfast::app::test
