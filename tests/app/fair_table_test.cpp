// The fair table by its real widgets and keys.

#include "app/desk/formats.h"
#include "app/places/fair_table/customer_list.h"
#include "app/places/fair_table/draft_note.h"
#include "app/places/fair_table/fair_table_place.h"
#include "app/places/fair_table/film_list.h"
#include "app/places/fair_table/garment_stage.h"
#include "app/places/fair_table/order_lines.h"
#include "app/places/fair_table/today_tools.h"
#include "app/widgets/banner.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "app/widgets/stepper.h"
#include "db/actions/film_actions.h"
#include "db/actions/shop_actions.h"
#include "db/tables/order_book.h"
#include "tests/app/shop_fixture.h"

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QTest>

namespace holdfast::app::test {

namespace {

class FairTable : public ShopFixture {
protected:
    void TearDown() override { leave(); }

    // The table over the usual shop, as large as the shell makes it.
    FairTablePlace& open() {
        m_place = std::make_unique<FairTablePlace>(desk());
        showWindow(*m_place, {1270, 708});
        m_place->opened();
        return *m_place;
    }
    void leave() { m_place.reset(); }

    FairTablePlace& place() { return *m_place; }
    FairTableModel& table() { return m_place->model(); }
    const TableDraft& draft() { return table().draft(); }

    template <class Widget>
    Widget& child(const char* name) {
        auto* found = m_place->window()->findChild<Widget*>(QString::fromLatin1(name));
        if (!found)
            stopBecause(std::string("no widget named ") + name);
        return *found;
    }

    void key(int which, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QWidget* target = QApplication::focusWidget();
        ASSERT_NE(target, nullptr);
        ++m_keyActions;
        QTest::keyClick(target, static_cast<Qt::Key>(which), modifiers);
        QCoreApplication::processEvents(); // tiles that came with the choice are shown
    }
    // Each letter goes to whatever has the keyboard by then.
    void keys(const char* letters) {
        for (const char* letter = letters; *letter; ++letter) {
            QWidget* target = QApplication::focusWidget();
            ASSERT_NE(target, nullptr);
            ++m_keyActions;
            QTest::keyClick(target, *letter);
            QCoreApplication::processEvents();
        }
    }
    // Over what stands in the field.
    void typeInto(const char* field, const QString& text) {
        QLineEdit* editor = child<Field>(field).editor();
        editor->setFocus();
        editor->selectAll();
        QTest::keyClick(editor, Qt::Key_Delete);
        typeText(text);
    }

    std::vector<QString> said() {
        std::vector<QString> words;
        for (Banner* banner : m_place->findChildren<Banner*>())
            if (banner->isVisibleTo(m_place.get()))
                words.push_back(banner->accessibleName());
        return words;
    }
    bool isSaid(const QString& words) {
        return std::ranges::any_of(said(), [&](const QString& line) { return line.contains(words); });
    }

    // Tee, M, Moss with a heron: all but the customer.
    void chooseHeronOnMossTee() { keys("g1s2c1d2"); }

    std::vector<db::OrderLine> orders() {
        return valueOf(file().read([](db::Connection& connection) {
            return db::findOrders(connection, "", db::OrderFilter::All, 10);
        }));
    }

