// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <filesystem>

namespace holdfast::db {

TEST(IncludeRoot, CompilerFindsNoHeaderOfAppFromDb) {
#if __has_include("app/theme/tokens.h")
    ADD_FAILURE() << "db can include what is in app.";
#endif
    EXPECT_TRUE(std::filesystem::exists(std::filesystem::path{HOLDFAST_SOURCE_DIR} / "app/theme/tokens.h"));
}

} // namespace holdfast::db
