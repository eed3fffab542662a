// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/chart_loader.h"
#include "app/places/film_shelf/roll_panel.h"
#include "app/places/film_shelf/shelf_view.h"
#include "app/places/film_shelf/thinned_series.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/chip.h"
#include "app/widgets/empty_state.h"
#include "db/actions/film_actions.h"
#include "tests/app/film_shelf_fixture.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QSignalSpy>
#include <QTest>

#include <cmath>

namespace holdfast::app::test {

namespace {

ClimateSeries wave(Instant from, std::size_t readings, Seconds every) {
    ClimateSeries series;
    for (std::size_t at = 0; at < readings; ++at)
        series.push_back({from + every * static_cast<std::int64_t>(at),
                          {19},
                          {44 + 9 * std::sin(0.01 * static_cast<double>(at))}});
    return series;
}

} // namespace

TEST_F(FilmShelf, AnEmptyShopOffersToReceiveARoll) {
    open();
    part<EmptyState>("emptyShelf")->button()->click();
    ASSERT_EQ(asked.size(), 1U);
    EXPECT_EQ(asked.front(), SlipName::ReceiveRoll);
}

TEST_F(FilmShelf, RowsSayDaysLeftAndWhatIsPast) {
    const FilmId film = addFilm("Dusk");
    const PlaceId drawer = addPlace("Film drawer");
    rollReceived(film, drawer, now().today() - Days{345});
    rollReceived(film, drawer, now().today() - Days{371});
    open();
    ASSERT_EQ(shelf()->model()->rowCount(), 2);
    // Nothing was read there: the day is an estimate, and how far it may be off is said.
    EXPECT_TRUE(row(1).contains(QStringLiteral("20 days, by 15 Dec, estimate 7–27 Dec")))
        << row(1).toStdString();
    EXPECT_TRUE(row(0).contains(QStringLiteral("Past by 6 days, by estimate: press a test strip first")))
        << row(0).toStdString();
    EXPECT_EQ(part<Chip>("pastChip")->words(), QStringLiteral("1 past use-by"));
    EXPECT_EQ(part<Chip>("soonChip")->words(), QStringLiteral("1 to use this month"));
    EXPECT_TRUE(text("shelfLength").contains(QStringLiteral("8.0 m")));
}

TEST_F(FilmShelf, APrintedUseByIsAFactAndADayByWarmthAnEstimate) {
    const FilmId film = addFilm("Dusk");
    const PlaceId drawer = addPlace("Film drawer");
    const RollId byWarmth = rollReceived(film, drawer, now().today() - Days{300});
    open();
    const auto showed = [&](RollId roll) {
        SlipTarget matter;
        matter.roll = roll;
        place->turnTo(matter);
        auto* useBy = part<QWidget>("useBy");
        return useBy->accessibleName() + QLatin1Char('|') + useBy->accessibleDescription();
    };
    const QString estimate = showed(byWarmth);
    EXPECT_TRUE(estimate.startsWith(QStringLiteral("Use-by, estimate: 29 Jan 2027|")))
        << estimate.toStdString();
    EXPECT_TRUE(estimate.contains(QStringLiteral(" – "))) << "its range: " << estimate.toStdString();
    EXPECT_TRUE(
        part<QWidget>("ageByWarmth")->accessibleName().startsWith(QStringLiteral("Age by warmth, estimate")));
    EXPECT_TRUE(text("spokenFor").contains(QStringLiteral("by estimate"))) << text("spokenFor").toStdString();

    const QString fact = showed(rollReceived(film, drawer, now().today(), now().today() + Days{40}));
    EXPECT_TRUE(fact.startsWith(QStringLiteral("Use-by: 4 Jan 2027|maker says 4 Jan"))) << fact.toStdString();
}

TEST_F(FilmShelf, AFilmWithoutALimitSaysSo) {
    const FilmId film = addFilm("Dusk", [](Film& made) { made.shelfLife.reset(); });
    receiveRoll(film, addPlace("Film drawer"));
    open();
    EXPECT_TRUE(row(0).endsWith(QStringLiteral("No limit given"))) << row(0).toStdString();
}

TEST_F(FilmShelf, DampIsSaidAsHoursAndTakesNoDays) {
    const Instant today = now().instant;
    const FilmId film = addFilm("Dusk");
    time().setWall(today - Days{20});
    const PlaceId drawer = valueOf(db::addPlace(file(), "Film drawer"));
    const RollId damp = receiveRoll(film, drawer);
    time().setWall(today);
    ClimateSeries readings;
    for (int hour = 20 * 24; hour >= 0; --hour)
        readings.push_back({today - Hours{hour}, 22_C, hour > 200 && hour <= 300 ? 60_rh : 44_rh});
    valueOf(db::importReadings(file(), drawer, readings));
    open();
    EXPECT_TRUE(row(0).contains(QStringLiteral("Badly stored"))) << row(0).toStdString();
    EXPECT_TRUE(row(0).contains(QStringLiteral("h outside 30–50 %"))) << row(0).toStdString();
    EXPECT_FALSE(row(0).contains(QStringLiteral("lost")));
    EXPECT_EQ(daysLostToWarmth(*desk().shop(), roll(damp)), Days{0});
    EXPECT_EQ(part<Chip>("badlyKeptChip")->words(), QStringLiteral("1 badly stored"));
    EXPECT_EQ(part<Button>("testStrip")->kind(), Button::Kind::Primary);
}

TEST_F(FilmShelf, WarmthTakesDays) {
    const Instant today = now().instant;
    const FilmId film = addFilm("Dusk", [](Film& made) { made.storage.temperature = {10_C, 40_C}; });
    time().setWall(today - Days{60});
    const PlaceId attic = valueOf(db::addPlace(file(), "Attic"));
    const RollId warm = receiveRoll(film, attic);
    time().setWall(today);
    ClimateSeries readings;
    for (int hour = 400 * 24; hour >= 0; hour -= 12) // a whole year, so that what comes is known
        readings.push_back({today - Hours{hour}, 32_C, 44_rh});
    valueOf(db::importReadings(file(), attic, readings));
    open();
    // Twice as fast at 10 °C above the reference: 120 days old after 60, and the 245 that are left go in half
    // the time. 305 days would have been left; 122 are.
    const auto lost = daysLostToWarmth(*desk().shop(), roll(warm));
    EXPECT_NEAR(static_cast<double>(lost.count()), 305 - 122.5, 1.5);
    EXPECT_TRUE(row(0).contains(QStringLiteral("%1 days lost to warmth").arg(lost.count())))
        << row(0).toStdString();
}

TEST_F(FilmShelf, LettersAskForTheFormsOfTheRoll) {
    const UsualShop usual = stockUsualShop();
    open();
    for (const Qt::Key letter : {Qt::Key_R, Qt::Key_T, Qt::Key_U, Qt::Key_M, Qt::Key_N, Qt::Key_I, Qt::Key_E})
        key(letter);
    const std::vector<SlipName> expected{
        SlipName::RecordReading, SlipName::TestStrip,      SlipName::UseUpRoll, SlipName::RollMove,
        SlipName::ReceiveRoll,   SlipName::ImportReadings, SlipName::Recipe};
    EXPECT_EQ(asked, expected);
    EXPECT_EQ(askedFor.roll, usual.roll);
    EXPECT_EQ(askedFor.film, usual.film);
}

TEST_F(FilmShelf, ARollIsPutAwayAndComesBack) {
    const UsualShop usual = stockUsualShop();
    receiveRoll(usual.film, usual.place, 2000_mm);
    open();
    SlipTarget matter;
    matter.roll = usual.roll;
    place->turnTo(matter);
    key(Qt::Key_A);
    EXPECT_EQ(roll(usual.roll).state, RollState::PutAway);
    EXPECT_EQ(shelf()->model()->rowCount(), 1);

    place->turnTo(matter); // found among those put away
    ASSERT_EQ(shelf()->model()->rowCount(), 1);
    EXPECT_EQ(part<QComboBox>("filmChoice")->currentText(), QStringLiteral("Put away (1)"));
    EXPECT_FALSE(part<Button>("testStrip")->isEnabled());
    key(Qt::Key_A);
    EXPECT_EQ(roll(usual.roll).state, RollState::OnShelf);
    EXPECT_TRUE(refused.isEmpty()) << refused.toStdString();
}

TEST_F(FilmShelf, TickedWorkIsTakenToTheBenchWithItsRoll) {
    const UsualShop usual = stockUsualShop();
    const auto first = takeOrder({aGarment(usual), aGarment(usual)});
    takeOrder({aGarment(usual)}, "Teodor Wick");
    open();
    auto* work = part<QListView>("rollWork");
    ASSERT_EQ(work->model()->rowCount(), 2);
    EXPECT_TRUE(work->model()->index(0, 0).data().toString().contains(QStringLiteral("2 × Tee")));

    key(Qt::Key_Right);
    EXPECT_TRUE(work->hasFocus());
    key(Qt::Key_Down);
    key(Qt::Key_Space);
    EXPECT_EQ(work->model()->index(1, 0).data(Qt::CheckStateRole).toInt(), Qt::Unchecked);
    std::optional<PlaceName> led;
    SlipTarget ledFor;
    QObject::connect(&desk(), &ShopDesk::placeAsked, place.get(),
                     [&](PlaceName to, const SlipTarget& matter) {
                         led = to;
                         ledFor = matter;
                     });
    key(Qt::Key_C);
    EXPECT_EQ(led, PlaceName::CuttingBench);
    EXPECT_EQ(ledFor.roll, usual.roll);
    EXPECT_EQ(ledFor.film, usual.film);
    std::vector<DecalId> ticked;
    for (const GarmentId garment : garmentsOf(first.id))
        ticked.push_back(desk().shop()->facts.garments.at(garment).decals.front().id);
    EXPECT_EQ(ledFor.decals, ticked);
    EXPECT_EQ(roll(usual.roll).left, 5000_mm) << "it is cut on the bench";
}

TEST_F(FilmShelf, NothingIsCutFromARollThatHoldsItsWork) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)});
    time().setWall(now().instant + Days{400});
    open();
    EXPECT_FALSE(part<Button>("cutThese")->isEnabled());
    EXPECT_TRUE(part<Button>("cutThese")->toolTip().contains(QStringLiteral("test strip")));
    key(Qt::Key_C);
    EXPECT_EQ(roll(usual.roll).left, 5000_mm);
}

