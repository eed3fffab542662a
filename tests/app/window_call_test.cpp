// SPDX-License-Identifier: GPL-3.0-or-later
// Holdfast started a second time with the same shop brings the window that has it open to the front. The bus
// is one of the test's own; the second start is the program itself.

#include "app/shell/window_call.h"

#include "db/journal/shop.h"
#include "tests/app/private_bus.h"
#include "tests/app/shop_fixture.h"

#include <QDBusConnectionInterface>
#include <QProcess>
#include <QSignalSpy>
#include <QTest>

#include <filesystem>

namespace holdfast::app::test {

namespace {

constexpr int kCallPatience = 30'000; // ms; a start takes a fraction of a second

class WindowCallTest : public ShopFixture {
protected:
    void SetUp() override { ASSERT_TRUE(bus.isThere()) << "dbus-daemon did not start"; }

    QDBusConnection ours() { return bus.connect(QStringLiteral("holdfast-window-called")); }
    std::optional<QDBusConnection> theirs() { return bus.connect(QStringLiteral("holdfast-window-calling")); }

    // The program, as a file manager starts it.
    std::unique_ptr<QProcess> started(const std::filesystem::path& shop) {
        auto program = std::make_unique<QProcess>();
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
        environment.insert(QStringLiteral("DBUS_SESSION_BUS_ADDRESS"), bus.address());
        environment.insert(QStringLiteral("XDG_ACTIVATION_TOKEN"), QStringLiteral("a-click"));
        program->setProcessEnvironment(environment);
        program->start(QStringLiteral(HOLDFAST_PROGRAM), {QString::fromStdString(shop.string())});
        return program;
    }
    static bool hasEnded(QProcess& program) {
        return QTest::qWaitFor([&] { return program.state() == QProcess::NotRunning; }, kCallPatience);
    }
    QStringList shopsOnBus() {
        return theirs()->interface()->registeredServiceNames().value().filter(
            QStringLiteral("holdfast.shop."));
    }

    PrivateBus bus;
};

TEST_F(WindowCallTest, SecondStartCallsTheWindowAndEnds) {
    WindowCall call([this] { return std::optional{ours()}; });
    QSignalSpy called(&call, &WindowCall::called);
    call.answerFor(path());
    const auto second = started(path());
    ASSERT_TRUE(hasEnded(*second));
    EXPECT_EQ(second->exitCode(), 0) << second->readAllStandardError().toStdString();
    ASSERT_EQ(called.count(), 1);
    EXPECT_EQ(called.front().front().toString(), QStringLiteral("a-click"));
}

TEST_F(WindowCallTest, OtherNameOfTheSameFileIsTheSameShop) {
    const auto link = path().parent_path() / "link.holdfast";
    std::filesystem::create_symlink(path(), link);
    WindowCall call([this] { return std::optional{ours()}; });
    QSignalSpy called(&call, &WindowCall::called);
    call.answerFor(path());
    const auto second = started(link);
    ASSERT_TRUE(hasEnded(*second));
    EXPECT_EQ(called.count(), 1);
}

TEST_F(WindowCallTest, ProgramAnswersForTheShopThatItHasOpen) {
    const auto shop = path().parent_path() / "another.holdfast";
    ASSERT_TRUE(db::Shop::create(shop, time().clock().now).ok());
    const auto first = started(shop);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !shopsOnBus().isEmpty(); }, kCallPatience));
    const auto second = started(shop);
    ASSERT_TRUE(hasEnded(*second));
    EXPECT_EQ(second->exitCode(), 0) << second->readAllStandardError().toStdString();
    EXPECT_EQ(first->state(), QProcess::Running);
    first->terminate();
    ASSERT_TRUE(hasEnded(*first));
    EXPECT_TRUE(shopsOnBus().isEmpty());
}

TEST_F(WindowCallTest, AnswersForTheShopThatIsOpenNow) {
    const auto other = path().parent_path() / "other.holdfast";
    WindowCall call([this] { return std::optional{ours()}; });
    call.answerFor(path());
    const QStringList first = shopsOnBus();
    call.answerFor(other);
    const QStringList second = shopsOnBus();
    call.answerFor({});
    EXPECT_EQ(first.size(), 1);
    EXPECT_EQ(second.size(), 1);
    EXPECT_NE(first, second);
    EXPECT_TRUE(shopsOnBus().isEmpty());
}

TEST_F(WindowCallTest, NobodyAnswersWithoutAWindowOrWithoutABus) {
    EXPECT_FALSE(callWindowOf(path(), theirs(), {}));
    EXPECT_FALSE(callWindowOf(path(), std::nullopt, {}));
    WindowCall call([] { return std::optional<QDBusConnection>(); });
    call.answerFor(path());
}

} // namespace
} // namespace holdfast::app::test
