// SPDX-License-Identifier: GPL-3.0-or-later
// What libFuzzer calls, in a program with one reader.
#include "tests/long/fuzz/fuzz_target.h"

#include <cstddef>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t count);

int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t count) {
    holdfast::fuzz::targets().front().read({reinterpret_cast<const char*>(bytes), count});
    return 0;
}
