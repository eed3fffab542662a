// SPDX-License-Identifier: GPL-3.0-or-later
// A blank style lives on: every fact of it can be changed, and it can be retired and brought back.
#include "db/check/check.h"
#include "db/tables/order_book.h"
#include "tests/db/exchange_fixture.h"

namespace holdfast::db {
namespace {

using Doing = Result<Done>;

class StyleChanges : public SmallShop {
protected:
    BlankStyle tee() { return loadFactsOf(connection(), {}).styles.at(m_tee); }
    void change(const BlankStyle& style) {
        const auto changed = changeStyle(shop(), style);
        ASSERT_TRUE(changed.ok()) << changed.error().message.english();
    }
};

TEST_F(StyleChanges, TheEntrySaysEachFieldWithWhatItWas) {
    BlankStyle style = tee();
    style.name = " Tea ";
    style.cost = {520};
    style.weight = {175};
    style.outline = "long-sleeve";
    style.forChild = true;
    style.obstacles = {{Obstacle::Seams, WayRound::Pillow}};
    style.colours[0].rgb = 0x102030;
    const BlankStyle before = tee();
    const auto hex = [](std::uint32_t rgb) {
        char text[8];
        std::snprintf(text, sizeof text, "#%06X", rgb);
        return std::string{text};
    };
    expectUndoable<Doing>(
        [&] { return changeStyle(shop(), style); },
        "Blank style Tea changed: name: Tea (was Tee), cost: £5.20 (was £" +
            std::to_string(before.cost.minor / 100) + "." + std::to_string(before.cost.minor % 100 / 10) +
            std::to_string(before.cost.minor % 10) + "), weight: 175 g (was " +
            std::to_string(before.weight.value) +
            " g), outline: long-sleeve (was tee), mark “for a child”: yes (was no), shade of "
            "Moss: #102030 (was " +
            hex(before.colours[0].rgb) + "), seams: pressing pillow");
    const BlankStyle after = tee();
    EXPECT_EQ(after.name, "Tea");
    EXPECT_EQ(after.cost, Money{520});
    EXPECT_EQ(after.label, before.label) << "what its label says stays";
    EXPECT_EQ(after.obstacles, style.obstacles);
    EXPECT_EQ(titlesOf(m_tee).size(), 2U + 2U) << "added, changed, taken back, done again";
}

TEST_F(StyleChanges, NothingChangedIsNoEntry) {
    const std::size_t entries = shop().recent(100).size();
    change(tee());
    EXPECT_EQ(shop().recent(100).size(), entries);
}

TEST_F(StyleChanges, SizesComeGoAndAreNamedOtherwise) {
    receiveTees(3, "L");
    takeTees();
    BlankStyle style = tee();
    const auto sizes = style.sizes;
    ASSERT_EQ(sizes, (std::vector<std::string>{"S", "M", "L"}));
    style.sizes = {"XS", "S", "M", "Large"};
    expectUndoable<Doing>([&] { return changeStyle(shop(), style); },
                          "Blank style Tee changed: size: Large (was L), size XS added");
    EXPECT_EQ(tee().sizes, style.sizes) << "in the order typed";
    EXPECT_EQ(number("SELECT COUNT(*) FROM blank_lot WHERE size = 'Large'"), 1);
    style.sizes = {"XS", "M", "Large", "XL"};
    expectUndoable<Doing>([&] { return changeStyle(shop(), style); },
                          "Blank style Tee changed: size S taken away, size XL added");
    style.sizes = {"XL", "Large", "M", "XS"};
    expectUndoable<Doing>([&] { return changeStyle(shop(), style); },
                          "Blank style Tee changed: sizes in another order");
    EXPECT_EQ(tee().sizes, style.sizes);
    expectSound();
}

TEST_F(StyleChanges, ASizeInUseStays) {
    receiveTees(3, "L");
    BlankStyle style = tee();
    style.sizes = {"S", "M"};
    expectRefused<Doing>([&] { return changeStyle(shop(), style); }, "sizes",
                         "3 blanks of size L are on the rail");
    takeTees();
    style.sizes = {"S", "L"};
    expectRefused<Doing>([&] { return changeStyle(shop(), style); }, "sizes",
                         "1 garment is ordered in size M");
}

TEST_F(StyleChanges, AGarmentOfASizeNamedOtherwiseGetsItsBlank) {
    const auto order = takeTees();
    BlankStyle style = tee();
    style.sizes = {"S", "Medium", "L"};
    change(style);
    ASSERT_TRUE(receiveBlanks(shop(), m_tee, "Medium", m_moss, 2, now()).ok());
    EXPECT_TRUE(lotOf(garmentOf(order)).has_value());
    expectSound();
}

TEST_F(StyleChanges, AnOldOrderKeepsItsSize) {
    const auto order = takeTees();
    ASSERT_TRUE(cancelOrder(shop(), order.id, "thought better of it").ok());
    BlankStyle style = tee();
    style.sizes = {"S", "XL", "L"};
    change(style);
    EXPECT_EQ(text("SELECT size FROM garment"), "M") << "nothing open is in M: it is gone, not named XL";
}

TEST_F(StyleChanges, ColoursComeGoAndAreNamedOtherwise) {
    takeTees();
    BlankStyle style = tee();
    style.colours[0].name = "Fern";
    style.colours[1].isRetired = true;
    style.colours.push_back({{}, "Oat", 0xE0D8C0});
    expectUndoable<Doing>(
        [&] { return changeStyle(shop(), style); },
        "Blank style Tee changed: colour: Fern (was Moss), colour Ink retired, colour Oat added");
    EXPECT_TRUE(tee().colours[1].isRetired);
    EXPECT_EQ(findOrders(connection(), "fern", OrderFilter::All, 5).size(), 1U) << "found by its new name";
    EXPECT_TRUE(findOrders(connection(), "moss", OrderFilter::All, 5).empty());
    style = tee();
    style.colours.erase(style.colours.begin() + 2);
    expectUndoable<Doing>([&] { return changeStyle(shop(), style); },
                          "Blank style Tee changed: colour Oat taken away");
    style.colours.erase(style.colours.begin());
    expectRefused<Doing>([&] { return changeStyle(shop(), style); }, "colours", "it can be retired");
    expectSound();
}

TEST_F(StyleChanges, ANewNameIsFoundInTheOrderBook) {
    takeTees();
    BlankStyle style = tee();
    style.name = "Kestrel shirt";
    expectUndoable<Doing>([&] { return changeStyle(shop(), style); },
                          "Blank style Kestrel shirt changed: name: Kestrel shirt (was Tee)");
    EXPECT_EQ(findOrders(connection(), "kestrel", OrderFilter::All, 5).size(), 1U);
    Film film = loadFactsOf(connection(), {}).films.at(m_film);
    film.shade = "Plover";
    ASSERT_TRUE(changeFilmSheet(shop(), film).ok());
    EXPECT_EQ(findOrders(connection(), "plover", OrderFilter::All, 5).size(), 1U);
    expectSound();
}

TEST_F(StyleChanges, WrongOnesAreRefusedWithTheirField) {
    ASSERT_TRUE(addStyle(shop(), aStyle("Tote")).ok());
    const std::vector<std::pair<std::string, std::function<void(BlankStyle&)>>> wrong{
        {"name", [](auto& style) { style.name = "TOTE"; }},
        {"name", [](auto& style) { style.name = " "; }},
        {"outline", [](auto& style) { style.outline = "cape"; }},
        {"weight", [](auto& style) { style.weight = {0}; }},
        {"cost", [](auto& style) { style.cost = {-1}; }},
        {"sizes", [](auto& style) { style.sizes = {}; }},
        {"sizes", [](auto& style) { style.sizes = {"S", "S"}; }},
        {"colours", [](auto& style) { style.colours[1].name = style.colours[0].name; }},
        {"colours", [](auto& style) { style.colours[1].id = ColourId{7}; }},
        {"colour", [](auto& style) { style.colours[1].rgb = 0x1000000; }},
        {"reason", [](auto& style) { style.notPrewashedBecause = "no"; }},
        {"style", [](auto& style) { style.id = BlankStyleId{7}; }},
    };
    for (const auto& [field, spoil] : wrong) {
        BlankStyle style = tee();
        spoil(style);
        expectRefused<Doing>([&] { return changeStyle(shop(), style); }, field);
    }
}

TEST_F(StyleChanges, WhatIsLeftIsSaidWhenRetiring) {
    receiveTees(4);
    BlankStyle style = tee();
    style.isRetired = true;
    expectUndoable<Doing>([&] { return changeStyle(shop(), style); },
                          "Blank style Tee changed: retired, 4 blanks left");
    EXPECT_TRUE(tee().isRetired);
    style.isRetired = false;
    expectUndoable<Doing>([&] { return changeStyle(shop(), style); },
                          "Blank style Tee changed: brought back");
    EXPECT_FALSE(tee().isRetired);
}

TEST_F(StyleChanges, FilmPressAndPlaceAreRetiredToo) {
    Film film = loadFactsOf(connection(), {}).films.at(m_film);
    film.isRetired = true;
    expectUndoable<Doing>([&] { return changeFilmSheet(shop(), film); },
                          "Film Marram Soft, Dusk changed: retired, 1 roll left");
    EXPECT_TRUE(loadFactsOf(connection(), {}).films.at(m_film).isRetired);
    Press press = loadFactsOf(connection(), {}).presses.at(m_press);
    press.isRetired = true;
    expectUndoable<Doing>([&] { return changePress(shop(), press); }, "Press Left changed: retired");
    StoragePlace place = loadFactsOf(connection(), {}).places.at(m_place);
    const std::string was = place.name;
    place.name = " Loft ";
    place.isRetired = true;
    expectUndoable<Doing>([&] { return changePlace(shop(), place); },
                          "Storage place Loft changed: name: Loft (was " + was +
                              "), retired, 1 roll is there still");
    place.isRetired = false;
    expectUndoable<Doing>([&] { return changePlace(shop(), place); },
                          "Storage place Loft changed: brought back");
    place.name = loadFactsOf(connection(), {}).places.at(m_damp).name;
    expectRefused<Doing>([&] { return changePlace(shop(), place); }, "name");
    place.id = PlaceId{7};
    expectRefused<Doing>([&] { return changePlace(shop(), place); }, "place");
}

TEST_F(StyleChanges, OnARetiredPressNothingIsBegunAndWhatWasBegunIsFinished) {
    Press other = loadFactsOf(connection(), {}).presses.at(m_press);
    other.id = {};
    other.name = "Right";
    const auto right = addPress(shop(), other);
    ASSERT_TRUE(right.ok());
    const auto order = readyToPress(2);
    const GarmentId begun = garmentOf(order, 0);
    ASSERT_TRUE(takeUp(shop(), begun, routeFor(begun), now()).ok());
    Press press = loadFactsOf(connection(), {}).presses.at(m_press);
    press.isRetired = true;
    expectUndoable<Doing>([&] { return changePress(shop(), press); },
                          "Press Left changed: retired, 1 garment is finished on it");
    const ShopFacts facts = loadOpenFacts(connection());
    EXPECT_EQ(pressFor(facts, facts.garments.at(begun))->id, m_press);
    EXPECT_EQ(pressFor(facts, facts.garments.at(garmentOf(order, 1)))->id, *right);
}

class StylesOnTwoLaptops : public Laptops {
protected:
    static BlankStyle styleIn(Shop& shop, BlankStyleId id) {
        return loadFactsOf(shop.connection(), {}).styles.at(id);
    }
};

TEST_F(StylesOnTwoLaptops, SizesAddedOnBothAreBothThere) {
    Laptop& fair = aLaptop();
    BlankStyle here = styleIn(shop(), m_tee);
    here.sizes = {"XS", "S", "M", "L"};
    ASSERT_TRUE(changeStyle(shop(), here).ok());
    BlankStyle there = styleIn(*fair.shop, m_tee);
    there.sizes = {"S", "M", "L", "XL"};
    there.cost = {777};
    ASSERT_TRUE(changeStyle(*fair.shop, there).ok());
    exchange(fair);
    expectSame(shop(), *fair.shop);
    EXPECT_EQ(styleIn(shop(), m_tee).sizes, (std::vector<std::string>{"XS", "S", "M", "L", "XL"}));
    EXPECT_EQ(styleIn(shop(), m_tee).cost, Money{777});
    expectWhole(shop());
}

TEST_F(StylesOnTwoLaptops, TheSameSizeAddedOnBothIsThereOnce) {
    Laptop& fair = aLaptop();
    for (Shop* each : {&shop(), fair.shop}) {
        BlankStyle style = styleIn(*each, m_tee);
        style.sizes.push_back("XL");
        ASSERT_TRUE(changeStyle(*each, style).ok());
    }
    exchange(fair);
    BlankStyle style = styleIn(shop(), m_tee);
    EXPECT_EQ(style.sizes, (std::vector<std::string>{"S", "M", "L", "XL"}));
    style.sizes.pop_back();
    ASSERT_TRUE(changeStyle(shop(), style).ok());
    EXPECT_EQ(styleIn(shop(), m_tee).sizes, (std::vector<std::string>{"S", "M", "L"}));
}

TEST_F(StylesOnTwoLaptops, WhatOneRetiresTheOtherMayStillReceive) {
    Laptop& fair = aLaptop();
    BlankStyle style = styleIn(shop(), m_tee);
    style.isRetired = true;
    ASSERT_TRUE(changeStyle(shop(), style).ok());
    ASSERT_TRUE(receiveBlanks(*fair.shop, m_tee, "M", m_moss, 5, now()).ok());
    exchange(fair);
    expectSame(shop(), *fair.shop);
    EXPECT_TRUE(styleIn(*fair.shop, m_tee).isRetired);
    expectWhole(shop());
}

} // namespace
} // namespace holdfast::db
