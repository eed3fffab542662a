// SPDX-License-Identifier: GPL-3.0-or-later
// Taking an order at the fair table by its real widgets and keys.

#include "app/desk/formats.h"
#include "app/places/fair_table/order_lines.h"
#include "app/places/fair_table/today_tools.h"
#include "app/widgets/choice.h"
#include "db/actions/shop_actions.h"
#include "tests/app/fair_table_fixture.h"

#include <QAbstractItemModelTester>
#include <QLabel>
#include <QListView>
#include <QPushButton>

namespace holdfast::app::test {

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

TEST_F(FairTable, ManySizesStandInRowsOfFullHeight) {
    stockUsualShop();
    addStyle("Overshirt", [](BlankStyle& style) {
        style.sizes = {"XS", "S", "M", "L", "XL", "2XL", "3XL", "4XL", "5XL"};
    });
    open();
    keys("2");
    QTRY_VERIFY(child<QWidget>("size-8").isVisible());
    EXPECT_GE(child<QWidget>("size-0").height(), 60);
    EXPECT_GE(child<QWidget>("size-8").height(), 60);
    EXPECT_GT(child<QWidget>("size-8").y(), child<QWidget>("size-0").geometry().bottom());
    keys("g1");
    QTRY_VERIFY(child<QWidget>("size-3").isVisible());
    EXPECT_EQ(child<QWidget>("size-3").y(), child<QWidget>("size-0").y());
}

TEST_F(FairTable, AnotherNumberOfAKnownCustomerIsNoted) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)}, "Odile Farrant");
    const std::string before = desk().shop()->facts.customers.begin()->phone;
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
    ASSERT_TRUE(file().undo(file().recent(1).front().id).ok());
    EXPECT_EQ(orders().size(), 1u);
    EXPECT_EQ(desk().shop()->facts.customers.begin()->phone, before) << "one undo for both";
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
    place().undoOwn();
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
    for (const char* letter = "gscpdfnaqwolexrb+k123"; *letter; ++letter) {
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
