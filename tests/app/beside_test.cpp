// SPDX-License-Identifier: GPL-3.0-or-later
// Work beside the window: what is heard of it, and that nothing is once it was dropped.
#include "app/desk/background_work.h"
#include "app/desk/beside.h"

#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

#include <atomic>
#include <chrono>
#include <memory>
#include <thread>
#include <vector>

namespace holdfast::app::test {

namespace {

constexpr int kBesidePatience = 20'000; // milliseconds, for a busy machine

// Goes on until it is asked to stop.
const auto untilStopped = [](auto& reporter) {
    while (!reporter.shouldStop())
        std::this_thread::yield();
    return 1;
};

TEST(WorkBeside, RunsOnAThreadOfItsOwnAndItsAnswerIsHeardOnOurs) {
    Beside<std::thread::id> beside;
    std::thread::id worked;
    std::thread::id heard;
    beside.begin([](auto&) { return std::this_thread::get_id(); },
                 [&](std::thread::id id) {
                     worked = id;
                     heard = std::this_thread::get_id();
                 });
    EXPECT_TRUE(beside.isUnderWay());
    ASSERT_TRUE(QTest::qWaitFor([&] { return !beside.isUnderWay(); }, kBesidePatience));
    EXPECT_EQ(heard, std::this_thread::get_id());
    EXPECT_NE(worked, heard);
}

TEST(WorkBeside, StoppedItStillAnswersDroppedItDoesNot) {
    Beside<int> beside;
    int answers = 0;
    beside.begin(untilStopped, [&](int answer) { answers += answer; });
    beside.stop();
    ASSERT_TRUE(QTest::qWaitFor([&] { return answers == 1; }, kBesidePatience));
    beside.begin(untilStopped, [&](int answer) { answers += answer; });
    beside.drop();
    EXPECT_FALSE(beside.isUnderWay());
    QCoreApplication::processEvents();
    EXPECT_EQ(answers, 1);
}

TEST(WorkBeside, AnAnswerThatWaitsToBeHeardIsDroppedToo) {
    Beside<int> beside;
    std::atomic<bool> isWorkedOff = false;
    bool isHeard = false;
    beside.begin(
        [&](auto&) {
            isWorkedOff = true;
            return 1;
        },
        [&](int) { isHeard = true; });
    while (!isWorkedOff)
        std::this_thread::yield();
    beside.drop();
    QTest::qWait(1);
    EXPECT_FALSE(isHeard);
}

TEST(WorkBeside, NewWorkTakesThePlaceOfTheOld) {
    Beside<int> beside;
    std::vector<int> answers;
    const auto hear = [&](int answer) { answers.push_back(answer); };
    beside.begin(untilStopped, hear);
    beside.begin([](auto&) { return 2; }, hear);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !beside.isUnderWay(); }, kBesidePatience));
    EXPECT_EQ(answers, std::vector<int>{2});
}

TEST(WorkBeside, TheLatestNewsIsHeardBeforeTheAnswer) {
    Beside<int, int> beside;
    std::vector<int> heard;
    beside.begin(
        [](auto& reporter) {
            for (int step = 1; step <= 1'000; ++step)
                reporter.report(step);
            return -1;
        },
        [&](int answer) { heard.push_back(answer); }, [&](int news) { heard.push_back(news); });
    ASSERT_TRUE(QTest::qWaitFor([&] { return !beside.isUnderWay(); }, kBesidePatience));
    ASSERT_GE(heard.size(), 2U);
    EXPECT_EQ(heard.back(), -1);
    EXPECT_EQ(heard[heard.size() - 2], 1'000);
    EXPECT_TRUE(std::ranges::is_sorted(heard.begin(), heard.end() - 1));
}

TEST(WorkBeside, WhoHearsMayBeginOtherWorkOrDeleteIt) {
    auto beside = std::make_unique<Beside<int>>();
    int answer = 0;
    beside->begin([](auto&) { return 1; },
                  [&](int) { beside->begin([](auto&) { return 2; }, [&](int second) { answer = second; }); });
    ASSERT_TRUE(QTest::qWaitFor([&] { return answer == 2; }, kBesidePatience));
    beside->begin([](auto&) { return 3; }, [&](int) { beside.reset(); });
    ASSERT_TRUE(QTest::qWaitFor([&] { return !beside; }, kBesidePatience));
    beside = std::make_unique<Beside<int>>();
    bool isAnswered = false;
    beside->begin(
        [](auto& reporter) {
            reporter.report(0.5);
            return 4;
        },
        [&](int) { isAnswered = true; }, [&](double) { beside.reset(); });
    ASSERT_TRUE(QTest::qWaitFor([&] { return !beside; }, kBesidePatience));
    QCoreApplication::processEvents();
    EXPECT_FALSE(isAnswered);
}

TEST(WorkBeside, WhatIsToBeDoneInTheWindowComesBeforeWhatIsTold) {
    BackgroundWork work;
    QStringList events;
    QObject::connect(&work, &BackgroundWork::succeeded, [&](const QString& words) { events << words; });
    QObject::connect(&work, &BackgroundWork::failed, [&](const QString& reason) { events << reason; });
    const auto note = [&] { events << QStringLiteral("done"); };
    ASSERT_TRUE(
        work.begin({}, [&](const auto&) -> BackgroundWork::Outcome { return {std::string("well"), note}; }));
    EXPECT_FALSE(work.begin({}, [](const auto&) { return std::string("refused"); })) << "one at a time";
    ASSERT_TRUE(QTest::qWaitFor([&] { return !work.isBusy(); }, kBesidePatience));
    EXPECT_EQ(events, QStringList({QStringLiteral("done"), QStringLiteral("well")}));
}

} // namespace
} // namespace holdfast::app::test
