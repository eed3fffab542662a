// SPDX-License-Identifier: GPL-3.0-or-later
// report use-first: a use-by by warmth is an estimate with its range, a printed one a fact, as another
// program reads them.

#include "db/actions/film_actions.h"
#include "tests/app/report_fixture.h"

#include <QJsonArray>

namespace holdfast::app {
namespace {

class UseFirst : public test::ReportFixture {};

TEST_F(UseFirst, SaysWhichDaysAreEstimatesAndTheirRange) {
    using namespace literals;
    const auto usual = stockUsualShop();
    db::RollReceived printed;
    printed.film = usual.film;
    printed.width = 500_mm;
    printed.length = 4000_mm;
    printed.receivedOn = now().today();
    printed.printedUseBy = now().today() + Days{40};
    printed.place = usual.place;
    test::valueOf(db::receiveRoll(file(), printed, now()));

    const auto whole = json(ReportName::UseFirst);
    const QJsonArray rolls = whole.value(QStringLiteral("rolls")).toArray();
    ASSERT_EQ(rolls.size(), 2);
    const QJsonObject fact = rolls[0].toObject();
    EXPECT_EQ(fact.value(QStringLiteral("useBy")).toString(), QStringLiteral("2027-01-04"));
    EXPECT_FALSE(fact.value(QStringLiteral("useByIsEstimate")).toBool(true));
    EXPECT_TRUE(fact.value(QStringLiteral("useByEarliest")).isNull());
    EXPECT_TRUE(fact.value(QStringLiteral("useByLatest")).isNull());
    const QJsonObject estimate = rolls[1].toObject();
    EXPECT_TRUE(estimate.value(QStringLiteral("useByIsEstimate")).toBool());
    const QString day = estimate.value(QStringLiteral("useBy")).toString();
    EXPECT_LT(estimate.value(QStringLiteral("useByEarliest")).toString(), day);
    EXPECT_GT(estimate.value(QStringLiteral("useByLatest")).toString(), day);

    const std::string said = text(ReportName::UseFirst);
    EXPECT_NE(said.find("4 Jan 2027  "), std::string::npos) << said;
    EXPECT_NE(said.find(" (estimate "), std::string::npos) << said;
}

} // namespace
} // namespace holdfast::app