    std::unique_ptr<FairTablePlace> m_place;
    int m_keyActions = 0;
};

} // namespace

TEST_F(FairTable, AnOrderFromFirstKeyToLastTakesFewerThanThirtyKeyActions) {
    const UsualShop usual = stockUsualShop();
    open();
    keys("1s2c1d2nJuno");
    key(Qt::Key_Return); // who is it for?
    keys("Bronagh");
    key(Qt::Key_Return);
    EXPECT_LT(m_keyActions, 30);

    ASSERT_EQ(orders().size(), 1u);
    EXPECT_EQ(orders()[0].customer, "Bronagh");
    const ShopFacts& facts = desk().shop()->facts;
    const Garment& garment = **facts.garmentsOf(orders()[0].id).begin();
    EXPECT_EQ(garment.style, usual.style);
    EXPECT_EQ(garment.size, "M");
    EXPECT_EQ(garment.colour, usual.moss);
    EXPECT_TRUE(garment.lot.has_value());
    EXPECT_GT(garment.price.minor, 0);
    ASSERT_EQ(garment.decals.size(), 2u);
    EXPECT_EQ(garment.decals[0].content, DecalContent{Artwork{"heron"}});
    EXPECT_EQ(std::get<Wording>(garment.decals[1].content).text, "Juno");
    EXPECT_EQ(garment.decals[1].film, usual.film);
    EXPECT_TRUE(garment.decals[1].isConfirmed());
    EXPECT_GT(facts.orders.at(orders()[0].id).promised, now().local());
}

TEST_F(FairTable, PriceAndPromiseStandThereFromTheFirstChoice) {
    stockUsualShop();
    open();
    EXPECT_FALSE(table().sums().promise.has_value());
    keys("1");
    EXPECT_TRUE(table().sums().promise.has_value());
    EXPECT_GT(table().sums().total.minor, 0);
    EXPECT_TRUE(child<QWidget>("promise").accessibleName().startsWith(QStringLiteral("Ready ")));
    EXPECT_TRUE(child<QLabel>("costFloor").text().contains(money(table().sums().floor, desk().currency())));
}

TEST_F(FairTable, OnceTakenTheNumberIsLargeAndTheNextKeyBeginsAnotherOrder) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    typeInto("customerName", QStringLiteral("Odile"));
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 1u);
    QWidget& taken = child<QWidget>("taken");
    EXPECT_TRUE(taken.isVisibleTo(m_place.get()));
    EXPECT_TRUE(taken.accessibleName().contains(QStringLiteral("Order %1 taken").arg(orders()[0].number)));
    EXPECT_TRUE(taken.accessibleName().contains(QStringLiteral("Odile")));
    EXPECT_TRUE(draft().isUntouched());
    EXPECT_EQ(child<Field>("customerName").text(), QString());
    key(Qt::Key_Return); // a second Enter hides nothing
    EXPECT_TRUE(taken.isVisibleTo(m_place.get()));
    place().setFocus();
    keys("1");
    EXPECT_FALSE(taken.isVisibleTo(m_place.get()));
    EXPECT_TRUE(draft().garment().style.isSet());
}

TEST_F(FairTable, EnterLeadsToWhatIsMissingAndSaysIt) {
    stockUsualShop();
    open();
    place().setFocus();
    key(Qt::Key_Return);
    EXPECT_EQ(child<QLabel>("orderError").text(), QStringLiteral("Choose a style."));
    keys("1");
    EXPECT_TRUE(child<QLabel>("orderError").text().isEmpty());
    place().setFocus();
    key(Qt::Key_Return);
    EXPECT_EQ(child<QLabel>("orderError").text(), QStringLiteral("Choose a size."));
    EXPECT_TRUE(child<Choice>("size").isAncestorOf(QApplication::focusWidget()));
    keys("2c1d2");
    key(Qt::Key_Return);
    EXPECT_EQ(child<Field>("customerName").error(), QStringLiteral("Who is it for?"));
    EXPECT_EQ(QApplication::focusWidget(), child<Field>("customerName").editor());
    keys("A");
    EXPECT_EQ(child<Field>("customerName").error(), QString());
    EXPECT_TRUE(orders().empty());
}

TEST_F(FairTable, LettersJumpOnlyWhileNoFieldIsTypedIn) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    keys("ngs+");
    EXPECT_EQ(child<Field>("words").text(), QStringLiteral("gs+"));
    EXPECT_EQ(draft().garments.size(), 1u);
    key(Qt::Key_Escape);
    keys("s");
    EXPECT_TRUE(child<Choice>("size").isAncestorOf(QApplication::focusWidget()));
}

TEST_F(FairTable, NamesAndWordsOfAnyTongueAreKept) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    typeInto("words", QStringLiteral("Žofia Ünlü"));
    typeInto("customerName", QStringLiteral("Seán Ó Gráinne"));
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 1u);
    EXPECT_EQ(orders()[0].customer, "Seán Ó Gráinne");
    const auto garments = desk().shop()->facts.garmentsOf(orders()[0].id);
    EXPECT_EQ(std::get<Wording>(garments[0]->decals.back().content).text, "Žofia Ünlü");
}

