// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/retired_words.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <fstream>
#include <iterator>
#include <set>

namespace holdfast {

namespace {

bool isOfWord(char sign) {
    return std::isalnum(static_cast<unsigned char>(sign)) != 0 || sign == '_';
}

std::string inSmallLetters(std::string text) {
    std::ranges::transform(text, text.begin(), [](unsigned char sign) { return std::tolower(sign); });
    return text;
}

std::string withSingleSpaces(std::string_view text) {
    std::string single;
    for (const char sign : text) {
        const bool isSpace = std::isspace(static_cast<unsigned char>(sign)) != 0;
        if (!isSpace)
            single += sign;
        else if (!single.empty() && single.back() != ' ')
            single += ' ';
    }
    return single;
}

std::vector<std::string> linesOf(std::string_view text) {
    std::vector<std::string> lines(1);
    for (const char sign : text) {
        if (sign == '\n')
            lines.emplace_back();
        else
            lines.back() += sign;
    }
    return lines;
}

std::string contentOf(const std::filesystem::path& file) {
    std::ifstream stream{file, std::ios::binary};
    return std::string{std::istreambuf_iterator<char>{stream}, {}};
}

// A row's third column gives phrases between backticks; those in brackets belong to the phrase before.
void addRetired(const std::string& row, std::vector<RetiredWord>& words) {
    const std::size_t second = row.find('|', 1);
    const std::size_t third = second == std::string::npos ? second : row.find('|', second + 1);
    if (third == std::string::npos)
        return;
    std::string instead = withSingleSpaces(row.substr(1, second - 1));
    while (instead.starts_with(' '))
        instead.erase(0, 1);
    while (instead.ends_with(' '))
        instead.pop_back();
    bool isGood = false;
    for (std::size_t at = third; at < row.size(); ++at) {
        if (row[at] == '(' || row[at] == ')')
            isGood = row[at] == '(';
        if (row[at] != '`')
            continue;
        const std::size_t end = row.find('`', at + 1);
        if (end == std::string::npos)
            return;
        std::string phrase = row.substr(at + 1, end - at - 1);
        if (isGood && !words.empty()) {
            words.back().goodIn.push_back(phrase);
        } else {
            const bool isBeginning = phrase.ends_with('*');
            if (isBeginning)
                phrase.pop_back();
            words.push_back({inSmallLetters(phrase), isBeginning, {}, instead});
        }
        at = end;
    }
}

// Goes through C++ from literal to literal.
class LiteralReader {
public:
    explicit LiteralReader(std::string_view source)
        : m_source(source) {}

    std::vector<SpokenText> read() {
        while (m_at < m_source.size()) {
            if (m_source.substr(m_at).starts_with("//"))
                skipTo(m_source.find('\n', m_at));
            else if (m_source.substr(m_at).starts_with("/*"))
                skipTo(m_source.find("*/", m_at));
            else if (m_source[m_at] == '\'' && !(m_at > 0 && isOfWord(m_source[m_at - 1])))
                skipTo(endOfLiteral('\''));
            else if (m_source.substr(m_at).starts_with("R\""))
                takeRaw();
            else if (m_source[m_at] == '"')
                takeLiteral();
            else
                takeSign();
        }
        finish();
        return std::move(m_texts);
    }

private:
    void skipTo(std::size_t end) {
        end = std::min(end, m_source.size());
        m_line += static_cast<int>(std::ranges::count(m_source.substr(m_at, end - m_at), '\n'));
        m_at = end;
        m_at += m_at < m_source.size() && m_source[m_at] != '\n' ? 1 : 0;
    }

    // The closing quote of the literal that begins here.
    std::size_t endOfLiteral(char quote) const {
        std::size_t end = m_at + 1;
        while (end < m_source.size() && m_source[end] != quote)
            end += m_source[end] == '\\' ? 2 : 1;
        return end;
    }

    void append(std::string_view text) {
        if (!m_isOpen) {
            m_isOpen = true;
            m_isCalled = isArgumentOfWords();
            m_current = {m_line, {}};
        }
        m_current.text += text;
    }

    void takeLiteral() {
        const std::size_t end = endOfLiteral('"');
        std::string text;
        for (std::size_t at = m_at + 1; at < std::min(end, m_source.size()); ++at) {
            if (m_source[at] == '\\')
                text += m_source[++at] == '"' ? '"' : ' ';
            else
                text += m_source[at];
        }
        append(text);
        skipTo(end);
    }

    void takeRaw() {
        const std::size_t open = m_source.find('(', m_at);
        const std::string close = ")" + std::string{m_source.substr(m_at + 2, open - m_at - 2)} + "\"";
        const std::size_t end = std::min(m_source.find(close, m_at), m_source.size());
        append(m_source.substr(open + 1, end - open - 1));
        skipTo(end + close.size() - 1);
    }

    void takeSign() {
        const char sign = m_source[m_at++];
        m_line += sign == '\n' ? 1 : 0;
        if (std::isspace(static_cast<unsigned char>(sign)) != 0)
            return;
        finish();
        m_before += sign;
    }

    bool isArgumentOfWords() const {
        constexpr std::array kCalls{"tr(", "said(", "phrase(", "QT_TRID_NOOP("};
        return std::ranges::any_of(kCalls, [&](std::string_view call) { return m_before.ends_with(call); });
    }

