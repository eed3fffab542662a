// SPDX-License-Identifier: GPL-3.0-or-later
// The command line: what may be asked, what the reports say, and the program itself with its exit status.

#include "app/command_line/arguments.h"
#include "app/command_line/reports.h"
#include "app/command_line/text_table.h"
#include "app/command_line/verbs.h"
#include "db/actions/claim_actions.h"
#include "db/actions/film_actions.h"
#include "db/actions/shop_actions.h"
#include "db/backups/backups.h"
#include "tests/app/report_fixture.h"

#include <sqlite3.h>

#include <QFile>
#include <QFileInfo>
#include <QJsonArray>
#include <QJsonDocument>
#include <QProcess>

namespace holdfast::app {
namespace {

using test::ShopFixture;
using test::UsualShop;
using test::valueOf;

Result<Arguments> read(std::vector<std::string> words) {
    return readArguments(words);
}

std::string refusal(std::vector<std::string> words) {
    const auto arguments = readArguments(words);
    return arguments.ok() ? "taken" : arguments.error().message.english();
}

// ── what may be asked ─────────────────────────────────────────────────────────────────────────────────

TEST(Arguments, NothingOpensTheWindowOfTheUsualShop) {
    const auto arguments = read({});
    ASSERT_TRUE(arguments.ok());
    EXPECT_EQ(arguments->verb, Verb::Window);
    EXPECT_FALSE(arguments->shop);
    EXPECT_FALSE(arguments->isDemo);
}

TEST(Arguments, OptionsStandBeforeOrBehindTheVerb) {
    for (const auto& words :
         {std::vector<std::string>{"--demo", "--on", "2026-11-11", "report", "walk", "--json"},
          std::vector<std::string>{"report", "walk", "--json", "--on", "2026-11-11", "--demo"}}) {
        const auto arguments = readArguments(words);
        ASSERT_TRUE(arguments.ok()) << arguments.error().message.english();
        EXPECT_TRUE(arguments->isDemo);
        EXPECT_TRUE(arguments->asJson);
        EXPECT_EQ(arguments->on, localDate(2026, 11, 11));
        EXPECT_EQ(arguments->verb, Verb::Report);
        EXPECT_EQ(arguments->report, ReportName::Walk);
    }
}

TEST(Arguments, EachReportHasItsName) {
    EXPECT_EQ(read({"report", "use-first"})->report, ReportName::UseFirst);
    EXPECT_EQ(read({"report", "holds"})->report, ReportName::Holds);
    EXPECT_EQ(read({"report", "blanks"})->report, ReportName::Blanks);
    EXPECT_EQ(read({"report", "buy", "--csv"})->report, ReportName::Buy);
    EXPECT_EQ(read({"report", "promise"})->report, ReportName::Promise);
    EXPECT_EQ(read({"report", "cut"})->report, ReportName::Cut);
    EXPECT_EQ(read({"report", "figures"})->report, ReportName::Figures);
}

TEST(Arguments, TourAndBackupTakeWhatFollows) {
    EXPECT_EQ(read({"tour", "pictures", "--scale", "2"})->target, "pictures");
    EXPECT_EQ(read({"tour", "pictures", "--scale", "2"})->scale, 2);
    // A folder may be called like a verb.
    EXPECT_EQ(read({"backup", "check"})->target, "check");
}

TEST(Arguments, FileAloneIsTheShopToOpenInTheWindow) {
    for (const char* file : {"/home/maker/shop.holdfast", "./check", "my.shop"}) {
        const auto arguments = read({file});
        ASSERT_TRUE(arguments.ok()) << arguments.error().message.english();
        EXPECT_EQ(arguments->verb, Verb::Window);
        EXPECT_EQ(arguments->shop, std::filesystem::path(file));
    }
    EXPECT_EQ(read({"a.holdfast", "--on", "2026-11-11"})->on, localDate(2026, 11, 11));
    EXPECT_EQ(refusal({"a.holdfast", "b.holdfast"}),
              "One shop at a time: “b.holdfast” is not expected here.");
    EXPECT_EQ(refusal({"a.holdfast", "--demo"}), "A shop file and --demo exclude each other.");
    EXPECT_EQ(refusal({"a.holdfast", "check"}),
              "With a verb, the shop is named by --shop: --shop a.holdfast.");
    // What a verb did not ask for is never taken for the shop.
    EXPECT_EQ(refusal({"import", "a.csv", "b.csv"}), "“b.csv” is not expected here. See holdfast --help.");
}

TEST(Arguments, WrongUsageIsSaidInOneLine) {
    EXPECT_EQ(refusal({"--shop"}), "--shop needs a file after it.");
    EXPECT_EQ(refusal({"--shop", "a", "--demo"}), "--shop and --demo exclude each other.");
    EXPECT_EQ(refusal({"--on", "2026-02-30"}),
              "--on needs a day that exists, such as 2026-11-25; “2026-02-30” is not a day.");
    EXPECT_EQ(refusal({"report"}),
              "report needs one of walk, use-first, holds, blanks, buy, promise, cut, figures after it.");
    EXPECT_EQ(refusal({"report", "weather"}), "There is no report “weather”. Ask for walk, use-first, holds, "
                                              "blanks, buy, promise, cut or figures.");
    EXPECT_EQ(refusal({"tour"}), "tour needs the folder to draw into after it.");
    EXPECT_EQ(refusal({"papers"}), "papers needs the folder to write into after it.");
    EXPECT_EQ(refusal({"backup"}), "backup needs the new file after it.");
    EXPECT_EQ(refusal({"save-what-can-be"}), "save-what-can-be needs the new file after it.");
    EXPECT_EQ(refusal({"put-back"}), "put-back needs the backup after it.");
    EXPECT_EQ(refusal({"take-orders"}), "take-orders needs the file of the web shop after it.");
    EXPECT_EQ(refusal({"forget"}),
              "forget needs the customer after it: a name, a phone number or an order’s number.");
    EXPECT_EQ(refusal({"forget", "Odile", "Farrant"}),
              "“Farrant” is not expected here. See holdfast --help.");
    EXPECT_EQ(refusal({"backups", "--yes"}), "--yes goes with put-back and take-orders only.");
    EXPECT_EQ(refusal({"put-back", "b", "--yes"}), "taken");
    EXPECT_EQ(refusal({"check", "--json"}), "--json goes with report only.");
    EXPECT_EQ(refusal({"check", "--csv"}), "--csv goes with report only.");
    EXPECT_EQ(refusal({"report", "buy", "--csv", "--json"}), "--csv and --json exclude each other.");
    EXPECT_EQ(refusal({"check", "--scale", "2"}), "--scale goes with tour only.");
    EXPECT_EQ(refusal({"tour", "d", "--scale", "3"}), "--scale is 1 or 2, not “3”.");
    EXPECT_EQ(refusal({"check", "backup"}), "One thing at a time: “backup” is not expected here.");
    EXPECT_EQ(refusal({"--loud"}), "There is no option --loud. See holdfast --help.");
    EXPECT_EQ(
        refusal({"wash"}),
        "There is no “wash”. Ask for report, tour, papers, check, mend, "
        "save-what-can-be, backup, backups, put-back, export, import, take-orders, due-days or forget.");
}

// ── tables ────────────────────────────────────────────────────────────────────────────────────────────

TEST(TextTables, WordsStandLeftAndNumbersRight) {
    TextTable table({{QStringLiteral("Roll")}, {QStringLiteral("Left"), TextTable::Side::Right}});
    table.add({QStringLiteral("R-09"), QStringLiteral("3.4 m")});
    table.add({QStringLiteral("R-100"), QStringLiteral("12.0 m")});
    EXPECT_EQ(table.text(2).toStdString(), "  Roll     Left\n"
                                           "  -----  ------\n"
                                           "  R-09    3.4 m\n"
                                           "  R-100  12.0 m\n");
}

TEST(TextTables, NoteStandsBelowItsRowAndWidensNothing) {
    TextTable table({{QStringLiteral("Roll")}});
    table.add({QStringLiteral("R-09")});
    table.addNote(QStringLiteral("60 h outside the limits"));
    table.addNote({});
    table.add({QStringLiteral("R-12")});
    EXPECT_EQ(table.text().toStdString(), "Roll\n----\nR-09\n    60 h outside the limits\nR-12\n");
}

TEST(TextTables, MarksThatCombineTakeNoColumn) {
    EXPECT_EQ(columnsOf(QString::fromUtf8("Zoë")), 3);
    EXPECT_EQ(columnsOf(QString::fromUtf8("Zoe\u0308")), 3);
    EXPECT_EQ(columnsOf(QString::fromUtf8("🧵")), 1);
}

// ── reports ───────────────────────────────────────────────────────────────────────────────────────────

class CommandLine : public test::ReportFixture {
protected:
};

TEST_F(CommandLine, CutReportNestsWhatWaitsFilmByFilm) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual), aGarment(usual)});
    const QJsonObject cut = json(ReportName::Cut);
    EXPECT_EQ(cut[QStringLiteral("report")].toString().toStdString(), "cut");
    const QJsonArray films = cut[QStringLiteral("films")].toArray();
    ASSERT_EQ(films.size(), 1);
    const QJsonObject film = films.at(0).toObject();
    EXPECT_EQ(film[QStringLiteral("film")].toString().toStdString(), "Marram Soft, Dusk");
    EXPECT_EQ(film[QStringLiteral("waiting")].toInt(), 2);
    EXPECT_TRUE(film[QStringLiteral("lack")].toArray().isEmpty());
    ASSERT_EQ(film[QStringLiteral("nests")].toArray().size(), 1);
    const QJsonObject nest = film[QStringLiteral("nests")].toArray().at(0).toObject();
    // Two of 200 × 280 mm beside each other, and the gap of 8 mm.
    EXPECT_EQ(nest[QStringLiteral("lengthMillimetres")].toInt(), 288);
    EXPECT_LE(nest[QStringLiteral("leastMillimetres")].toInt(), 288);
    EXPECT_EQ(nest[QStringLiteral("decals")].toArray().size(), 2);
    EXPECT_TRUE(nest[QStringLiteral("decals")].toArray().at(0).toObject().contains(QStringLiteral("place")));
    EXPECT_NE(text(ReportName::Cut).find("288 mm used"), std::string::npos);
}

