// SPDX-License-Identifier: GPL-3.0-or-later
// The half-typed order: kept through a crash, started afresh, taken back.

#include "app/places/fair_table/draft_note.h"
#include "tests/app/fair_table_fixture.h"

#include <QLabel>
#include <QTemporaryDir>

namespace holdfast::app::test {

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
    place().undoOwn();
    EXPECT_EQ(draft().garment().decals.size(), 2u);
    place().redoOwn();
    EXPECT_EQ(draft().garment().decals.size(), 1u);
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
              QStringLiteral("A half-typed order was saved."));
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
    place().undoOwn();
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
    EXPECT_TRUE(child<QLabel>("keptWords").text().contains(QStringLiteral("was undone")));
}

TEST_F(FairTable, ClosingWhileAFieldIsTypedInKeepsWhatWasTyped) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    for (const char* field : {"customerName", "width"}) {
        typeInto(field, QStringLiteral("147"));
        ASSERT_EQ(QApplication::focusWidget(), child<Field>(field).editor());
        leave();
        reopen();
        open();
    }
    EXPECT_EQ(draft().customerName, "147");
    EXPECT_EQ(draft().decal()->decal.width, 147_mm);
}

} // namespace holdfast::app::test
