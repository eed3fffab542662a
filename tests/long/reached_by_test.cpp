// SPDX-License-Identifier: GPL-3.0-or-later
// Writes which dormant changes each test reaches: a line a test in the file that HOLDFAST_REACHED names.
#include "tests/long/dormant_change.h"

#include <cstdlib>
#include <fstream>
#include <gtest/gtest.h>

namespace {

class ReachedByTest : public testing::EmptyTestEventListener {
public:
    explicit ReachedByTest(const char* path)
        : m_report{path} {}

private:
    void OnTestStart(const testing::TestInfo&) override { dormant::forgetReached(); }

    void OnTestEnd(const testing::TestInfo& test) override {
        m_report << test.test_suite_name() << '.' << test.name() << ' ' << test.result()->elapsed_time();
        for (int change = 0; change < dormant::kMostChanges; ++change)
            if (dormant::wasReached(change))
                m_report << ' ' << change;
        m_report << '\n';
    }

    std::ofstream m_report;
};

[[maybe_unused]] const bool isListening = [] {
    if (const char* path = std::getenv("HOLDFAST_REACHED")) {
        dormant::isNoting = true;
        testing::UnitTest::GetInstance()->listeners().Append(
            new ReachedByTest{path}); // googletest deletes it
    }
    return true;
}();

} // namespace
