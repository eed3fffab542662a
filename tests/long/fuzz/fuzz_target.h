// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A reader that must take any bytes at all: it answers, or refuses in words, and neither crashes nor hangs.
// Each stands in a file of its own. tests/long/run.sh fuzz makes a program of each, which libFuzzer feeds;
// the tests hand it the inputs that are kept in tests/long/fuzz/corpus.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::fuzz {

using Reader = void (*)(std::string_view input);

struct Target {
    const char* name; // of its folder in the corpus
    Reader read;
};

// Those of this program.
std::vector<Target>& targets();

struct Registered {
    Registered(const char* name, Reader read) { targets().push_back({name, read}); }
};

// Ends the program where it is not so.
void require(bool isSo, const char* what);

// Takes an input apart; past its end there are zeros and nothing.
class Parts {
public:
    explicit Parts(std::string_view input)
        : m_rest(input) {}

    bool isAtEnd() const { return m_rest.empty(); }
    std::uint8_t byte();
    std::int64_t number(); // eight bytes
    std::string_view text(std::size_t length);
    std::string_view shortText() { return text(byte()); }
    std::string_view longText(); // up to 65,535 bytes, the length before it
    std::string_view rest() { return text(m_rest.size()); }

private:
    std::string_view m_rest;
};

} // namespace holdfast::fuzz