TEST_F(CommandLine, FiguresReportSaysWhatCameBackOfWhatWasHandedOver) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual), aGarment(usual)});
    const auto garments = garmentsOf(taken.id);
    for (const GarmentId garment : garments) {
        cut(garment, usual.roll);
        press(garment);
    }
    test::valueOf(db::handOver(file(), taken.id, now()));
    time().pass(std::chrono::days{30});
    test::valueOf(db::recordClaim(file(), {garments[0], {}, now().today(), Fault::Cracked, 5, ""}, now()));

    const QJsonObject figures = json(ReportName::Figures);
    EXPECT_EQ(figures[QStringLiteral("from")].toString().toStdString(), "2026-11-25");
    const QJsonObject all = figures[QStringLiteral("handedOver")].toObject();
    EXPECT_EQ(all[QStringLiteral("garments")].toInt(), 2);
    EXPECT_EQ(all[QStringLiteral("cameBack")].toInt(), 1);
    EXPECT_EQ(all[QStringLiteral("share")].toDouble(), 0.5);
    const QJsonArray films = figures[QStringLiteral("compared")].toObject()[QStringLiteral("film")].toArray();
    ASSERT_EQ(films.size(), 1);
    EXPECT_EQ(films.at(0).toObject()[QStringLiteral("name")].toString().toStdString(), "Marram Soft, Dusk");
    EXPECT_EQ(figures[QStringLiteral("promises")].toObject()[QStringLiteral("kept")].toInt(), 1);
    const std::string said = text(ReportName::Figures);
    EXPECT_NE(said.find("1 of 2 garments came back with a fault of pressing"), std::string::npos) << said;
    EXPECT_NE(said.find("Too few to judge: it takes at least 20 garments"), std::string::npos) << said;
}

