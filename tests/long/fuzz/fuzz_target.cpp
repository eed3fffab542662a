// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/long/fuzz/fuzz_target.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>

namespace holdfast::fuzz {

std::vector<Target>& targets() {
    static std::vector<Target> all;
    return all;
}

void require(bool isSo, const char* what) {
    if (isSo)
        return;
    std::fprintf(stderr, "not so: %s\n", what);
    std::abort();
}

std::uint8_t Parts::byte() {
    const std::string_view one = text(1);
    return one.empty() ? std::uint8_t{0} : static_cast<std::uint8_t>(one.front());
}

std::int64_t Parts::number() {
    std::uint64_t number = 0;
    for (int at = 0; at < 8; ++at)
        number |= std::uint64_t{byte()} << (8 * at);
    return static_cast<std::int64_t>(number);
}

std::string_view Parts::text(std::size_t length) {
    const std::string_view part = m_rest.substr(0, length);
    m_rest.remove_prefix(part.size());
    return part;
}

std::string_view Parts::longText() {
    const std::size_t low = byte();
    return text(low | std::size_t{byte()} << 8U);
}

} // namespace holdfast::fuzz
