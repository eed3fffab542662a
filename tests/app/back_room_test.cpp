// SPDX-License-Identifier: GPL-3.0-or-later
// The Back room: what its sections say, where their lines lead, copies of the file, and news that goes
// between two laptops.

#include "app/places/back_room/back_room_place.h"
#include "app/places/back_room/room_lines.h"
#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "app/slips/form_slip.h"
#include "app/slips/orders_file_slip.h"
#include "app/theme/measures.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "app/widgets/long_field.h"
#include "db/actions/press_actions.h"
#include "db/actions/shop_actions.h"
#include "db/backups/backups.h"
#include "tests/app/shop_fixture.h"

#include <QAbstractButton>
#include <QApplication>
#include <QTest>

#include <algorithm>

namespace holdfast::app {
namespace {

using test::ShopFixture;
using test::showWindow;
using test::UsualShop;
using test::valueOf;
using namespace std::chrono_literals;
using namespace holdfast::literals;

class BackRoom : public ShopFixture {
protected:
    void TearDown() override { m_window.reset(); }

    BackRoomPlace& openRoom() { return openRoomOf(path()); }
    BackRoomPlace& openRoomOf(const std::filesystem::path& file) {
        close();
        m_window.reset();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(valueOf(db::Shop::open(file, time().clock().now)));
        showWindow(*m_window);
        workshop().turnTo(PlaceName::BackRoom);
        return room();
    }
    Workshop& workshop() { return *m_window->workshop(); }
    ShopDesk& window() { return *m_window->desk(); }
    BackRoomPlace& room() { return *qobject_cast<BackRoomPlace*>(workshop().place()); }
    QString foot() { return workshop().foot()->words(); }

    template <class Widget>
    Widget* find(const char* name) {
        return m_window->findChild<Widget*>(QLatin1String(name));
    }
    RoomSheet sheet(RoomSection section) {
        return roomSheet(section, *window().shop(), valueOf(readRoomFile(window().file())));
    }
    static const RoomLine* lineNamed(const RoomSheet& sheet, const QString& name) {
        const auto found = std::ranges::find(sheet.lines, name, &RoomLine::name);
        return found == sheet.lines.end() ? nullptr : &*found;
    }

    // Down to the line and Enter, as a person does.
    void enterOnLine(int line) {
        auto* lines = find<RoomLines>("roomLines");
        lines->setFocus();
        for (int at = 0; at < line; ++at)
            QTest::keyClick(lines, Qt::Key_Down);
        QTest::keyClick(lines, Qt::Key_Return);
    }
    QString errorAt(const char* part) {
        return qobject_cast<FormSlip*>(workshop().slipEdge()->slip())->form().errorAt(part);
    }
    void hit(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(QApplication::focusWidget(), key, modifiers);
    }
    void typeInto(const char* field, const QString& text) {
        if (auto* longer = find<LongField>(field)) {
            longer->setText(text);
            longer->setFocus();
            emit longer->edited(text);
            return;
        }
        auto* line = find<Field>(field);
        ASSERT_NE(line, nullptr) << field;
        line->setText(text);
        line->setFocus();
        emit line->edited(text);
    }

