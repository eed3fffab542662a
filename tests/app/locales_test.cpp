// SPDX-License-Identifier: GPL-3.0-or-later
// The same in every locale: all that the program writes on its demo under German, Turkish and Egyptian
// settings, compared with the C locale byte for byte. Germany and Turkey write a decimal comma, Turkish has
// an i without its dot, Egypt has digits of its own; the locales are glibc's, made by localedef.

#include "core/trade/unit_words.h"
#include "core/trade/units.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QDirIterator>
#include <QFile>
#include <QFileInfo>
#include <QProcess>
#include <QTemporaryDir>

#include <clocale>
#include <map>

namespace holdfast::app {
namespace {

constexpr int kLongest = 300'000; // ms
const QStringList kLocales{QStringLiteral("de_DE"), QStringLiteral("tr_TR"), QStringLiteral("ar_EG")};

class Locales : public testing::Test {
protected:
    // What a run wrote, by name: "report walk", "papers/bag-tag-418-b.svg".
    using Written = std::map<std::string, QByteArray>;

    static void SetUpTestSuite() {
        for (const QString& name : kLocales) {
            const QString made = folder().filePath(name + QStringLiteral(".UTF-8"));
            outputOf(QStringLiteral("localedef"),
                     {QStringLiteral("-i"), name, QStringLiteral("-f"), QStringLiteral("UTF-8"), made}, {});
            ASSERT_TRUE(QFileInfo(made).isDir()) << "localedef made no " << name.toStdString()
                                                 << ": install Debian's locales, as tests/run.sh does.";
        }
    }

    static QTemporaryDir& folder() {
        static QTemporaryDir made;
        return made;
    }
    static QString inUtf8(const QString& locale) {
        return locale == QLatin1String("C") ? QStringLiteral("C.UTF-8") : locale + QStringLiteral(".UTF-8");
    }

    static QByteArray outputOf(const QString& program, const QStringList& arguments, const QString& locale) {
        QProcess process;
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        if (!locale.isEmpty()) {
            // C.UTF-8 is built into glibc's own folder.
            if (locale != QLatin1String("C"))
                environment.insert(QStringLiteral("LOCPATH"), folder().path());
            environment.insert(QStringLiteral("LC_ALL"), inUtf8(locale));
            environment.insert(QStringLiteral("LANG"), inUtf8(locale));
            // A demo of its own, made in this locale: its history has words of that time.
            environment.insert(QStringLiteral("XDG_DATA_HOME"),
                               folder().filePath(QStringLiteral("data-") + locale));
            environment.insert(QStringLiteral("XDG_CACHE_HOME"),
                               folder().filePath(QStringLiteral("cache-") + locale));
            environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
        }
        process.setProcessEnvironment(environment);
        process.start(program, arguments);
        EXPECT_TRUE(process.waitForFinished(kLongest)) << program.toStdString();
        EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
        return process.readAllStandardOutput();
    }

    static QByteArray program(QStringList arguments, const QString& locale) {
        return outputOf(
            QStringLiteral(HOLDFAST_PROGRAM),
            QStringList{QStringLiteral("--demo"), QStringLiteral("--on"), QStringLiteral("2026-11-26")} +
                arguments,
            locale);
    }

    static std::string firstDifference(const QByteArray& plain, const QByteArray& here) {
        const QList<QByteArray> lines = plain.split('\n');
        const QList<QByteArray> others = here.split('\n');
        for (qsizetype line = 0; line < lines.size(); ++line)
            if (line >= others.size() || lines[line] != others[line])
                return "“" + lines[line].toStdString() + "” against “" +
                       (line < others.size() ? others[line].toStdString() : std::string{}) + "”";
        return "more lines";
    }

    static QByteArray contentOf(const QString& path) {
        // A PDF has the moment it was made in it: its text is compared.
        if (path.endsWith(QLatin1String(".pdf")))
            return outputOf(QStringLiteral("pdftotext"),
                            {QStringLiteral("-layout"), path, QStringLiteral("-")}, {});
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
        return file.readAll();
    }