TEST_F(FairTable, ANameOrNumberThatIsTooLongIsSaidAtItsField) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    typeInto("customerName", QString(81, u'é'));
    key(Qt::Key_Return);
    EXPECT_TRUE(child<Field>("customerName").error().contains(QStringLiteral("80")));
    typeInto("customerName", QString(80, u'é'));
    EXPECT_EQ(child<Field>("customerName").error(), QString());
    typeInto("customerPhone", QString(31, u'7'));
    key(Qt::Key_Return);
    EXPECT_TRUE(child<Field>("customerPhone").error().contains(QStringLiteral("30")));
    EXPECT_TRUE(orders().empty());
    typeInto("customerPhone", QStringLiteral("07700 900 418"));
    key(Qt::Key_Return);
    EXPECT_EQ(orders().size(), 1u);
}

TEST_F(FairTable, BlanksAreNoWordsAndTooManyLettersAreSaid) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    typeInto("words", QStringLiteral("   "));
    EXPECT_EQ(draft().garment().decals.size(), 1u);
    typeInto("customerName", QStringLiteral("Odile"));
    typeInto("words", QString(61, u'm'));
    key(Qt::Key_Return);
    EXPECT_TRUE(child<Field>("words").error().contains(QStringLiteral("60")));
    EXPECT_TRUE(orders().empty());
    typeInto("words", QString());
    EXPECT_EQ(draft().garment().decals.size(), 1u);
}

TEST_F(FairTable, DepositsThatCannotBeAreRefusedInWords) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    typeInto("customerName", QStringLiteral("Odile"));
    for (const char16_t* bad : {u"-5", u"ten", u"1000000", u"99999999999999999999999", u"½"}) {
        typeInto("depositTyped", QString::fromUtf16(bad));
        EXPECT_FALSE(child<QLabel>("depositError").text().isEmpty()) << QString::fromUtf16(bad).toStdString();
        key(Qt::Key_Return);
        EXPECT_TRUE(orders().empty());
        EXPECT_EQ(QApplication::focusWidget(), child<Field>("depositTyped").editor());
    }
    typeInto("depositTyped", QString());
    EXPECT_TRUE(child<QLabel>("depositError").text().isEmpty());
    typeInto("depositTyped", QStringLiteral("7,50"));
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 1u);
    EXPECT_EQ(orders()[0].paid, Money{750});
}

TEST_F(FairTable, ADepositIsChosenByKeysAndPaidByCard) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    typeInto("customerName", QStringLiteral("Odile"));
    key(Qt::Key_Escape);
    keys("e2");
    EXPECT_EQ(table().sums().deposit, Money{1000});
    child<Choice>("paidHow").takeFocus();
    keys("2");
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 1u);
    const auto moves = valueOf(
        file().read([&](db::Connection& connection) { return db::moneyOf(connection, orders()[0].id); }));
    ASSERT_EQ(moves.size(), 1u);
    EXPECT_EQ(moves[0].amount, Money{1000});
    EXPECT_EQ(moves[0].how, PaidHow::Card);
}

TEST_F(FairTable, AWidthThatCannotBeIsSaidAndChangesNothing) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    const DecalDraft before = draft().decal()->decal;
    for (const char* bad : {"-1", "0", "4", "2001", "99999999999", "wide"}) {
        typeInto("width", QString::fromLatin1(bad));
        EXPECT_FALSE(child<Field>("width").error().isEmpty()) << bad;
        EXPECT_EQ(draft().decal()->decal.height, before.height) << bad;
    }
    typeInto("width", QStringLiteral("140"));
    EXPECT_EQ(child<Field>("width").error(), QString());
    EXPECT_EQ(draft().decal()->decal.width, 140_mm);
    EXPECT_LT(draft().decal()->decal.height, before.height);
    EXPECT_EQ(draft().decal()->decal.below, before.below);
}

TEST_F(FairTable, ADecalWiderThanEveryRollIsSaidAtOnce) {
    stockUsualShop(); // rolls of 500 mm
    open();
    chooseHeronOnMossTee();
    EXPECT_FALSE(isSaid(QStringLiteral("fits no roll")));
    typeInto("width", QStringLiteral("620"));
    EXPECT_TRUE(isSaid(QStringLiteral("Heron, 620 mm wide, fits no roll.")));
    EXPECT_TRUE(isSaid(QStringLiteral("500 mm")));
}

