// SPDX-License-Identifier: GPL-3.0-or-later
// The form that takes the orders of a web shop's file: what it refuses before anything is read.
#include "app/slips/orders_file.h"
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

} // namespace holdfast::app::test
