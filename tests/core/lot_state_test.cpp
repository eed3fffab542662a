// SPDX-License-Identifier: GPL-3.0-or-later
// What stands between a lot of blanks and the platen.
#include "core/shop/lot_state.h"

#include "core/facts/shop_facts.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

using namespace std::chrono_literals;

class LotStates : public testing::Test {
protected:
    LotStates() {
        BlankStyle style;
        style.id = BlankStyleId{1};
        m_facts.styles.add(style);
        m_lot.style = style.id;
    }

    LotState stateAfter(const WashLoad& load) {
        m_facts.loads.add(load);
        m_lot.lastLoad = load.id;
        return stateOf(m_facts, m_lot);
    }
    static WashLoad aLoad(std::int64_t id, bool isDry) {
        WashLoad load;
        load.id = WashLoadId{id};
        if (isDry)
            load.dryAt = load.startedAt + 24h;
        return load;
    }

    ShopFacts m_facts;
    BlankLot m_lot;
};

TEST_F(LotStates, AreUnwashedDryingAndReady) {
    EXPECT_EQ(stateOf(m_facts, m_lot), LotState::Unwashed);
    EXPECT_EQ(stateAfter(aLoad(1, false)), LotState::Drying);
    EXPECT_EQ(stateAfter(aLoad(2, true)), LotState::Ready);
}

TEST_F(LotStates, SoftenerAndDryerSheetMustBeWashedOutAgain) {
    WashLoad soft = aLoad(1, true);
    soft.softener = true;
    EXPECT_EQ(stateAfter(soft), LotState::HasSoftener);
    WashLoad sheet = aLoad(2, true);
    sheet.dryerSheet = true;
    EXPECT_EQ(stateAfter(sheet), LotState::HasSoftener);
    WashLoad drying = aLoad(3, false);
    drying.softener = true;
    EXPECT_EQ(stateAfter(drying), LotState::Drying) << "what it left is judged when it is dry";
}

TEST_F(LotStates, StyleThatIsNotWashedFirstIsReadyAsItComes) {
    BlankStyle felt;
    felt.id = BlankStyleId{2};
    felt.notPrewashedBecause = "felt shrinks";
    m_facts.styles.add(felt);
    m_lot.style = felt.id;
    EXPECT_EQ(stateOf(m_facts, m_lot), LotState::Ready);
}

} // namespace
} // namespace holdfast
