// SPDX-License-Identifier: GPL-3.0-or-later
// No text that a person reads uses a word that docs/words.md retired.
#include "tests/core/retired_words.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

namespace holdfast {

namespace {

const std::filesystem::path kSourceTree = HOLDFAST_SOURCE_DIR;

std::vector<RetiredWord> wordsOfTheGlossary() {
    std::ifstream page{kSourceTree / "docs/words.md"};
    return retiredWords(std::string{std::istreambuf_iterator<char>{page}, {}});
}

std::vector<std::string> onlyTexts(const std::vector<SpokenText>& spoken) {
    std::vector<std::string> texts;
    for (const SpokenText& each : spoken)
        texts.push_back(each.text);
    return texts;
}

} // namespace

class MadeUpTexts : public testing::Test {
protected:
    MadeUpTexts() {
        for (const char* folder : {"core", "db", "app/install", "docs/decisions"})
            std::filesystem::create_directories(m_tree / folder);
    }
    ~MadeUpTexts() override { std::filesystem::remove_all(m_tree); }

    void put(const std::string& file, const std::string& text) { std::ofstream{m_tree / file} << text; }

    std::vector<std::string> faults() const { return faultsOfWords(m_tree, retiredWords(m_page)); }

    std::string m_page = "Only `tables` count.\n\n"
                         "| word | meaning | not used for it |\n"
                         "|---|---|---|\n"
                         "| came back | a garment | `claim` (but `claim ticket`), `told of` |\n"
                         "| calculate | | `reckon*` |\n";

private:
    std::filesystem::path m_tree =
        std::filesystem::path{testing::TempDir()} /
        (std::string{"words-"} + testing::UnitTest::GetInstance()->current_test_info()->name());
};

TEST(RetiredWords, NoTextOfTheProgramHasOne) {
    const std::vector<RetiredWord> words = wordsOfTheGlossary();
    EXPECT_GT(words.size(), 80u);
    for (const std::string& fault : faultsOfWords(kSourceTree, words))
        ADD_FAILURE() << fault;
}

TEST(RetiredWords, EveryPhraseThatStaysGoodHasItsWord) {
    for (const RetiredWord& word : wordsOfTheGlossary()) {
        EXPECT_FALSE(word.phrase.empty());
        EXPECT_FALSE(word.instead.empty()) << word.phrase;
    }
}

TEST_F(MadeUpTexts, TableGivesWordsWithTheirGoodPhrases) {
    const auto words = retiredWords(m_page);
    ASSERT_EQ(words.size(), 3u);
    EXPECT_EQ(words[0].phrase, "claim");
    EXPECT_EQ(words[0].goodIn, std::vector<std::string>{"claim ticket"});
    EXPECT_EQ(words[0].instead, "came back");
    EXPECT_EQ(words[1].phrase, "told of");
    EXPECT_TRUE(words[1].goodIn.empty());
    EXPECT_TRUE(words[2].isBeginning);
}

TEST_F(MadeUpTexts, FaultNamesFileLineAndWhatToSay) {
    put("app/list.cpp", "\n\nauto text = tr(\"No Claim\"\n \" waits.\");\n");
    EXPECT_EQ(faults(),
              std::vector<std::string>{"app/list.cpp:3: “claim”, say “came back”: No Claim waits."});
}

TEST_F(MadeUpTexts, PhraseIsFoundAcrossLiteralsAndLines) {
    put("db/rows.cpp", "said(\"What was told \"\n     \"of it\");\n");
    put("docs/use.md", "What was told\nof it.\n");
    EXPECT_EQ(faults().size(), 2u);
}

TEST_F(MadeUpTexts, GoodPhrasesWholeWordsCodeAndDecisionsAreNoFault) {
    put("app/list.cpp", "tr(\"Print the claim ticket\"); tr(\"Proclaim it\"); // no claim\n"
                        "call(\"claim\"); sql(\"SELECT claim FROM claim\");\n");
    put("docs/use.md", "`claim` [here](claim.md)\n```\nclaim\n```\n");
    put("docs/decisions/then.md", "A claim.\n");
    EXPECT_EQ(faults(), std::vector<std::string>{});
}

TEST_F(MadeUpTexts, BeginningIsFoundInAnyWordOfIt) {
    put("core/sum.cpp", "phrase(\"Reckoned\");\n");
    put("app/install/holdfast.1.in", "Is reckoning.\n");
    EXPECT_EQ(faults().size(), 2u);
}

TEST(RetiredWords, TextsOfSourceAreWhatAPersonReads) {
    EXPECT_EQ(onlyTexts(textsOfSource("#include \"a.h\"\n"
                                      "auto a = tr(\"Told\"); /* tr(\"not\") */ // tr(\"nor\")\n"
                                      "auto b = {'\"', 1'000, \"key\", \"two words\"};\n"
                                      "auto c = R\"x(raw words)x\"; auto d = phrase(\"say \\\"so\\\"\");\n")),
              (std::vector<std::string>{"Told", "two words", "raw words", "say \"so\""}));
}

} // namespace holdfast
