// SPDX-License-Identifier: GPL-3.0-or-later
// What leads to the Cutting bench and back: the rail, the finder, the film shelf, the press walk; in the real
// window, by keys.
#include "app/places/cutting_bench/cutting_bench_place.h"
#include "app/shell/command_finder.h"
#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/workshop.h"
#include "app/widgets/button.h"
#include "app/widgets/sewn_tabs.h"
#include "tests/app/shop_fixture.h"

#include <QAbstractItemView>
#include <QApplication>
#include <QTest>

#include <algorithm>

namespace holdfast::app::test {

namespace {

class WaysToTheBench : public ShopFixture {
protected:
    WaysToTheBench() {
        CuttingBenchPlace::setSearchRounds(40);
        usual = stockUsualShop();
    }
    ~WaysToTheBench() override { CuttingBenchPlace::setSearchRounds(std::nullopt); }
    void TearDown() override { m_window.reset(); }

    void openWindow() {
        close();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(valueOf(db::Shop::open(path(), time().clock().now)));
        showWindow(*m_window);
    }
    Workshop& workshop() { return *m_window->workshop(); }
    const ReckonedShop& shop() { return *m_window->desk()->shop(); }
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QWidget* target = QApplication::focusWidget();
        ASSERT_NE(target, nullptr) << "nothing has the keyboard";
        QTest::keyClick(target, key, modifiers);
        QCoreApplication::processEvents();
    }
    QString badge() {
        return m_window->findChild<QWidget*>(QStringLiteral("rail-cutting-bench"))->accessibleDescription();
    }
    Button* wayBack() { return m_window->findChild<Button*>(QStringLiteral("wayBack")); }
    const BenchModel& bench() {
        const auto* place = qobject_cast<const CuttingBenchPlace*>(workshop().place());
        if (!place)
            stopBecause("the cutting bench is not shown");
        return place->model();
    }

    UsualShop usual;
    std::unique_ptr<MainWindow> m_window;
};

} // namespace

TEST_F(WaysToTheBench, RailCountsTheDecalsThatMayBeCut) {
    takeOrder({aGarment(usual), aGarment(usual)});
    openWindow();
    QTRY_COMPARE(badge(), QStringLiteral("2 decals to cut"));
    key(Qt::Key_5, Qt::ControlModifier);
    key(Qt::Key_Delete); // left out for now, it waits all the same
    QTRY_COMPARE(badge(), QStringLiteral("2 decals to cut"));
    key(Qt::Key_C);
    QTRY_COMPARE(badge(), QStringLiteral("1 decal to cut"));
    key(Qt::Key_Z, Qt::ControlModifier);
    QTRY_COMPARE(badge(), QStringLiteral("2 decals to cut"));
}

TEST_F(WaysToTheBench, FinderOffersTheBenchOfEachFilmThatHasWork) {
    const FilmId gorse = addFilm("Gorse");
    receiveRoll(gorse, usual.place);
    takeOrder({aGarment(usual)});
    GarmentDraft other = aGarment(usual);
    other.decals.front().film = gorse;
    takeOrder({other, other}, "Teodor Wick");
    addFilm("Bracken"); // nothing waits for it
    const auto titled = [&](const char* typed) {
        std::vector<std::string> titles;
        for (const FinderEntry& entry : findEntries(desk(), QString::fromUtf8(typed)))
            titles.push_back((entry.title + QStringLiteral("; ") + entry.second).toStdString());
        return titles;
    };
    const auto offers = titled("cut gor");
    ASSERT_FALSE(offers.empty());
    EXPECT_EQ(offers.front(), "Cut Marram Soft, Gorse; 2 decals wait");
    EXPECT_TRUE(titled("cut bracken").empty());
    const auto places = titled("cutting b");
    ASSERT_FALSE(places.empty());
    EXPECT_EQ(places.front(), "Cutting bench; ");

    openWindow();
    key(Qt::Key_K, Qt::ControlModifier);
    typeText(QStringLiteral("cut gor"));
    key(Qt::Key_Return);
    EXPECT_EQ(workshop().current(), PlaceName::CuttingBench);
    EXPECT_EQ(bench().film()->film, gorse);
}