TEST_F(CommandLine, WalkReportNamesWhatIsPressedPlannedAndAside) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual), aGarment(usual), aGarment(usual, "L")});
    const auto garments = garmentsOf(taken.id);
    cut(garments[0], usual.roll);
    cut(garments[1], usual.roll);
    press(garments[0]);

    const QJsonObject walk = json(ReportName::Walk);
    EXPECT_EQ(walk[QStringLiteral("report")].toString().toStdString(), "walk");
    EXPECT_EQ(walk[QStringLiteral("on")].toString().toStdString(), "2026-11-25");
    EXPECT_EQ(walk[QStringLiteral("pressed")].toInt(), 1);
    EXPECT_EQ(walk[QStringLiteral("total")].toInt(), 2);
    const std::string label = std::to_string(taken.number);
    EXPECT_EQ(walk[QStringLiteral("next")].toString().toStdString(), label + "-b");
    const QJsonArray aside = walk[QStringLiteral("aside")].toArray();
    ASSERT_EQ(aside.size(), 1);
    EXPECT_EQ(aside[0][QStringLiteral("garment")].toString().toStdString(), label + "-c");
    EXPECT_EQ(aside[0][QStringLiteral("rule")].toString().toStdString(), "blank-unwashed");

    const std::string words = text(ReportName::Walk);
    EXPECT_NE(words.find("Press walk · Workshop · Wednesday 25 November"), std::string::npos) << words;
    EXPECT_NE(words.find("1 of 2 pressed"), std::string::npos) << words;
    EXPECT_NE(words.find(label + "-c"), std::string::npos) << words;
}

