// SPDX-License-Identifier: GPL-3.0-or-later
// What lives on: styles and storage places changed, and a delivery of several kinds.
#include "tests/db/every_action.h"

namespace holdfast::db {

OrderFileRead EveryAction::ofAWebShop() const {
    OrderFileRead file;
    file.naming.shop = "Web shop";
    file.naming.headings = {"Order", "Name", "Item"};
    file.naming.columns = {
        {OrderColumn::Reference, "Order"}, {OrderColumn::Customer, "Name"}, {OrderColumn::Item, "Item"}};
    file.naming.items = {{"Heron tee", m_at.openGarment}};
    for (const char* reference : {"W-1", "W-2"})
        file.orders.push_back({reference, {}, aDraft(), {}});
    return file;
}

std::vector<EveryAction::Doing> EveryAction::onStock() const {
    return {
        {"receiveDelivery",
         [this](Shop& in) {
             const std::vector<DeliveredBlanks> blanks{{"S", m_moss, 3}, {"M", m_moss, 2}, {"L", m_ink, 1}};
             return receiveDelivery(in, m_tee, blanks, now());
         }},
        {"changeStyle",
         [this](Shop& in) {
             BlankStyle style = loadFactsOf(in.connection(), {}).styles.at(m_tee);
             style.name = "Tee, heavy";
             style.sizes.insert(style.sizes.begin(), "XS");
             style.colours.push_back({{}, "Oat", 0xE0D8C0});
             style.isRetired = true;
             style.supplier = "Lowmoor Knitwear";
             return changeStyle(in, style);
         }},
        {"changePlace", [this](Shop& in) { return changePlace(in, {m_damp, "Cellar, at the back", true}); }},
    };
}

} // namespace holdfast::db
