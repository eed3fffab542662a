// SPDX-License-Identifier: GPL-3.0-or-later
// What the Back room says of the printers of this machine, and what may be chosen there.

#include "app/places/back_room/printers_sheet.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace holdfast::app {
namespace {

PrintQueue queue(const char* name, QSizeF page) {
    PrintQueue made;
    made.name = QLatin1String(name);
    made.page = {QStringLiteral("page"), page};
    return made;
}

RoomSheet sheetOf(const PrinterChoice& choice, std::optional<std::vector<PrintQueue>> queues) {
    RoomFile file;
    file.printers = {choice, std::move(queues)};
    return printersSheet(file);
}

// The line of this name under the first heading, that of the labels.
const RoomLine& lineOf(const RoomSheet& sheet, const char* name) {
    return *std::ranges::find(sheet.lines, QLatin1String(name), &RoomLine::name);
}

TEST(BackRoomPrinters, OffersEachPrinterForLabelsAndForSheets) {
    const RoomSheet sheet = sheetOf({}, {{queue("Labels", {62, 29}), queue("Office", {210, 297})}});
    ASSERT_EQ(sheet.lines.size(), 8);
    EXPECT_TRUE(sheet.lines[0].isHeading);
    EXPECT_TRUE(sheet.lines[4].isHeading);
    EXPECT_EQ(sheet.lines[2].text, QStringLiteral("paper 62 × 29 mm"));
    EXPECT_EQ(sheet.lines[1].state, QStringLiteral("choose one below"));
    EXPECT_EQ(sheet.lines[1].tone, Tone::Caution);
    EXPECT_EQ(sheet.lines[1].text, QStringLiteral("none is set on this computer"));
    const auto* wish = std::get_if<UsePrinter>(&sheet.lines[7].deed);
    ASSERT_NE(wish, nullptr);
    EXPECT_EQ(wish->use, PaperUse::Sheets);
    EXPECT_EQ(wish->name, QStringLiteral("Office"));
    EXPECT_EQ(sheet.acts.size(), 3); // look again, a test label, a test sheet
}

TEST(BackRoomPrinters, SaysWhatIsTheMatterWithTheChosenOne) {
    PrintQueue paused = queue("Labels", {62, 29});
    paused.trouble = QStringLiteral("is paused");
    PrintQueue refusing = queue("Office", {210, 297});
    refusing.takesJobs = false;
    const RoomSheet sheet = sheetOf({QStringLiteral("Labels"), {}}, {{paused, refusing}});
    EXPECT_EQ(lineOf(sheet, "Labels").text, QStringLiteral("paper 62 × 29 mm; it is paused"));
    EXPECT_EQ(lineOf(sheet, "Labels").state, QStringLiteral("used, stopped"));
    EXPECT_EQ(lineOf(sheet, "Labels").tone, Tone::Caution);
    EXPECT_EQ(lineOf(sheet, "Office").text,
              QStringLiteral("paper 210 × 297 mm; it takes no work at present"));
    EXPECT_EQ(sheet.summary, QStringLiteral("Labels"));
}

TEST(BackRoomPrinters, TheUsualOneOrTheOnlyOneNeedsNoChoice) {
    PrintQueue usual = queue("Office", {210, 297});
    EXPECT_EQ(sheetOf({}, {{usual}}).lines[1].state, QStringLiteral("used"));
    usual.isUsual = true;
    const RoomSheet sheet = sheetOf({}, {{queue("Labels", {62, 29}), usual}});
    EXPECT_EQ(sheet.lines[1].state, QStringLiteral("used"));
    EXPECT_EQ(sheet.lines[1].text, QStringLiteral("now Office"));
}

TEST(BackRoomPrinters, NamesAChosenOneThatIsGone) {
    const RoomSheet sheet = sheetOf({QStringLiteral("Loft"), {}}, {{queue("Office", {210, 297})}});
    EXPECT_EQ(lineOf(sheet, "Loft").state, QStringLiteral("missing"));
    EXPECT_FALSE(lineOf(sheet, "Loft").hasDeed());
}

TEST(BackRoomPrinters, WithNoneSaysWherePapersGo) {
    EXPECT_TRUE(sheetOf({}, std::vector<PrintQueue>{}).intro.contains(QStringLiteral("saved as PDF")));
    EXPECT_TRUE(sheetOf({}, std::nullopt).intro.startsWith(QStringLiteral("Looking for")));
}

} // namespace
} // namespace holdfast::app
