// SPDX-License-Identifier: GPL-3.0-or-later
// The manual page and the completions of the shells name what `holdfast --help` names: no more and no less.

#include "app/command_line/arguments.h"
#include "tests/install/installed.h"

#include <gtest/gtest.h>

#include <QRegularExpression>
#include <QSet>
#include <QStandardPaths>

namespace holdfast::install_test {
namespace {

using Words = QSet<QString>;

Words found(const QString& text, const char* pattern) {
    Words words;
    auto matches = QRegularExpression(QString::fromLatin1(pattern), QRegularExpression::MultilineOption)
                       .globalMatch(text);
    while (matches.hasNext())
        words.insert(matches.next().captured(1));
    return words;
}

QString help() {
    return QString::fromStdString(app::usage());
}

Words verbsAsked() {
    return found(help(), "^  ([a-z][a-z-]*)");
}
Words reportsAsked() {
    return found(help(), "^  report ([a-z-]+)");
}
Words optionsAsked() {
    return found(help(), "(--[a-z]+)");
}

std::string inWords(const Words& words) {
    QStringList sorted(words.begin(), words.end());
    sorted.sort();
    return sorted.join(QStringLiteral(" ")).toStdString();
}

QString manualPage() {
    return textOf(installed(QStringLiteral("share/man/man1/holdfast.1.gz")))
        .replace(QStringLiteral("\\-"), QStringLiteral("-"));
}

TEST(Usage, HelpIsReadAsItIsMeant) {
    EXPECT_EQ(verbsAsked().size(), 14) << inWords(verbsAsked());
    EXPECT_EQ(reportsAsked().size(), 8) << inWords(reportsAsked());
    EXPECT_TRUE(optionsAsked().contains(QStringLiteral("--demo")));
}

TEST(Usage, ManualPageNamesEachVerbReportAndOption) {
    const QString page = manualPage();
    EXPECT_EQ(inWords(found(page, "^\\.BI? ([a-z][a-z-]*)(?: \"[^\"]*\"| [a-z-]+)?$") -
                      Words{QStringLiteral("holdfast")} -
                      Words{QStringLiteral("make"), QStringLiteral("or")}),
              inWords(verbsAsked()));
    EXPECT_EQ(inWords(found(page, "^\\.B report ([a-z-]+)")), inWords(reportsAsked()));
    EXPECT_EQ(inWords(found(page, "(--[a-z]+)")), inWords(optionsAsked()));
}

TEST(Usage, ManualPageIsSetWithoutAWarning) {
    NEED_PROGRAM("man");
    const Ran ran = run(QStringLiteral("man"),
                        {QStringLiteral("--warnings"), QStringLiteral("-E"), QStringLiteral("UTF-8"),
                         QStringLiteral("-l"), QStringLiteral("-Tutf8"), QStringLiteral("-Z"),
                         installed(QStringLiteral("share/man/man1/holdfast.1.gz"))});
    EXPECT_EQ(ran.status, 0) << ran.out.toStdString();
    EXPECT_FALSE(ran.out.contains(QStringLiteral("warning"))) << ran.out.toStdString();
}

// ── bash: asked as bash asks it ──

QStringList offeredByBash(const QString& line) {
    const QString script =
        QStringLiteral("source '%1'; COMP_WORDS=(%2); COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); "
                       "compopt() { :; }; _holdfast; printf '%s\\n' \"${COMPREPLY[@]}\"")
            .arg(installed(QStringLiteral("share/bash-completion/completions/holdfast")), line);
    const Ran ran = run(QStringLiteral("bash"), {QStringLiteral("-c"), script},
                        installed(QStringLiteral("share/man/man1")));
    EXPECT_EQ(ran.status, 0) << ran.out.toStdString();
    return ran.out.split(QLatin1Char('\n'), Qt::SkipEmptyParts);
}

Words asSet(const QStringList& list) {
    return {list.begin(), list.end()};
}

TEST(Usage, BashOffersEachVerbReportAndOption) {
    EXPECT_EQ(inWords(asSet(offeredByBash(QStringLiteral("holdfast ''")))), inWords(verbsAsked()));
    EXPECT_EQ(inWords(asSet(offeredByBash(QStringLiteral("holdfast --demo report ''")))),
              inWords(reportsAsked()));
    Words options;
    for (const char* line : {"holdfast --", "holdfast report walk --", "holdfast tour pictures --",
                             "holdfast put-back old.holdfast --", "holdfast due-days new.ics --"})
        options += asSet(offeredByBash(QString::fromLatin1(line)));
    EXPECT_EQ(inWords(options), inWords(optionsAsked()));
}

TEST(Usage, BashOffersWhatFollows) {
    EXPECT_EQ(offeredByBash(QStringLiteral("holdfast tour --scale ''")),
              (QStringList{QStringLiteral("1"), QStringLiteral("2")}));
    EXPECT_EQ(offeredByBash(QStringLiteral("holdfast import ''")),
              QStringList{QStringLiteral("holdfast.1.gz")});
    EXPECT_TRUE(offeredByBash(QStringLiteral("holdfast --on ''")).isEmpty());
    EXPECT_EQ(offeredByBash(QStringLiteral("holdfast pap")), QStringList{QStringLiteral("papers")});
}

// ── fish: asked as fish asks it ──

Words offeredByFish(const QString& line) {
    const Ran ran =
        run(QStringLiteral("fish"),
            {QStringLiteral("--no-config"), QStringLiteral("-c"),
             QStringLiteral("source '%1'; complete -C '%2'")
                 .arg(installed(QStringLiteral("share/fish/vendor_completions.d/holdfast.fish")), line)},
            installed(QStringLiteral("bin")));
    Words words;
    for (const QString& each : ran.out.split(QLatin1Char('\n'), Qt::SkipEmptyParts))
        if (const QString word = each.section(QLatin1Char('\t'), 0, 0); word != QStringLiteral("holdfast"))
            words.insert(word);
    return words;
}

TEST(Usage, FishOffersEachVerbReportAndOption) {
    NEED_PROGRAM("fish");
    EXPECT_EQ(inWords(offeredByFish(QStringLiteral("holdfast "))), inWords(verbsAsked()));
    EXPECT_EQ(inWords(offeredByFish(QStringLiteral("holdfast report "))), inWords(reportsAsked()));
    Words options;
    for (const char* line : {"holdfast --", "holdfast report walk --", "holdfast tour pictures --",
                             "holdfast put-back old.holdfast --", "holdfast due-days new.ics --"})
        options += offeredByFish(QString::fromLatin1(line));
    EXPECT_EQ(inWords(options), inWords(optionsAsked()));
}

// ── zsh: its file is read as text, for its completion asks only at a terminal ──

TEST(Usage, ZshNamesEachVerbReportAndOption) {
    const QString file = textOf(installed(QStringLiteral("share/zsh/vendor-completions/_holdfast")));
    EXPECT_EQ(inWords(found(file, "^ +'([a-z-]+):[a-z]")), inWords(verbsAsked()));
    const auto reports = QRegularExpression(QStringLiteral("reports=\\(([^)]*)\\)")).match(file).captured(1);
    EXPECT_EQ(inWords(asSet(reports.split(QLatin1Char(' ')))), inWords(reportsAsked()));
    EXPECT_EQ(inWords(found(file, "(--[a-z]+)\\[")), inWords(optionsAsked()));
}

TEST(Usage, ZshReadsItsFile) {
    NEED_PROGRAM("zsh");
    const Ran ran =
        run(QStringLiteral("zsh"),
            {QStringLiteral("-n"), installed(QStringLiteral("share/zsh/vendor-completions/_holdfast"))});
    EXPECT_EQ(ran.status, 0) << ran.out.toStdString();
    EXPECT_TRUE(ran.out.isEmpty()) << ran.out.toStdString();
}

} // namespace
} // namespace holdfast::install_test
