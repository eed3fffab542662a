// SPDX-License-Identifier: GPL-3.0-or-later
// export and import as verbs: what they say, what they leave, their exit status.
#include "app/command_line/arguments.h"
#include "app/command_line/table_files.h"
#include "tests/app/shop_fixture.h"

#include <QFile>
#include <QProcess>

#include <algorithm>
#include <filesystem>

namespace holdfast::app {
namespace {

class TableFiles : public test::ShopFixture {
protected:
    std::filesystem::path beside(const std::string& name) { return path().parent_path() / name; }

    Arguments asking(Verb verb, const std::filesystem::path& target) {
        Arguments arguments;
        arguments.verb = verb;
        arguments.shop = path();
        arguments.target = target;
        return arguments;
    }

    struct EndedProgram {
        int status = -1;
        std::string out;
        std::string error;
    };
    static EndedProgram run(const QStringList& words) {
        QProcess program;
        program.start(QStringLiteral(HOLDFAST_PROGRAM), words);
        program.waitForFinished(60'000);
        return {program.exitStatus() == QProcess::NormalExit ? program.exitCode() : -1,
                program.readAllStandardOutput().toStdString(), program.readAllStandardError().toStdString()};
    }

    static void write(const std::filesystem::path& path, const QByteArray& bytes) {
        QFile file(QString::fromStdString(path.string()));
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(bytes);
    }
};

TEST_F(TableFiles, AreAskedForByTheirVerbs) {
    const auto reads = [](std::vector<std::string> words) { return readArguments(words); };
    EXPECT_EQ(reads({"export", "out"})->verb, Verb::Export);
    EXPECT_EQ(reads({"--demo", "export", "out"})->target, "out");
    EXPECT_EQ(reads({"import", "films.csv"})->verb, Verb::Import);
    EXPECT_EQ(reads({"export"}).error().message.english(), "export needs the folder to write into after it.");
    EXPECT_EQ(reads({"import"}).error().message.english(), "import needs the file to read after it.");
    EXPECT_FALSE(reads({"import", "a", "b"}).ok());
    EXPECT_NE(usage().find("export DIR"), std::string::npos);
}

TEST_F(TableFiles, TheShopIsWrittenOutWhileAWindowHasItOpen) {
    stockUsualShop();
    const auto done = exportTables(asking(Verb::Export, beside("out")), time().clock());
    ASSERT_TRUE(done.ok()) << done.error().message.english();
    EXPECT_NE(done->find(" files to "), std::string::npos);
    EXPECT_TRUE(std::filesystem::exists(beside("out/rolls.csv")));
    EXPECT_FALSE(exportTables(asking(Verb::Export, beside("out")), time().clock()).ok())
        << "its names are taken";
}

TEST_F(TableFiles, NothingIsReadIntoAShopThatAWindowHasOpenNorIntoTheDemo) {
    write(beside("places.csv"), "Place\nCellar\n");
    EXPECT_NE(importTable(asking(Verb::Import, beside("places.csv")), time().clock())
                  .error()
                  .message.english()
                  .find("open in another"),
              std::string::npos);
    Arguments demo = asking(Verb::Import, beside("places.csv"));
    demo.shop.reset();
    demo.isDemo = true;
    EXPECT_FALSE(importTable(demo, time().clock()).ok());
}

TEST_F(TableFiles, TheProgramReadsAFileInAndSaysWhatIsWrongWithAnother) {
    const auto other = beside("other.holdfast");
    ASSERT_TRUE(db::Shop::create(other, time().clock().now).ok());
    const QString shop = QString::fromStdString(other.string());
    write(beside("places.csv"), "Place\nCellar\nAttic\n");
    write(beside("wrong.csv"), "Style,Size,Colour,Units,Received\nTee,M,Moss,3,2026-11-02\n");
    const auto importing = [&](const char* file) {
        return run({QStringLiteral("--shop"), shop, QStringLiteral("import"),
                    QString::fromStdString(beside(file).string())});
    };
    const auto read = importing("places.csv");
    EXPECT_EQ(read.status, 0) << read.error;
    EXPECT_EQ(read.out, "Read in 2 storage places\n");
    EXPECT_EQ(importing("places.csv").out, "Read in 0 storage places; 2 were known\n");
    const auto wrong = importing("wrong.csv");
    EXPECT_EQ(wrong.status, 1);
    EXPECT_TRUE(wrong.out.empty());
    EXPECT_NE(wrong.error.find("Line 2, Style: the shop has no blank style “Tee”."), std::string::npos)
        << wrong.error;
    EXPECT_EQ(std::ranges::count(wrong.error, '\n'), 1);
    EXPECT_EQ(importing("none.csv").status, 1);
    EXPECT_EQ(run({QStringLiteral("import")}).status, 2);
    const auto written = run({QStringLiteral("--shop"), shop, QStringLiteral("export"),
                              QString::fromStdString(beside("written").string())});
    EXPECT_EQ(written.status, 0) << written.error;
    QFile places(QString::fromStdString(beside("written/places.csv").string()));
    ASSERT_TRUE(places.open(QIODevice::ReadOnly));
    EXPECT_EQ(places.readAll(), "Place,Retired\r\nAttic,no\r\nCellar,no\r\n");
}

} // namespace
} // namespace holdfast::app
