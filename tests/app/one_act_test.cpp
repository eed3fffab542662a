// SPDX-License-Identifier: GPL-3.0-or-later
// One thing done is one entry and one undo, also where a form makes a storage place or a colour on the way.
#include "tests/app/slips_fixture.h"

#include "app/slips/import_readings_slip.h"
#include "app/slips/option_list.h"
#include "app/widgets/field.h"
#include "db/tables/facts.h"

#include <QFile>
#include <QTemporaryDir>
#include <QTest>

namespace holdfast::app::test {
namespace {

class OneAct : public SlipsFixture {
protected:
    const ShopFacts& facts() { return desk().shop()->facts; }

    // What was done since is one entry, and undoing it leaves nothing of it behind.
    void expectOneEntrySince(std::size_t before, std::size_t places) {
        ASSERT_TRUE(isFinished()) << slip().refusal().toStdString();
        EXPECT_EQ(entries(), before + 1);
        ASSERT_TRUE(file().undo(file().recent(1).front().id).ok());
        EXPECT_EQ(facts().places.size(), places);
    }
};

TEST_F(OneAct, AReadingOfAPlaceThatIsNew) {
    const auto usual = stockUsualShop();
    const auto before = entries();
    open(SlipName::RecordReading, {});
    choose(QStringLiteral("place"), static_cast<int>(facts().places.size()));
    type(QStringLiteral("placeName"), QStringLiteral("Cellar"));
    type(QStringLiteral("temperature"), QStringLiteral("17"));
    type(QStringLiteral("humidity"), QStringLiteral("44"));
    submit();
    expectOneEntrySince(before, 1);
    EXPECT_TRUE(usual.place.isSet());
}

TEST_F(OneAct, ARollMovedToAPlaceThatIsNew) {
    const auto usual = stockUsualShop();
    const auto before = entries();
    SlipTarget matter;
    matter.roll = usual.roll;
    open(SlipName::RollMove, matter);
    auto* list = slip().findChild<OptionList*>();
    ASSERT_NE(list, nullptr);
    list->setFocus();
    press(Qt::Key_End);
    ASSERT_TRUE(slip().form().findChild<Field*>(QStringLiteral("placeName"))->isVisible());
    type(QStringLiteral("placeName"), QStringLiteral("Cellar"));
    submit();
    expectOneEntrySince(before, 1);
    EXPECT_EQ(facts().rolls.at(usual.roll).placeNow(), usual.place);
}

TEST_F(OneAct, ARollReceivedIntoAPlaceThatIsNew) {
    stockUsualShop();
    const auto before = entries();
    const auto rolls = facts().rolls.size();
    open(SlipName::ReceiveRoll, {});
    choose(QStringLiteral("film"), 0);
    type(QStringLiteral("length"), QStringLiteral("5"));
    choose(QStringLiteral("place"), static_cast<int>(facts().places.size()));
    type(QStringLiteral("placeName"), QStringLiteral("Cellar"));
    submit();
    expectOneEntrySince(before, 1);
    EXPECT_EQ(facts().rolls.size(), rolls);
}

TEST_F(OneAct, AClimateLogOfAPlaceThatIsNew) {
    stockUsualShop();
    const QTemporaryDir folder;
    QFile log(folder.filePath(QStringLiteral("log.csv")));
    ASSERT_TRUE(log.open(QIODevice::WriteOnly));
    log.write("time,temperature,humidity\n2026-01-05T08:00:00Z,19.5,44\n2026-01-05T09:00:00Z,19.6,44\n");
    log.close();
    const auto before = entries();
    open(SlipName::ImportReadings, {});
    choose(QStringLiteral("place"), static_cast<int>(facts().places.size()));
    type(QStringLiteral("placeName"), QStringLiteral("Cellar"));
    type(QStringLiteral("path"), log.fileName());
    submit();
    auto& importing = static_cast<ImportReadingsSlip&>(slip());
    ASSERT_TRUE(QTest::qWaitFor([&] { return !importing.isBusy(); }, 20'000));
    EXPECT_EQ(facts().places.size(), 1U) << "found and shown, not written yet";
    submit();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !importing.isBusy(); }, 20'000));
    expectOneEntrySince(before, 1);
}

} // namespace
} // namespace holdfast::app::test
