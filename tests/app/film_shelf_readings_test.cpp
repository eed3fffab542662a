// SPDX-License-Identifier: GPL-3.0-or-later
// Readings that were noted wrongly are corrected and removed where the air is shown in full.
#include "app/places/film_shelf/readings_list.h"
#include "app/widgets/button.h"
#include "db/tables/facts.h"
#include "tests/app/film_shelf_fixture.h"

#include <QAbstractItemModelTester>
#include <QStyledItemDelegate>
#include <QTest>

namespace holdfast::app::test {

namespace {

class CountingDelegate : public QStyledItemDelegate {
public:
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        ++asked;
        QStyledItemDelegate::paint(painter, option, index);
    }
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        ++asked;
        return QStyledItemDelegate::sizeHint(option, index);
    }
    mutable int asked = 0;
};

class FilmShelfReadings : public FilmShelf {
protected:
    // Hourly, the newest an hour ago.
    void record(int count) {
        ClimateSeries readings;
        for (int hour = count; hour >= 1; --hour)
            readings.push_back({now().instant - Hours{hour}, {18.0 + hour % 4}, 44_rh});
        valueOf(db::importReadings(file(), usual.place, readings));
    }
    void openReadings() {
        open();
        key(Qt::Key_G);
        key(Qt::Key_K);
    }
    QListView* list() { return part<QListView>("readings"); }
    std::size_t readings() { return desk().shop()->climate.at(usual.place)->size(); }

    UsualShop usual = stockUsualShop();
};

} // namespace

TEST_F(FilmShelfReadings, StandNewestFirstWithWhatIsOutside) {
    record(5);
    valueOf(db::recordReading(file(), usual.place, {now().instant - 30min, {68}, {55}}));
    openReadings();
    ASSERT_TRUE(list()->isVisible());
    EXPECT_TRUE(list()->hasFocus());
    const QString first = list()->model()->index(0, 0).data().toString();
    const int at = first.contains(QStringLiteral("68")) ? 0 : 1; // the usual shop has one of this moment
    EXPECT_TRUE(list()->model()->index(at, 0).data().toString().endsWith(
        QStringLiteral("25 Nov 2026 09:30: 55 %, 68.0 °C, too damp, too hot")))
        << list()->model()->index(at, 0).data().toString().toStdString();
    EXPECT_EQ(list()->model()->rowCount(), static_cast<int>(readings()));
    key(Qt::Key_K);
    EXPECT_FALSE(list()->isVisible());
    key(Qt::Key_Escape);
    EXPECT_TRUE(shelf()->hasFocus());
}

TEST_F(FilmShelfReadings, EnterAsksForTheCorrectionOfTheCurrentOne) {
    record(5);
    openReadings();
    key(Qt::Key_Down);
    key(Qt::Key_Down);
    key(Qt::Key_Return);
    ASSERT_FALSE(asked.empty());
    EXPECT_EQ(asked.back(), SlipName::CorrectReading);
    EXPECT_EQ(askedFor.place, usual.place);
    const auto& series = *desk().shop()->climate.at(usual.place);
    EXPECT_EQ(askedFor.at, series[series.size() - 3].at);
}

TEST_F(FilmShelfReadings, DeleteRemovesOneOrARunAndOneUndoBringsThemBack) {
    record(8);
    openReadings();
    const std::size_t before = readings();
    key(Qt::Key_Down);
    key(Qt::Key_Delete);
    EXPECT_EQ(readings(), before - 1);
    EXPECT_TRUE(list()->hasFocus());
    EXPECT_EQ(list()->currentIndex().row(), 1) << "the next older one is current";
    for (int more = 0; more < 2; ++more)
        QTest::keyClick(list(), Qt::Key_Down, Qt::ShiftModifier);
    EXPECT_EQ(part<Button>("removeReadings")->text(), QStringLiteral("Remove 3 readings"));
    EXPECT_FALSE(part<Button>("correctReading")->isEnabled());
    QTest::mouseClick(part<Button>("removeReadings"), Qt::LeftButton);
    EXPECT_EQ(readings(), before - 4);
    valueOf(file().undo(file().recent(1).front().id));
    EXPECT_EQ(readings(), before - 1);
}

TEST_F(FilmShelfReadings, ManyAreRemovedBesideTheWindow) {
    record(2000);
    openReadings();
    QString words;
    DeedBeside deed;
    QObject::connect(&desk(), &ShopDesk::besideAsked, place.get(),
                     [&](const QString& what, const DeedBeside& how) {
                         words = what;
                         deed = how;
                     });
    QTest::keyClick(list(), Qt::Key_End, Qt::ShiftModifier);
    key(Qt::Key_Delete);
    EXPECT_EQ(words, QStringLiteral("Removing readings"));
    ASSERT_TRUE(deed);
    const auto removed = deed(file(), {}).told;
    ASSERT_TRUE(removed.ok());
    EXPECT_EQ(*removed, "2,001 readings removed.");
}

// What is shown is asked for, and no more: a list that asked every line for its height would keep the window.
TEST_F(FilmShelfReadings, OfAHundredThousandOnlyThoseInSightAreLaidOut) {
    record(100'000);
    open();
    key(Qt::Key_G);
    CountingDelegate counting;
    list()->setItemDelegate(&counting);
    key(Qt::Key_K);
    QTest::keyClick(list(), Qt::Key_End);
    EXPECT_EQ(list()->currentIndex().row(), list()->model()->rowCount() - 1);
    EXPECT_GT(counting.asked, 0);
    EXPECT_LT(counting.asked, 1000);
    list()->setItemDelegate(nullptr);
}

TEST_F(FilmShelfReadings, TheirModelKeepsTheRules) {
    record(3);
    ReadingsModel model;
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.show(desk().shop()->climate.at(usual.place), {}, now());
    EXPECT_EQ(model.rowCount(), static_cast<int>(readings()));
    EXPECT_EQ(model.rowAt(model.reading(2).at), 2);
    EXPECT_EQ(model.rowAt(model.reading(2).at + 10s), 2);
    EXPECT_EQ(model.rowAt(Instant{}), model.rowCount() - 1);
    model.show(nullptr, {}, now());
    EXPECT_EQ(model.rowAt(Instant{}), -1);
}

} // namespace holdfast::app::test
