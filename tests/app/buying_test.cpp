// SPDX-License-Identifier: GPL-3.0-or-later
// What to buy: in Figures by keys, on paper as poppler reads it back, and as a report.
#include "app/papers/buying_list.h"
#include "app/papers/paper_making.h"
#include "app/places/figures/figure_rows.h"
#include "app/places/figures/figures_place.h"
#include "app/shell/finder_entries.h"
#include "app/widgets/choice.h"
#include "app/widgets/label.h"
#include "tests/app/papers_fixture.h"
#include "tests/app/report_fixture.h"

#include <QJsonArray>
#include <QTest>

namespace holdfast::app::test {
namespace {

class Buying : public PapersFixture {
protected:
    // Seven tees in M and Moss are ordered, of which six are on the rail.
    void orderOneTooMany() {
        const auto usual = stockUsualShop();
        takeOrder(manyGarments(usual, 7));
    }
};

TEST_F(Buying, FiguresSayItAndPrintsItByAKey) {
    orderOneTooMany();
    FiguresPlace place{desk()};
    place.headerTools()->setParent(&place);
    showWindow(place, {1270, 708});
    std::vector<PaperName> asked;
    QObject::connect(&desk(), &ShopDesk::paperAsked, &place,
                     [&](PaperName paper, const SlipTarget&) { asked.push_back(paper); });
    SlipTarget matter;
    matter.question = FigureQuestion::Buy;
    place.turnTo(matter);
    place.opened();
    auto* rows = place.findChild<FigureRows*>(QStringLiteral("figureRows"));
    QTRY_VERIFY(rows->accessibleDescription().contains(QStringLiteral("Tee, M, Moss")));
    EXPECT_TRUE(rows->accessibleDescription().contains(QStringLiteral("1 garment of an order has none.")))
        << rows->accessibleDescription().toStdString();
    EXPECT_TRUE(rows->accessibleDescription().contains(QStringLiteral("Nobody knows its use yet")))
        << rows->accessibleDescription().toStdString();
    const QString whole = place.findChild<Label*>(QStringLiteral("figureWhole"))->text();
    EXPECT_TRUE(whole.startsWith(QStringLiteral("Buy 1 blank"))) << whole.toStdString();
    QTest::keyClick(place.window()->focusWidget(), Qt::Key_P);
    EXPECT_EQ(asked, std::vector<PaperName>{PaperName::BuyingList});
}

TEST_F(Buying, PaperHasASectionForEachSupplier) {
    orderOneTooMany();
    const auto errand = valueOf(paperErrand(desk(), PaperName::BuyingList, {}));
    const QString text = textOf(valueOf(errand.papers()));
    EXPECT_TRUE(text.contains(QStringLiteral("To buy, Wednesday 25 November"))) << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("Supplier not written down"))) << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("Tee, M, Moss"))) << text.toStdString();
    EXPECT_FALSE(text.contains(QStringLiteral("Tee, L, Moss"))) << "nothing of it is bought";
    for (const Paper& page : valueOf(errand.papers()))
        EXPECT_TRUE(staysOnPaper(page));
}

TEST_F(Buying, TheFinderLeadsThere) {
    stockUsualShop();
    const auto found = findEntries(desk(), QStringLiteral("buy"));
    EXPECT_TRUE(std::ranges::any_of(found, [](const FinderEntry& entry) {
        const auto* go = std::get_if<GoTo>(&entry.target);
        return go && go->matter.question == FigureQuestion::Buy;
    }));
}

class BuyingReport : public ReportFixture {};

TEST_F(BuyingReport, SaysWhatIsBoughtInWordsKeysAndLines) {
    const auto usual = stockUsualShop();
    takeOrder(std::vector<GarmentDraft>(7, aGarment(usual)));
    const QJsonObject buy = json(ReportName::Buy);
    QJsonObject tee;
    for (const QJsonValue& line : buy[QStringLiteral("lines")].toArray())
        if (line.toObject()[QStringLiteral("buy")].toInt() > 0)
            tee = line.toObject();
    EXPECT_EQ(tee[QStringLiteral("name")].toString().toStdString(), "Tee, M, Moss");
    EXPECT_EQ(tee[QStringLiteral("missing")].toInt(), 1);
    EXPECT_EQ(tee[QStringLiteral("why")].toString().toStdString(), "promised");
    EXPECT_FALSE(tee[QStringLiteral("isUseKnown")].toBool());
    EXPECT_NE(text(ReportName::Buy).find("Tee, M, Moss"), std::string::npos);
    Arguments arguments = asking(ReportName::Buy);
    arguments.asCsv = true;
    const std::string csv = valueOf(report(arguments, time().clock()));
    EXPECT_TRUE(csv.starts_with("Supplier,To buy,Unit,Buy,Left,Missing,")) << csv;
    EXPECT_NE(csv.find("\r\n,\"Tee, M, Moss\",blanks,1,0,1,,,,"), std::string::npos) << csv;
    arguments.report = ReportName::Walk;
    EXPECT_FALSE(report(arguments, time().clock()).ok());
}

} // namespace
} // namespace holdfast::app::test
