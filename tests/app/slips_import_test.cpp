// SPDX-License-Identifier: GPL-3.0-or-later
// The logger's file: read beside the window, shown before it is written, and stopped when asked.
#include "tests/app/slips_fixture.h"

#include "app/desk/formats.h"
#include "app/slips/import_readings_slip.h"
#include "app/slips/quiet_wait.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/choice.h"

#include "db/actions/film_actions.h"

#include <QElapsedTimer>
#include <QFile>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>

#include <iostream>

namespace holdfast::app::test {
namespace {

class ImportSlip : public SlipsFixture {
protected:
    ImportSlip()
        : place(addPlace("Film drawer")) {}

    QString fileWith(const QByteArray& content) {
        const QString path = m_folder.filePath(QStringLiteral("Lüftung 11.csv"));
        QFile file(path);
        if (!file.open(QIODevice::WriteOnly))
            stopBecause("the logger's file cannot be written");
        file.write(content);
        return path;
    }

    // A reading each five minutes, the last one a day ago.
    QByteArray log(int count) {
        QByteArray lines("time,temperature,humidity\n");
        Instant at = now().instant - 24h - std::chrono::minutes{5} * count;
        for (int line = 0; line < count; ++line, at += 5min)
            lines += QByteArray::fromStdString(isoInstant(at)) + ",19.5,44\n";
        return lines;
    }

    void read(const QString& path) {
        SlipTarget matter;
        matter.place = place;
        open(SlipName::ImportReadings, matter);
        typeText(path);
        press(Qt::Key_Return);
        waitForFile();
    }

    void write() {
        press(Qt::Key_Return);
        waitForFile();
    }