TEST_F(CommandLine, EmptyShopSaysSoInEachReport) {
    EXPECT_NE(text(ReportName::Walk).find("Nothing to press."), std::string::npos);
    EXPECT_NE(text(ReportName::UseFirst).find("No roll is on the shelf."), std::string::npos);
    EXPECT_NE(text(ReportName::Holds).find("Nothing is held."), std::string::npos);
    EXPECT_NE(text(ReportName::Blanks).find("No blank hangs on the rail."), std::string::npos);
    EXPECT_NE(text(ReportName::Promise).find("None."), std::string::npos);
    EXPECT_TRUE(json(ReportName::Holds)[QStringLiteral("garments")].toArray().isEmpty());
}

TEST_F(CommandLine, HoldsReportGivesRuleReasonAndWhatFrees) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual, "L")});
    const QJsonArray garments = json(ReportName::Holds)[QStringLiteral("garments")].toArray();
    ASSERT_EQ(garments.size(), 1);
    EXPECT_TRUE(garments[0][QStringLiteral("held")].toBool());
    const QJsonObject hold = garments[0][QStringLiteral("findings")][0].toObject();
    EXPECT_EQ(hold[QStringLiteral("rule")].toString().toStdString(), "blank-unwashed");
    EXPECT_EQ(hold[QStringLiteral("grade")].toString().toStdString(), "hold");
    EXPECT_FALSE(hold[QStringLiteral("why")].toString().isEmpty());
    EXPECT_FALSE(hold[QStringLiteral("frees")].toArray().isEmpty());
}

TEST_F(CommandLine, UseFirstReportSaysWhatIsLeftAndAllotted) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)});
    const QJsonArray rolls = json(ReportName::UseFirst)[QStringLiteral("rolls")].toArray();
    ASSERT_EQ(rolls.size(), 1);
    EXPECT_EQ(rolls[0][QStringLiteral("leftMillimetres")].toInt(), 5000);
    EXPECT_GT(rolls[0][QStringLiteral("allottedMillimetres")].toInt(), 0);
    EXPECT_EQ(rolls[0][QStringLiteral("decals")].toInt(), 1);
    EXPECT_TRUE(rolls[0][QStringLiteral("mayBeUsed")].toBool());
    EXPECT_EQ(rolls[0][QStringLiteral("place")].toString().toStdString(), "Film drawer");
}