TEST_F(FilmShelf, TheLedgerStandsBehindL) {
    const UsualShop usual = stockUsualShop();
    valueOf(db::correctLength(file(), usual.roll, 4600_mm, "measured anew"));
    open();
    key(Qt::Key_L);
    auto* ledger = part<QListView>("rollLedger");
    ASSERT_TRUE(ledger->isVisible());
    ASSERT_EQ(ledger->model()->rowCount(), 2);
    EXPECT_TRUE(ledger->model()->index(0, 0).data().toString().contains(QStringLiteral("−0.4 m")));
    key(Qt::Key_L);
    EXPECT_FALSE(ledger->isVisible());
}

TEST_F(FilmShelf, OneFilmIsShownAlone) {
    const PlaceId drawer = addPlace("Film drawer");
    const FilmId dusk = addFilm("Dusk");
    const FilmId gorse = addFilm("Gorse");
    receiveRoll(dusk, drawer);
    receiveRoll(gorse, drawer);
    open();
    EXPECT_EQ(shelf()->model()->rowCount(), 2);
    key(Qt::Key_F);
    EXPECT_TRUE(part<QComboBox>("filmChoice")->hasFocus());
    SlipTarget matter;
    matter.film = gorse;
    place->turnTo(matter);
    ASSERT_EQ(shelf()->model()->rowCount(), 1);
    EXPECT_TRUE(row(0).contains(QStringLiteral("Gorse")));
}

