// SPDX-License-Identifier: GPL-3.0-or-later
// What belongs to this computer and not to the shop: the Back room shows and changes it, the finder leads
// there, and no letter typed into a list of the Back room does anything else.

#include "app/desk/machine_settings.h"
#include "app/papers/printer_choice.h"
#include "app/places/back_room/back_room_place.h"
#include "app/places/back_room/room_lines.h"
#include "app/shell/command_finder.h"
#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "app/widgets/button.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "tests/app/shop_fixture.h"

#include <QApplication>
#include <QFile>
#include <QLineEdit>
#include <QSignalSpy>
#include <QStandardPaths>
#include <QTest>

namespace holdfast::app::test {
namespace {

PrintQueue queue(const char* name, QSizeF page) {
    PrintQueue made;
    made.name = QLatin1String(name);
    made.page = {QStringLiteral("page"), page};
    return made;
}

class ThisComputer : public ShopFixture {
protected:
    void SetUp() override {
        forgetSettings();
        BackRoomPlace::setPrinters({{queue("Stall", {62, 29}), queue("Office", {210, 297})}});
    }
    void TearDown() override {
        m_window.reset();
        BackRoomPlace::setPrinters(std::nullopt);
        forgetSettings();
    }
    static void forgetSettings() {
        QFile::remove(QStandardPaths::writableLocation(QStandardPaths::AppConfigLocation) +
                      QStringLiteral("/machine.ini"));
    }