TEST_F(FairTable, ARollThatIsTooShortIsSaidWithItsMetres) {
    const UsualShop usual = stockUsualShop();
    const FilmId film = addFilm("Gorse");
    receiveRoll(film, usual.place, 200_mm);
    open();
    chooseHeronOnMossTee();
    table().edit(Step::Choice, [&](TableDraft& draft) { chooseFilm(draft, film, false); });
    EXPECT_TRUE(isSaid(QStringLiteral("too short")));
    EXPECT_TRUE(isSaid(metres(200_mm)));
}

TEST_F(FairTable, AFilmThatDoesNotSuitTheClothIsSaidAtOnceAndInTheList) {
    stockUsualShop();
    addFilm("Kelp", [](Film& film) { film.notFor = {Fibre::Cotton}; });
    open();
    chooseHeronOnMossTee();
    EXPECT_TRUE(isSaid(QStringLiteral("fits.")));
    keys("f");
    auto& films = child<QListView>("films");
    ASSERT_EQ(QApplication::focusWidget(), &films);
    ASSERT_EQ(films.model()->rowCount(), 2);
    EXPECT_TRUE(films.model()->index(1, 0).data().toString().contains(QStringLiteral("does not hold")));
    key(Qt::Key_Down);
    key(Qt::Key_Return);
    EXPECT_TRUE(isSaid(QStringLiteral("Film not for cotton.")));
    EXPECT_TRUE(isSaid(QStringLiteral("No roll of Marram Soft, Kelp")));
    EXPECT_EQ(QApplication::focusWidget(), &child<QWidget>("film"));
}

TEST_F(FairTable, EscapeLeavesTheFilmsAsTheyWere) {
    stockUsualShop();
    addFilm("Kelp");
    open();
    chooseHeronOnMossTee();
    const FilmId before = draft().decal()->decal.film;
    keys("f");
    key(Qt::Key_Down);
    key(Qt::Key_Escape);
    EXPECT_EQ(draft().decal()->decal.film, before);
    EXPECT_FALSE(child<QListView>("films").isVisibleTo(m_place.get()));
}

TEST_F(FairTable, AFilmIsChosenForBothDecalsOrForOneAlone) {
    stockUsualShop();
    const FilmId kelp = addFilm("Kelp");
    open();
    chooseHeronOnMossTee();
    keys("nJo");
    key(Qt::Key_Escape);
    keys("f");
    key(Qt::Key_Down);
    key(Qt::Key_Return, Qt::ShiftModifier);
    EXPECT_NE(draft().garment().decals[0].decal.film, kelp);
    EXPECT_EQ(draft().garment().decals[1].decal.film, kelp);
    table().undo();
    keys("f");
    key(Qt::Key_Down);
    key(Qt::Key_Return);
    EXPECT_EQ(draft().garment().decals[0].decal.film, kelp);
    EXPECT_EQ(draft().garment().decals[1].decal.film, kelp);
}

TEST_F(FairTable, ABlankThatIsNotOnTheRailIsSaidAtOnce) {
    stockUsualShop();
    open();
    keys("1s4c1"); // XL
    EXPECT_TRUE(isSaid(QStringLiteral("No Tee, XL, Moss on the rail.")));
    keys("s2");
    EXPECT_TRUE(said().empty());
    keys("q");
    for (int more = 0; more < 7; ++more)
        key(Qt::Key_Up);
    EXPECT_TRUE(isSaid(QStringLiteral("Only 6 of 8 Tee, M, Moss on the rail.")));
}

TEST_F(FairTable, WhatStandsInThePlatensWayAndWearForChildrenIsSaidAtOnce) {
    stockUsualShop();
    addStyle("Small hoodie", [](BlankStyle& style) {
        style.obstacles = {{Obstacle::Zip, std::nullopt}};
        style.forChild = true;
    });
    open();
    keys("2");
    EXPECT_TRUE(isSaid(QStringLiteral("zip")));
    EXPECT_TRUE(isSaid(QStringLiteral("check local law")));
    keys("g1");
    EXPECT_FALSE(isSaid(QStringLiteral("zip")));
}