TEST_F(FilmShelf, TheChartIsLoadedWhenThereAreReadings) {
    stockUsualShop();
    open();
    auto* chart = part<QWidget>("climateChart");
    EXPECT_TRUE(chart->isVisible());
    EXPECT_TRUE(chart->accessibleName().contains(QStringLiteral("44 %")))
        << chart->accessibleName().toStdString();
    key(Qt::Key_D);
    EXPECT_TRUE(chart->accessibleName().contains(QStringLiteral("90 days")));
}

TEST_F(FilmShelf, WithoutItsModuleTheFiguresStandInWords) {
    stockUsualShop();
    setChartFolder(QStringLiteral("/nowhere"));
    open();
    setChartFolder({});
    EXPECT_TRUE(text("climateInstead").contains(QStringLiteral("cannot be drawn")));
    EXPECT_TRUE(text("climateInstead").contains(QStringLiteral("44 % and 19 °C")));
}

TEST_F(FilmShelf, ItsModelsKeepTheRules) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)});
    ShelfModel rolls;
    RollWorkModel work;
    RollLedgerModel ledger;
    const auto fatal = QAbstractItemModelTester::FailureReportingMode::Fatal;
    QAbstractItemModelTester rollsTester(&rolls, fatal);
    QAbstractItemModelTester workTester(&work, fatal);
    QAbstractItemModelTester ledgerTester(&ledger, fatal);
    rolls.show(desk().shop(), {});
    work.show(desk().shop(), usual.roll);
    ledger.show({{now().instant, 5000_mm, "Received"}}, now());
    EXPECT_EQ(rolls.rowCount() + work.rowCount() + ledger.rowCount(), 3);
}

