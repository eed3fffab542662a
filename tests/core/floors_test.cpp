// SPDX-License-Identifier: GPL-3.0-or-later
// The source is built in floors: see DEVELOPERS.md. An include goes down, never up and never round.

#include "tests/core/floors.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

namespace holdfast {

namespace {

const std::filesystem::path kSource = HOLDFAST_SOURCE_DIR;

std::vector<ListedFolder> floorsOfDevelopersPage() {
    std::ifstream page{kSource / "DEVELOPERS.md"};
    return listedFolders(std::string{std::istreambuf_iterator<char>{page}, {}});
}

using Faults = std::vector<std::string>;

} // namespace

// A small source of our own, made up for one test.
class MadeUpSource : public testing::Test {
protected:
    MadeUpSource() {
        std::filesystem::create_directories(m_tree);
        put("core/trade/money.h", "#pragma once\n");
        put("core/facts/order.h", "#pragma once\n#include \"core/trade/money.h\"\n");
        put("core/shop/walk.cpp", "#include \"core/shop/walk.h\"\n#include \"core/facts/order.h\"\n");
        put("core/film/roll.h", "#include <vector>\n// #include \"core/shop/walk.h\"\n");
        put("db/tables/orders.cpp", "#include \"core/shop/walk.h\"\n");
        put("app/places/book/book.cpp", "#include \"app/places/book/rows.h\"\n");
        put("app/places/shelf/shelf.cpp", "#include \"db/tables/orders.h\"\n");
        put("app/main.cpp", "#include \"app/places/book/book.h\"\n");
    }
    ~MadeUpSource() override { std::filesystem::remove_all(m_tree); }

    void put(const std::string& file, const std::string& text) {
        std::filesystem::create_directories((m_tree / file).parent_path());
        std::ofstream{m_tree / file} << text;
    }

    std::vector<std::string> faults() const { return faultsOfFloors(m_tree, listedFolders(m_list)); }

    std::string m_list = "Floors, each with a folder:\n"
                         "    1  core/trade    units\n"
                         "    2  core/facts    what is known\n"
                         "                     of a shop\n"
                         "    3  core/film     rolls\n"
                         "    3  core/shop     all of it\n"
                         "    1  db/tables     reading\n"
                         "    1  app/places/*  places\n"
                         "    2  app           main\n";

private:
    std::filesystem::path m_tree =
        std::filesystem::path{testing::TempDir()} /
        (std::string{"floors-"} + testing::UnitTest::GetInstance()->current_test_info()->name());
};

TEST(Floors, EveryIncludeOfCoreDbAndAppGoesDown) {
    const std::vector<ListedFolder> list = floorsOfDevelopersPage();
    EXPECT_GT(list.size(), 30u);
    for (const std::string& fault : faultsOfFloors(kSource, list))
        ADD_FAILURE() << fault;
}

TEST(Floors, CompilerFindsNoHeaderOfDbOrAppFromCore) {
#if __has_include("db/sqlite/query.h") || __has_include("app/theme/tokens.h")
    ADD_FAILURE() << "core can include what is in db or app.";
#endif
    EXPECT_TRUE(std::filesystem::exists(kSource / "db/sqlite/query.h"));
    EXPECT_TRUE(std::filesystem::exists(kSource / "app/theme/tokens.h"));
}

TEST_F(MadeUpSource, IsSoundAsItIs) {
    EXPECT_EQ(faults(), Faults{});
}

TEST_F(MadeUpSource, IncludeOfAHigherFloorIsNamedWithItsLine) {
    put("core/trade/dates.h", "#pragma once\n\n#include \"core/facts/order.h\"\n");
    EXPECT_EQ(faults(),
              Faults{"core/trade/dates.h:3 includes core/facts/order.h, which is on a higher floor."});
}

TEST_F(MadeUpSource, IncludeOfAHigherLayerIsNamed) {
    put("db/tables/rows.h", "#include \"app/main.h\"\n");
    put("core/shop/rows.h", "  #include \"db/tables/orders.h\"\n");
    EXPECT_EQ(faults(), (Faults{"core/shop/rows.h:1 includes db/tables/orders.h, which is on a higher floor.",
                                "db/tables/rows.h:1 includes app/main.h, which is on a higher floor."}));
}

TEST_F(MadeUpSource, FoldersOfOneFloorDoNotKnowEachOther) {
    put("core/film/use.h", "#include \"core/shop/walk.h\"\n");
    put("app/places/shelf/use.h", "#include \"app/places/book/book.h\"\n");
    EXPECT_EQ(faults(),
              (Faults{"app/places/shelf/use.h:1 includes app/places/book/book.h, which is on the same floor.",
                      "core/film/use.h:1 includes core/shop/walk.h, which is on the same floor."}));
}

TEST_F(MadeUpSource, CircleIsAnIncludeThatGoesUp) {
    put("core/facts/money.h", "#include \"core/shop/walk.h\"\n");
    EXPECT_EQ(faults(),
              Faults{"core/facts/money.h:1 includes core/shop/walk.h, which is on a higher floor."});
}

TEST_F(MadeUpSource, FolderThatTheListDoesNotNameIsAFault) {
    put("core/new/thing.h", "#pragma once\n");
    put("core/shop/thing.h", "#include \"core/new/thing.h\"\n");
    EXPECT_EQ(
        faults(),
        (Faults{"core/new/thing.h is in a folder that the list does not name.",
                "core/shop/thing.h:1 includes core/new/thing.h, whose folder the list does not name."}));
}

TEST_F(MadeUpSource, ListedFolderWithoutFilesIsAFault) {
    m_list += "    3  app/gone  nothing\n";
    EXPECT_EQ(faults(), Faults{"app/gone is listed, and there is no file in it."});
}

TEST_F(MadeUpSource, ListOutOfOrderIsAFault) {
    m_list = "1 core/trade -\n3 core/film -\n2 core/facts -\n3 core/shop -\n"
             "2 db/tables -\n1 app/places/* -\n2 app -\n";
    EXPECT_EQ(faults(), (Faults{"core/facts is listed out of order.", "db/tables is listed out of order."}));
}

} // namespace holdfast