    std::unique_ptr<MainWindow> m_window;
};

TEST_F(BackRoom, EverySectionOfAnEmptyShopSaysWhatStandsThere) {
    openRoom();
    for (int at = 0; at < kRoomSections; ++at) {
        const RoomSheet shown = sheet(static_cast<RoomSection>(at));
        EXPECT_FALSE(shown.title.isEmpty()) << at;
        EXPECT_FALSE(shown.summary.isEmpty()) << shown.title.toStdString();
        EXPECT_TRUE(!shown.lines.isEmpty() || (!shown.intro.isEmpty() && !shown.acts.isEmpty()))
            << shown.title.toStdString();
    }
    EXPECT_EQ(find<Choice>("sections")->items().size(), kRoomSections);
    EXPECT_TRUE(find<Choice>("sections")->isAncestorOf(QApplication::focusWidget()));
}

TEST_F(BackRoom, HeadingLeadsToTheFormOfItsPartOnlyAndTheSheetSaysWhatWasKept) {
    openRoom();
    room().turnToSection(RoomSection::Prices);
    enterOnLine(0);
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    EXPECT_NE(find<Field>("marginPercent"), nullptr);
    EXPECT_EQ(find<Field>("shopName"), nullptr);
    EXPECT_EQ(find<Field>("washTakes"), nullptr);
    typeInto("marginPercent", QStringLiteral("52"));
    hit(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_FALSE(workshop().slipEdge()->isOpen());
    EXPECT_EQ(window().shop()->facts.settings.marginPercent, 52);
    const auto* margin = lineNamed(sheet(RoomSection::Prices), QStringLiteral("Margin"));
    ASSERT_NE(margin, nullptr);
    EXPECT_EQ(margin->text, QStringLiteral("52 % of the price"));
}

TEST_F(BackRoom, DaysOfTheSameHoursStandInOneLine) {
    ShopSettings settings;
    settings.week.fill(OpeningHours{9h, 17h});
    settings.week[0].reset(); // Sunday
    settings.week[3] = OpeningHours{9h, 13h};
    ASSERT_TRUE(db::changeSettings(file(), settings).ok());
    openRoom();
    const RoomSheet shop = sheet(RoomSection::Shop);
    EXPECT_EQ(lineNamed(shop, QStringLiteral("Monday to Tuesday"))->text, QStringLiteral("09:00 to 17:00"));
    EXPECT_EQ(lineNamed(shop, QStringLiteral("Wednesday"))->text, QStringLiteral("09:00 to 13:00"));
    EXPECT_EQ(lineNamed(shop, QStringLiteral("Thursday to Saturday"))->text,
              QStringLiteral("09:00 to 17:00"));
    EXPECT_EQ(lineNamed(shop, QStringLiteral("Sunday"))->text, QStringLiteral("closed"));
}

TEST_F(BackRoom, FilmWithoutARecipeSaysSoAndEnterLeadsToIt) {
    stockUsualShop();
    addFilm("Oyster", [](Film& film) { film.recipe.reset(); });
    openRoom();
    const RoomSheet films = sheet(RoomSection::Films);
    EXPECT_EQ(films.summary, QStringLiteral("2, 1 to confirm"));
    const RoomLine* oyster = lineNamed(films, QStringLiteral("Marram Soft, Oyster"));
    ASSERT_NE(oyster, nullptr);
    EXPECT_EQ(oyster->tone, Tone::Held);
    EXPECT_EQ(oyster->state, QStringLiteral("no recipe"));
    room().turnToSection(RoomSection::Films);
    enterOnLine(static_cast<int>(oyster - films.lines.data()));
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    EXPECT_NE(find<Field>("dwell"), nullptr);
}

TEST_F(BackRoom, WhatIsRetiredIsBelowWhatIsOffered) {
    const UsualShop usual = stockUsualShop();
    addFilm("Oyster", [](Film& film) { film.isRetired = true; });
    addStyle("Apron", [](BlankStyle& style) { style.isRetired = true; });
    openRoom();
    const RoomSheet films = sheet(RoomSection::Films);
    EXPECT_EQ(films.summary, QStringLiteral("1, all confirmed"));
    ASSERT_GE(films.lines.size(), 5);
    EXPECT_EQ(films.lines[0].name, QStringLiteral("Marram Soft, Dusk"));
    EXPECT_EQ(films.lines[1].name, QStringLiteral("Retired"));
    EXPECT_EQ(films.lines[2].state, QStringLiteral("retired"));
    EXPECT_EQ(films.lines[3].name, QStringLiteral("Storage places"));
    const RoomSheet styles = sheet(RoomSection::Styles);
    EXPECT_EQ(styles.summary, QStringLiteral("1"));
    EXPECT_EQ(styles.lines[0].name, QStringLiteral("Tee"));
    EXPECT_EQ(styles.lines[2].name, QStringLiteral("Apron"));
    room().turnToSection(RoomSection::Styles);
    enterOnLine(0);
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    EXPECT_TRUE(find<Field>("cost")->isAncestorOf(QApplication::focusWidget())) << "it begins at the cost";
    typeInto("cost", QStringLiteral("5.20"));
    hit(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_EQ(window().shop()->facts.styles.at(usual.style).cost, Money{520});
}

TEST_F(BackRoom, FilmIsChangedByTheOtherThingThatItsLineOffers) {
    const UsualShop usual = stockUsualShop();
    openRoom();
    room().turnToSection(RoomSection::Films);
    find<RoomLines>("roomLines")->setFocus();
    hit(Qt::Key_Left);
    hit(Qt::Key_Return);
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    EXPECT_EQ(find<Field>("shade")->text(), QStringLiteral("Dusk"));
    const Film before = window().shop()->facts.films.at(usual.film);
    typeInto("costPerMetre", QStringLiteral("7.25"));
    hit(Qt::Key_Return, Qt::ControlModifier);
    const Film after = window().shop()->facts.films.at(usual.film);
    EXPECT_EQ(after.costPerMetre.minor, 725);
    EXPECT_EQ(after.recipe, before.recipe);
    EXPECT_EQ(after.storage, before.storage);
    EXPECT_EQ(after.care, before.care);
    EXPECT_EQ(after.shelfLife, before.shelfLife);
}

TEST_F(BackRoom, TabAndEnterGoFromTheSectionsIntoWhatIsShown) {
    stockUsualShop();
    openRoom();
    const auto* sections = find<Choice>("sections");
    auto* lines = find<RoomLines>("roomLines");
    for (const Qt::Key key : {Qt::Key_Return, Qt::Key_Tab}) {
        room().turnToSection(RoomSection::Prices);
        find<Choice>("sections")->takeFocus();
        hit(key);
        EXPECT_EQ(QApplication::focusWidget(), lines) << "there are no acts: its lines";
        room().turnToSection(RoomSection::Films);
        find<Choice>("sections")->takeFocus();
        hit(key);
        const auto* act = qobject_cast<QAbstractButton*>(QApplication::focusWidget());
        ASSERT_NE(act, nullptr);
        EXPECT_EQ(act->text(), QStringLiteral("Add a film")) << "its acts first";
        EXPECT_FALSE(sections->isAncestorOf(act));
        hit(Qt::Key_Tab);
        EXPECT_EQ(QApplication::focusWidget(), lines);
    }
    room().turnToSection(RoomSection::Prices);
    find<Choice>("sections")->takeFocus();
    hit(Qt::Key_Return);
    hit(Qt::Key_Return);
    EXPECT_TRUE(workshop().slipEdge()->isOpen()) << "Change is the first there";
}

TEST_F(BackRoom, ClickDoesWhatIsUnderIt) {
    stockUsualShop();
    openRoom();
    room().turnToSection(RoomSection::Films);
    std::vector<SlipName> asked;
    QObject::connect(&window(), &ShopDesk::slipAsked, &window(),
                     [&](SlipName slip) { asked.push_back(slip); });
    auto* lines = find<RoomLines>("roomLines");
    const int middle = 8 + 10;
    const int right = lines->width() - kCardPadding;
    QTest::mouseClick(lines, Qt::LeftButton, {}, QPoint(right - 20, middle));
    EXPECT_EQ(asked, std::vector{SlipName::Recipe});
    workshop().slipEdge()->close();
    QTest::mouseClick(lines, Qt::LeftButton, {}, QPoint(right - 100, middle));
    EXPECT_EQ(asked, (std::vector{SlipName::Recipe, SlipName::FilmSheet}));
    workshop().slipEdge()->close();
    QTest::mouseClick(lines, Qt::LeftButton, {}, QPoint(60, middle));
    EXPECT_EQ(asked.size(), 2U) << "words do nothing";
}

TEST_F(BackRoom, SevenFilmsAndMoreAreOnAScreenAndTheKeysBringTheRestIntoView) {
    for (int number = 0; number < 40; ++number)
        addFilm("Shade " + std::to_string(number));
    openRoom();
    room().turnToSection(RoomSection::Films);
    auto* lines = find<RoomLines>("roomLines");
    QTest::qWait(1);
    EXPECT_LE(lines->height() / 40, 80);
    EXPECT_GE(lines->visibleRegion().boundingRect().height() / (lines->height() / 40), 7);
    lines->setFocus();
    hit(Qt::Key_End);
    EXPECT_EQ(lines->visibleRegion().boundingRect().bottom(), lines->rect().bottom());
    hit(Qt::Key_Home);
    EXPECT_EQ(lines->visibleRegion().boundingRect().top(), 0);
}

TEST_F(BackRoom, PressSaysWhetherItIsInOrderAndWhatToDialIn) {
    const UsualShop usual = stockUsualShop();
    openRoom();
    EXPECT_EQ(sheet(RoomSection::Presses).lines[0].state, QStringLiteral("in order"));
    ASSERT_TRUE(
        db::recordPressCheck(window().file(), usual.press, {150}, {{145}, {146}, {145}}, "Wren").ok());
    RoomLine bench = sheet(RoomSection::Presses).lines[0];
    EXPECT_EQ(bench.tone, Tone::Held);
    EXPECT_EQ(bench.state, QStringLiteral("dial in 4.7 °C"));
    ASSERT_TRUE(
        db::recordPressCheck(window().file(), usual.press, {150}, {{145}, {155}, {150}}, "Wren").ok());
    EXPECT_EQ(sheet(RoomSection::Presses).lines[0].state, QStringLiteral("uneven"));
    ASSERT_TRUE(
        db::recordPressCheck(window().file(), usual.press, {150}, {{150}, {151}, {150}}, "Wren").ok());
    time().pass(31 * 24h);
    openRoom();
    EXPECT_EQ(sheet(RoomSection::Presses).lines[0].state, QStringLiteral("check due"));
}

TEST_F(BackRoom, AKeyBelongsToTheSectionInView) {
    stockUsualShop();
    openRoom();
    std::vector<SlipName> asked;
    QObject::connect(&window(), &ShopDesk::slipAsked, &window(),
                     [&](SlipName slip) { asked.push_back(slip); });
    for (const RoomSection section : {RoomSection::Styles, RoomSection::Films, RoomSection::Presses,
                                      RoomSection::Fairs, RoomSection::Shop}) {
        room().turnToSection(section);
        find<Choice>("sections")->takeFocus();
        hit(Qt::Key_A);
        workshop().slipEdge()->close();
    }
    EXPECT_EQ(asked, (std::vector<SlipName>{SlipName::AddStyle, SlipName::AddFilm, SlipName::AddPress,
                                            SlipName::AddFair}));
}

TEST_F(BackRoom, CopyIsRememberedWithItsDayAndIsSoonTooOld) {
    stockUsualShop();
    openRoom();
    EXPECT_EQ(sheet(RoomSection::Copies).summary, QStringLiteral("no backup yet"));
    room().turnToSection(RoomSection::Copies);
    find<Choice>("sections")->takeFocus();
    hit(Qt::Key_B);
    const std::filesystem::path copy = path().parent_path() / "copy.holdfast";
    typeInto("path", QString::fromStdString(copy));
    hit(Qt::Key_Return, Qt::ControlModifier);
    QTRY_VERIFY(foot().startsWith(QStringLiteral("Backed up to")));
    EXPECT_EQ(sheet(RoomSection::Copies).summary, QStringLiteral("backed up by hand today"));
    // The backup of the day, which is made by itself, is looked for when an errand is done.
    QTRY_COMPARE(find<Choice>("sections")->items()[static_cast<int>(RoomSection::Copies)].second,
                 QStringLiteral("backed up today"));
    time().pass(9 * 24h);
    openRoom();
    const RoomLine last = sheet(RoomSection::Copies).lines[1];
    EXPECT_EQ(last.tone, Tone::Caution);
    EXPECT_EQ(last.state, QStringLiteral("9 days ago"));
}

// A stick that keeps no owners shows its files to everybody on the computer.
TEST_F(BackRoom, ShopThatOthersCanReadIsSaid) {
    stockUsualShop();
    openRoom();
    EXPECT_TRUE(sheet(RoomSection::Copies).lines[0].state.isEmpty());
    std::filesystem::permissions(path(), std::filesystem::perms::group_read,
                                 std::filesystem::perm_options::add);
    emit window().minutePassed();
    EXPECT_EQ(sheet(RoomSection::Copies).lines[0].state, QStringLiteral("others can read it"));
    EXPECT_EQ(sheet(RoomSection::Copies).lines[0].tone, Tone::Caution);
}

// A copy for the fair laptop, an order taken there, its news taken in here, and the workshop's taken in
// there.
TEST_F(BackRoom, NewsGoesBetweenTwoLaptops) {
    const UsualShop usual = stockUsualShop();
    openRoom();
    room().turnToSection(RoomSection::Laptops);
    EXPECT_EQ(sheet(RoomSection::Laptops).summary, QStringLiteral("only this laptop"));
    find<Choice>("sections")->takeFocus();
    hit(Qt::Key_L);
    const auto fairPath = path().parent_path() / "fair.holdfast";
    typeInto("path", QString::fromStdString(fairPath));
    hit(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_TRUE(workshop().slipEdge()->isOpen()) << "without a name for the laptop";
    typeInto("name", QStringLiteral("Fair laptop"));
    hit(Qt::Key_Return, Qt::ControlModifier);
    QTRY_VERIFY(foot().startsWith(QStringLiteral("The shop for Fair laptop is in")));
    EXPECT_NE(lineNamed(sheet(RoomSection::Laptops), QStringLiteral("Fair laptop")), nullptr);
    EXPECT_EQ(sheet(RoomSection::Laptops).summary, QStringLiteral("nothing from Fair laptop yet"))
        << "nobody here knows what was done there";

    auto fair = valueOf(db::Shop::open(fairPath, time().clock().now));
    const auto taken = valueOf(db::takeOrder(*fair, anOrder({aGarment(usual)}, "Bronagh Tull"), now()));
    const auto news = path().parent_path() / "from-the-fair.holdfast-news";
    ASSERT_EQ(valueOf(db::writeNews(*fair, news)).entries, 1);

    find<Choice>("sections")->takeFocus();
    hit(Qt::Key_T);
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    EXPECT_EQ(find<LongField>("path")->text(), QString::fromStdString(news)) << "the newest lies ready";
    QTRY_VERIFY(find<QWidget>("foundNews")->isVisible());
    hit(Qt::Key_Return, Qt::ControlModifier);
    QTRY_VERIFY(foot().startsWith(QStringLiteral("Brought in 1 entry from Fair laptop.")));
    EXPECT_TRUE(std::ranges::any_of(db::backupsOf(path()), [](const db::KeptBackup& backup) {
        return backup.reason == db::BackupReason::BeforeNews && db::ordersIn(backup) == 0;
    })) << "backed up before";
    ASSERT_NE(window().shop()->facts.orders.find(taken.id), nullptr);
    EXPECT_EQ(sheet(RoomSection::Laptops).summary, QStringLiteral("1 to fetch")) << "what came in here";
    EXPECT_EQ(window().shop()->facts.orders.at(taken.id).number, taken.number);

    ASSERT_TRUE(db::changeSettings(window().file(),
                                   [&] {
                                       ShopSettings settings = window().shop()->facts.settings;
                                       settings.shopName = "Tern & Thimble";
                                       return settings;
                                   }())
                    .ok());
    find<Choice>("sections")->takeFocus();
    hit(Qt::Key_W);
    const auto back = path().parent_path() / "to-the-fair.holdfast-news";
    typeInto("path", QString::fromStdString(back));
    hit(Qt::Key_Return, Qt::ControlModifier);
    QTRY_VERIFY(foot().startsWith(QStringLiteral("News for Fair laptop:")));
    ASSERT_TRUE(db::takeInNews(*fair, back).ok());
    const auto name = fair->read([](db::Connection& connection) {
        return connection.number("SELECT COUNT(*) FROM setting WHERE value = 'Tern & Thimble'");
    });
    EXPECT_EQ(*name, 1);
}

// The workshop's file is lost: the laptop's copy takes its place.
TEST_F(BackRoom, ALaptopsCopyIsMadeTheWorkshops) {
    const UsualShop usual = stockUsualShop();
    const auto copy = path().parent_path() / "laptop.holdfast";
    valueOf(db::makeCopyForLaptop(file(), copy, "Fair laptop"));
    openRoomOf(copy);
    room().turnToSection(RoomSection::Laptops);
    find<Choice>("sections")->takeFocus();
    hit(Qt::Key_M);
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    hit(Qt::Key_Escape);
    EXPECT_FALSE(workshop().slipEdge()->isOpen());
    EXPECT_EQ(lineNamed(sheet(RoomSection::Laptops), QStringLiteral("Fair laptop"))->text.left(11),
              QStringLiteral("This laptop"))
        << "left without doing it";

    find<Choice>("sections")->takeFocus();
    hit(Qt::Key_M);
    hit(Qt::Key_Return, Qt::ControlModifier);
    QTRY_VERIFY(foot().startsWith(QStringLiteral("This is the workshop’s copy now.")));
    EXPECT_EQ(lineNamed(sheet(RoomSection::Laptops), QStringLiteral("This workshop"))->text.left(11),
              QStringLiteral("This laptop"));
    const auto taken =
        valueOf(db::takeOrder(window().file(), anOrder({aGarment(usual)}, "Bronagh Tull"), now()));
    EXPECT_EQ(taken.number, 201);
    EXPECT_EQ(lineNamed(sheet(RoomSection::Laptops), QStringLiteral("Fair laptop")), nullptr)
        << "nobody has that copy any more";
    workshop().doErrand(Errand::BecomeWorkshop);
    EXPECT_TRUE(workshop().foot()->isFailure()) << "it is already";
}

TEST_F(BackRoom, WhatIsNoNewsIsRefusedInWordsBeforeAnythingIsDone) {
    stockUsualShop();
    openRoom();
    workshop().doErrand(Errand::TakeInNews);
    typeInto("path", QString::fromStdString(path()));
    hit(Qt::Key_Return, Qt::ControlModifier);
    QTRY_VERIFY(!errorAt("path").isEmpty());
    EXPECT_TRUE(workshop().slipEdge()->isOpen());
    typeInto("path", QStringLiteral("/nowhere/at.all"));
    hit(Qt::Key_Return, Qt::ControlModifier);
    QTRY_VERIFY(errorAt("path").contains(QStringLiteral("There is no file")));
    workshop().doErrand(Errand::WriteNews);
    EXPECT_TRUE(workshop().foot()->isFailure()) << "there is no other laptop";
}

TEST_F(BackRoom, OrdersOfAFileAreTakenFromTheSheetOfFilesByItsKey) {
    openRoom();
    room().turnToSection(RoomSection::Copies);
    hit(Qt::Key_T);
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    EXPECT_NE(qobject_cast<OrdersFileSlip*>(workshop().slipEdge()->slip()), nullptr);
}

} // namespace
} // namespace holdfast::app
