// SPDX-License-Identifier: GPL-3.0-or-later
// Packing list, price list and figures on paper, and takings: as poppler reads the papers back, by keys, and
// as a report.
#include "app/papers/list_paper.h"
#include "app/papers/packing_list_paper.h"
#include "app/papers/paper_making.h"
#include "app/papers/price_list_paper.h"
#include "app/places/back_room/room_sheet.h"
#include "app/places/figures/figure_paper.h"
#include "app/places/figures/figures_place.h"
#include "app/shell/finder_entries.h"
#include "app/widgets/label.h"
#include "db/actions/fair_actions.h"
#include "db/actions/order_actions.h"
#include "db/tables/figures.h"
#include "tests/app/papers_fixture.h"
#include "tests/app/report_fixture.h"

#include <QJsonArray>
#include <QSignalSpy>
#include <QTest>

#include <algorithm>

namespace holdfast::app::test {
namespace {

class ListPapers : public PapersFixture {
protected:
    Fair addFair(const std::string& name, int inDays = 2) {
        Fair fair;
        fair.name = name;
        fair.firstDay = now().today() + Days{inDays};
        fair.lastDay = fair.firstDay;
        fair.hours = {std::chrono::hours{10}, std::chrono::hours{15}};
        fair.id = valueOf(db::addFair(file(), fair));
        return fair;
    }
    FiguresShown figures() {
        const ShopFigures read = valueOf(file().read([&](db::Connection& connection) {
            return db::loadFigures(connection, db::firstDay(connection, now()), now());
        }));
        return figuresShown(shop(), read);
    }
    void expectAllOn(const std::vector<Paper>& papers, const QStringList& wanted) {
        const QString text = textOf(papers).simplified();
        for (const QString& each : wanted)
            EXPECT_TRUE(text.contains(each)) << each.toStdString() << "\nin\n" << text.toStdString();
        for (const Paper& page : papers)
            EXPECT_TRUE(staysOnPaper(page)) << page.name.toStdString();
    }
};

// ── packing list ──────────────────────────────────────────────────────────────────────────────────────

TEST_F(ListPapers, PackingListHasGarmentsBlanksFilmsAndPapers) {
    const auto usual = stockUsualShop();
    const Fair fair = addFair("Creek Fair");
    const auto order = takeOrder({aGarment(usual), aGarment(usual)}, "Bronagh Tully"); // promised in two days
    const GarmentId first = garmentsOf(order.id).front();
    cut(first, usual.roll);
    press(first);
    expectAllOn(packingListPapers(shop(), fair),
                {QStringLiteral("To pack for Creek Fair"), QStringLiteral("Friday 27 November"),
                 QStringLiteral("1 finished garment goes along."), QStringLiteral("Finished garments"),
                 QStringLiteral("1-a"), QStringLiteral("Bronagh Tully"), QStringLiteral("rests until"),
                 QStringLiteral("To be finished before"), QStringLiteral("1-b"),
                 QStringLiteral("Washed blanks: Tee"), QStringLiteral("Moss, M"),
                 QStringLiteral("A sample of each film"), QStringLiteral("Dusk"),
                 QStringLiteral("May be used: R-"), QStringLiteral("Care cards")});
}

TEST_F(ListPapers, PackingListOfNothingSaysSoAndAFairThatIsGoneToo) {
    const Fair fair = addFair("Creek Fair");
    expectAllOn(packingListPapers(shop(), fair), {QStringLiteral("Nothing is to be packed")});
    SlipTarget gone;
    gone.fair = FairId{12345};
    EXPECT_EQ(paperErrand(desk(), PaperName::PackingList, gone).error().message.english(),
              "The fair is no longer there.");
    EXPECT_EQ(valueOf(paperErrand(desk(), PaperName::PackingList, {})).title,
              QStringLiteral("Packing list Creek Fair"));
}

TEST_F(ListPapers, WithoutAFairToComeThereIsNothingToPackFor) {
    addFair("Creek Fair", -5);
    EXPECT_EQ(paperErrand(desk(), PaperName::PackingList, {}).error().message.english(),
              "No fair is to come; add it first.");
}

TEST_F(ListPapers, LongNamesAndManyGarmentsTakePages) {
    const auto usual = stockUsualShop();
    const Fair fair = addFair("Saltmarsh and Upper Creek Makers’ and Growers’ Market");
    for (int order = 0; order < 30; ++order)
        takeOrder(manyGarments(usual, 3),
                  "Wilhelmina Featherstonehaugh-Cholmondeley of the Lower Saltmarsh Boatyard");
    const auto pages = packingListPapers(shop(), fair);
    EXPECT_GT(pages.size(), 3U);
    expectAllOn(pages, {QStringLiteral("1-a"), QStringLiteral("30-c"),
                        QStringLiteral("page %1 of %1").arg(pages.size())});
}

TEST_F(ListPapers, AFairsRowAndTheFinderPrintItsList) {
    const Fair fair = addFair("Creek Fair");
    const Fair over = addFair("Harbour Fair", -9);
    const RoomSheet sheet = roomSheet(RoomSection::Fairs, shop(), {});
    const auto lineOf = [&](const std::string& name) -> const RoomLine& {
        return *std::ranges::find(sheet.lines, QString::fromStdString(name), &RoomLine::name);
    };
    const auto* print = std::get_if<PrintPaper>(&lineOf(fair.name).otherDeed);
    ASSERT_TRUE(print);
    EXPECT_EQ(print->paper, PaperName::PackingList);
    EXPECT_EQ(print->matter.fair, fair.id);
    EXPECT_TRUE(lineOf(over.name).otherOffer.isEmpty()) << "it is over";
    EXPECT_TRUE(std::ranges::any_of(sheet.acts, [](const RoomAct& act) {
        const auto* list = std::get_if<PrintPaper>(&act.deed);
        return list && list->paper == PaperName::PriceList && act.key == QKeySequence(Qt::Key_P);
    }));
    const auto offers = [&](const char* typed, PaperName paper) {
        return std::ranges::any_of(findEntries(desk(), QLatin1String(typed)), [&](const FinderEntry& entry) {
            const auto* ask = std::get_if<AskPaper>(&entry.target);
            return ask && ask->paper == paper;
        });
    };
    EXPECT_TRUE(offers("packing creek", PaperName::PackingList));
    EXPECT_FALSE(offers("packing harbour", PaperName::PackingList));
    EXPECT_TRUE(offers("price list", PaperName::PriceList));
}

// ── price list ────────────────────────────────────────────────────────────────────────────────────────

TEST_F(ListPapers, PriceListSaysPricesExtrasAndTaxAndNoCost) {
    const auto usual = stockUsualShop();
    change([&](ShopSettings& settings) {
        settings.prices.by = PricedBy::List;
        settings.prices.stylePrices[usual.style] = Money{12'00};
        settings.prices.decalPrices = {{Millimetres{100}, Money{4'00}}, {Millimetres{300}, Money{8'00}}};
        settings.prices.extras = {{"Gift wrap", Money{2'50}}};
        settings.prices.forMany = {{10, Percentage{7'50}}};
        settings.prices.tax = {TaxKind::Included, {20'00}, TaxedBy::Total, Rounding::HalfUp};
        settings.prices.taxName = "VAT";
        settings.minuteRate = Money{9'87}; // a cost that is told from any price
    });
    const auto pages = priceListPapers(shop().facts);
    expectAllOn(pages,
                {QStringLiteral("Prices"), QStringLiteral("Tee"), QStringLiteral("280 mm wide, chest"),
                 QStringLiteral("£20.00"), QStringLiteral("£16.00"), QStringLiteral("Gift wrap"),
                 QStringLiteral("£2.50"), QStringLiteral("10 garments or more in one order: 7.5 % less."),
                 QStringLiteral("VAT 20 % is in the prices.")});
    EXPECT_FALSE(textOf(pages).contains(QStringLiteral("cost"), Qt::CaseInsensitive));
}

TEST_F(ListPapers, PriceListOfAnEmptyShopSaysSo) {
    expectAllOn(valueOf(valueOf(paperErrand(desk(), PaperName::PriceList, {})).papers()),
                {QStringLiteral("There is no price yet")});
}

TEST_F(ListPapers, PriceListOfManyStylesTakesPages) {
    stockUsualShop();
    for (int count = 0; count < 12; ++count)
        addStyle("Tee of the Very Long Name That Its Maker Gave It, no " + std::to_string(count));
    const auto pages = priceListPapers(shop().facts);
    EXPECT_GT(pages.size(), 2U);
    expectAllOn(pages, {QStringLiteral("page 1 of %1").arg(pages.size())});
}

// ── figures ───────────────────────────────────────────────────────────────────────────────────────────

TEST_F(ListPapers, FiguresHaveEveryQuestionWithItsReasonWhereThereIsNoChart) {
    const FiguresShown shown = figures();
    QStringList wanted{QStringLiteral("Figures since")};
    for (int at = 0; at < kFigureQuestions; ++at) {
        const FigureSheet sheet = figureSheet(static_cast<FigureQuestion>(at), shown);
        wanted << (sheet.title.isEmpty() ? sheet.question : sheet.title).simplified();
        if (sheet.whole.isEmpty() && sheet.rows.isEmpty())
            wanted << sheet.empty.simplified();
    }
    expectAllOn(figurePapers(shown), wanted);
}

TEST_F(ListPapers, FiguresHaveTheirChartsAndRows) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual), aGarment(usual)});
    for (const GarmentId garment : garmentsOf(order.id)) {
        cut(garment, usual.roll);
        press(garment);
    }
    valueOf(db::handOver(file(), order.id, now()));
    time().pass(std::chrono::days{30});
    const auto pages = figurePapers(figures());
    expectAllOn(pages, {QStringLiteral("100 % without a fault at the end"), QStringLiteral("handed over"),
                        QStringLiteral("1 of 1 orders were pressed by the time promised")});
}

// A hundred rows with many wide columns stay on the paper and are all there.
TEST_F(ListPapers, RowsWithBarsAndWideColumnsStayOnThePaper) {
    PaperList list;
    list.name = QStringLiteral("wide");
    list.head = {QStringLiteral("Wide"), {}};
    list.hasBoxes = false;
    const QStringList heads(6, QStringLiteral("A heading that is far too long"));
    list.sections.push_back({QStringLiteral("Section"), heads, {}});
    for (int row = 0; row < 100; ++row)
        list.sections.back().rows.push_back({QStringLiteral("Row %1").arg(row),
                                             QStringList(6, QStringLiteral("£1,000.00")),
                                             {},
                                             ListBar{1.2, 1.5, -0.2, 1.4}});
    const auto pages = listPaper(list);
    EXPECT_GT(pages.size(), 3U);
    expectAllOn(pages, {QStringLiteral("Row 0"), QStringLiteral("Row 99")});
}

TEST_F(ListPapers, FiguresArePrintedByAKey) {
    stockUsualShop();
    FiguresPlace place{desk()};
    place.headerTools()->setParent(&place);
    showWindow(place, {1270, 708});
    QSignalSpy asked(&desk(), &ShopDesk::workAsked);
    QSignalSpy failed(&desk(), &ShopDesk::failed);
    place.opened();
    auto* whole = place.findChild<Label*>(QStringLiteral("figureWhole"));
    QTRY_VERIFY(!whole->text().isEmpty());
    QTest::keyClick(place.window()->focusWidget(), Qt::Key_F);
    ASSERT_EQ(asked.count(), 1);
    EXPECT_EQ(asked.front().front().toString(), QStringLiteral("Printing the figures"));
    EXPECT_EQ(failed.count(), 0);
}

// ── takings ───────────────────────────────────────────────────────────────────────────────────────────

class TakingsReported : public ReportFixture {};

TEST_F(TakingsReported, SaysMonthsQuartersAndYearsInWordsKeysAndLines) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id; // on 25 November
    valueOf(db::moveMoney(file(), order, MoneyKind::Deposit, Money{10'00}, PaidHow::Cash));
    time().pass(std::chrono::days{10});
    valueOf(db::moveMoney(file(), order, MoneyKind::Payment, Money{16'50}, PaidHow::Card));
    valueOf(db::moveMoney(file(), order, MoneyKind::Refund, Money{1'50}, PaidHow::Card));
    const QJsonArray lines = json(ReportName::Takings)[QStringLiteral("lines")].toArray();
    ASSERT_EQ(lines.size(), 4) << "November, December, their quarter and year";
    const QJsonObject quarter = lines[2].toObject();
    EXPECT_EQ(quarter[QStringLiteral("of")].toString(), QStringLiteral("2026-Q4"));
    EXPECT_EQ(quarter[QStringLiteral("from")].toString(), QStringLiteral("2026-10-01"));
    EXPECT_EQ(quarter[QStringLiteral("receivedMinor")].toInt(), 26'50);
    EXPECT_EQ(quarter[QStringLiteral("paidBackMinor")].toInt(), 1'50);
    const std::string said = text(ReportName::Takings);
    EXPECT_NE(said.find("Quarter 4 of 2026"), std::string::npos) << said;
    EXPECT_NE(said.find("no tax return"), std::string::npos) << said;
    Arguments arguments = asking(ReportName::Takings);
    arguments.asCsv = true;
    const std::string csv = valueOf(report(arguments, time().clock()));
    EXPECT_TRUE(csv.starts_with("Span,Of,From,To,Currency,Cash,Card,Transfer,Received,Paid back,")) << csv;
    EXPECT_NE(csv.find("month,2026-11,2026-11-01,2026-11-30,GBP,10.00,0.00,0.00,10.00,0.00,0.00,0,0,0.00,"
                       "0.00,0.00\r\n"),
              std::string::npos)
        << csv;
    EXPECT_NE(csv.find("year,2026,2026-01-01,2026-12-31,GBP,10.00,15.00,0.00,26.50,1.50,"), std::string::npos)
        << csv;
}

TEST_F(TakingsReported, OfAnEmptyShopSaysSo) {
    EXPECT_NE(text(ReportName::Takings).find("No money was taken"), std::string::npos);
}

} // namespace
} // namespace holdfast::app::test