TEST_F(CommandLine, BlanksReportCountsWashedUnwashedAndKept) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual), aGarment(usual, "XL")});
    const QJsonArray blanks = json(ReportName::Blanks)[QStringLiteral("blanks")].toArray();
    ASSERT_EQ(blanks.size(), 3); // M and L hang there, XL is short
    EXPECT_EQ(blanks[0][QStringLiteral("size")].toString().toStdString(), "M");
    EXPECT_EQ(blanks[0][QStringLiteral("washed")].toInt(), 6);
    EXPECT_EQ(blanks[0][QStringLiteral("kept")].toInt(), 1);
    EXPECT_EQ(blanks[0][QStringLiteral("free")].toInt(), 5);
    EXPECT_EQ(blanks[1][QStringLiteral("unwashed")].toInt(), 4);
    EXPECT_EQ(blanks[2][QStringLiteral("short")].toInt(), 1);
}

TEST_F(CommandLine, PromiseReportOffersADayAndJudgesEachPromise) {
    const UsualShop usual = stockUsualShop();
    const auto kept = takeOrder({aGarment(usual)});
    cut(garmentsOf(kept.id).front(), usual.roll);
    const auto waiting = takeOrder({aGarment(usual, "L")});
    const QJsonObject promise = json(ReportName::Promise);
    const QJsonArray offers = promise[QStringLiteral("offers")].toArray();
    ASSERT_EQ(offers.size(), 1);
    EXPECT_EQ(offers[0][QStringLiteral("style")].toString().toStdString(), "Tee");
    EXPECT_EQ(offers[0][QStringLiteral("film")].toString().toStdString(), "Marram Soft, Dusk");
    // Pressed today, rested for 24 hours: not before tomorrow.
    EXPECT_GE(offers[0][QStringLiteral("ready")].toString().toStdString(), "2026-11-26T10:00");
    EXPECT_FALSE(offers[0][QStringLiteral("path")].toArray().isEmpty());
    const QJsonArray orders = promise[QStringLiteral("orders")].toArray();
    ASSERT_EQ(orders.size(), 2);
    EXPECT_EQ(orders[0][QStringLiteral("order")].toInt(), static_cast<int>(kept.number));
    EXPECT_EQ(orders[0][QStringLiteral("plan")].toString().toStdString(), "kept");
    EXPECT_EQ(orders[1][QStringLiteral("order")].toInt(), static_cast<int>(waiting.number));
    EXPECT_EQ(orders[1][QStringLiteral("plan")].toString().toStdString(), "waits");
    EXPECT_GE(orders[1][QStringLiteral("soonest")].toString().toStdString(), "2026-11-27"); // washed tonight
}

TEST_F(CommandLine, PromiseReportGivesNoDayWithoutAFilmOrWhileAHoldLeavesItOpen) {
    const UsualShop usual = stockUsualShop();
    const BlankStyleId cap = addStyle("Cap", [](BlankStyle& style) { style.label->stretch = Stretch::High; });
    wash(receiveBlanks(cap, "M", coloursOf(cap).front().id, 4), 4);
    auto garment = aGarment(usual);
    garment.style = cap;
    garment.colour = coloursOf(cap).front().id;
    takeOrder({garment});
    const QJsonObject promise = json(ReportName::Promise);
    const QJsonArray offers = promise[QStringLiteral("offers")].toArray();
    ASSERT_EQ(offers.size(), 2);
    EXPECT_EQ(offers[0][QStringLiteral("style")].toString().toStdString(), "Cap");
    EXPECT_TRUE(offers[0][QStringLiteral("film")].isNull());
    EXPECT_TRUE(offers[0][QStringLiteral("ready")].isNull());
    EXPECT_EQ(offers[0][QStringLiteral("why")].toString().toStdString(),
              "No film of the shop suits this style.");
    EXPECT_TRUE(promise[QStringLiteral("orders")].toArray()[0][QStringLiteral("soonest")].isNull());
    const std::string report = text(ReportName::Promise);
    EXPECT_NE(report.find("held, no day yet"), std::string::npos) << report;
}