    void openRoom() {
        close();
        m_window.reset();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(valueOf(db::Shop::open(path(), time().clock().now)));
        showWindow(*m_window);
        workshop().turnTo(PlaceName::BackRoom);
    }
    Workshop& workshop() { return *m_window->workshop(); }
    BackRoomPlace& room() { return *qobject_cast<BackRoomPlace*>(workshop().place()); }
    RoomLines& lines() { return *m_window->findChild<RoomLines*>(); }
    QString spoken() { return lines().accessibleDescription(); }
    QString foot() { return workshop().foot()->words(); }
    std::size_t entries() { return m_window->desk()->file().recent(1'000).size(); }
    void hit(Qt::Key key) { QTest::keyClick(QApplication::focusWidget(), key); }

    // By the first letters of its name, as a person does.
    void goTo(RoomSection section, const QString& line) {
        room().turnToSection(section);
        lines().setFocus();
        QTest::keyClick(&lines(), Qt::Key_Home);
        QTest::qWait(QApplication::keyboardInputInterval() + 20);
        typeText(line);
    }

    std::unique_ptr<MainWindow> m_window;
};

TEST_F(ThisComputer, BackRoomShowsPrintersScannerTextSizeAndSound) {
    openRoom();
    goTo(RoomSection::Computer, QStringLiteral("Lab"));
    EXPECT_TRUE(spoken().startsWith(QStringLiteral("Labels, the usual printer"))) << spoken().toStdString();
    hit(Qt::Key_Return); // to the printers
    const auto* first = qobject_cast<Button*>(QApplication::focusWidget());
    ASSERT_NE(first, nullptr);
    EXPECT_EQ(first->text(), QStringLiteral("Look for printers"));

    goTo(RoomSection::Printers, QStringLiteral("stall"));
    EXPECT_TRUE(spoken().startsWith(QStringLiteral("Stall, paper 62 × 29"))) << spoken().toStdString();
    hit(Qt::Key_Return);
    EXPECT_EQ(foot().toStdString(), "Labels go to the printer Stall from now on.");
    goTo(RoomSection::Computer, QStringLiteral("lab"));
    EXPECT_TRUE(spoken().startsWith(QStringLiteral("Labels, Stall,"))) << spoken().toStdString();

    goTo(RoomSection::Computer, QStringLiteral("soft"));
    hit(Qt::Key_Return);
    EXPECT_EQ(keptLoudness(), Loudness::Soft);
    EXPECT_EQ(entries(), 0U) << "no fact of the shop";
}

TEST_F(ThisComputer, ScannersPrefixIsSetUpFromTheBackRoomAndShownThere) {
    openRoom();
    goTo(RoomSection::Computer, QStringLiteral("before"));
    EXPECT_TRUE(spoken().contains(QStringLiteral("it types nothing"))) << spoken().toStdString();
    hit(Qt::Key_Return);
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    typeText(QStringLiteral("~"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return, Qt::ControlModifier);
    ASSERT_FALSE(workshop().slipEdge()->isOpen());
    EXPECT_EQ(scannerPrefix(), QStringLiteral("~"));
    EXPECT_TRUE(spoken().startsWith(QStringLiteral("Before a code, ~"))) << spoken().toStdString();
}

TEST_F(ThisComputer, TextSizeIsChangedFromTheBackRoomAsByItsKeys) {
    openRoom();
    QSignalSpy asked(&workshop(), &Workshop::textSizeAsked);
    goTo(RoomSection::Computer, QStringLiteral("text"));
    hit(Qt::Key_Return);
    ASSERT_EQ(asked.count(), 1);
    EXPECT_EQ(asked.back().front().toInt(), 110);
    hit(Qt::Key_Left);
    hit(Qt::Key_Return);
    ASSERT_EQ(asked.count(), 2);
    EXPECT_EQ(asked.back().front().toInt(), 90);
}

TEST_F(ThisComputer, WhatWasChosenForAShopFileIsHandedOnOnce) {
    file().keepNote("printer for labels", "Stall");
    file().keepNote("printer for sheets", "Office");
    file().keepNote("loudness", "soft");
    openRoom();
    EXPECT_EQ(keptPrinters().labels, QStringLiteral("Stall"));
    EXPECT_EQ(keptPrinters().sheets, QStringLiteral("Office"));
    EXPECT_EQ(keptLoudness(), Loudness::Soft);
    EXPECT_FALSE(m_window->desk()->file().note("printer for labels")) << "it is said once";

    // What was chosen on this computer since is not overwritten by another shop file.
    keepPrinter(PaperUse::Labels, QStringLiteral("Loft"));
    m_window->desk()->file().keepNote("printer for labels", "Stall");
    openRoom();
    EXPECT_EQ(keptPrinters().labels, QStringLiteral("Loft"));
}

TEST_F(ThisComputer, FinderLeadsThere) {
    openRoom();
    const auto found = [&](const char* typed, RoomSection section) {
        for (const FinderEntry& entry : findEntries(*m_window->desk(), QLatin1String(typed)))
            if (const auto* target = std::get_if<GoTo>(&entry.target))
                if (target->place == PlaceName::BackRoom && target->matter.section == section)
                    return true;
        return false;
    };
    EXPECT_TRUE(found("printer", RoomSection::Printers));
    EXPECT_TRUE(found("printers", RoomSection::Printers));
    for (const char* typed : {"printers", "scanner", "text size", "sound", "loudness", "machine", "computer"})
        EXPECT_TRUE(found(typed, RoomSection::Computer)) << typed;

    workshop().turnTo(PlaceName::FilmShelf);
    QTest::keyClick(m_window.get(), Qt::Key_K, Qt::ControlModifier);
    typeText(QStringLiteral("sound"));
    hit(Qt::Key_Return);
    EXPECT_EQ(workshop().current(), PlaceName::BackRoom);
    EXPECT_EQ(m_window->findChild<Choice*>(QStringLiteral("sections"))->chosenAt(),
              static_cast<int>(RoomSection::Computer));
}

// Each section's own acts have letters; in its list they look for a line.
TEST_F(ThisComputer, LettersInAListOfTheBackRoomDoNoActOfItsSection) {
    stockUsualShop();
    openRoom();
    int acts = 0;
    QSignalSpy slips(m_window->desk(), &ShopDesk::slipAsked);
    QSignalSpy errands(m_window->desk(), &ShopDesk::errandAsked);
    QSignalSpy papers(m_window->desk(), &ShopDesk::paperAsked);
    QSignalSpy knocks(m_window->desk(), &ShopDesk::knockAsked);
    const auto asked = [&] { return slips.count() + errands.count() + papers.count() + knocks.count(); };
    const auto before = entries();
    for (int at = 0; at < kRoomSections; ++at) {
        room().turnToSection(static_cast<RoomSection>(at));
        if (!lines().isVisible())
            continue;
        for (int letter = Qt::Key_A; letter <= Qt::Key_Z; ++letter) {
            lines().setFocus();
            QTest::keyClick(&lines(), static_cast<Qt::Key>(letter));
            EXPECT_TRUE(lines().hasFocus()) << "section " << at << ", letter " << letter;
        }
        EXPECT_EQ(asked(), 0) << "section " << at;
        for (const Button* button : room().findChildren<Button*>())
            acts += button->isVisible() && button->keyText().size() == 1 ? 1 : 0;
    }
    EXPECT_EQ(entries(), before);
    EXPECT_GE(acts, 10) << "there were acts that a letter could have done";
}

} // namespace
} // namespace holdfast::app::test
