// SPDX-License-Identifier: GPL-3.0-or-later
// What the desktop reads of the installed program, looked at by the freedesktop.org checkers of Debian
// (desktop-file-utils, appstream, shared-mime-info), and what it makes of a shop file.

#include "db/exchange/exchange.h"
#include "db/journal/shop.h"
#include "tests/install/icon_drawing.h"
#include "tests/install/installed.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QMimeDatabase>
#include <QStandardPaths>
#include <QTemporaryDir>

#include <algorithm>
#include <chrono>

namespace holdfast::install_test {
namespace {

using namespace std::chrono_literals;

std::string said(const Ran& ran) {
    return ran.out.toStdString();
}

QString entry(const QString& key) {
    const QString file = textOf(installed(QStringLiteral("share/applications/holdfast.desktop")));
    for (const QString& line : file.split(QLatin1Char('\n')))
        if (line.startsWith(key + QLatin1Char('=')))
            return line.section(QLatin1Char('='), 1);
    return {};
}

TEST(Desktop, FileIsValid) {
    NEED_PROGRAM("desktop-file-validate");
    const Ran ran =
        run(QStringLiteral("desktop-file-validate"),
            {QStringLiteral("--no-hints"), installed(QStringLiteral("share/applications/holdfast.desktop"))});
    EXPECT_EQ(ran.status, 0) << said(ran);
    EXPECT_TRUE(ran.out.isEmpty()) << said(ran);
}

TEST(Desktop, EntryOpensTheFileThatWasChosen) {
    EXPECT_EQ(entry(QStringLiteral("Exec")), QStringLiteral("holdfast %f"));
    EXPECT_TRUE(QFile::exists(installed(QStringLiteral("bin/holdfast"))));
    EXPECT_EQ(entry(QStringLiteral("MimeType")), QStringLiteral("application/x-holdfast-shop;"));
}

TEST(Desktop, CatalogueEntryIsValid) {
    NEED_PROGRAM("appstreamcli");
    const Ran ran = run(QStringLiteral("appstreamcli"),
                        {QStringLiteral("validate"), QStringLiteral("--no-net"), QStringLiteral("--no-color"),
                         installed(QStringLiteral("share/metainfo/invalid.holdfast.Holdfast.metainfo.xml"))});
    EXPECT_EQ(ran.status, 0) << said(ran);
}

TEST(Desktop, CatalogueEntryHasEachVersionOfTheChanges) {
    const QString releases =
        textOf(installed(QStringLiteral("share/metainfo/invalid.holdfast.Holdfast.metainfo.xml")));
    int versions = 0;
    for (const QString& line :
         textOf(QStringLiteral(HOLDFAST_SOURCE_DIR "/docs/changes.md")).split(QLatin1Char('\n'))) {
        if (!line.startsWith(QStringLiteral("## ")))
            continue;
        ++versions;
        const QString wanted =
            QStringLiteral("<release version=\"%1\" date=\"%2\"/>")
                .arg(line.mid(3).section(QStringLiteral(", "), 0, 0), line.section(QStringLiteral(", "), 1));
        EXPECT_TRUE(releases.contains(wanted)) << wanted.toStdString();
    }
    EXPECT_GE(versions, 2);
}

// ── the icon ──

TEST(Desktop, IconsAreWhatTheirDrawingDraws) {
    for (const int size : kIconSizes) {
        const QImage there(
            installed(QStringLiteral("share/icons/hicolor/%1x%1/apps/holdfast.png").arg(size)));
        ASSERT_EQ(there.size(), QSize(size, size));
        const QImage drawn = drawnIcon(size).convertToFormat(QImage::Format_ARGB32);
        const QImage given = there.convertToFormat(QImage::Format_ARGB32);
        qint64 apart = 0;
        for (int y = 0; y < size; ++y)
            for (int x = 0; x < size; ++x) {
                const QColor a = drawn.pixelColor(x, y);
                const QColor b = given.pixelColor(x, y);
                apart += std::abs(a.red() - b.red()) + std::abs(a.green() - b.green()) +
                         std::abs(a.blue() - b.blue()) + std::abs(a.alpha() - b.alpha());
            }
        // Another Qt may smooth edges a little otherwise.
        EXPECT_LT(static_cast<double>(apart) / (4.0 * size * size), 2.0) << size;
    }
    EXPECT_TRUE(QFile::exists(installed(QStringLiteral("share/icons/hicolor/scalable/apps/holdfast.svg"))));
    EXPECT_EQ(entry(QStringLiteral("Icon")), QStringLiteral("holdfast"));
}

// ── the kinds of files ──

class Files : public testing::Test {
protected:
    // One database of kinds, as on a machine where the package is installed beside the usual ones.
    Files() {
        const QString kinds = QStringLiteral("share/mime/packages/freedesktop.org.xml");
        QFile::copy(QStringLiteral("/usr/") + kinds, installed(kinds));
        const Ran ran =
            run(QStringLiteral("update-mime-database"), {installed(QStringLiteral("share/mime"))});
        EXPECT_EQ(ran.status, 0) << said(ran);
        qputenv("XDG_DATA_DIRS", installed(QStringLiteral("share")).toUtf8());
    }

    std::filesystem::path at(const char* name) const {
        return std::filesystem::path(folder.path().toStdString()) / name;
    }
    std::string kindOf(const char* name) const {
        return QMimeDatabase()
            .mimeTypeForFile(folder.filePath(QString::fromLatin1(name)))
            .name()
            .toStdString();
    }
    std::string kindByContents(const char* name) const {
        return QMimeDatabase()
            .mimeTypeForFile(folder.filePath(QString::fromLatin1(name)), QMimeDatabase::MatchContent)
            .name()
            .toStdString();
    }

    QTemporaryDir folder;
    db::Clock clock = [] { return Instant{std::chrono::sys_days{2026y / 11 / 25} + 10h}; };
};

TEST_F(Files, ShopIsKnownByItsNameAndByItsContents) {
    NEED_PROGRAM("update-mime-database");
    ASSERT_TRUE(db::Shop::create(at("mine.holdfast"), clock).ok());
    std::filesystem::copy_file(at("mine.holdfast"), at("mine"));
    EXPECT_EQ(kindOf("mine.holdfast"), "application/x-holdfast-shop");
    EXPECT_EQ(kindByContents("mine"), "application/x-holdfast-shop");
}

TEST_F(Files, NewsIsKnownByItsContents) {
    NEED_PROGRAM("update-mime-database");
    const auto shop = db::Shop::create(at("mine.holdfast"), clock);
    ASSERT_TRUE(shop.ok());
    const auto seat = db::makeCopyForLaptop(**shop, at("laptop.holdfast"), "Fair laptop");
    ASSERT_TRUE(seat.ok()) << seat.error().message.english();
    const auto written = db::writeNews(**shop, at("stick.holdfast-news"), seat->number);
    ASSERT_TRUE(written.ok()) << written.error().message.english();
    std::filesystem::copy_file(at("stick.holdfast-news"), at("stick"));
    EXPECT_EQ(kindOf("stick.holdfast-news"), "application/x-holdfast-news");
    EXPECT_EQ(kindByContents("stick"), "application/x-holdfast-news");
}

TEST_F(Files, AnotherDatabaseIsNoShop) {
    NEED_PROGRAM("update-mime-database");
    ASSERT_EQ(run(QStringLiteral("sqlite3"),
                  {folder.filePath(QStringLiteral("other")), QStringLiteral("CREATE TABLE t (a);")})
                  .status,
              0);
    EXPECT_EQ(kindByContents("other"), "application/vnd.sqlite3");
}

} // namespace
} // namespace holdfast::install_test
