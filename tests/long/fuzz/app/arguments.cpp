// SPDX-License-Identifier: GPL-3.0-or-later
// Whatever stands on the command line, a word a line.
#include "app/command_line/arguments.h"

#include "tests/long/fuzz/fuzz_target.h"

namespace holdfast::fuzz {
namespace {

void readWords(std::string_view input) {
    std::vector<std::string> words;
    for (std::size_t at = 0; at < input.size();) {
        const std::size_t end = std::min(input.find('\n', at), input.size());
        words.emplace_back(input.substr(at, end - at));
        at = end + 1;
    }
    const auto arguments = app::readArguments(words);
    require(arguments.ok() || (!arguments.error().message.english().empty() &&
                               arguments.error().message.english().find('\n') == std::string::npos),
            "wrong usage is said in one line");
}

const Registered registeredArguments{"arguments", readWords};

} // namespace
} // namespace holdfast::fuzz
