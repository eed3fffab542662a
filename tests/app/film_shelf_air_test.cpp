// SPDX-License-Identifier: GPL-3.0-or-later
// The air of a place in full, a second one beside it, and figures that are reckoned beside the window.
#include "app/places/film_shelf/air_card.h"
#include "app/places/film_shelf/air_words.h"
#include "app/widgets/button.h"
#include "tests/app/film_shelf_fixture.h"

#include <QElapsedTimer>

#include <iostream>

namespace holdfast::app::test {

namespace {

class FilmShelfAir : public FilmShelf {
protected:
    // Hourly readings of the last so many days.
    void record(PlaceId where, int days, Celsius temperature, Humidity humidity) {
        ClimateSeries readings;
        for (int hour = days * 24; hour >= 1; --hour)
            readings.push_back({now().instant - Hours{hour}, temperature, humidity});
        valueOf(db::importReadings(file(), where, readings));
    }
    QStringList tableWords() {
        QStringList found;
        for (const QLabel* label : part<QWidget>("airCard")->findChildren<QLabel*>())
            found << label->text();
        return found;
    }
    bool says(const QString& sentence) { return tableWords().join(QLatin1Char('|')).contains(sentence); }
};

} // namespace

TEST_F(FilmShelfAir, StandsInFullWhereTheShelfDoes) {
    const UsualShop usual = stockUsualShop();
    record(usual.place, 60, 21_C, 55_rh);
    open();
    EXPECT_FALSE(part<QWidget>("airCard")->isVisible());
    key(Qt::Key_G);
    ASSERT_TRUE(part<QWidget>("airCard")->isVisible());
    EXPECT_FALSE(shelf()->isVisible());
    EXPECT_TRUE(part<QWidget>("airChart")->isVisible());
    EXPECT_TRUE(says(QStringLiteral("Mean kinetic temperature|21.0 °C")))
        << tableWords().join(QLatin1Char('|')).toStdString();
    EXPECT_TRUE(says(QStringLiteral("h too damp")));
    EXPECT_TRUE(says(QStringLiteral("Unrecorded|nothing")));

    key(Qt::Key_D); // ninety days, of which sixty were recorded
    EXPECT_TRUE(says(QStringLiteral("Unrecorded|720 h of 2160 h")))
        << tableWords().join(QLatin1Char('|')).toStdString();
    key(Qt::Key_Escape);
    EXPECT_FALSE(part<QWidget>("airCard")->isVisible());
    EXPECT_TRUE(shelf()->hasFocus());
}

TEST_F(FilmShelfAir, AnotherPlaceStandsBesideIt) {
    const UsualShop usual = stockUsualShop();
    record(usual.place, 30, 21_C, 45_rh);
    const PlaceId cellar = addPlace("Cellar");
    record(cellar, 30, 16_C, 58_rh);
    addPlace("Attic");
    open();
    key(Qt::Key_G);
    key(Qt::Key_B); // Attic, by name the first
    EXPECT_EQ(part<Button>("besidePlace")->text(), QStringLiteral("Compared with: Attic"));
    key(Qt::Key_B);
    EXPECT_EQ(part<Button>("besidePlace")->text(), QStringLiteral("Compared with: Cellar"));
    const QString compared = text("airCompared");
    EXPECT_TRUE(compared.startsWith(QStringLiteral("Cellar: ")));
    EXPECT_TRUE(compared.contains(QStringLiteral("°C cooler"))) << compared.toStdString();
    EXPECT_TRUE(compared.contains(QStringLiteral("% damper"))) << compared.toStdString();
    EXPECT_TRUE(compared.contains(QStringLiteral("h more outside"))) << compared.toStdString();
    key(Qt::Key_B);
    EXPECT_EQ(part<Button>("besidePlace")->text(), QStringLiteral("Compare with another"));
}

// D and G wherever a button shows them: beside the roll, in full, and while the ledger or what if has the
// panel.
TEST_F(FilmShelfAir, ItsKeysWorkWhereverTheirButtonsAre) {
    const UsualShop usual = stockUsualShop();
    record(usual.place, 60, 21_C, 55_rh);
    takeOrder({aGarment(usual)});
    open();
    const auto shown = [&](const char* name) { return part<Button>(name)->isVisible(); };
    for (const Qt::Key page : {Qt::Key_L, Qt::Key_W}) {
        key(page);
        ASSERT_FALSE(part<QWidget>("aboutRoll")->isVisible());
        EXPECT_TRUE(shown("airBesideLedger"));
        EXPECT_FALSE(shown("climateWindow"));
        key(Qt::Key_D); // no air is shown that it could be about
        key(Qt::Key_G);
        ASSERT_TRUE(part<QWidget>("airCard")->isVisible());
        EXPECT_TRUE(shown("airWindow"));
        EXPECT_EQ(part<Button>("airWindow")->text(), QStringLiteral("30 days"));
        key(Qt::Key_D);
        EXPECT_EQ(part<Button>("airWindow")->text(), QStringLiteral("90 days"));
        part<Button>("airWindow")->click();
        part<Button>("airWindow")->click();
        EXPECT_EQ(part<Button>("airWindow")->text(), QStringLiteral("all readings"));
        key(Qt::Key_D);
        key(Qt::Key_G);
        EXPECT_FALSE(part<QWidget>("airCard")->isVisible());
        part<Button>("airBesideLedger")->click();
        EXPECT_TRUE(part<QWidget>("airCard")->isVisible());
        key(Qt::Key_Escape); // the shelf
        key(Qt::Key_Escape); // the roll
        ASSERT_TRUE(part<QWidget>("aboutRoll")->isVisible());
    }
    EXPECT_TRUE(shown("climateWindow"));
    EXPECT_FALSE(shown("airBesideLedger"));
    key(Qt::Key_G);
    EXPECT_TRUE(shown("airWindow") && shown("climateWindow")) << "two buttons, and one key for both";
    key(Qt::Key_D);
    EXPECT_EQ(part<Button>("airWindow")->text(), QStringLiteral("90 days"));
    EXPECT_EQ(part<Button>("climateWindow")->text(), QStringLiteral("90 days"));
}

TEST_F(FilmShelfAir, WithNothingRecordedItSaysWhatToDo) {
    const FilmId film = addFilm("Dusk");
    receiveRoll(film, valueOf(db::addPlace(file(), "New drawer")));
    open();
    key(Qt::Key_G);
    EXPECT_TRUE(text("airWords").contains(QStringLiteral("Record a reading")))
        << text("airWords").toStdString();
}

TEST(AirReckoningBeside, ManyReadingsHoldNothingUpAndANewQuestionTakesTheOldOnesPlace) {
    ClimateSeries series;
    for (int reading = 0; reading < 400'000; ++reading)
        series.push_back({kMorning + Seconds{60} * reading, {19}, {44}});
    const auto shared = std::make_shared<const ClimateSeries>(series);
    const ClimateWindow all{series.front().at, series.back().at};
    const ClimateWindow half{series.front().at, series[200'000].at};

    AirReckoning reckoning;
    std::vector<std::size_t> answers;
    QObject::connect(&reckoning, &AirReckoning::reckoned, [&](const std::vector<AirAnswer>& answer) {
        answers.push_back(answer.at(0).figures.readings);
    });
    QElapsedTimer timer;
    timer.start();
    reckoning.begin({{shared, all, {}}});
    EXPECT_TRUE(reckoning.isBusy());
    reckoning.begin({{shared, half, {}}});
    std::cout << "two questions over 400,000 readings took the window " << timer.elapsed() << " ms\n";
    ASSERT_TRUE(QTest::qWaitFor([&] { return !answers.empty(); }, 20'000));
    EXPECT_EQ(answers, std::vector<std::size_t>{200'001});
}

TEST(ComparedAir, SaysOnlyWhatDiffers) {
    ClimateFigures here;
    here.recordedHours = 100;
    here.humidHours = 100;
    here.kinetic = 20_C;
    here.humidity.mean = 45;
    ClimateFigures there = here;
    EXPECT_EQ(comparedWords(here, there, QStringLiteral("Cellar")),
              QStringLiteral("Cellar is much the same."));
    there.kinetic = Celsius{17.9};
    EXPECT_EQ(comparedWords(here, there, QStringLiteral("Cellar")), QStringLiteral("Cellar: 2.1 °C cooler."));
    there.humidity.mean = 39;
    there.humidityOutside.below = 12;
    EXPECT_EQ(comparedWords(here, there, QStringLiteral("Cellar")),
              QStringLiteral("Cellar: 2.1 °C cooler, 6.0 % drier, 12 h more outside the limits."));
    there.recordedHours = 0;
    EXPECT_EQ(comparedWords(here, there, QStringLiteral("Cellar")), QString());
}

} // namespace holdfast::app::test