    void waitForFile() {
        auto& slip = static_cast<ImportReadingsSlip&>(this->slip());
        ASSERT_TRUE(QTest::qWaitFor([&] { return !slip.isBusy(); }, 20'000));
    }

    std::size_t readings() { return desk().shop()->climate.at(place)->size(); }

    PlaceId place;

private:
    QTemporaryDir m_folder;
};

TEST_F(ImportSlip, WhatWasFoundIsShownAndWrittenByASecondEnter) {
    read(fileWith(log(300) + "nonsense,19,44\n"));
    EXPECT_EQ(readings(), 1U) << "nothing is written yet";
    auto* found = find<Banner>(QStringLiteral("foundReadings"));
    ASSERT_TRUE(found->isVisible());
    EXPECT_TRUE(found->accessibleName().contains(QStringLiteral("300 readings")));
    EXPECT_EQ(find<Button>(QStringLiteral("slipAction"))->text(), QStringLiteral("Import 300 readings"));
    const auto count = entries();
    write();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(readings(), 301U);
    EXPECT_EQ(entries(), count + 1);
}

TEST_F(ImportSlip, WhatNothingInTheFileShowsIsAskedBeforeAnythingIsRead) {
    read(fileWith("Time,Temp,RH\n02/03/2026 09:00,19,44\n02/03/2026 09:30,20,45\n"));
    auto* order = find<Choice>(QStringLiteral("dateOrder"));
    ASSERT_TRUE(order->isVisible());
    EXPECT_EQ(order->chosenAt(), -1);
    EXPECT_EQ(order->items().at(0).text, date(localDate(2026, 3, 2)));
    EXPECT_EQ(order->items().at(1).text, date(localDate(2026, 2, 3)));
    EXPECT_FALSE(find<Banner>(QStringLiteral("foundReadings"))->isVisible());
    submit();
    EXPECT_FALSE(errorAt("dateOrder").isEmpty()) << "it is not read without an answer";
    press(Qt::Key_1);
    press(Qt::Key_2); // while it is read with the day first
    waitForFile();
    EXPECT_TRUE(find<Banner>(QStringLiteral("foundReadings"))
                    ->accessibleName()
                    .contains(date(localDate(2026, 2, 3))));
    write();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(dateOf(now().toLocal(desk().shop()->climate.at(place)->front().at)), localDate(2026, 2, 3));
}

TEST_F(ImportSlip, TheMonthFirstIsSeenByTheEvenStepAndCanBeChosenOtherwise) {
    read(fileWith("Time,Temp,RH\n03/01/2026 00:00,19,44\n03/01/2026 12:00,20,45\n03/02/2026 00:00,20,45\n"
                  "03/02/2026 12:00,20,45\n"));
    auto* order = find<Choice>(QStringLiteral("dateOrder"));
    ASSERT_TRUE(order->isVisible());
    EXPECT_EQ(order->chosenAt(), 1);
    auto* found = find<Banner>(QStringLiteral("foundReadings"));
    EXPECT_TRUE(found->accessibleName().contains(date(localDate(2026, 3, 2))));
    order->takeFocus();
    press(Qt::Key_1);
    waitForFile();
    EXPECT_TRUE(found->accessibleName().contains(date(localDate(2026, 2, 3))));
    read(fileWith(log(30)));
    EXPECT_FALSE(find<Choice>(QStringLiteral("dateOrder"))->isVisible());
}

TEST_F(ImportSlip, ReadingsThatWereThereAreNotAddedTwice) {
    const QString path = fileWith(log(50));
    read(path);
    write();
    read(path);
    write();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(readings(), 51U);
    ASSERT_EQ(said.size(), 1U);
    EXPECT_TRUE(said[0].contains(QStringLiteral("50 were there already"))) << said[0].toStdString();
}

TEST_F(ImportSlip, FilesThatAreNoLogAreRefusedAtTheirField) {
    for (const QByteArray& content : {QByteArray(), QByteArray("time,temperature,humidity\n"),
                                      QByteArray("a,b\nc,d\n"), QByteArray("\x00\x01\xff\xfe", 4)}) {
        read(fileWith(content));
        EXPECT_FALSE(errorAt("path").isEmpty()) << content.toStdString();
        EXPECT_FALSE(isFinished());
    }
    read(QStringLiteral("/nowhere/at/all.csv"));
    EXPECT_TRUE(errorAt("path").contains(QStringLiteral("no file"))) << errorAt("path").toStdString();
    read({});
    EXPECT_FALSE(errorAt("path").isEmpty());
    EXPECT_EQ(readings(), 1U);
}

TEST_F(ImportSlip, AnotherPathForgetsWhatWasFound) {
    read(fileWith(log(5)));
    type(QStringLiteral("path"), QStringLiteral("/another"));
    EXPECT_EQ(find<Button>(QStringLiteral("slipAction"))->text(), QStringLiteral("Read the file"));
    EXPECT_FALSE(find<Banner>(QStringLiteral("foundReadings"))->isVisible());
}

TEST_F(ImportSlip, SlipThatIsLeftWhileItReadsStopsReading) {
    const QString path = fileWith(log(200'000));
    SlipTarget matter;
    matter.place = place;
    open(SlipName::ImportReadings, matter);
    typeText(path);
    press(Qt::Key_Return);
    EXPECT_TRUE(static_cast<ImportReadingsSlip&>(slip()).isBusy());
    open(SlipName::ImportReadings, matter); // the first one is gone, its thread with it
    EXPECT_FALSE(static_cast<ImportReadingsSlip&>(slip()).isBusy());
    QTest::qWait(50);
    EXPECT_EQ(readings(), 1U);
}

TEST_F(ImportSlip, StoppedWhileItWritesLeavesNothingBehind) {
    read(fileWith(log(60'000)));
    const auto count = entries();
    // Pressed while the readings are written: it waits until the import lets events through.
    QTimer::singleShot(0, qApp, [this] { find<Button>(QStringLiteral("stopImport"))->click(); });
    submit();
    waitForFile();
    EXPECT_FALSE(isFinished());
    EXPECT_EQ(entries(), count);
    EXPECT_EQ(readings(), 1U);
    EXPECT_FALSE(slip().refusal().isEmpty());
    submit(); // and again, to the end
    waitForFile();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(readings(), 60'001U);
}

TEST_F(ImportSlip, TheWindowIsPaintedAndTheWalkGoesOnWhileItWrites) {
    read(fileWith(log(120'000)));
    const auto& before = desk().shop()->climate;
    ASSERT_EQ(before.at(place)->size(), 1U);
    int breaths = 0;
    qint64 longest = 0;
    QElapsedTimer sinceLast;
    QTimer breath;
    QObject::connect(&breath, &QTimer::timeout, [&] {
        longest = std::max(longest, sinceLast.restart());
        ++breaths;
    });
    sinceLast.start();
    breath.start(5);
    submit();
    waitForFile();
    EXPECT_TRUE(isFinished());
    EXPECT_GT(breaths, 10);
    std::cout << "120,000 readings written; the window was silent for at most " << longest << " ms\n";
    EXPECT_EQ(readings(), 120'001U);
}

TEST_F(ImportSlip, WhatIsDoneAfterwardsComesLaterInTheHistory) {
    read(fileWith(log(300)));
    write();
    ASSERT_TRUE(isFinished());
    const PlaceId other = valueOf(db::addPlace(file(), "Cellar"));
    EXPECT_TRUE(other.isSet());
    const auto recent = file().recent(2);
    ASSERT_EQ(recent.size(), 2U);
    EXPECT_EQ(recent[0].title, "Storage place Cellar set up");
    EXPECT_EQ(recent[1].title, "300 readings of Film drawer read in");
    // And taken back as any other action.
    valueOf(file().undo(recent[1].id));
    EXPECT_EQ(readings(), 1U);
}

TEST(QuietWaiting, HearsNothingButStop) {
    QWidget window;
    auto* elsewhere = new Button(QStringLiteral("Elsewhere"), Button::Kind::Plain, &window);
    auto* stop = new Button(QStringLiteral("Stop"), Button::Kind::Plain, &window);
    stop->move(0, 60);
    showWindow(window, {200, 120});
    int pressedElsewhere = 0;
    QObject::connect(elsewhere, &QAbstractButton::clicked, [&] { ++pressedElsewhere; });
    QuietWait wait(stop);
    int stops = 0;
    QObject::connect(stop, &QAbstractButton::clicked, [&] { ++stops; });
    QObject::connect(&wait, &QuietWait::stopAsked, [&] { ++stops; });
    elsewhere->setFocus();
    QTest::keyClick(elsewhere, Qt::Key_Space);
    QTest::mouseClick(elsewhere, Qt::LeftButton);
    EXPECT_EQ(pressedElsewhere, 0);
    EXPECT_EQ(stops, 0);
    QTest::mouseClick(stop, Qt::LeftButton);
    EXPECT_EQ(stops, 1);
    QTest::keyClick(elsewhere, Qt::Key_Escape);
    EXPECT_EQ(stops, 2);
}

} // namespace
} // namespace holdfast::app::test