TEST_F(WaysToTheBench, FilmShelfLaysWhatIsTickedOnTheBenchWithItsRollFirst) {
    time().pass(48h);
    const RollId newer = receiveRoll(usual.film, usual.place);
    takeOrder({aGarment(usual), aGarment(usual)});
    const auto second = takeOrder({aGarment(usual)}, "Teodor Wick");
    openWindow();
    key(Qt::Key_3, Qt::ControlModifier); // the older roll, which has all of the work
    key(Qt::Key_Right);
    key(Qt::Key_Down);
    key(Qt::Key_Space); // not the second order's
    key(Qt::Key_C);
    ASSERT_EQ(workshop().current(), PlaceName::CuttingBench) << workshop().foot()->words().toStdString();
    EXPECT_EQ(bench().onBench().firstRoll, usual.roll);
    ASSERT_EQ(bench().nests().size(), 1U);
    EXPECT_EQ(bench().nests().front().decals.size(), 2U);
    EXPECT_NE(bench().nests().front().roll, newer);
    const auto unticked = std::ranges::find(shop().facts.garments, second.id, &Garment::order);
    EXPECT_EQ(bench().onBench().wish.leftOut, std::set<DecalId>{(*unticked).decals.front().id});
    EXPECT_EQ(shop().facts.rolls.at(usual.roll).left, 5000_mm) << "nothing is charged before it is cut";
    key(Qt::Key_C);
    EXPECT_EQ(shop().facts.rolls.at(usual.roll).left, 5000_mm - 288_mm);

    ASSERT_TRUE(wayBack()->isVisible());
    key(Qt::Key_Left, Qt::AltModifier);
    EXPECT_EQ(workshop().current(), PlaceName::FilmShelf);
    EXPECT_FALSE(wayBack()->isVisible());
}

TEST_F(WaysToTheBench, PressWalkLeadsToTheDecalThatItsGarmentWaitsForAndAltLeftGoesBack) {
    const FilmId gorse = addFilm("Gorse");
    const RollId gorseRoll = receiveRoll(gorse, usual.place);
    takeOrder({aGarment(usual)});
    GarmentDraft other = aGarment(usual);
    other.decals.front().film = gorse;
    takeOrder({other}, "Teodor Wick");
    openWindow();
    key(Qt::Key_2, Qt::ControlModifier);
    auto* aside = m_window->findChild<QAbstractItemView*>(QStringLiteral("asideList"));
    ASSERT_EQ(aside->model()->rowCount(), 2);
    aside->setFocus();
    key(Qt::Key_End);
    const QString card = aside->currentIndex().data().toString();
    key(Qt::Key_F);
    ASSERT_EQ(workshop().current(), PlaceName::CuttingBench);
    const bool isGorse = bench().film()->film == gorse;
    EXPECT_TRUE(card.contains(isGorse ? QStringLiteral("Cut from R-02") : QStringLiteral("Cut from R-01")))
        << card.toStdString();
    EXPECT_EQ(bench().onBench().firstRoll, isGorse ? gorseRoll : usual.roll);
    ASSERT_TRUE(bench().chosen().has_value());
    EXPECT_EQ(bench().decal(*bench().chosen()).decal->film, bench().film()->film);
    EXPECT_EQ(shop().facts.rolls.at(gorseRoll).left, 5000_mm);

    EXPECT_EQ(wayBack()->text().toStdString(), "Back to Press walk");
    key(Qt::Key_Left, Qt::AltModifier);
    EXPECT_EQ(workshop().current(), PlaceName::PressWalk);
    // A place that is turned to by its own key was led to by none.
    key(Qt::Key_5, Qt::ControlModifier);
    EXPECT_FALSE(wayBack()->isVisible());
    key(Qt::Key_Left, Qt::AltModifier);
    EXPECT_EQ(workshop().current(), PlaceName::CuttingBench);
}

TEST_F(WaysToTheBench, TwelveFilmsScrollAndTheChosenOneIsInView) {
    for (int at = 0; at < 12; ++at) {
        const FilmId film = addFilm("Long-named shade of the heath " + std::to_string(at));
        receiveRoll(film, usual.place);
        GarmentDraft garment = aGarment(usual);
        garment.decals.front().film = film;
        takeOrder({garment});
    }
    openWindow();
    key(Qt::Key_5, Qt::ControlModifier);
    auto* films = m_window->findChild<SewnTabs*>(QStringLiteral("films"));
    ASSERT_GT(films->sizeHint().width(), films->width()) << "they all fit";
    EXPECT_LE(m_window->minimumSizeHint().width(), m_window->width());
    key(Qt::Key_F);
    for (int at = 0; at < 12; ++at) {
        const QRect tab = films->currentTab();
        EXPECT_TRUE(films->rect().contains(tab)) << at << " at " << tab.left() << " to " << tab.right();
        EXPECT_EQ(films->currentAt(), at);
        EXPECT_EQ(bench().filmAt(), at);
        key(Qt::Key_Right);
    }
    // The chevron at the left moves them, and chooses none.
    QTest::mouseClick(films, Qt::LeftButton, {}, QPoint(8, 30));
    EXPECT_EQ(films->currentAt(), 11);
    EXPECT_FALSE(films->rect().contains(films->currentTab()));
    key(Qt::Key_Home);
    EXPECT_TRUE(films->rect().contains(films->currentTab()));
}

} // namespace holdfast::app::test
