// SPDX-License-Identifier: GPL-3.0-or-later
// A translator's work: lupdate finds every text of the source, and what lrelease makes of a translation
// reaches the window, words and numbers, with the forms of counts. The tools are Qt's own.

#include "app/desk/formats.h"
#include "app/desk/window_language.h"
#include "core/trade/count_phrases.h"
#include "tests/app/made_up_language.h"

#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QDirIterator>
#include <QFile>
#include <QFileInfo>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>

namespace holdfast::app {
namespace {

const QString kSourceTree = QStringLiteral(HOLDFAST_SOURCE_DIR);

QString contentOf(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
    return QString::fromUtf8(file.readAll());
}

// The source of core, db and app without its comments, by path.
std::vector<std::pair<QString, QString>> sources() {
    static const QRegularExpression comment(QStringLiteral(R"((?m)^\s*//.*$|\s// .*$)"));
    std::vector<std::pair<QString, QString>> all;
    for (const char* layer : {"core", "db", "app"}) {
        QDirIterator files(kSourceTree + QLatin1Char('/') + QLatin1String(layer),
                           {QStringLiteral("*.cpp"), QStringLiteral("*.h")}, QDir::Files,
                           QDirIterator::Subdirectories);
        while (files.hasNext()) {
            const QString path = files.next();
            all.emplace_back(path, contentOf(path).remove(comment));
        }
    }
    return all;
}

QString unescaped(QString literal) {
    return literal.replace(QStringLiteral("\\n"), QStringLiteral("\n"))
        .replace(QStringLiteral("\\\""), QStringLiteral("\""));
}

class TranslationFiles : public testing::Test {
protected:
    QString path(const char* name) const { return m_folder.filePath(QLatin1String(name)); }

private:
    QTemporaryDir m_folder;
};

TEST_F(TranslationFiles, LupdateFindsEveryText) {
    const QString said = test::writtenByLupdate(path("all.ts"));
    for (const QString& line : said.split(u'\n'))
        for (const char* trouble : {"lacks Q_OBJECT", "without context", "Cannot invoke", "Unbalanced"})
            EXPECT_FALSE(line.contains(QLatin1String(trouble))) << line.toStdString();
    const test::MadeUpLanguage found(path("all.ts"));
    static const QRegularExpression text(
        QStringLiteral(R"re(\b(?:tr|said|phrase|QT_TR_NOOP)\(\s*"((?:[^"\\]|\\.)*)")re"));
    int texts = 0;
    for (const auto& [file, source] : sources())
        for (auto match = text.globalMatch(source); match.hasNext(); ++texts) {
            const QString literal = unescaped(match.next().captured(1));
            EXPECT_TRUE(literal.isEmpty() || found.hasTextThatBegins(literal))
                << file.toStdString() << ": “" << literal.toStdString() << "”";
        }
    EXPECT_GT(texts, 3500);
}

// What is handed on to translate() or tr() as a variable lupdate cannot read, unless QT_TRANSLATE_NOOP marks
// it.
TEST_F(TranslationFiles, EveryTextIsALiteral) {
    static const QRegularExpression hidden(
        QStringLiteral(R"re(\btr\(\s*[a-zA-Z_]|\btranslate\(\s*"(\w|:)+",\s*[a-zA-Z_])re"));
    for (const auto& [file, source] : sources())
        if (source.contains(hidden) && !source.contains(QStringLiteral("QT_TRANSLATE_NOOP")))
            ADD_FAILURE() << file.toStdString() << ": " << hidden.match(source).captured().toStdString();
}

// Fills the first message that begins so with these forms, or with the one translation.
void translate(QString& ts, const QString& message, const QStringList& forms) {
    const qsizetype at = ts.indexOf(message);
    ASSERT_GE(at, 0) << message.toStdString();
    const qsizetype end = ts.indexOf(QStringLiteral("</message>"), at);
    QString whole = ts.mid(at, end - at);
    whole.remove(QStringLiteral(" type=\"unfinished\""));
    if (forms.size() == 1) {
        whole.replace(QStringLiteral("<translation></translation>"),
                      QStringLiteral("<translation>%1</translation>").arg(forms.front()));
    } else {
        for (const QString& form : forms)
            whole.replace(whole.indexOf(QStringLiteral("<numerusform></numerusform>")), 27,
                          QStringLiteral("<numerusform>%1</numerusform>").arg(form));
    }
    ts.replace(at, end - at, whole);
}

// Polish has a form for one, one for 2 to 4 and the like, and one for the rest (Qt's numerus rules, which are
// those of Unicode CLDR; the words are from memory).
TEST_F(TranslationFiles, ReachTheWindowByLrelease) {
    test::writtenByLupdate(path("pl.ts"), {QStringLiteral("-target-language"), QStringLiteral("pl")});
    QString ts = contentOf(path("pl.ts"));
    translate(ts, QStringLiteral("<message id=\"{n} day|{n} days\""),
              {QStringLiteral("{n} dzień"), QStringLiteral("{n} dni"), QStringLiteral("{n} dni.")});
    translate(ts, QStringLiteral("<source>%n garment to press|"),
              {QStringLiteral("%n sztuka"), QStringLiteral("%n sztuki"), QStringLiteral("%n sztuk")});
    translate(ts, QStringLiteral("<source>en</source>"), {QStringLiteral("pl")});
    {
        QFile file(path("pl.ts"));
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(ts.toUtf8());
    }
    const QString lrelease = QFileInfo(QStringLiteral(HOLDFAST_LUPDATE)).path() + QStringLiteral("/lrelease");
    ASSERT_EQ(QProcess::execute(lrelease, {QStringLiteral("-silent"), path("pl.ts"), QStringLiteral("-qm"),
                                           path("window.qm")}),
              0);
    ASSERT_EQ(QProcess::execute(lrelease, {QStringLiteral("-silent"), QStringLiteral("-idbased"),
                                           path("pl.ts"), QStringLiteral("-qm"), path("sentences.qm")}),
              0);
    QTranslator window;
    QTranslator sentences;
    ASSERT_TRUE(window.load(path("window.qm")));
    ASSERT_TRUE(sentences.load(path("sentences.qm")));
    setWindowLanguage({&window, &sentences});
    EXPECT_EQ(words(holdfast::dayCount(1)), QStringLiteral("1 dzień"));
    EXPECT_EQ(words(holdfast::dayCount(3)), QStringLiteral("3 dni"));
    EXPECT_EQ(words(holdfast::dayCount(5)), QStringLiteral("5 dni."));
    const auto garments = [](int count) {
        return QCoreApplication::translate("holdfast::app::Rail", "%n garment to press|%n garments to press",
                                           nullptr, count);
    };
    EXPECT_EQ(garments(1), QStringLiteral("1 sztuka"));
    EXPECT_EQ(garments(22), QStringLiteral("22 sztuki"));
    EXPECT_EQ(garments(25), QStringLiteral("25 sztuk"));
    EXPECT_EQ(valueWords(Decimal{3.5}), QStringLiteral("3,5"));
    EXPECT_EQ(words(said("{n} h", {{"n", 6}})), QStringLiteral("6 h")) << "what is not translated is English";
    setWindowLanguage();
}

} // namespace
} // namespace holdfast::app