    static bool isSql(std::string_view text) {
        constexpr std::array kWords{"SELECT ", "INSERT ", "UPDATE ", "DELETE ", "FROM ",    "WHERE ",
                                    "JOIN ",   "CREATE ", "DROP ",   " AND ",   "ORDER BY", "PRAGMA "};
        return std::ranges::any_of(kWords,
                                   [&](std::string_view word) { return text.find(word) != text.npos; });
    }

    void finish() {
        const bool isSpoken = m_isCalled || m_current.text.find(' ') != std::string::npos;
        if (m_isOpen && isSpoken && !isSql(m_current.text))
            m_texts.push_back(std::move(m_current));
        if (m_isOpen)
            m_before.clear();
        m_isOpen = false;
    }

    std::string_view m_source;
    std::size_t m_at = 0;
    int m_line = 1;
    std::string m_before; // signs since the last literal, without spaces
    bool m_isOpen = false;
    bool m_isCalled = false;
    SpokenText m_current;
    std::vector<SpokenText> m_texts;
};

// Code and the addresses of links become spaces.
std::string withoutCode(std::string line) {
    for (const auto& [open, close] : {std::pair{"`", "`"}, std::pair{"](", ")"}}) {
        for (std::size_t at = line.find(open); at != std::string::npos; at = line.find(open, at + 1)) {
            const std::size_t end = line.find(close, at + 1);
            if (end == std::string::npos)
                break;
            std::fill(line.begin() + static_cast<std::ptrdiff_t>(at),
                      line.begin() + static_cast<std::ptrdiff_t>(end) + 1, ' ');
        }
    }
    return line;
}

bool isWithin(std::string_view text, std::size_t at, const std::string& good, std::size_t length) {
    for (std::size_t found = text.find(good); found != text.npos; found = text.find(good, found + 1))
        if (found <= at && at + length <= found + good.size())
            return true;
    return false;
}

bool has(const std::string& text, const RetiredWord& word) {
    const std::string small = inSmallLetters(text);
    for (std::size_t at = small.find(word.phrase); at != std::string::npos;
         at = small.find(word.phrase, at + 1)) {
        const std::size_t end = at + word.phrase.size();
        const bool begins = at == 0 || !isOfWord(word.phrase.front()) || !isOfWord(small[at - 1]);
        const bool ends =
            word.isBeginning || end == small.size() || !isOfWord(word.phrase.back()) || !isOfWord(small[end]);
        const bool isGood = std::ranges::any_of(word.goodIn, [&](const std::string& good) {
            return isWithin(text, at, good, word.phrase.size());
        });
        if (begins && ends && !isGood)
            return true;
    }
    return false;
}

bool isPage(const std::filesystem::path& file) {
    static const std::set<std::string> kInstalled{
        "holdfast.1.in",    "holdfast.desktop", "holdfast.metainfo.xml.in",
        "completions.bash", "completions.zsh",  "completions.fish"};
    return file.extension() == ".md" || kInstalled.contains(file.filename().string());
}

std::vector<std::filesystem::path> filesToRead(const std::filesystem::path& tree) {
    std::vector<std::filesystem::path> files{tree / "README.md", tree / "DEVELOPERS.md"};
    for (const char* folder : {"core", "db", "app"})
        for (const auto& entry : std::filesystem::recursive_directory_iterator{tree / folder})
            if (entry.path().extension() == ".cpp" || entry.path().extension() == ".h" ||
                isPage(entry.path()))
                files.push_back(entry.path());
    for (const auto& entry : std::filesystem::directory_iterator{tree / "docs"})
        if (isPage(entry.path()) && entry.path().filename() != "words.md")
            files.push_back(entry.path());
    std::ranges::sort(files);
    return files;
}

} // namespace

std::vector<RetiredWord> retiredWords(std::string_view page) {
    std::vector<RetiredWord> words;
    for (const std::string& line : linesOf(page))
        if (line.starts_with("| "))
            addRetired(line, words);
    return words;
}

std::vector<SpokenText> textsOfSource(std::string_view source) {
    return LiteralReader{source}.read();
}

std::vector<SpokenText> textsOfPage(std::string_view page) {
    std::vector<SpokenText> texts(1);
    bool isCode = false;
    int number = 0;
    for (const std::string& line : linesOf(page)) {
        ++number;
        if (line.starts_with("```"))
            isCode = !isCode;
        if (line.empty() || isCode || line.starts_with("|") || line.starts_with("- "))
            texts.push_back({number, {}});
        if (texts.back().text.empty())
            texts.back().line = number;
        if (!isCode)
            texts.back().text += withoutCode(line) + ' ';
    }
    std::erase_if(texts, [](const SpokenText& each) { return withSingleSpaces(each.text).size() < 2; });
    return texts;
}

std::vector<std::string> faultsOfWords(const std::filesystem::path& tree,
                                       const std::vector<RetiredWord>& words) {
    std::vector<std::string> faults;
    for (const std::filesystem::path& file : filesToRead(tree)) {
        const std::string content = contentOf(file);
        for (const SpokenText& each : isPage(file) ? textsOfPage(content) : textsOfSource(content)) {
            const std::string text = withSingleSpaces(each.text);
            for (const RetiredWord& word : words)
                if (has(text, word))
                    faults.push_back(std::filesystem::relative(file, tree).string() + ":" +
                                     std::to_string(each.line) + ": “" + word.phrase + "”, say “" +
                                     word.instead + "”: " + text);
        }
    }
    return faults;
}

} // namespace holdfast
