// SPDX-License-Identifier: GPL-3.0-or-later
// The window's language: what core and db say reaches the window through the translation that is set, counts
// take the form that they ask for, and numbers, days and money are written as the translation's locale does.

#include "app/desk/formats.h"
#include "app/desk/window_language.h"
#include "core/trade/sentence.h"

#include <QCoreApplication>
#include <QTranslator>

#include <gtest/gtest.h>

namespace holdfast::app {
namespace {

// A made-up language: each pattern that core says stands in brackets, with the form for its count. Its locale
// is the one that it is given.
class Bracketed : public QTranslator {
public:
    explicit Bracketed(QString locale = QStringLiteral("en"))
        : m_locale(std::move(locale)) {}

    bool isEmpty() const override { return false; }
    QString translate(const char* context, const char* source, const char*, int count) const override {
        if (context != nullptr) // the window's own words; those of core are their own ids
            return QLatin1String(source) == QLatin1String("en") ? m_locale : QString();
        const QStringList forms = QString::fromUtf8(source).split(QLatin1Char('|'));
        return QLatin1Char('[') + (count == 1 ? forms.front() : forms.back()) + QLatin1Char(']');
    }

private:
    QString m_locale;
};

class WindowLanguageTest : public ::testing::Test {
protected:
    void SetUp() override { setWindowLanguage({&m_language}); }
    void TearDown() override { setWindowLanguage(); }

private:
    Bracketed m_language;
};

class WindowOfLocale : public ::testing::Test {
protected:
    void TearDown() override { setWindowLanguage(); }
    void speak(const char* locale) {
        setWindowLanguage();
        m_language = std::make_unique<Bracketed>(QLatin1String(locale));
        setWindowLanguage({m_language.get()});
    }
    // CLDR puts no-break spaces where a line may not break; what they look like is one.
    static QString seen(QString text) {
        return text.replace(QChar(0xA0), QLatin1Char(' ')).replace(QChar(0x202F), QLatin1Char(' '));
    }