TEST_F(FairTable, ALabelThatIsNotReadIsSaidOnceAndItsFormIsAKeyAway) {
    stockUsualShop();
    const FilmId kelp = addFilm("Kelp");
    const BlankStyleId unread = addStyle("Smock", [](BlankStyle& style) { style.label.reset(); });
    open();
    keys("2d1nJo");
    table().edit(Step::Choice, [&](TableDraft& draft) { chooseFilm(draft, kelp, true); });
    const auto lines = said();
    EXPECT_EQ(std::ranges::count_if(
                  lines, [](const QString& line) { return line.contains(QStringLiteral("label")); }),
              1);
    std::optional<Matter> asked;
    QObject::connect(&desk(), &ShopDesk::slipAsked, m_place.get(), [&](SlipName slip, const Matter& matter) {
        EXPECT_EQ(slip, SlipName::ReadLabel);
        asked = matter;
    });
    auto* action = child<Banner>("message-0").findChild<QPushButton*>(QStringLiteral("bannerAction"));
    ASSERT_NE(action, nullptr);
    action->setFocus();
    key(Qt::Key_Return);
    ASSERT_TRUE(asked.has_value());
    EXPECT_EQ(asked->style, unread);
}

TEST_F(FairTable, LongNamesInAnyScriptNeitherWidenNorBreakTheTable) {
    const QString longName = QStringLiteral("Überlanger Mantel für Åsa Þórhildur und ihre sechzig Zeichen");
    addStyle(plain(longName), [&](BlankStyle& style) {
        style.sizes = {"Ärmellos, übergroße", "M"};
        style.colours = {{{}, plain(longName.left(40)), 0x66754c}, {{}, "Chalk", 0xf1efe6}};
    });
    addFilm(plain(longName.left(40)));
    open();
    const QSize before = m_place->minimumSizeHint();
    keys("1s1c1d2");
    typeInto("customerName", longName);
    EXPECT_EQ(draft().garment().colour, coloursOf(draft().garment().style)[0].id);
    QCoreApplication::processEvents();
    EXPECT_LE(m_place->minimumSizeHint().width(), std::max(1184, before.width()));
    EXPECT_EQ(child<QWidget>("style-0").accessibleName(), longName);
}

TEST_F(FairTable, TheTableFitsTheLowestWindow) {
    const UsualShop usual = stockUsualShop();
    wash(receiveBlanks(usual.style, "L", usual.chalk, 3), 3);
    open();
    // 1280 by 700, less rail, header and foot. The first step makes the table low.
    const auto shrunk = [this] {
        m_place->resize(1184, 626);
        return m_place->size();
    };
    QTRY_COMPARE(shrunk(), QSize(1184, 626));
    keys("1s3c1d2nJuno");
    key(Qt::Key_Escape);
    key(Qt::Key_Plus);
    keys("1s3c1d1");
    QCoreApplication::processEvents();
    EXPECT_LE(m_place->minimumSizeHint().width(), 1184);
    EXPECT_LE(m_place->minimumSizeHint().height(), 626);
    EXPECT_EQ(m_place->size(), QSize(1184, 626));
}

TEST_F(FairTable, ThinStrokesAreCalledAnEstimate) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    typeInto("words", QStringLiteral("Juno"));
    typeInto("width", QStringLiteral("30"));
    EXPECT_TRUE(isSaid(QStringLiteral("Name strokes are about")));
    EXPECT_TRUE(isSaid(QStringLiteral("An estimate.")));
    typeInto("width", QStringLiteral("150"));
    EXPECT_FALSE(isSaid(QStringLiteral("Name strokes are about")));
}

TEST_F(FairTable, AWashedColourIsOfferedWhereItIsSooner) {
    const UsualShop usual = stockUsualShop();
    wash(receiveBlanks(usual.style, "L", usual.chalk, 3), 3);
    open();
    keys("1s3c1d2"); // L, Moss: unwashed
    auto& sooner = child<QPushButton>("sooner");
    ASSERT_TRUE(sooner.isVisibleTo(m_place.get()));
    EXPECT_TRUE(sooner.text().startsWith(QStringLiteral("Washed Chalk: ")));
    const LocalTime before = table().sums().promise->readyAt;
    sooner.setFocus();
    key(Qt::Key_Space);
    EXPECT_EQ(draft().garment().colour, usual.chalk);
    EXPECT_LT(table().sums().promise->readyAt, before);
    EXPECT_FALSE(sooner.isVisibleTo(m_place.get()));
}