// Work that the plan does after closing is said, unless a later day's hours keep the promise as well.
TEST_F(CommandLine, PromiseReportSaysWhatIsKeptOnlyAfterClosing) {
    const UsualShop usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}); // promised in two days, at three
    cut(garmentsOf(order.id).front(), usual.roll);
    ShopSettings settings = desk().shop()->facts.settings;
    const LocalTime local = now().local();
    const auto sinceMidnight = std::chrono::duration_cast<Minutes>(local - LocalTime{now().today()});
    for (auto& hours : settings.week)
        hours = OpeningHours{sinceMidnight - Minutes{60}, sinceMidnight - Minutes{1}};
    test::valueOf(db::changeSettings(file(), settings));
    const auto planOf = [&] {
        return json(ReportName::Promise)[QStringLiteral("orders")].toArray()[0].toObject();
    };
    // Tomorrow's hours keep it too.
    EXPECT_EQ(planOf()[QStringLiteral("plan")].toString().toStdString(), "kept");
    EXPECT_EQ(planOf()[QStringLiteral("afterClosingSeconds")].toInt(), 0);
    EXPECT_EQ(planOf()[QStringLiteral("ready")], planOf()[QStringLiteral("soonest")]);
    EXPECT_EQ(text(ReportName::Promise).find("after closing"), std::string::npos);

    settings.closedDays = {now().today() + Days{1}, now().today() + Days{2}};
    test::valueOf(db::changeSettings(file(), settings));
    EXPECT_EQ(planOf()[QStringLiteral("plan")].toString().toStdString(), "kept");
    EXPECT_GT(planOf()[QStringLiteral("afterClosingSeconds")].toInt(), 0);
    EXPECT_NE(text(ReportName::Promise).find("after closing, ready"), std::string::npos)
        << text(ReportName::Promise);
}

TEST_F(CommandLine, ReportsAreTheSameTwice) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual), aGarment(usual, "L")});
    for (const ReportName name :
         {ReportName::Walk, ReportName::UseFirst, ReportName::Holds, ReportName::Blanks, ReportName::Promise})
        EXPECT_EQ(text(name), text(name));
}

// ── check and backup ──────────────────────────────────────────────────────────────────────────────────

TEST_F(CommandLine, CheckFindsAWholeShopWhole) {
    takeOrder({aGarment(stockUsualShop())});
    Arguments arguments;
    arguments.shop = path();
    const auto checked = check(arguments, time().clock());
    ASSERT_TRUE(checked.ok()) << checked.error().message.english();
}

TEST_F(CommandLine, BackupsAreListedAndOneIsPutBack) {
    const auto taken = takeOrder({aGarment(stockUsualShop())});
    Arguments arguments;
    arguments.shop = path();
    EXPECT_EQ(valueOf(listBackups(arguments, time().clock())), "There is no backup yet.\n");
    const auto made = valueOf(db::makeBackup(file(), db::BackupReason::OfTheDay, now().local()));
    const std::string listed = valueOf(listBackups(arguments, time().clock()));
    EXPECT_TRUE(listed.starts_with("2026-11-25T10:00  " + made.backup.path.string() + "\n")) << listed;
    EXPECT_NE(listed.find("1 order, "), std::string::npos) << listed;
    EXPECT_NE(listed.find("made for the day\n"), std::string::npos) << listed;

    valueOf(db::moveMoney(file(), taken.id, MoneyKind::Payment, {100}, PaidHow::Cash));
    close();
    arguments.target = made.backup.path;
    const auto asked = putBack(arguments, time().clock());
    ASSERT_FALSE(asked.ok());
    EXPECT_TRUE(asked.error().message.english().starts_with(
        "Would be lost: 1 payment, in all 1 entry of the history.\n"))
        << asked.error().message.english();
    EXPECT_NE(asked.error().message.english().find("add --yes"), std::string::npos);
    arguments.isSure = true;
    const std::string done = valueOf(putBack(arguments, time().clock()));
    EXPECT_TRUE(done.starts_with("Put back. What was there before is kept in ")) << done;
    reopen();
    EXPECT_EQ(file().connection().number("SELECT COUNT(*) FROM money_move"), 0);
    EXPECT_EQ(db::backupsOf(path()).size(), 2U);
}

