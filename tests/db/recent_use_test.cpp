// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/usual_use.h"
#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

using RecentUseOf = SmallShop;

TEST_F(RecentUseOf, LengthCutIsSummedByWeekFromTheWeekTheFilmCame) {
    const auto first = takeTees();
    cutAll(first);
    const Millimetres once = -Millimetres{number("SELECT SUM(mm) FROM roll_move WHERE kind = 'cut'")};
    ASSERT_GT(once, Millimetres{});
    EXPECT_EQ(loadRecentUse(connection(), now().instant)[m_film].front(), once);

    const std::size_t weeks = loadRecentUse(connection(), now().instant)[m_film].size();
    wait(Days{8});
    cutAll(takeTees());
    cutAll(takeTees());
    const auto use = loadRecentUse(connection(), now().instant)[m_film];
    EXPECT_GE(use.size(), weeks + 1);
    EXPECT_EQ(use[0], once * 2);
    EXPECT_EQ(use[1], once);

    // Neither what was corrected or written off nor what lies further back counts.
    ASSERT_TRUE(correctLength(shop(), m_roll, Millimetres{1000}, "measured anew").ok());
    EXPECT_EQ(loadRecentUse(connection(), now().instant)[m_film], use);
    wait(Days{7 * (kUseWeeks + 1)});
    EXPECT_EQ(loadRecentUse(connection(), now().instant)[m_film], std::vector<Millimetres>(kUseWeeks));
}

} // namespace
} // namespace holdfast::db
