// SPDX-License-Identifier: GPL-3.0-or-later
// Files read into a shop: each kind, what is refused and how, and the demo written out and read back.
#include "db/csv/export_shop.h"
#include "db/csv/import_shop.h"
#include "db/demo/demo_shop.h"
#include "tests/db/journal_fixture.h"
#include "tests/db/small_shop.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>

namespace holdfast::db {
namespace {

const OffsetAt kAnHourAhead = [](Instant) { return Hours{1}; };

class Import : public SmallShop {
protected:
    Result<Imported> read(const std::string& textOfFile) {
        return importText(shop(), textOfFile, now(), kAnHourAhead);
    }

    void expectReads(const std::string& textOfFile, const std::string& kind, std::int64_t added,
                     std::int64_t known = 0, std::int64_t passed = 0) {
        const auto done = read(textOfFile);
        ASSERT_TRUE(done.ok()) << done.error().message.english();
        EXPECT_EQ(done->kind, kind);
        EXPECT_EQ(done->added, added);
        EXPECT_EQ(done->known, known);
        EXPECT_EQ(done->passed, passed);
        expectSound();
    }

    void expectWrong(const std::string& textOfFile, const std::string& words) {
        const Dump before = dump();
        const auto done = read(textOfFile);
        ASSERT_FALSE(done.ok()) << textOfFile;
        EXPECT_NE(done.error().message.english().find(words), std::string::npos)
            << done.error().message.english();
        EXPECT_EQ(dump(), before);
    }
};

TEST_F(Import, CustomersAreOneActionAndTheKnownAreNotDoubled) {
    const std::string file = "Customer,Telephone\r\nZoë Ash,'+44 7700 900111\r\n\"Ray, Odile\",\r\n";
    expectReads(file, "customers", 2);
    EXPECT_EQ(text("SELECT phone FROM customer WHERE name = 'Zoë Ash'"), "+44 7700 900111");
    EXPECT_EQ(lastTitle(), "2 customers read in from a file");
    expectReads("\xEF\xBB\xBF"
                "Telephone;Customer\n;ray, odile\n;New One\n",
                "customers", 1, 1);
    ASSERT_TRUE(shop().undo(shop().recent(1).front().id).ok());
    EXPECT_EQ(number("SELECT COUNT(*) FROM customer"), 2);
    const std::size_t entries = shop().recent(100).size();
    expectReads(file, "customers", 0, 2);
    EXPECT_EQ(shop().recent(100).size(), entries) << "nothing new is no action";
}

TEST_F(Import, BlankStylesBringSizesColoursAndWhatTheirLabelSays) {
    expectReads("Style,Drawing,Weight (g),Cost (GBP),Sizes,Colours,Obstacles,Label "
                "read,Fibres,Stretch,Highest safe (°C),"
                "Wash (°C),Solvents\n"
                "Hooded top,hoodie,480,12.50,S | M | L,Rust #A0522D | Deep sea #103050,zip: pillow | "
                "seams,2026-11-01,"
                "80 cotton | 20 polyester,some,160,40,PF\n"
                "Plain bag,tote,90,,One size,Raw #EEE8D5,,,,,,,\n",
                "blank styles", 2);
    EXPECT_EQ(text("SELECT group_concat(size, ' ') FROM style_size JOIN blank_style ON id = style_id "
                   "WHERE name = 'Hooded top'"),
              "S M L");
    EXPECT_EQ(text("SELECT printf('%06X', rgb) FROM style_colour WHERE name = 'Deep sea'"), "103050");
    EXPECT_EQ(text("SELECT cost_minor || ' ' || highest_safe_c || ' ' || care_cleaning FROM blank_style "
                   "WHERE name = 'Hooded top'"),
              "1250 160.0 3");
    EXPECT_EQ(number("SELECT COUNT(*) FROM blank_style WHERE label_read_on IS NULL AND name = 'Plain bag'"),
              1);
    expectReads("Style,Drawing,Weight (g),Sizes,Colours\nhooded TOP,tee,1,S,a #000000\n", "blank styles", 0,
                1);
}

TEST_F(Import, BlanksReceivedAreLotsAndGoToGarmentsThatWait) {
    const auto waiting = takeTees();
    const std::string file =
        "Style,Size,Colour,Units,Received\nTee,M,Moss,3,2026-11-02\nTee,M,Moss,3,2026-11-02\n"
        "Tee,L,Moss,0,2026-11-02\n";
    expectReads(file, "blanks received", 2, 0, 1);
    EXPECT_EQ(number("SELECT SUM(units) FROM lot_units"), 6);
    EXPECT_TRUE(lotOf(garmentOf(waiting)).has_value());
    expectReads(file, "blanks received", 0, 2, 1);
    expectReads("Style,Size,Colour,Units,Received\nTee,M,Moss,3,2026-11-02\nTee,M,Moss,3,2026-11-02\n"
                "Tee,M,Moss,3,2026-11-02\n",
                "blanks received", 1, 2);
}

TEST_F(Import, FilmsBringTheirRecipesAndDecimalsMayHaveACommaThroughout) {
    expectReads(
        "Finish;Shade;Colour;Temperature (°C);Dwell (s);Peel;Recipe confirmed by;Not for;Ageing factor;"
        "Cost of a metre;Supplier\n"
        "Marram Matt;Rust;#A0522D;152,5;12;cool;me;wool | silk;2,5;9,50;Saltmarsh\n"
        "Marram Matt;Fog;#CCCCCC;;;;;;;;\n",
        "films", 2);
    EXPECT_EQ(text("SELECT recipe_c || ' ' || dwell_s || ' ' || peel || ' ' || q10 || ' ' || cost_per_metre "
                   "FROM film "
                   "WHERE shade = 'Rust'"),
              "152.5 12 cool 2.5 950");
    EXPECT_EQ(
        text("SELECT group_concat(supplier, '/') FROM (SELECT supplier FROM film WHERE finish = 'Marram "
             "Matt' ORDER BY id)"),
        "Saltmarsh/");
    EXPECT_EQ(number("SELECT COUNT(*) FROM film_not_for"), 2);
    EXPECT_EQ(number("SELECT COUNT(*) FROM film WHERE shade = 'Fog' AND recipe_c IS NULL"), 1);
    expectWrong("Finish;Shade;Colour;Temperature (°C);Dwell (s);Ageing factor\nA;B;#000000;152,5;12;2.5\n",
                "Line 2, Ageing factor: “2.5” has a decimal point, numbers before it had a decimal comma.");
}

TEST_F(Import, RollsKeepTheNumberThatIsWrittenOnThem) {
    const std::string file = "Roll,Finish,Shade,Width (mm),Length (mm),Received,Made,Place,State\n"
                             "R-17,Marram Soft,Dusk,500,12000,2026-10-01,2026-08-01,Cupboard,on-shelf\n"
                             "R-18,Marram Soft,Dusk,300,60,2026-10-01,,Front shelf,put-away\n"
                             "R-19,Marram Soft,Dusk,500,0,2026-10-01,,,used-up\n";
    expectReads(file, "rolls", 3);
    EXPECT_EQ(text("SELECT storage_place.name FROM roll_stay JOIN film_roll ON film_roll.id = roll_id "
                   "JOIN storage_place ON storage_place.id = place_id WHERE number = 17"),
              "Cupboard");
    EXPECT_EQ(text("SELECT state FROM film_roll WHERE number = 18"), "put-away");
    expectReads(file, "rolls", 0, 3);
    expectReads("Finish,Shade,Width (mm),Length (mm),Received\nMarram Soft,Dusk,500,5000,2026-11-01\n",
                "rolls", 1);
    EXPECT_EQ(number("SELECT MAX(number) FROM film_roll"), 20) << "without one, the next";
}

TEST_F(Import, PlacesAndReadingsOfSeveral) {
    expectReads("Place\nfront SHELF\nCellar\n", "storage places", 1, 1);
    const std::string file = "Place,When,Temperature (°C),Humidity (%)\n"
                             "Cellar,2026-11-10 15:00,17.5,61\n"
                             "Cellar,2026-11-10T15:00:00Z,17.6,62\n"
                             "Attic,2026-11-10T16:30:00+01:00,24,30\n"
                             "Cellar,2026-11-10 15:00,99,1\n";
    expectWrong(file, "Line 5: The temperature");
    expectReads(file.substr(0, file.rfind("Cellar")), "readings", 3);
    EXPECT_EQ(number("SELECT COUNT(*) FROM storage_place WHERE name = 'Attic'"), 1);
    EXPECT_EQ(
        text("SELECT celsius FROM climate_reading JOIN storage_place ON id = place_id WHERE name = 'Cellar' "
             "AND at = unixepoch('2026-11-10 14:00')"),
        "17.5")
        << "local time, an hour ahead";
    expectReads(file.substr(0, file.rfind("Cellar")), "readings", 0, 3);
    ASSERT_TRUE(shop().undo(shop().recent(1).front().id).ok());
    EXPECT_EQ(number("SELECT COUNT(*) FROM climate_reading"), 0);
    EXPECT_EQ(number("SELECT COUNT(*) FROM storage_place WHERE name = 'Attic'"), 0) << "one action";
}

TEST_F(Import, PressesAndFairs) {
    const std::string presses = "Press,Platen width (mm),Platen height (mm),Small platen,Retired\n";
    expectReads(presses + "Right,400,500,yes,yes\nleft,300,300,no,no\n", "presses", 1, 1);
    EXPECT_EQ(number("SELECT COUNT(*) FROM press WHERE name = 'Right' AND retired_at IS NOT NULL"), 1);
    expectWrong(presses + "Odd,40,500,no,no\n", "Line 2: The platen’s width");
    expectWrong(presses + "Odd,wide,500,no,no\n", "Line 2, Platen width (mm)");
    const std::string fairs = "Fair,First day,Last day,Opens,Closes,Stall (GBP),Worked (min)\n";
    const std::string market = "Kelp Street,2026-12-05,2026-12-06,10:00,24:00,45.00,600\n";
    expectReads(fairs + market, "fairs", 1);
    EXPECT_EQ(
        text("SELECT opens_min || ' ' || closes_min || ' ' || stall_minor || ' ' || worked_min FROM fair"),
        "600 1440 4500 600");
    expectReads(fairs + market, "fairs", 0, 1);
    for (const char* time : {"", "10", "10:", ":30", "10:60", "25:00", "ten", "-1:30"})
        expectWrong(fairs + "A,2026-12-08,," + time + ",17:00,,\n", "Line 2, Opens: write a time");
    expectWrong(fairs + "A,soon,,10:00,17:00,,\n", "Line 2, First day");
    expectWrong(fairs + "A,2026-12-08,2026-12-01,10:00,17:00,,\n", "Line 2: The last day");
    ASSERT_TRUE(shop().undo(shop().recent(1).front().id).ok());
    EXPECT_EQ(number("SELECT COUNT(*) FROM fair"), 0);
}

TEST_F(Import, LotsKeepWhatTheWashDidToThem) {
    const std::string head =
        "Style,Size,Colour,Units,Received,Washed,Dry,Detergent,Softener,Water (°C),Drying,Dryer "
        "sheet,Length before (mm),Length after (mm),Width before (mm),Width after (mm)\n";
    expectReads(
        head +
            "Tee,M,Moss,5,2026-11-02,2026-11-03 10:00,2026-11-03 18:00,mild,no,40,line,no,700,690,520,515\n"
            "Tee,L,Moss,4,2026-11-02,2026-11-03 10:00,2026-11-03 18:00,mild,no,40,line,no,,,,\n"
            "Tee,S,Moss,3,2026-11-02,2026-11-10 10:00,,mild,yes,30,line,no,,,,\n"
            "Tee,S,Ink,2,2026-11-02,,,,,,,,,,,\n",
        "blanks received", 4);
    EXPECT_EQ(number("SELECT COUNT(*) FROM wash_load"), 2) << "those that were washed together are";
    EXPECT_EQ(
        number("SELECT SUM(units) FROM lot_units JOIN blank_lot ON blank_lot.id = lot_id JOIN wash_load ON "
               "wash_load.id = last_load_id WHERE dry_at = unixepoch('2026-11-03 17:00')"),
        9);
    EXPECT_EQ(number("SELECT COUNT(*) FROM blank_lot WHERE last_load_id IS NULL"), 1);
    EXPECT_EQ(number("SELECT length_after_mm FROM blank_lot WHERE size = 'M'"), 690);
    expectReads("Style,Size,Colour,Units,Received,Washed,Dry\n"
                "Tee,L,Ink,4,2026-11-02,2026-11-03 10:00,2026-11-03 18:00\n",
                "blanks received", 1);
    EXPECT_EQ(number("SELECT COUNT(*) FROM wash_load"), 2) << "nobody says whether with softener";
    const auto wrong = [&](const std::string& wash, const std::string& words) {
        expectWrong(head + "Tee,M,Ink,5,2026-11-02," + wash + "\n", words);
    };
    wrong("soon,,mild,no,40,line,no,,,,", "Line 2, Washed: “soon” is not a time");
    wrong("2026-11-03 10:00,2026-11-03 09:00,mild,no,40,line,no,,,,", "Line 2, Washed: it was washed before");
    wrong("2027-11-03 10:00,,mild,no,40,line,no,,,,", "Line 2, Washed: it was washed before");
    wrong("2026-11-03 10:00,,mild,no,99,line,no,,,,", "Line 2, Water (°C)");
    wrong("2026-11-03 10:00,,mild,no,40,wind,no,,,,", "Line 2, Drying");
    wrong("2026-11-03 10:00,,mild,perhaps,40,line,no,,,,", "Line 2, Softener");
    wrong(",,,,,,,700,5,520,515", "Line 2, Length after (mm): 10 to 3,000");
    wrong(",,,,,,,700,,520,515", "Line 2, Length after (mm)");
}

TEST_F(Import, ARetiredColourSaysSoAfterItsShade) {
    expectReads("Style,Drawing,Weight (g),Sizes,Colours,Retired\n"
                "Cape,tee,180,S,Moss #6B7F5A | Ink #20304F retired,yes\n",
                "blank styles", 1);
    EXPECT_EQ(text("SELECT name FROM style_colour WHERE retired_at IS NOT NULL"), "Ink");
    EXPECT_EQ(text("SELECT name FROM blank_style WHERE retired_at IS NOT NULL"), "Cape");
    expectReads("Place,Retired\nCellar,yes\nFront shelf,yes\n", "storage places", 1, 1);
    EXPECT_EQ(text("SELECT name FROM storage_place WHERE retired_at IS NOT NULL"), "Cellar");
}

// In Europe clocks go back on 25 October 2026 at 01:00 UTC (directive 2000/84/EC, from memory).
TEST_F(Import, BothReadingsOfTheHourThatComesTwiceAreTaken) {
    const OffsetAt london = [](Instant at) {
        return isoInstant(at) < "2026-10-25T01:00:00Z" ? Seconds{Hours{1}} : Seconds{0};
    };
    const auto done = importText(shop(),
                                 "Place,When,Temperature (°C),Humidity (%)\n"
                                 "Cellar,2026-10-25 01:30,20,45\n"
                                 "Attic,2026-10-25 01:30,25,30\n"
                                 "Cellar,2026-10-25 01:30,21,46\n",
                                 now(), london);
    ASSERT_TRUE(done.ok()) << done.error().message.english();
    EXPECT_EQ(done->added, 3);
    EXPECT_EQ(text("SELECT group_concat(name || ' ' || at || ' ' || celsius) FROM (SELECT * FROM "
                   "climate_reading JOIN storage_place ON id = place_id ORDER BY name, at)"),
              "Attic 1792888200 25.0,Cellar 1792888200 20.0,Cellar 1792891800 21.0");
}

TEST_F(Import, WhatIsWrongIsNamedByLineHeadingAndWhatIsAllowed) {
    const std::string styles = "Style,Drawing,Weight (g),Sizes,Colours\n";
    expectWrong(styles + "A,tee,heavy,S,Moss #6B7F5A\n", "Line 2, Weight (g): “heavy” is not a number.");
    expectWrong(styles + "A,tee,180,S,Moss #6B7F5A\nB,tee,180,S,Moss green\n",
                "Line 3, Colours: write a colour as #");
    expectWrong(styles + "A,sock,180,S,Moss #6B7F5A\n", "Line 2: Choose a drawing: tee");
    expectWrong(styles + "A,tee,180,S\n", "Line 2 has 4 fields, the headings are 5.");
    expectWrong("Style,Size,Colour,Units,Received\nTee,M,Moss,3,02.11.2026\n",
                "Line 2, Received: “02.11.2026” is not a day.");
    expectWrong("Style,Size,Colour,Units,Received\nCape,M,Moss,3,2026-11-02\n",
                "Line 2, Style: the shop has no blank style");
    expectWrong("Style,Size,Colour,Units,Received\nTee,M,Moss,9000,2026-11-02\n",
                "Line 2: The number of blanks");
    expectWrong("Finish,Shade,Colour,Peel\nA,B,#000000,warm\n", "Line 2, Temperature (°C): a recipe needs");
    expectWrong(styles.substr(0, styles.size() - 1) + ",Fibres\nA,tee,180,S,Moss #6B7F5A,100 cotton\n",
                "Line 2, Label read: say on which day");
    expectWrong("Finish,Shade,Colour,Temperature (°C),Dwell (s),Peel\nA,B,#000000,150,10,slow\n",
                "Line 2, Peel: “slow” is none of hot, warm, cool.");
    expectWrong("Customer\n\"open", "Line 2: a quotation mark is opened here and never closed.");
}

TEST_F(Import, HeadingsThatAreNotKnownAreSaidWithThoseThatAre) {
    expectWrong("Name,Phone\nA,1\n", "Known are these headings: rolls: Finish, Shade, Width (mm)");
    expectWrong("Customer,Telefone\nA,1\n",
                "“Telefone” is not a heading of customers. Known are: Customer, Telephone, Note.");
    expectWrong("Order,Customer\n1,A\n", "Orders, and what belongs to them, cannot be read in");
    expectWrong("Customer,Customer\nA,B\n", "is there twice");
    expectWrong("Style,Drawing,Weight (g),Cost (EUR),Sizes,Colours\nA,tee,180,1,S,Moss #6B7F5A\n",
                "The amounts of this file are in EUR, those of the shop in GBP.");
    expectWrong("", "The file is empty.");
    EXPECT_NE(importFile(shop(), "/no/such/file", now(), kAnHourAhead)
                  .error()
                  .message.english()
                  .find("There is no file"),
              std::string::npos);
}

TEST_F(Import, StoppedItReadsNothingIn) {
    std::string file = "Place,When,Temperature (°C),Humidity (%)\n";
    for (int minute = 0; minute < 3000; ++minute)
        file += "Cellar," + isoInstant(now().instant - Minutes{minute}) + ",20,45\n";
    const Dump before = dump();
    EXPECT_FALSE(
        importText(shop(), file, now(), kAnHourAhead, [](double share) { return share < 0.7; }).ok());
    EXPECT_EQ(dump(), before);
    EXPECT_TRUE(importText(shop(), file, now(), kAnHourAhead, [](double) { return true; }).ok());
}

TEST_F(Import, WashLoadsAreReadInAndLotsThatWereInThemJoinThem) {
    const std::string loads = "Started,Detergent,Softener,Water (°C),Drying,Dryer sheet,Dry,Units\n"
                              "2026-11-02 18:00,mild,no,40,line,no,2026-11-03 08:00,6\n"
                              "2026-11-02 18:00,mild,no,40,line,no,2026-11-03 08:00,4\n"
                              "2026-11-09 18:00,,yes,30,tumble,yes,,\n";
    expectReads(loads, "wash loads", 3);
    EXPECT_EQ(lastTitle(), "3 wash loads read in from a file");
    EXPECT_EQ(number("SELECT COUNT(*) FROM wash_load WHERE softener AND dryer_sheet AND dry_at IS NULL"), 1);
    EXPECT_EQ(number("SELECT MAX(started_at) FROM wash_load"),
              (std::chrono::sys_days{std::chrono::year{2026} / 11 / 9} + Hours{17}).time_since_epoch() /
                  std::chrono::seconds{1});
    expectReads(loads, "wash loads", 0, 3);
    expectReads(
        "Style,Size,Colour,Units,Received,Washed,Dry,Detergent,Softener,Water (°C),Drying,Dryer sheet\n"
        "Tee,M,Moss,6,2026-11-02,2026-11-02 18:00,2026-11-03 08:00,mild,no,40,line,no\n",
        "blanks received", 1);
    EXPECT_EQ(number("SELECT COUNT(*) FROM wash_load"), 3) << "its wash was there already";
    EXPECT_EQ(number("SELECT COUNT(*) FROM blank_lot WHERE last_load_id IS NOT NULL"), 1);
}

TEST_F(Import, WhatIsWrongWithAWashLoadIsNamed) {
    const std::string head = "Started,Softener,Dryer sheet,Dry,Water (°C),Drying\n";
    expectWrong(head + ",no,no,,,\n", "Line 2, Started: it is needed.");
    expectWrong(head + "2026-11-02 18:00,,no,,,\n", "Line 2, Softener: it is needed.");
    expectWrong(head + "yesterday,no,no,,,\n", "Line 2, Started: “yesterday” is not a time.");
    expectWrong(head + "2026-11-02 18:00,no,no,2026-11-01 18:00,,\n", "before it was dry");
    expectWrong(head + "2026-11-02 18:00,no,no,,40,line\n2026-11-02 18:00,no,no,,400,\n",
                "Line 3, Water (°C)");
    expectWrong(head + "2026-11-02 18:00,no,no,,,in the sun\n", "Line 2, Drying");
}

TEST_F(Import, OfRollsThatAreUsedUpTheNumberIsKept) {
    const std::string file = "Roll,Finish,Shade,Width (mm),Length (mm),Received,State\n"
                             "R-40,Marram Soft,Dusk,500,0,2026-10-01,used-up\n"
                             ",Marram Soft,Dusk,500,0,2026-10-01,used-up\n";
    const auto moves = number("SELECT COUNT(*) FROM roll_move");
    expectReads(file, "rolls", 1, 0, 1);
    EXPECT_EQ(text("SELECT state FROM film_roll WHERE number = 40"), "used-up");
    EXPECT_EQ(number("SELECT COUNT(*) FROM roll_move"), moves) << "no film came or went today";
    const auto next = receiveRoll(shop(), aRoll(), now());
    ASSERT_TRUE(next.ok());
    EXPECT_EQ(next->number, 41) << "its number is on an old label";
    expectReads(file, "rolls", 0, 1, 1);
}

TEST_F(Import, SettingsAreChangedAsTheFileSaysInOneAction) {
    ShopSettings settings = loadSettings(connection());
    settings.shopName = "Tern and Thistle";
    settings.marginPercent = 50;
    settings.week[0] = OpeningHours{Hours{10}, Hours{12}};
    settings.prices.forMany = {{12, Percentage{500}}};
    settings.prices.extras = {{"Gift wrap", {250}}};
    settings.closedDays = {localDate(2026, 12, 24)};
    settings.otherHours[localDate(2026, 12, 3)] = {Hours{9}, Hours{20}};
    settings.prices.stylePrices[m_tee] = {1500};
    settings.prices.decalPrices = {{Millimetres{100}, {200}}, {Millimetres{300}, {450}}};
    const std::string file =
        "Setting,Value\nshop-name,Tern and Thistle\nmargin-percent,50\n"
        "hours-sunday,600-720\nless-for-many,12 500\nusual-extras,250 Gift wrap\n"
        "closed-day,2026-12-24\nother-hours,2026-12-03 540-1200\nstyle-price,1500 Tee\ndecal-price,450 300\n"
        "decal-price,200 100\nshrink-limit-percent,4\n";
    const Dump before = dump();
    expectReads(file, "settings", 10, 1);
    EXPECT_EQ(lastTitle(), "10 settings read in from a file");
    EXPECT_TRUE(loadSettings(connection()) == settings);
    expectReads(file, "settings", 0, 11);
    ASSERT_TRUE(shop().undo(shop().recent(1).front().id).ok());
    EXPECT_EQ(dump(), before);
}

TEST_F(Import, ASettingThatCannotBeIsNamedAndNothingIsChanged) {
    const std::string head = "Setting,Value\nshop-name,Another\n";
    expectWrong(head + "colour-of-the-door,red\n",
                "Line 3, Setting: there is no setting “colour-of-the-door”.");
    expectWrong(head + "margin-percent,96\n", "Line 3, Value: “96” is not a value of the setting “margin”.");
    expectWrong(head + "hours-monday,1020-540\n", "Line 3, Value");
    expectWrong(head + "closed-day,Christmas\n", "Line 3, Value: “Christmas” is not a day.");
    expectWrong(head + "other-hours,2026-12-03\n", "Line 3, Value: write the day and its hours");
    expectWrong(head + "other-hours,2026-12-03 1200-540\n", "Line 3, Value: write the day and its hours");
    expectWrong(head + "style-price,Tee 15.00\n", "Line 3, Value: write the price in its smallest coin");
    expectWrong(head + "style-price,1500 Cloak\n", "Line 3, Value: the shop has no blank style “Cloak”.");
    expectWrong(head + "decal-price,450 wide\n", "Line 3, Value: write the price");
    expectWrong(head + "better-rest-h,1\n", "The better rest must be no shorter");
}

std::vector<std::string> sortedLines(const std::filesystem::path& path) {
    std::istringstream text{testing::bytesOf(path)};
    std::vector<std::string> lines;
    for (std::string line; std::getline(text, line);)
        lines.push_back(line);
    std::ranges::sort(lines);
    return lines;
}

// One of each kind.
void retireSome(Shop& shop) {
    const ShopFacts facts = loadFactsOf(shop.connection(), {});
    BlankStyle style = *facts.styles.begin();
    style.isRetired = true;
    style.colours[0].isRetired = true;
    ASSERT_TRUE(changeStyle(shop, style).ok());
    Film film = *facts.films.begin();
    film.isRetired = true;
    ASSERT_TRUE(changeFilmSheet(shop, film).ok());
    Press press = *facts.presses.begin();
    press.isRetired = true;
    ASSERT_TRUE(changePress(shop, press).ok());
    StoragePlace place = *facts.places.begin();
    place.isRetired = true;
    ASSERT_TRUE(changePlace(shop, place).ok());
}

// The demo written out, read into an empty shop and written out again: customers, styles, films, places and
// readings are the same byte for byte; lots and rolls as far as something is left of them.
TEST(ImportedDemo, IsWhatWasWrittenOut) {
    testing::TemporaryFolder folder;
    ASSERT_TRUE(makeDemoShop(folder / "demo.holdfast", localDate(2026, 11, 25)).ok());
    const Now now = demoNow(localDate(2026, 11, 25));
    const Clock clock = [&] { return now.instant; };
    auto demo = Shop::open(folder / "demo.holdfast", clock);
    ASSERT_TRUE(demo.ok());
    retireSome(**demo);
    ASSERT_TRUE(exportShop(**demo, folder / "one", kAnHourAhead).ok());

    auto empty = Shop::createInMemory(clock);
    const std::vector<std::string> files{
        "customers.csv",  "blank-styles.csv", "films.csv",   "places.csv", "rolls.csv",   "wash-loads.csv",
        "blank-lots.csv", "readings.csv",     "presses.csv", "fairs.csv",  "settings.csv"};
    for (const std::string& file : files) {
        const auto done = importFile(*empty, folder / "one" / file, now, kAnHourAhead);
        ASSERT_TRUE(done.ok()) << file << ": " << done.error().message.english();
        EXPECT_GT(done->added, 0) << file;
    }
    EXPECT_EQ(empty->recent(100).size(), files.size()) << "one action a file";
    ASSERT_TRUE(exportShop(*empty, folder / "two", kAnHourAhead).ok());
    for (const std::string file : {"customers.csv", "blank-styles.csv", "films.csv", "places.csv",
                                   "readings.csv", "presses.csv", "fairs.csv"})
        EXPECT_TRUE(sortedLines(folder / "two" / file) == sortedLines(folder / "one" / file)) << file;
    EXPECT_TRUE(loadSettings(empty->connection()) == loadSettings((*demo)->connection()));
    for (const char* sum :
         {"SELECT SUM(units) FROM lot_units", "SELECT SUM(mm) FROM roll_length",
          "SELECT SUM(number) FROM film_roll", "SELECT COUNT(*) FROM wash_load",
          "SELECT SUM(started_at / 60 + water_c + COALESCE(dry_at / 60, 0)) FROM wash_load",
          "SELECT COUNT(*) FROM film_roll WHERE state = 'used-up'",
          "SELECT COUNT(*) FROM film_roll WHERE state = 'put-away'",
          "SELECT SUM(units) FROM lot_units JOIN blank_lot ON blank_lot.id = lot_id JOIN wash_load "
          "ON wash_load.id = last_load_id WHERE dry_at IS NOT NULL AND NOT softener",
          "SELECT SUM(units) FROM lot_units JOIN blank_lot ON blank_lot.id = lot_id JOIN wash_load "
          "ON wash_load.id = last_load_id WHERE dry_at IS NULL",
          "SELECT SUM(length_after_mm) FROM blank_lot JOIN lot_units ON blank_lot.id = lot_id "
          "WHERE units > 0"})
        EXPECT_EQ(empty->connection().number(sum), (*demo)->connection().number(sum)) << sum;
    for (const std::string& file : files) {
        const auto again = importFile(*empty, folder / "one" / file, now, kAnHourAhead);
        ASSERT_TRUE(again.ok()) << file << ": " << again.error().message.english();
        EXPECT_EQ(again->added, 0) << file;
    }
}

} // namespace
} // namespace holdfast::db
