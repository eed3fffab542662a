// SPDX-License-Identifier: GPL-3.0-or-later
// What core and db say reaches the window through the translation that the application has installed.

#include "app/desk/formats.h"
#include "core/trade/sentence.h"

#include <QCoreApplication>
#include <QTranslator>

#include <gtest/gtest.h>

namespace holdfast::app {
namespace {

// A made-up language: each pattern that core says stands in brackets, with the form for its count.
class Bracketed : public QTranslator {
public:
    bool isEmpty() const override { return false; }
    QString translate(const char* context, const char* source, const char*, int count) const override {
        if (context != nullptr) // the window's own words; those of core are their own ids
            return {};
        const QStringList forms = QString::fromUtf8(source).split(QLatin1Char('|'));
        return QLatin1Char('[') + (count == 1 ? forms.front() : forms.back()) + QLatin1Char(']');
    }
};

class WindowLanguageTest : public ::testing::Test {
protected:
    void SetUp() override { QCoreApplication::installTranslator(&m_language); }
    void TearDown() override { QCoreApplication::removeTranslator(&m_language); }

private:
    Bracketed m_language;
};

TEST_F(WindowLanguageTest, TranslatesThePatternAndKeepsWhatIsPutIntoIt) {
    EXPECT_EQ(words(said("{lot}: no wash load on record.", {{"lot", "Tee, M"}})),
              QStringLiteral("[Tee, M: no wash load on record.]"));
}

TEST_F(WindowLanguageTest, TranslatesThePartsOfASentenceToo) {
    EXPECT_EQ(words(said("{obstacle} in the way", {{"obstacle", phrase("seams")}})),
              QStringLiteral("[[seams] in the way]"));
}

TEST_F(WindowLanguageTest, AsksForTheFormOfACount) {
    const auto washed = [](int count) {
        return words(said("Washed {n} blank|Washed {n} blanks", {{"n", count}}));
    };
    EXPECT_EQ(washed(1), QStringLiteral("[Washed 1 blank]"));
    EXPECT_EQ(washed(3), QStringLiteral("[Washed 3 blanks]"));
}

TEST_F(WindowLanguageTest, LeavesWhatAPersonTypedAsItIs) {
    EXPECT_EQ(words(asItIs("as typed")), QStringLiteral("as typed"));
}

TEST(WindowLanguage, IsEnglishWithoutATranslation) {
    EXPECT_EQ(words(said("Washed {n} blank|Washed {n} blanks", {{"n", 2}})),
              QStringLiteral("Washed 2 blanks"));
}

} // namespace
} // namespace holdfast::app
