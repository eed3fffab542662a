// SPDX-License-Identifier: GPL-3.0-or-later
// report figures: what fairs earned and what to bring, as another program reads it.

#include "db/actions/fair_actions.h"
#include "db/actions/shop_actions.h"
#include "tests/app/report_fixture.h"

#include <QJsonArray>

namespace holdfast::app {
namespace {

class FairsReport : public test::ReportFixture {
protected:
    void addFair(int inDays, int days) {
        Fair fair;
        fair.name = "Saltmarsh Makers’ Market";
        fair.firstDay = now().today() + Days{inDays};
        fair.lastDay = fair.firstDay + Days{days - 1};
        fair.hours = {std::chrono::hours{10}, std::chrono::hours{15}};
        fair.stallCost = Money{1800};
        fair.otherCosts = Money{200};
        test::valueOf(db::addFair(file(), fair));
    }
};

TEST_F(FairsReport, SaysWhatIsLeftAndWhatToBring) {
    const auto usual = stockUsualShop();
    addFair(0, 1);
    addFair(7, 2);
    auto settings = desk().shop()->facts.settings;
    settings.fairName = "Saltmarsh Makers’ Market";
    test::valueOf(db::changeSettings(file(), settings));
    takeOrder({aGarment(usual), aGarment(usual)});
    time().pass(std::chrono::days{1});

    const QJsonObject figures = json(ReportName::Figures);
    const QJsonArray earned = figures[QStringLiteral("earned")].toArray();
    ASSERT_EQ(earned.size(), 1) << "the next is still to come";
    const QJsonObject fair = earned.at(0).toObject();
    EXPECT_TRUE(fair[QStringLiteral("isInTheList")].toBool());
    EXPECT_EQ(fair[QStringLiteral("firstDay")].toString().toStdString(), "2026-11-25");
    EXPECT_EQ(fair[QStringLiteral("garments")].toInt(), 2);
    EXPECT_EQ(fair[QStringLiteral("stallMinor")].toInt(), 2000);
    EXPECT_EQ(fair[QStringLiteral("minutesWorked")].toInt(), 300);
    const int left =
        fair[QStringLiteral("orderedMinor")].toInt() - fair[QStringLiteral("makingMinor")].toInt() - 2000;
    EXPECT_EQ(fair[QStringLiteral("leftMinor")].toInt(), left);
    EXPECT_NEAR(fair[QStringLiteral("leftAnHourMinor")].toDouble(), left / 5.0, 0.5);

    const QJsonObject bring = figures[QStringLiteral("bring")].toObject();
    EXPECT_EQ(bring[QStringLiteral("firstDay")].toString().toStdString(), "2026-12-02");
    EXPECT_EQ(bring[QStringLiteral("days")].toInt(), 2);
    EXPECT_EQ(bring[QStringLiteral("fairDaysKnown")].toInt(), 1);
    EXPECT_TRUE(bring[QStringLiteral("isFromFew")].toBool());
    ASSERT_EQ(bring[QStringLiteral("blanks")].toArray().size(), 1);
    const QJsonObject tee = bring[QStringLiteral("blanks")].toArray().at(0).toObject();
    EXPECT_EQ(tee[QStringLiteral("blank")].toString().toStdString(), "Tee, M, Moss");
    EXPECT_EQ(tee[QStringLiteral("askedFor")].toDouble(), 4) << "two a day, for two days";
    EXPECT_GT(tee[QStringLiteral("bring")].toInt(), 4);
    EXPECT_EQ(tee[QStringLiteral("washed")].toInt(), 4) << "six, of which two are reserved for the order";
    EXPECT_EQ(tee[QStringLiteral("missing")].toInt(), tee[QStringLiteral("bring")].toInt() - 4);

    const std::string said = text(ReportName::Figures);
    EXPECT_NE(said.find("What to bring to Saltmarsh Makers’ Market?"), std::string::npos) << said;
    EXPECT_NE(said.find("So few fair days say little."), std::string::npos) << said;
    EXPECT_NE(said.find("Saltmarsh Makers’ Market, 25 Nov 2026"), std::string::npos) << said;
}

} // namespace
} // namespace holdfast::app
