// SPDX-License-Identifier: GPL-3.0-or-later
// Each reader takes every input that is kept for it: some of each kind, and whatever once made it fail.
#include "tests/long/fuzz/fuzz_target.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>

namespace holdfast::fuzz {
namespace {

TEST(KeptInputs, AreTakenByTheirReaders) {
    ASSERT_FALSE(targets().empty());
    for (const Target& target : targets()) {
        int read = 0;
        const auto folder =
            std::filesystem::path{HOLDFAST_SOURCE_DIR} / "tests/long/fuzz/corpus" / target.name;
        for (const auto& kept : std::filesystem::directory_iterator{folder}) {
            SCOPED_TRACE(kept.path().string());
            std::ifstream file{kept.path(), std::ios::binary};
            const std::string input(std::istreambuf_iterator<char>{file}, {});
            target.read(input);
            ++read;
        }
        EXPECT_GT(read, 2) << target.name;
    }
}

} // namespace
} // namespace holdfast::fuzz
