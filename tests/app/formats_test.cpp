// SPDX-License-Identifier: GPL-3.0-or-later
// How spans of time are said.

#include "app/desk/formats.h"

#include <gtest/gtest.h>

namespace holdfast::app {
namespace {

using namespace std::chrono_literals;

std::string spoken(Seconds span) {
    return timeSpan(span).toStdString();
}

TEST(Formats, ASpanOfTimeIsSaidAsPeopleSayIt) {
    EXPECT_EQ(spoken(0s), "0 s");
    EXPECT_EQ(spoken(59s), "59 s");
    EXPECT_EQ(spoken(4min), "4 min");
    EXPECT_EQ(spoken(2h + 5min), "2 h 5 min");
    EXPECT_EQ(spoken(72h), "72 h");
    EXPECT_EQ(spoken(95h + 59min), "95 h 59 min");
    // Nobody counts 441 hours.
    EXPECT_EQ(spoken(96h), "4 days");
    EXPECT_EQ(spoken(441h + 24min), "18 days");
    EXPECT_EQ(spoken(18 * 24h + 12h), "19 days");
}

} // namespace
} // namespace holdfast::app