    const Currency m_pounds;
    const LocalDate m_day = localDate(2026, 11, 30); // a Monday

private:
    std::unique_ptr<Bracketed> m_language;
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

TEST(WindowLanguage, TakesTheFormOfACountInEnglish) {
    const auto garments = [](int count) {
        return QCoreApplication::translate("Test", "%n garment|%n garments", nullptr, count);
    };
    EXPECT_EQ(garments(0), QStringLiteral("0 garments"));
    EXPECT_EQ(garments(1), QStringLiteral("1 garment"));
    EXPECT_EQ(garments(1500), QStringLiteral("1500 garments"));
    EXPECT_EQ(QCoreApplication::translate("Test", "a | b"), QStringLiteral("a | b")) << "no count, no forms";
}

// What moc calls holdfast::app::Workshop, lupdate calls Workshop: the translation is found either way.
TEST(WindowLanguage, FindsTextsOfAClassUnderTheNameThatLupdateGivesIt) {
    class OfOneClass : public QTranslator {
    public:
        bool isEmpty() const override { return false; }
        QString translate(const char* context, const char*, const char*, int) const override {
            return QLatin1String(context) == QLatin1String("Workshop") ? QStringLiteral("found") : QString();
        }
    } language;
    setWindowLanguage({&language});
    EXPECT_EQ(QCoreApplication::translate("holdfast::app::Workshop", "Save"), QStringLiteral("found"));
    EXPECT_EQ(QCoreApplication::translate("Workshop", "Save"), QStringLiteral("found"));
    EXPECT_EQ(QCoreApplication::translate("holdfast::app::Rail", "Save"), QStringLiteral("Save"));
    setWindowLanguage();
}

// Germany: decimal comma, points between thousands, the currency's sign after the amount; names of days and
// months in short. Unicode CLDR, locale "de" (from memory; Qt ships its data).
TEST_F(WindowOfLocale, WritesNumbersDaysAndMoneyAsGermanDoes) {
    speak("de");
    EXPECT_EQ(seen(money(Money{145150}, m_pounds)), QStringLiteral("1.451,50 £"));
    EXPECT_EQ(moneyBare(Money{145150}, m_pounds), QStringLiteral("1.451,50"));
    EXPECT_EQ(metres(Millimetres{3400}), QStringLiteral("3,4 m"));
    EXPECT_EQ(celsius(Celsius{150.5}), QStringLiteral("150,5 °C"));
    EXPECT_EQ(percentOf(0.004), QStringLiteral("0,4 %"));
    EXPECT_EQ(valueWords(Decimal{4}), QStringLiteral("4"));
    EXPECT_EQ(valueWords(Decimal{4.25, 2}), QStringLiteral("4,25"));
    EXPECT_EQ(valueWords(1200), QStringLiteral("1.200"));
    EXPECT_EQ(valueWords(Numeral{10427}), QStringLiteral("10427")) << "a number that names is not grouped";
    EXPECT_TRUE(day(m_day).startsWith(QStringLiteral("Mo"))) << day(m_day).toStdString();
    EXPECT_TRUE(date(localDate(2026, 12, 5)).contains(QStringLiteral("Dez")));
    EXPECT_EQ(longDay(m_day), QStringLiteral("Montag 30 November"));
    EXPECT_EQ(words(said("{length} left", {{"length", InMetres{Millimetres{3400}}}})),
              QStringLiteral("[3,40 m left]"));
}

TEST_F(WindowOfLocale, ReadsWhatItWrote) {
    for (const char* locale : {"en", "de", "fr", "de_CH", "pt_BR", "ar_EG"}) {
        SCOPED_TRACE(locale);
        speak(locale);
        const LocalDate today = m_day;
        for (const int month : {1, 3, 6, 9, 12}) {
            const LocalDate wanted = localDate(2025, static_cast<unsigned>(month), 17);
            const auto read = readDate(date(wanted), QStringLiteral("Day"), today);
            ASSERT_TRUE(read.ok()) << date(wanted).toStdString();
            EXPECT_EQ(*read, wanted);
        }
        for (const std::int64_t minor : {0, 50, 2650, 145150, 123456789}) {
            const QString written = moneyBare(Money{minor}, m_pounds);
            const auto read = readMoney(written, QStringLiteral("Amount"), m_pounds);
            ASSERT_TRUE(read.ok()) << written.toStdString();
            EXPECT_EQ(read->minor, minor);
        }
        for (const double number : {0.0, 4.3, 1234.5, 150.0}) {
            const auto read = readNumber(valueWords(Decimal{number}), QStringLiteral("Number"), 0, 5000);
            ASSERT_TRUE(read.ok()) << valueWords(Decimal{number}).toStdString();
            EXPECT_DOUBLE_EQ(*read, number);
        }
    }
}

TEST_F(WindowOfLocale, TakesEnglishMonthsInEveryLanguage) {
    speak("de");
    const auto read = readDate(QStringLiteral("5 Oct 2026"), QStringLiteral("Day"), m_day);
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(*read, localDate(2026, 10, 5));
}

// Each value is in English what core writes in reports: the window and the command line agree.
TEST_F(WindowOfLocale, WritesEnglishAsCoreDoes) {
    const LocalTime noon = LocalTime{m_day} + Hours{12};
    const DaySpan span{m_day, m_day + Days{20}};
    for (const Value& value :
         {Value{1200}, Value{Numeral{10427}}, Value{Decimal{4.3}}, Value{Decimal{-3.5, 1}}, Value{m_day},
          Value{DateWithYear{m_day}}, Value{Weekday{m_day}}, Value{DayOfMonth{m_day}}, Value{span},
          Value{NearSpan{span}}, Value{noon}, Value{TimeOfDay{noon}}, Value{Amount{Money{-300}, m_pounds}},
          Value{Millimetres{3400}}, Value{InMetres{Millimetres{3400}}},
          Value{Extent{Millimetres{280}, Millimetres{300}}}, Value{Celsius{150.5}}, Value{Seconds{12}}})
        EXPECT_EQ(valueWords(value).toStdString(), englishLanguage().written(value));
}

} // namespace
} // namespace holdfast::app
