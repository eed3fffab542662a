// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The retired words of docs/words.md, looked for in every text that a person can read: the literals of core,
// db and app, the pages in docs (but docs/decisions, which tell of the past), README.md, DEVELOPERS.md and
// what is installed with the program.

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast {

struct RetiredWord {
    std::string phrase;              // in small letters; found at the bounds of words only
    bool isBeginning = false;        // of any word: "reckon*"
    std::vector<std::string> goodIn; // phrases that may have it, with their capitals
    std::string instead;
};

// A text with the line it begins on.
struct SpokenText {
    int line = 1;
    std::string text;
};

// Of the tables in the page: `phrases` in the third column, those in brackets good phrases of the one before.
std::vector<RetiredWord> retiredWords(std::string_view page);

// Literals of C++ that a person can read: arguments of tr(), said(), phrase() and the like, and whatever has
// a space in it and is no SQL. Neighbouring literals are one text.
std::vector<SpokenText> textsOfSource(std::string_view source);

// Paragraphs of a page of Markdown or plain text, without code and addresses of links.
std::vector<SpokenText> textsOfPage(std::string_view page);

// "app/shell/foot_line.cpp:96: “took back”, say “undo, redo”: Took back: %1".
std::vector<std::string> faultsOfWords(const std::filesystem::path& tree,
                                       const std::vector<RetiredWord>& words);

} // namespace holdfast