TEST_F(CommandLine, WhatIsWrongIsSaidMendedAndSaved) {
    const auto taken = takeOrder({aGarment(stockUsualShop())});
    close();
    sqlite3* handle = nullptr;
    ASSERT_EQ(sqlite3_open(path().c_str(), &handle), SQLITE_OK);
    EXPECT_EQ(sqlite3_exec(handle, "UPDATE shop_order SET promised = 'soon'", nullptr, nullptr, nullptr),
              SQLITE_OK);
    sqlite3_close(handle);

    Arguments arguments = asking(ReportName::Holds);
    const std::string named = "Order " + std::to_string(taken.number) +
                              " of Odile Farrant: Its promise reads "
                              "“soon”. The order is left out.";
    const auto reported = report(arguments, time().clock());
    ASSERT_TRUE(reported.ok());
    EXPECT_NE(reported->find("Left out: 1 row that cannot be read\n  " + named), std::string::npos)
        << *reported;
    const auto checked = check(arguments, time().clock());
    ASSERT_FALSE(checked.ok());
    EXPECT_NE(checked.error().message.english().find(named), std::string::npos)
        << checked.error().message.english();

    arguments.target = path().parent_path() / "backup.holdfast";
    const auto copied = backUp(arguments, time().clock());
    ASSERT_TRUE(copied.ok());
    EXPECT_NE(copied->find("But the shop file is not whole"), std::string::npos) << *copied;

    arguments.target = path().parent_path() / "saved.holdfast";
    const auto saved = saveWhatCanBe(arguments, time().clock());
    ASSERT_TRUE(saved.ok()) << saved.error().message.english();
    EXPECT_NE(saved->find("and 1 row from the history.\nNothing was lost.\n"), std::string::npos) << *saved;
    Arguments ofSaved = arguments;
    ofSaved.shop = arguments.target;
    EXPECT_TRUE(check(ofSaved, time().clock()).ok());

    const auto mended = mend(arguments, time().clock());
    ASSERT_TRUE(mended.ok()) << mended.error().message.english();
    EXPECT_NE(mended->find("Mended. 1 row put right"), std::string::npos) << *mended;
    const auto kept = db::backupsOf(path());
    ASSERT_EQ(kept.size(), 1U);
    EXPECT_NE(mended->find("\nWhat was there before is kept in " + kept[0].path.string() + "\n"),
              std::string::npos)
        << *mended;
    EXPECT_NE(valueOf(listBackups(arguments, time().clock())).find("made before the file was mended"),
              std::string::npos);
    EXPECT_TRUE(check(arguments, time().clock()).ok());
}

TEST_F(CommandLine, BackupIsAWholeShopOfItsOwnAndOverwritesNothing) {
    takeOrder({aGarment(stockUsualShop())});
    Arguments arguments;
    arguments.shop = path();
    arguments.target = path().parent_path() / "copy.holdfast";
    ASSERT_TRUE(backUp(arguments, time().clock()).ok());
    Arguments ofCopy = asking(ReportName::Holds);
    ofCopy.shop = arguments.target;
    EXPECT_TRUE(report(ofCopy, time().clock()).ok());
    EXPECT_FALSE(backUp(arguments, time().clock()).ok());
}