TEST_F(FairTable, AKnownCustomerIsFoundByNameOrNumberAndChosenByKeys) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)}, "Odile Farrant");
    takeOrder({aGarment(usual)}, "Odo Whelan");
    open();
    chooseHeronOnMossTee();
    keys("oOd");
    auto& list = child<CustomerList>("customers");
    ASSERT_TRUE(list.isVisible());
    key(Qt::Key_Down);
    key(Qt::Key_Return); // chooses; takes no order
    EXPECT_FALSE(list.isVisible());
    EXPECT_EQ(orders().size(), 2u);
    EXPECT_EQ(child<Field>("customerName").text(), QStringLiteral("Odile Farrant"));
    EXPECT_EQ(child<Field>("customerPhone").text(), QStringLiteral("07700 900418"));
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 3u);
    EXPECT_EQ(desk().shop()->facts.customers.size(), 2u);

    typeInto("customerName", QStringLiteral("9004"));
    EXPECT_TRUE(list.isVisible());
    key(Qt::Key_Escape);
    EXPECT_FALSE(list.isVisible());
    EXPECT_EQ(child<Field>("customerName").text(), QStringLiteral("9004"));
}

TEST_F(FairTable, AnotherNumberOfAKnownCustomerIsNoted) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)}, "Odile Farrant");
    open();
    chooseHeronOnMossTee();
    keys("oOdi");
    key(Qt::Key_Down);
    key(Qt::Key_Return);
    typeInto("customerPhone", QStringLiteral("07700 900555"));
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 2u);
    ASSERT_EQ(desk().shop()->facts.customers.size(), 1u);
    EXPECT_EQ(desk().shop()->facts.customers.begin()->phone, "07700 900555");
}

TEST_F(FairTable, GarmentsOfAnOrderAreAddedCountedAndRemovedByKeys) {
    const UsualShop usual = stockUsualShop();
    addStyle("Tote", [](BlankStyle& style) {
        style.outline = "tote";
        style.sizes = {"One"};
        style.colours.resize(1);
    });
    open();
    chooseHeronOnMossTee();
    key(Qt::Key_Plus);
    keys("2d1"); // the only size and colour are chosen with the style
    EXPECT_EQ(draft().garments.size(), 2u);
    EXPECT_TRUE(draft().garment().isBlankChosen());
    keys("l");
    for (int more = 0; more < 11; ++more)
        key(Qt::Key_Plus);
    key(Qt::Key_Minus);
    key(Qt::Key_Plus);
    EXPECT_EQ(draft().garments[1].copies, 12);
    EXPECT_EQ(draft().garments.size(), 2u);

    const Money two = table().sums().total;
    auto& lines = child<OrderLines>("orderLines");
    key(Qt::Key_Home);
    QTRY_COMPARE(draft().garmentAt, 0u);
    key(Qt::Key_Delete);
    EXPECT_EQ(draft().garments.size(), 1u);
    EXPECT_LT(table().sums().total, two);
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(draft().garments.size(), 2u);
    EXPECT_EQ(table().sums().total, two);
    EXPECT_EQ(lines.model()->rowCount() > 2, true);

    typeInto("customerName", QStringLiteral("The sea choir"));
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 1u);
    EXPECT_EQ(orders()[0].garments, 13);
    EXPECT_EQ(orders()[0].total, two);
    EXPECT_EQ(desk().shop()->facts.garmentsOf(orders()[0].id).front()->style, usual.style);
}

TEST_F(FairTable, DeletingADecalCanBeTakenBackAndLayersChange) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    keys("nJuno");
    key(Qt::Key_Escape);
    keys("l");
    key(Qt::Key_Up, Qt::ControlModifier);
    EXPECT_TRUE(std::holds_alternative<Wording>(draft().garment().decals[0].decal.content));
    key(Qt::Key_Delete);
    ASSERT_EQ(draft().garment().decals.size(), 1u);
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(draft().garment().decals.size(), 2u);
    key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(draft().garment().decals.size(), 1u);
}

TEST_F(FairTable, ASecondDecalIsAddedByItsKey) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    keys("a1");
    ASSERT_EQ(draft().garment().decals.size(), 2u);
    EXPECT_EQ(draft().garment().decals[1].decal.content, DecalContent{Artwork{"tern"}});
    keys("p3"); // the back
    EXPECT_EQ(draft().garment().decals[1].decal.placement, Placement::Back);
    EXPECT_EQ(draft().garment().decals[0].decal.placement, Placement::Chest);
}

