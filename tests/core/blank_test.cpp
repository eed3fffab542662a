// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/blank_lot.h"
#include "core/facts/blank_style.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

TEST(Blank, FibresOfALabelAddToTheWhole) {
    EXPECT_TRUE(checkFibres(std::vector<FibreShare>{{Fibre::Cotton, 80}, {Fibre::Polyester, 20}}).ok());
    EXPECT_TRUE(checkFibres(std::vector<FibreShare>{{Fibre::Linen, 100}}).ok());
}

TEST(Blank, AWrongLabelIsRefusedWithItsFigure) {
    struct Case {
        std::vector<FibreShare> fibres;
        const char* words;
    };
    for (const Case& wrong : {
             Case{{}, "at least one fibre"},
             Case{{{Fibre::Cotton, 80}, {Fibre::Polyester, 15}}, "add to 95 %"},
             Case{{{Fibre::Cotton, 80}, {Fibre::Polyester, 25}}, "add to 105 %"},
             Case{{{Fibre::Cotton, 100}, {Fibre::Elastane, 0}}, "elastane must be 1 to 100 %, not 0 %"},
             Case{{{Fibre::Cotton, 101}}, "cotton must be 1 to 100 %"},
             Case{{{Fibre::Cotton, 50}, {Fibre::Cotton, 50}}, "cotton twice"},
         }) {
        const Result<Done> checked = checkFibres(wrong.fibres);
        ASSERT_FALSE(checked.ok());
        EXPECT_EQ(checked.error().field, "fibres");
        EXPECT_NE(checked.error().message.english().find(wrong.words), std::string::npos)
            << checked.error().message.english();
    }
}

TEST(Blank, FibresAreToldLargestFirst) {
    const std::vector<FibreShare> fibres{{Fibre::Polyester, 20}, {Fibre::Cotton, 75}, {Fibre::Elastane, 5}};
    EXPECT_EQ(fibreText(fibres), "75 % cotton, 20 % polyester, 5 % elastane");
    EXPECT_EQ(fibreText({}), "");
}

TEST(Blank, AColourIsFoundById) {
    BlankStyle tee;
    tee.colours = {{{1}, "Moss", 0x556633}, {{2}, "Oyster", 0xddd8cc}};
    ASSERT_NE(tee.colour({2}), nullptr);
    EXPECT_EQ(tee.colour({2})->name, "Oyster");
    EXPECT_EQ(tee.colour({3}), nullptr);
}

TEST(Blank, AStyleIsWashedFirstUnlessAReasonSaysOtherwise) {
    BlankStyle cap;
    EXPECT_TRUE(cap.washedFirst());
    cap.notPrewashedBecause = "stiffened peak";
    EXPECT_FALSE(cap.washedFirst());
}

TEST(Blank, SoftenerOrADryerSheetLeavesAFilm) {
    WashLoad load;
    EXPECT_FALSE(load.leftSoftener());
    load.dryerSheet = true;
    EXPECT_TRUE(load.leftSoftener());
    load.dryerSheet = false;
    load.softener = true;
    EXPECT_TRUE(load.leftSoftener());
}

TEST(Blank, ObstaclesAndWaysRoundHaveWords) {
    EXPECT_EQ(obstacleName(Obstacle::Zip), "zip");
    EXPECT_EQ(obstacleName(Obstacle::ThickHem), "thick hem");
    EXPECT_EQ(wayRoundName(WayRound::Pillow), "pressing pillow");
    EXPECT_EQ(wayRoundName(WayRound::SmallPlaten), "small platen");
    EXPECT_EQ(fibreName(Fibre::Polyamide), "polyamide");
}

} // namespace
} // namespace holdfast