// ── the program ───────────────────────────────────────────────────────────────────────────────────────

struct Ended {
    int status = -1;
    QString out;
    QString error;
};

Ended runProgram(const QStringList& words) {
    QProcess program;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
    program.setProcessEnvironment(environment);
    program.start(QStringLiteral(HOLDFAST_PROGRAM), words);
    program.waitForFinished(60'000);
    return {program.exitStatus() == QProcess::NormalExit ? program.exitCode() : -1,
            QString::fromUtf8(program.readAllStandardOutput()),
            QString::fromUtf8(program.readAllStandardError())};
}

TEST_F(CommandLine, ProgramEndsWithTwoOnWrongUsage) {
    const Ended ended = runProgram({QStringLiteral("report")});
    EXPECT_EQ(ended.status, 2);
    EXPECT_TRUE(ended.out.isEmpty());
    EXPECT_EQ(ended.error.count(QLatin1Char('\n')), 1) << ended.error.toStdString();
}

TEST_F(CommandLine, ProgramEndsWithOneWhereTheShopIsMissing) {
    const QString missing = QString::fromStdString(path().parent_path() / "none.holdfast");
    const Ended ended = runProgram({QStringLiteral("--shop"), missing, QStringLiteral("check")});
    EXPECT_EQ(ended.status, 1);
    EXPECT_TRUE(ended.out.isEmpty());
    EXPECT_EQ(ended.error.count(QLatin1Char('\n')), 1) << ended.error.toStdString();
    EXPECT_FALSE(QFileInfo::exists(missing));
}

TEST_F(CommandLine, ProgramReportsOnADayWhileAWindowHasTheShopOpen) {
    takeOrder({aGarment(stockUsualShop())});
    const Ended ended =
        runProgram({QStringLiteral("--shop"), QString::fromStdString(path()), QStringLiteral("--on"),
                    QStringLiteral("2026-11-26"), QStringLiteral("report"), QStringLiteral("walk"),
                    QStringLiteral("--json")});
    EXPECT_EQ(ended.status, 0) << ended.error.toStdString();
    const QJsonObject walk = QJsonDocument::fromJson(ended.out.toUtf8()).object();
    EXPECT_EQ(walk[QStringLiteral("on")].toString().toStdString(), "2026-11-26");
    EXPECT_EQ(walk[QStringLiteral("at")].toString().toStdString(), "2026-11-26T09:00");
}

TEST_F(CommandLine, ProgramRefusesAFileThatIsNoShopAndLeavesItAsItWas) {
    const QString other = QString::fromStdString(path().parent_path() / "letter.txt");
    QFile file(other);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("Dear maker");
    file.close();
    const Ended ended =
        runProgram({QStringLiteral("--shop"), other, QStringLiteral("report"), QStringLiteral("holds")});
    EXPECT_EQ(ended.status, 1);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll().toStdString(), "Dear maker");
}

TEST_F(CommandLine, TourDrawsEachPlaceByDayAndInTheEvening) {
    takeOrder({aGarment(stockUsualShop())});
    const QString folder = QString::fromStdString(path().parent_path() / "tour");
    const Ended ended =
        runProgram({QStringLiteral("--shop"), QString::fromStdString(path()), QStringLiteral("--on"),
                    QStringLiteral("2026-11-25"), QStringLiteral("tour"), folder});
    ASSERT_EQ(ended.status, 0) << ended.error.toStdString();
    for (const char* name : {"start-day", "start-evening", "finder-day", "finder-evening"})
        EXPECT_TRUE(QFileInfo::exists(QStringLiteral("%1/%2.png").arg(folder, QLatin1String(name)))) << name;
    const QImage day(folder + QStringLiteral("/press-walk-day.png"));
    const QImage evening(folder + QStringLiteral("/press-walk-evening.png"));
    EXPECT_EQ(day.size(), QSize(1366, 768));
    EXPECT_NE(day, evening);
}

} // namespace
} // namespace holdfast::app