TEST_F(FairTable, ArrowsNudgeFiveMillimetresAndShiftOne) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    auto& stage = child<GarmentStage>("garmentStage");
    stage.setFocus();
    const DecalDraft before = draft().decal()->decal;
    key(Qt::Key_Down);
    key(Qt::Key_Right);
    key(Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_EQ(draft().decal()->decal.below, before.below + 5_mm);
    EXPECT_EQ(draft().decal()->decal.aside, before.aside + 6_mm); // to the wearer's left
    for (int up = 0; up < 40; ++up)
        key(Qt::Key_Up);
    EXPECT_EQ(draft().decal()->decal.below, 0_mm);
}

TEST_F(FairTable, AMouseMovesADecalAndSizesItByItsCorner) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    auto& stage = child<GarmentStage>("garmentStage");
    const DecalDraft before = draft().decal()->decal;
    const auto drag = [&](QPoint from, QPoint by) {
        QTest::mousePress(&stage, Qt::LeftButton, Qt::NoModifier, from);
        QTest::mouseMove(&stage, from + by / 2);
        QTest::mouseMove(&stage, from + by);
        QTest::mouseRelease(&stage, Qt::LeftButton, Qt::NoModifier, from + by);
    };
    drag(stage.rectOf(0).center().toPoint(), {20, 30});
    EXPECT_GT(draft().decal()->decal.below, before.below + 20_mm);
    EXPECT_GT(draft().decal()->decal.aside, before.aside + 15_mm);
    EXPECT_EQ(draft().decal()->decal.width, before.width);
    table().undo(); // the whole drag is one step
    EXPECT_EQ(draft().decal()->decal, before);
    drag(stage.rectOf(0).bottomRight().toPoint(), {-15, -15});
    EXPECT_LT(draft().decal()->decal.width, before.width);
    EXPECT_LT(draft().decal()->decal.height, before.height);
    EXPECT_EQ(draft().decal()->decal.below, before.below);
    const double was = static_cast<double>(before.width.value) / static_cast<double>(before.height.value);
    const DecalDraft& after = draft().decal()->decal;
    EXPECT_NEAR(static_cast<double>(after.width.value) / static_cast<double>(after.height.value), was, 0.02);
}

TEST_F(FairTable, AHalfTypedOrderSurvivesACrash) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    keys("nJuno");
    typeInto("customerName", QStringLiteral("Zoë"));
    const TableDraft typed = draft();
    QTRY_COMPARE_WITH_TIMEOUT(QByteArray::fromStdString(file().note(kDraftNote).value_or("")), noteOf(typed),
                              300);

    // The file as it lies there while the program still runs.
    QTemporaryDir elsewhere;
    const auto folder = std::filesystem::path{elsewhere.path().toStdString()};
    for (const auto& entry : std::filesystem::directory_iterator{path().parent_path()})
        std::filesystem::copy(entry.path(), folder / entry.path().filename());
    ShopDesk after(valueOf(db::Shop::open(folder / path().filename(), time().clock().now)), time().clock());
    FairTablePlace table(after);
    EXPECT_EQ(table.model().draft(), typed);
    EXPECT_EQ(table.findChild<QLabel*>(QStringLiteral("keptWords"))->text(),
              QStringLiteral("A half-typed order was kept."));
    EXPECT_EQ(table.findChild<Field*>(QStringLiteral("words"))->text(), QStringLiteral("Juno"));
    EXPECT_EQ(table.findChild<Field*>(QStringLiteral("customerName"))->text(), QStringLiteral("Zoë"));
}

TEST_F(FairTable, LeavingThePlaceKeepsTheDraftAtOnceAndTakingItClearsIt) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    place().hide();
    EXPECT_EQ(QByteArray::fromStdString(file().note(kDraftNote).value_or("")), noteOf(draft()));
    leave();
    reopen();
    open();
    EXPECT_TRUE(table().isRestored());
    EXPECT_EQ(draft().garment().decals.size(), 1u);
    typeInto("customerName", QStringLiteral("Odile"));
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 1u);
    leave();
    reopen();
    open();
    EXPECT_FALSE(table().isRestored());
    EXPECT_TRUE(draft().isUntouched());
}

