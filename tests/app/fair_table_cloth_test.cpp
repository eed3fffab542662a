// SPDX-License-Identifier: GPL-3.0-or-later
// The decal on the cloth of the garment on the table, and the letters it is cut in, by key and by mouse.

#include "app/places/fair_table/table_cloth.h"
#include "app/theme/wording_outline.h"
#include "core/garments/placement_presets.h"
#include "db/tables/facts.h"
#include "tests/app/fair_table_fixture.h"

#include <QPushButton>

namespace holdfast::app::test {
namespace {

// U+E123 is for private use: no font has a shape for it.
const QString kNoLetter = QString(QChar(0xE123));

class DecalOnCloth : public FairTable {
protected:
    void openWithHeron() {
        stockUsualShop();
        open();
        chooseHeronOnMossTee();
        ASSERT_TRUE(draft().decal());
    }
    const DecalDraft& decal() { return draft().decal()->decal; }
    bool isOnCloth() { return offClothOf(draft().garment(), *table().style(), *draft().decalAt).empty(); }
    void drag(std::int64_t below, std::int64_t aside) {
        table().edit(Step::Drag, [&](TableDraft& draft) { moveDecal(draft, {below}, {aside}); });
    }
};

TEST_F(DecalOnCloth, OneThatRunsOverAnEdgeIsSaidAtOnceAndOneKeyPutsItRight) {
    openWithHeron();
    EXPECT_FALSE(isSaid(QStringLiteral("off the cloth")));
    drag(600, 0);
    EXPECT_TRUE(isSaid(QStringLiteral("Heron is off the cloth.")));
    EXPECT_TRUE(isSaid(QStringLiteral("over the lower edge")));
    EXPECT_TRUE(isSaid(QStringLiteral("Nearest spot: ")));
    const Millimetres width = decal().width;
    place().setFocus();
    key(Qt::Key_Y);
    EXPECT_TRUE(isOnCloth());
    EXPECT_EQ(decal().width, width) << "there is room for it as it is";
    EXPECT_EQ(decal().aside, Millimetres{0});
    EXPECT_FALSE(isSaid(QStringLiteral("off the cloth")));
    table().undo();
    EXPECT_EQ(decal().below, Millimetres{600}) << "one step of the order";
}

TEST_F(DecalOnCloth, OneBesideTheGarmentIsBroughtBackByAClick) {
    openWithHeron();
    drag(100, 700);
    EXPECT_TRUE(isSaid(QStringLiteral("It lies outside the garment.")));
    QPushButton* offered = nullptr;
    for (Banner* banner : place().findChildren<Banner*>())
        if (banner->accessibleName().contains(QStringLiteral("off the cloth")))
            offered = banner->findChild<QPushButton*>(QStringLiteral("bannerAction"));
    ASSERT_NE(offered, nullptr);
    QTest::mouseClick(offered, Qt::LeftButton);
    EXPECT_TRUE(isOnCloth());
}

TEST_F(DecalOnCloth, OneThatIsTooLargeIsOfferedSmaller) {
    openWithHeron();
    typeInto("width", QStringLiteral("900"));
    QCoreApplication::processEvents(); // a further banner is shown
    EXPECT_TRUE(isSaid(QStringLiteral("off the cloth")));
    EXPECT_TRUE(isSaid(QStringLiteral("Nearest spot: as ")));
    place().setFocus();
    key(Qt::Key_Y);
    EXPECT_TRUE(isOnCloth());
    EXPECT_LT(decal().width, Millimetres{900});
    EXPECT_GT(decal().width, Millimetres{250});
}

TEST_F(DecalOnCloth, NewDecalsBeginOnTheClothOfEachStyleAndSize) {
    stockUsualShop();
    for (const char* outline : {"long-sleeve", "hoodie", "tote", "bib", "bodysuit", "cap", "apron"})
        addStyle(std::string("A ") + outline, [&](BlankStyle& style) {
            style.outline = outline;
            style.sizes = {"3XS", "M", "3XL", "0–3 months", "5–6 years"};
        });
    const auto shop = desk().shop();
    for (const BlankStyle& style : shop->facts.styles)
        for (const std::string& size : style.sizes)
            for (const PlacementPreset& preset : presetsFor(style.outline)) {
                TableDraft draft;
                chooseStyle(draft, style);
                chooseSize(draft, &style, size);
                choosePlacement(draft, &style, preset.placement);
                chooseArtwork(draft, &style, "thimble");
                typeWords(draft, &style, "Juno & all");
                ASSERT_EQ(draft.garment().decals.size(), 2u);
                for (std::size_t at = 0; at < 2; ++at)
                    EXPECT_EQ(offClothOf(draft.garment(), style, at), "")
                        << style.name << ", " << size << ", " << placementName(preset.placement);
            }
}

TEST_F(DecalOnCloth, AnotherSizeMovesOnlyWhatNobodyMoved) {
    openWithHeron();
    drag(120, 10);
    keys("s1");
    EXPECT_EQ(decal().below, Millimetres{120});
    EXPECT_EQ(decal().aside, Millimetres{10});
}

TEST_F(DecalOnCloth, TheHalfTypedOrderRemembersThatADecalWasMoved) {
    openWithHeron();
    drag(120, 10);
    leave();
    open();
    EXPECT_TRUE(draft().garment().decals.at(0).isMovedByHand);
}

TEST_F(DecalOnCloth, ALetterWithoutAShapeIsNamedAndTheOrderNotTaken) {
    openWithHeron();
    typeInto("words", QStringLiteral("Jun") + kNoLetter);
    EXPECT_TRUE(isSaid(QStringLiteral("No letter shape for %1 (U+E123).").arg(kNoLetter)));
    typeInto("customerName", QStringLiteral("Ada"));
    const auto missing = table().missing(false);
    ASSERT_TRUE(missing);
    EXPECT_EQ(missing->section, Section::Words);
    key(Qt::Key_Return);
    EXPECT_TRUE(orders().empty());
    typeInto("words", QStringLiteral("Juno"));
    EXPECT_FALSE(isSaid(QStringLiteral("No letter shape")));
}

TEST_F(DecalOnCloth, AnOrderKeepsTheOutlineThatWasSeenWhenItWasTaken) {
    openWithHeron();
    typeInto("words", QStringLiteral("Juno"));
    typeInto("customerName", QStringLiteral("Ada"));
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 1u);
    const OrderId order = table().taken()->id;
    const auto facts = valueOf(file().read(
        [&](db::Connection& connection) { return db::loadFactsOf(connection, std::span(&order, 1)); }));
    int wordings = 0;
    for (const Decal& decal : facts.garmentsOf(order).at(0)->decals)
        if (const auto* wording = std::get_if<Wording>(&decal.content)) {
            ++wordings;
            EXPECT_EQ(wording->outline, outlineToKeep(Wording{"Juno", wording->face}));
        }
    EXPECT_EQ(wordings, 1);
}

} // namespace
} // namespace holdfast::app::test