TEST_F(FilmShelf, FiveHundredRollsComeInOneStep) {
    const FilmId film = addFilm("Dusk");
    const PlaceId drawer = addPlace("Film drawer");
    for (int roll = 0; roll < 500; ++roll)
        receiveRoll(film, drawer);
    desk().shop();
    ShelfModel rolls;
    QSignalSpy resets(&rolls, &QAbstractItemModel::modelReset);
    QSignalSpy rows(&rolls, &QAbstractItemModel::rowsInserted);
    rolls.show(desk().shop(), {});
    EXPECT_LE(resets.size() + rows.size(), 1);
    EXPECT_EQ(rolls.rowCount(), 500);
}

TEST(ShelfAxis, IsLinearFromTodayAndNamesMonths) {
    const ShelfAxis axis(842, 140);
    EXPECT_DOUBLE_EQ(axis.at(0), axis.todayAt);
    EXPECT_NEAR(axis.at(70) - axis.at(0), axis.at(140) - axis.at(70), 1e-9);
    const auto marks = axis.marks(localDate(2026, 11, 11));
    ASSERT_GE(marks.size(), 4U);
    EXPECT_EQ(marks.front().words, QStringLiteral("1 Dec"));
    EXPECT_NEAR(marks.front().at, axis.at(20), 1e-9);
    // A tail of ten years ends where the axis does.
    EXPECT_EQ(ShelfAxis(842, 3650).days, 200);
}

TEST(ThinnedSeries, KeepsTheLowestAndHighestOfEachColumn) {
    const Instant from = kMorning;
    ClimateSeries series = wave(from, 100'000, 60s);
    series[54'321].humidity = {99};
    series[12'345].humidity = {3};
    const auto lines = thinned(series, Measure::Humidity, from, series.back().at, 300);
    ASSERT_EQ(lines.size(), 1U);
    EXPECT_LE(lines.front().size(), 1204U);
    const auto [lowest, highest] = std::ranges::minmax(lines.front(), {}, &ThinPoint::value);
    EXPECT_EQ(lowest.value, 3);
    EXPECT_EQ(highest.value, 99);
    for (std::size_t at = 1; at < lines.front().size(); ++at)
        EXPECT_GT(lines.front()[at].seconds, lines.front()[at - 1].seconds);
}

TEST(ThinnedSeries, GapsBreakTheLineAndTheEdgesCutIt) {
    const Instant from = kMorning;
    const ClimateSeries series{{from - 10h, 20_C, 40_rh},
                               {from + 10h, 20_C, 50_rh},
                               {from + 10h + 73h, 20_C, 45_rh},
                               {from + 100h + 10h, 20_C, 47_rh}};
    const auto lines = thinned(series, Measure::Humidity, from, from + 100h, 1000);
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_DOUBLE_EQ(lines[0].front().seconds, 0);
    EXPECT_DOUBLE_EQ(lines[0].front().value, 45);
    EXPECT_DOUBLE_EQ(lines[0].back().value, 50);
    EXPECT_DOUBLE_EQ(lines[1].back().seconds, 360'000);
    EXPECT_NEAR(lines[1].back().value, 45 + 2 * 17.0 / 27.0, 1e-9);
}

} // namespace holdfast::app::test