TEST_F(FairTable, ADamagedNoteIsSaidAndIgnored) {
    stockUsualShop();
    ASSERT_TRUE(file().keepNote(kDraftNote, "{\"version\":1,\"garments\":[{\"style\":"));
    open();
    EXPECT_TRUE(draft().isUntouched());
    EXPECT_TRUE(child<QLabel>("keptWords").text().contains(QStringLiteral("cannot be read")));
    keys("1");
    EXPECT_TRUE(draft().garment().style.isSet());
}

TEST_F(FairTable, StartingAfreshCanBeTakenBack) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    const TableDraft typed = draft();
    keys("x");
    EXPECT_TRUE(draft().isUntouched());
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(draft(), typed);
}

TEST_F(FairTable, AnOrderTakenBackIsOnTheTableAgain) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    typeInto("customerName", QStringLiteral("Odile"));
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 1u);
    valueOf(file().undo(file().lastUndoable()->id));
    EXPECT_TRUE(orders().empty());
    EXPECT_EQ(draft().customerName, "Odile");
    EXPECT_EQ(draft().garment().decals.size(), 1u);
    EXPECT_TRUE(child<QLabel>("keptWords").text().contains(QStringLiteral("taken back")));
}

TEST_F(FairTable, AQuotationKeepsNoBlank) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    typeInto("customerName", QStringLiteral("Odile"));
    key(Qt::Key_Escape);
    keys("k");
    ASSERT_EQ(orders().size(), 1u);
    EXPECT_EQ(orders()[0].state, OrderState::Quoted);
    EXPECT_TRUE(child<QWidget>("taken").accessibleName().contains(QStringLiteral("Quotation")));
    EXPECT_FALSE(desk().shop()->facts.garmentsOf(orders()[0].id).front()->lot.has_value());
}

TEST_F(FairTable, EnterOnAnotherButtonPressesThatButton) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    typeInto("customerName", QStringLiteral("Odile"));
    child<QPushButton>("anotherGarment").setFocus();
    key(Qt::Key_Return);
    EXPECT_TRUE(orders().empty());
    EXPECT_EQ(draft().garments.size(), 2u);
    // Nothing was chosen for the second: it is no garment and stands in nobody's way.
    child<Field>("customerName").editor()->setFocus();
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 1u);
    EXPECT_EQ(orders()[0].garments, 1);
}

TEST_F(FairTable, AnEmptyShopSaysWhereToBeginAndNoKeyHarms) {
    open();
    EXPECT_TRUE(said().empty());
    EXPECT_TRUE(child<QWidget>("noStyles").isVisibleTo(m_place.get()));
    for (const char* letter = "gscpdfnaqwolex+k123"; *letter; ++letter) {
        keys(std::string(1, *letter).c_str());
        key(Qt::Key_Return);
        key(Qt::Key_Escape);
    }
    EXPECT_TRUE(orders().empty());
}

TEST_F(FairTable, TheHeaderSaysWhatWasTakenTodayAndWhere) {
    const UsualShop usual = stockUsualShop();
    ShopSettings settings = desk().shop()->facts.settings;
    settings.fairName = "Saltmarsh Makers’ Market";
    valueOf(db::changeSettings(file(), settings));
    open();
    EXPECT_EQ(place().subtitle(), QStringLiteral("Saltmarsh Makers’ Market · Wednesday 25 November"));
    auto* tools = static_cast<TodayTools*>(place().headerTools());
    EXPECT_EQ(tools->takenWords(), QStringLiteral("Taken today 0 £0.00"));
    OrderDraft order = anOrder({aGarment(usual)});
    order.deposit = {1000};
    valueOf(db::takeOrder(file(), order, now()));
    EXPECT_EQ(tools->takenWords(), QStringLiteral("Taken today 1 £10.00"));
    delete tools;
}

TEST_F(FairTable, ListsKeepTheRulesOfModels) {
    stockUsualShop();
    addFilm("Kelp");
    open();
    QAbstractItemModelTester films(child<QListView>("films").model(),
                                   QAbstractItemModelTester::FailureReportingMode::Fatal);
    QAbstractItemModelTester lines(child<OrderLines>("orderLines").model(),
                                   QAbstractItemModelTester::FailureReportingMode::Fatal);
    chooseHeronOnMossTee();
    keys("f");
    key(Qt::Key_Escape);
    key(Qt::Key_Plus);
    keys("1");
    EXPECT_EQ(child<OrderLines>("orderLines").model()->rowCount(), 2);
}

} // namespace holdfast::app::test