    static void addFolder(Written& all, const QString& path, const std::string& name) {
        for (const QFileInfo& file : QDir(path).entryInfoList(QDir::Files))
            all[name + "/" + file.fileName().toStdString()] = contentOf(file.filePath());
    }

    static Written writtenIn(const QString& locale) {
        Written all;
        for (const char* report : {"walk", "use-first", "holds", "blanks", "promise", "cut", "figures"}) {
            const QStringList asked{QStringLiteral("report"), QLatin1String(report)};
            all[std::string{"report "} + report] = program(asked, locale);
            all[std::string{"report --json "} + report] =
                program(asked + QStringList{QStringLiteral("--json")}, locale);
        }
        const QString papers = folder().filePath(QStringLiteral("papers-") + locale);
        program({QStringLiteral("papers"), papers}, locale);
        addFolder(all, papers, "papers");
        const QString tables = folder().filePath(QStringLiteral("tables-") + locale);
        program({QStringLiteral("export"), tables}, locale);
        addFolder(all, tables, "export");
        all["history"] = historyOf(folder().filePath(QStringLiteral("cache-") + locale));
        return all;
    }

    // The titles of all that was done in the demo, read with Debian's sqlite3.
    static QByteArray historyOf(const QString& data) {
        QDirIterator shops(data, {QStringLiteral("*.holdfast")}, QDir::Files, QDirIterator::Subdirectories);
        EXPECT_TRUE(shops.hasNext());
        return outputOf(QStringLiteral("sqlite3"),
                        {QStringLiteral("-readonly"), shops.next(),
                         QStringLiteral("SELECT title FROM journal_entry ORDER BY id")},
                        {});
    }
};

TEST_F(Locales, ReportsPapersCutFilesTablesAndHistoryAreTheSameInEach) {
    for (const char* comma : {"de_DE", "tr_TR"})
        ASSERT_EQ(outputOf(QStringLiteral("locale"), {QStringLiteral("decimal_point")}, QLatin1String(comma))
                      .trimmed(),
                  ",")
            << "the locale is not in force";
    const Written plain = writtenIn(QStringLiteral("C"));
    EXPECT_GT(plain.size(), 100U);
    for (const auto& [name, content] : plain)
        EXPECT_FALSE(content.isEmpty()) << name;
    for (const QString& locale : kLocales) {
        SCOPED_TRACE(locale.toStdString());
        const Written here = writtenIn(locale);
        EXPECT_EQ(here.size(), plain.size());
        for (const auto& [name, content] : plain) {
            const auto found = here.find(name);
            ASSERT_NE(found, here.end()) << name;
            EXPECT_TRUE(found->second == content)
                << name << " differs: " << firstDifference(content, found->second);
        }
    }
}

// In this very process, as setlocale leaves it when the program begins.
TEST_F(Locales, NumbersAndLettersOfTheRulesKeepToTheirOwn) {
    const std::string before = setlocale(LC_ALL, nullptr);
    qputenv("LOCPATH", folder().path().toUtf8());
    for (const char* locale : {"de_DE.UTF-8", "tr_TR.UTF-8"}) {
        ASSERT_NE(setlocale(LC_ALL, locale), nullptr);
        EXPECT_EQ(numberWords(5.75), "5.8");
        EXPECT_EQ(numberWords(-0.04), "0");
        EXPECT_EQ(numberWords(1234567), "1234567");
        EXPECT_EQ(temperatureWords(Celsius{150.5}), "150.5 °C");
        EXPECT_EQ(inSmallLetters("FILM I"), "film i");
        EXPECT_EQ(withCapital("iron"), "Iron");
    }
    setlocale(LC_ALL, before.c_str());
    qunsetenv("LOCPATH");
}

} // namespace
} // namespace holdfast::app
