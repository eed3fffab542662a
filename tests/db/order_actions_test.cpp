// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/stage.h"
#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

using OrderActions = SmallShop;
using Taking = Result<OrderTaken>;
using Doing = Result<Done>;

std::string ofLength(std::size_t characters) {
    std::string text;
    for (std::size_t count = 0; count < characters; ++count)
        text += "é";
    return text;
}

TEST_F(OrderActions, OrderIsWrittenAsItWasTyped) {
    auto draft = aDraft(2);
    draft.customerName = "  Žofie Ågren ";
    draft.deposit = {3000};
    draft.note = "text first\nthen ring";
    draft.garments[1].decals[0].content = Wording{" Juno ", Face::Plain};
    const auto order = take(draft);
    EXPECT_EQ(order.number, 1);
    const auto facts = loadFactsOf(connection(), std::span{&order.id, 1});
    const Order& written = facts.orders.at(order.id);
    EXPECT_EQ(facts.customers.at(written.customer).name, "Žofie Ågren");
    EXPECT_EQ(written.state, OrderState::Confirmed);
    EXPECT_EQ(written.takenAt, now().instant);
    EXPECT_EQ(written.takenAtPlace, "workshop");
    EXPECT_EQ(written.promised, draft.promised);
    EXPECT_EQ(written.total.minor, 5300);
    EXPECT_EQ(written.paid.minor, 3000);
    EXPECT_EQ(written.note, "text first\nthen ring");
    const auto garments = facts.garmentsOf(order.id);
    ASSERT_EQ(garments.size(), 2U);
    EXPECT_EQ(facts.labelOf(*garments[1]), "1-b");
    const Decal& decal = garments[1]->decals.at(0);
    EXPECT_EQ(std::get<Wording>(decal.content).text, "Juno");
    EXPECT_EQ(std::get<Wording>(decal.content).face, Face::Plain);
    EXPECT_EQ(decal.confirmedBy, "at the table");
    EXPECT_EQ(decal.below.value, 70);
    EXPECT_FALSE(decal.isCut());
    EXPECT_EQ(text("SELECT kind || how FROM money_move"), "depositcash");
}

TEST_F(OrderActions, TakingAnOrderIsOneEntryThatCanBeTakenBack) {
    receiveTees(1);
    auto draft = aDraft(2);
    draft.deposit = {3000};
    draft.depositHow = PaidHow::Card;
    expectUndoable<Taking>([&] { return takeOrder(shop(), draft, now()); },
                           "Took order 1, deposit £30.00 card");
}

TEST_F(OrderActions, NumberOfAnOrderTakenBackIsNotGivenAgain) {
    takeTees();
    ASSERT_TRUE(shop().undo(shop().recent(1).front().id).ok());
    EXPECT_EQ(takeTees().number, 2);
}

TEST_F(OrderActions, OrderTakenAtAFairBearsItsName) {
    auto settings = loadSettings(connection());
    settings.fairName = "Saltmarsh Makers’ Market";
    ASSERT_TRUE(changeSettings(shop(), settings).ok());
    takeTees();
    EXPECT_EQ(text("SELECT taken_at_place FROM shop_order"), "Saltmarsh Makers’ Market");
    EXPECT_EQ(lastTitle(), "Took order 1 at Saltmarsh Makers’ Market");
}

TEST_F(OrderActions, CustomerIsFoundByNameAndPhoneElseNew) {
    takeTees();
    auto draft = aDraft();
    draft.customerName = "odile farrant";
    take(draft);
    EXPECT_EQ(number("SELECT COUNT(*) FROM customer"), 1);
    draft.customerPhone = "";
    take(draft);
    take(draft);
    EXPECT_EQ(number("SELECT COUNT(*) FROM customer"), 3) << "a name alone is no proof";
    draft.customer = CustomerId{number("SELECT MIN(id) FROM customer")};
    draft.customerName = "";
    take(draft);
    EXPECT_EQ(number("SELECT COUNT(*) FROM customer"), 3);
    EXPECT_EQ(number("SELECT COUNT(*) FROM shop_order WHERE customer_id = (SELECT MIN(id) FROM customer)"),
              3);
}

TEST_F(OrderActions, CleanBlankIsKeptBeforeOneInTheWashBeforeAnUnwashedOne) {
    const auto unwashed = receiveTees(1);
    wait(Hours{24});
    const auto inWash = receiveTees(1);
    const auto softened = receiveTees(1);
    const auto clean = receiveCleanTees(1);
    const auto youngerClean = receiveCleanTees(1);
    WashPlan plan;
    plan.detergent = "mild";
    plan.parts = {{inWash, 1}};
    ASSERT_TRUE(startWash(shop(), plan).ok());
    plan.parts = {{softened, 1}};
    plan.softener = true;
    const auto load = startWash(shop(), plan);
    ASSERT_TRUE(load.ok() && markDry(shop(), *load).ok());
    const auto order = takeTees(6);
    const std::optional<BlankLotId> expected[] = {clean,    youngerClean, inWash,
                                                  unwashed, softened,     std::nullopt};
    for (std::size_t at = 0; at < 6; ++at)
        EXPECT_EQ(lotOf(garmentOf(order, at)), expected[at]) << at;
}

TEST_F(OrderActions, UnwashedBlankIsAsGoodAsACleanOneWhereTheStyleIsPressedUnwashed) {
    const auto older = receiveTees(1);
    wait(Hours{24});
    receiveCleanTees(1);
    ASSERT_TRUE(markNotPrewashed(shop(), m_tee, "washed by its maker").ok());
    EXPECT_EQ(lotOf(garmentOf(takeTees())), older);
}

TEST_F(OrderActions, BlankOfAnotherSizeOrColourIsNotKept) {
    receiveTees(3, "L");
    ASSERT_TRUE(receiveBlanks(shop(), m_tee, "M", m_ink, 3, now()).ok());
    EXPECT_FALSE(lotOf(garmentOf(takeTees())));
}

TEST_F(OrderActions, LastBlankIsKeptOnlyOnce) {
    const auto lot = receiveTees(1);
    EXPECT_EQ(lotOf(garmentOf(takeTees())), lot);
    EXPECT_FALSE(lotOf(garmentOf(takeTees())));
}

TEST_F(OrderActions, QuotationKeepsNoBlankBeforeItIsConfirmed) {
    const auto lot = receiveTees(1);
    auto draft = aDraft();
    draft.isQuotation = true;
    draft.isConfirmed = false;
    const auto order = take(draft);
    EXPECT_EQ(lastTitle(), "Quoted order 1");
    EXPECT_FALSE(lotOf(garmentOf(order)));
    EXPECT_EQ(text("SELECT confirmed_by FROM decal"), "");
    expectUndoable<Doing>([&] { return confirmQuotation(shop(), order.id); }, "Order 1 confirmed");
    EXPECT_EQ(lotOf(garmentOf(order)), lot);
    expectRefused<Doing>([&] { return confirmQuotation(shop(), order.id); }, "", "confirmed already");
}

TEST_F(OrderActions, WhatIsWrongInADraftIsSaidWithItsField) {
    const std::vector<std::pair<std::string, std::function<void(OrderDraft&)>>> wrong{
        {"customerName", [](auto& draft) { draft.customerName = " \t "; }},
        {"customerName", [](auto& draft) { draft.customerName = "\xE2\x80\x8B"; }},
        {"customerName", [](auto& draft) { draft.customerName = ofLength(81); }},
        {"customerName", [](auto& draft) { draft.customerName = "A\x01z"; }},
        {"customerName", [](auto& draft) { draft.customerName = "A\nz"; }},
        {"customerName", [](auto& draft) { draft.customerName = "A\xC3"; }},
        {"customerPhone", [](auto& draft) { draft.customerPhone = ofLength(31); }},
        {"customer", [](auto& draft) { draft.customer = CustomerId{77}; }},
        {"garments", [](auto& draft) { draft.garments.clear(); }},
        {"garments", [](auto& draft) { draft.garments.resize(201, draft.garments[0]); }},
        {"style", [](auto& draft) { draft.garments[0].style = {}; }},
        {"size", [](auto& draft) { draft.garments[0].size = "XXL"; }},
        {"colour", [](auto& draft) { draft.garments[0].colour = ColourId{5}; }},
        {"price", [](auto& draft) { draft.garments[0].price = {-1}; }},
        {"price", [](auto& draft) { draft.garments[0].price = {100'000'000}; }},
        {"decals", [](auto& draft) { draft.garments[0].decals.clear(); }},
        {"decals", [](auto& draft) { draft.garments[0].decals.resize(13, draft.garments[0].decals[0]); }},
        {"film", [](auto& draft) { draft.garments[0].decals[0].film = FilmId{9}; }},
        {"width", [](auto& draft) { draft.garments[0].decals[0].width = {4}; }},
        {"width", [](auto& draft) { draft.garments[0].decals[0].width = {2001}; }},
        {"height", [](auto& draft) { draft.garments[0].decals[0].height = {-5}; }},
        {"below", [](auto& draft) { draft.garments[0].decals[0].below = {-1}; }},
        {"aside", [](auto& draft) { draft.garments[0].decals[0].aside = {1001}; }},
        {"layer", [](auto& draft) { draft.garments[0].decals[0].layer = 0; }},
        {"layer", [](auto& draft) { draft.garments[0].decals[0].layer = 13; }},
        {"wording", [](auto& draft) { draft.garments[0].decals[0].content = Wording{"  "}; }},
        {"wording", [](auto& draft) { draft.garments[0].decals[0].content = Wording{ofLength(61)}; }},
        {"artwork", [](auto& draft) { draft.garments[0].decals[0].content = Artwork{""}; }},
        {"deposit", [](auto& draft) { draft.deposit = {-1}; }},
        {"deposit", [](auto& draft) { draft.deposit = {5301}; }},
        {"deposit", [](auto& draft) { draft.isQuotation = true, draft.deposit = {1}; }},
        {"promised", [](auto& draft) { draft.promised -= Days{4}; }},
        {"promised", [](auto& draft) { draft.promised += Days{20'000}; }},
        {"note", [](auto& draft) { draft.note = ofLength(501); }},
    };
    for (const auto& [field, spoil] : wrong) {
        auto draft = aDraft(2);
        spoil(draft);
        expectRefused<Taking>([&] { return takeOrder(shop(), draft, now()); }, field);
    }
    EXPECT_EQ(takeTees().number, 1) << "a refused order takes no number";
}

TEST_F(OrderActions, WrongGarmentIsNamedByItsLetter) {
    auto draft = aDraft(3);
    draft.garments[2].price = {-1};
    expectRefused<Taking>([&] { return takeOrder(shop(), draft, now()); }, "price", "Garment c: ");
}

TEST_F(OrderActions, WhatJustFitsIsTaken) {
    auto draft = aDraft(200);
    draft.customerName = ofLength(80);
    draft.customerPhone = ofLength(30);
    draft.garments[0].price = {0};
    draft.garments[1].price = {99'999'999};
    draft.garments[0].decals.resize(12, draft.garments[0].decals[0]);
    draft.garments[0].decals[0].content = Wording{ofLength(60)};
    draft.deposit = draft.total();
    draft.promised = std::chrono::floor<Minutes>(now().local());
    take(draft);
    EXPECT_EQ(number("SELECT COUNT(*) FROM garment"), 200);
    expectSound();
}

TEST_F(OrderActions, WordingIsAgreedRewordedAndAgreedAnew) {
    auto draft = aDraft(2);
    draft.isConfirmed = false;
    draft.garments[0].decals[0].content = Wording{"Juno"};
    const auto order = take(draft);
    const auto decal = decalOf(order);
    expectUndoable<Doing>([&] { return confirmWording(shop(), decal, " by phone "); },
                          "1-a: Name “Juno” agreed by phone");
    expectUndoable<Doing>([&] { return rewordDecal(shop(), decal, "Juné"); }, "1-a: “Juno” is now “Juné”");
    EXPECT_EQ(connection().number("SELECT confirmed_by = '' FROM decal WHERE id = ?1", decal), 1);
    expectUndoable<Doing>([&] { return confirmWording(shop(), decalOf(order, 1), "by letter"); },
                          "1-b: Heron agreed by letter");
    for (const std::string& bad : {std::string{}, std::string{"   "}, ofLength(81), std::string{"a\x07"}})
        expectRefused<Doing>([&] { return confirmWording(shop(), decal, bad); }, "how");
    for (const std::string& bad : {std::string{}, ofLength(61), std::string{"a\nb"}})
        expectRefused<Doing>([&] { return rewordDecal(shop(), decal, bad); }, "wording");
    expectRefused<Doing>([&] { return rewordDecal(shop(), decalOf(order, 1), "Juno"); }, "wording",
                         "drawing");
    expectRefused<Doing>([&] { return confirmWording(shop(), DecalId{3}, "by phone"); }, "decal");
}

// As the app hands it over: path data, of which db reads nothing.
TEST_F(OrderActions, OutlineOfAWordingIsKeptFromWhenItsOrderIsTaken) {
    auto draft = aDraft();
    draft.isConfirmed = false;
    draft.garments[0].decals[0].content = Wording{"Juno", Face::Plain, "M0 0L1 1L1 0"};
    const auto order = take(draft);
    const auto decal = decalOf(order);
    const auto kept = [&] {
        const auto facts = loadFactsOf(connection(), std::span{&order.id, 1});
        return std::get<Wording>(facts.garmentsOf(order.id).at(0)->decals.at(0).content).outline;
    };
    EXPECT_EQ(kept(), "M0 0L1 1L1 0");
    ASSERT_TRUE(confirmWording(shop(), decal, "by phone", "M9 9L8 8L8 9").ok());
    EXPECT_EQ(kept(), "M0 0L1 1L1 0") << "what the customer saw stays";
    expectUndoable<Doing>([&] { return rewordDecal(shop(), decal, "Juné", "M5 5L6 6L6 5"); },
                          "1-a: “Juno” is now “Juné”");
    EXPECT_EQ(kept(), "M5 5L6 6L6 5");
    ASSERT_TRUE(rewordDecal(shop(), decal, "June").ok());
    EXPECT_EQ(kept(), "") << "the outline of other words is not kept";
}

// From before outlines were kept: the next act on it keeps one.
TEST_F(OrderActions, WordingWithoutAnOutlineKeepsTheOneItIsAgreedOrCutBy) {
    auto draft = aDraft(2);
    for (GarmentDraft& garment : draft.garments)
        garment.decals[0].content = Wording{"Juno"};
    const auto order = take(draft);
    expectUndoable<Doing>([&] { return confirmWording(shop(), decalOf(order), "by phone", "M0 0L1 1L1 0"); },
                          "1-a: Name “Juno” agreed by phone");
    const auto decal = decalOf(order, 1);
    const std::vector<KeptOutline> outlines{{decal, "M2 2L3 3L3 2"}};
    expectUndoable<Doing>(
        [&] {
            return cutDecals(shop(), m_roll, std::span(&decal, 1), Millimetres{100}, now(), {}, outlines);
        },
        "Cut 1 decal from R-01, 0.10 m");
    EXPECT_EQ(connection().number("SELECT COUNT(*) FROM decal WHERE outline LIKE 'M%'"), 2);
}

TEST_F(OrderActions, RewordingToTheSameWordsLeavesNoEntry) {
    auto draft = aDraft();
    draft.garments[0].decals[0].content = Wording{"Juno"};
    const auto order = take(draft);
    const auto before = dump();
    ASSERT_TRUE(rewordDecal(shop(), decalOf(order), "Juno ").ok());
    EXPECT_EQ(dump(), before);
    EXPECT_EQ(lastTitle(), "Took order 1");
}

TEST_F(OrderActions, WhatIsCutIsNeitherRewordedNorGivenAnotherFilm) {
    const auto order = takeTees();
    const auto oyster = addFilm(shop(), aFilm("Oyster"));
    ASSERT_TRUE(oyster.ok());
    expectUndoable<Doing>([&] { return changeFilm(shop(), decalOf(order), *oyster); },
                          "1-a: Heron in Marram Soft, Oyster");
    ASSERT_TRUE(changeFilm(shop(), decalOf(order), m_film).ok());
    cutAll(order);
    expectRefused<Doing>([&] { return changeFilm(shop(), decalOf(order), *oyster); }, "", "cut already");
    expectRefused<Doing>([&] { return rewordDecal(shop(), decalOf(order), "x"); }, "", "cut already");
    expectRefused<Doing>([&] { return changeFilm(shop(), decalOf(order), FilmId{4}); }, "film");
}

TEST_F(OrderActions, PromiseMovesButNotIntoThePast) {
    const auto order = takeTees();
    expectUndoable<Doing>([&] { return movePromise(shop(), order.id, inDays(2), now()); },
                          "Promise moved to Fri 13 Nov 15:00");
    expectRefused<Doing>([&] { return movePromise(shop(), order.id, inDays(-1), now()); }, "promised");
    expectRefused<Doing>([&] { return movePromise(shop(), order.id, inDays(9000), now()); }, "promised");
    expectRefused<Doing>([&] { return movePromise(shop(), OrderId{1}, inDays(2), now()); }, "order");
}

TEST_F(OrderActions, LayerChangesUntilPressingBegan) {
    const auto order = readyToPress();
    expectUndoable<Doing>([&] { return changeLayer(shop(), decalOf(order), 12); }, "1-a: Heron on layer 12");
    for (const int layer : {0, 13, -1})
        expectRefused<Doing>([&] { return changeLayer(shop(), decalOf(order), layer); }, "layer");
    ASSERT_TRUE(takeUp(shop(), garmentOf(order), routeFor(garmentOf(order)), now()).ok());
    expectRefused<Doing>([&] { return changeLayer(shop(), decalOf(order), 2); }, "", "on the press");
}

TEST_F(OrderActions, LayersAreReorderedWholeUntilPressingBegan) {
    receiveCleanTees(1);
    auto draft = aDraft();
    draft.garments[0].decals.push_back(draft.garments[0].decals[0]);
    draft.garments[0].decals[1].content = Wording{"Juno"};
    draft.garments[0].decals[1].layer = 2;
    const auto order = take(draft);
    const auto garment = garmentOf(order);
    const auto decals = decalsOf(garment);
    const std::vector<DecalId> turned{decals[1], decals[0]};
    const auto reorder = [&](const std::vector<DecalId>& fromCloth) {
        return [&, fromCloth] { return reorderLayers(shop(), garment, fromCloth); };
    };
    expectUndoable<Doing>(reorder(turned), "1-a layered from the cloth: Name “Juno”, then Heron");
    EXPECT_EQ(decalsOf(garment), turned);
    expectRefused<Doing>(reorder({}), "layers");
    expectRefused<Doing>(reorder({decals[0]}), "layers");
    expectRefused<Doing>(reorder({decals[0], decals[0]}), "layers");
    expectRefused<Doing>(reorder({decals[0], decals[1], DecalId{4}}), "layers");
    cutAll(order);
    ASSERT_TRUE(takeUp(shop(), garment, routeFor(garment), now()).ok());
    expectRefused<Doing>(reorder(turned), "", "on the press");
}

TEST_F(OrderActions, AnotherBlankIsKeptAndTheOldOneGoesToWhoWaits) {
    const auto medium = receiveTees(1);
    const auto large = receiveTees(1, "L");
    const auto first = takeTees();
    const auto waiting = takeTees();
    EXPECT_FALSE(lotOf(garmentOf(waiting)));
    expectUndoable<Doing>([&] { return changeBlank(shop(), garmentOf(first), m_tee, "L", m_moss); },
                          "1-a on Tee, L, Moss instead");
    EXPECT_EQ(lotOf(garmentOf(first)), large);
    EXPECT_EQ(lotOf(garmentOf(waiting)), medium);
    EXPECT_EQ(titlesOf(waiting.id).back(), "Took order 2");
    EXPECT_EQ(titlesOf(waiting.id).front().substr(0, 6), "Redone");
    expectRefused<Doing>([&] { return changeBlank(shop(), garmentOf(first), m_tee, "XS", m_moss); }, "size");
    expectRefused<Doing>([&] { return changeBlank(shop(), garmentOf(first), m_tee, "L", {}); }, "colour");
    expectRefused<Doing>([&] { return changeBlank(shop(), garmentOf(first), {}, "L", m_moss); }, "style");
    const auto before = dump();
    ASSERT_TRUE(changeBlank(shop(), garmentOf(first), m_tee, "L", m_moss).ok());
    EXPECT_EQ(dump(), before);
}

TEST_F(OrderActions, BlankOfAGarmentOnThePressStays) {
    const auto order = readyToPress();
    ASSERT_TRUE(takeUp(shop(), garmentOf(order), routeFor(garmentOf(order)), now()).ok());
    expectRefused<Doing>([&] { return changeBlank(shop(), garmentOf(order), m_tee, "L", m_moss); }, "",
                         "on the press");
}

TEST_F(OrderActions, CustomerAndNoteAreChanged) {
    const auto order = takeTees();
    const CustomerId customer{number("SELECT id FROM customer")};
    expectUndoable<Doing>([&] { return changeCustomer(shop(), customer, "Odile Brandt", ""); },
                          "Customer is now Odile Brandt");
    EXPECT_EQ(titlesOf(order.id).front().substr(0, 6), "Redone");
    expectUndoable<Doing>([&] { return changeNote(shop(), order.id, "gate code\n4412"); },
                          "Note written on 1");
    expectUndoable<Doing>([&] { return changeNote(shop(), order.id, " "); }, "Note of 1 taken off");
    expectRefused<Doing>([&] { return changeCustomer(shop(), customer, "", ""); }, "customerName");
    expectRefused<Doing>([&] { return changeCustomer(shop(), customer, "A", ofLength(31)); },
                         "customerPhone");
    expectRefused<Doing>([&] { return changeCustomer(shop(), CustomerId{8}, "A", ""); }, "customer");
    expectRefused<Doing>([&] { return changeNote(shop(), order.id, ofLength(501)); }, "note");
    expectRefused<Doing>([&] { return changeNote(shop(), OrderId{8}, "x"); }, "order");
}

TEST_F(OrderActions, MoneyMovesWithinWhatIsOwedAndPaid) {
    const auto order = takeTees(2); // £53.00
    const auto move = [&](MoneyKind kind, std::int64_t minor) {
        return [&, kind, minor] { return moveMoney(shop(), order.id, kind, Money{minor}, PaidHow::Cash); };
    };
    expectUndoable<Doing>(move(MoneyKind::Deposit, 3000), "Deposit £30.00, cash");
    expectUndoable<Doing>(move(MoneyKind::Payment, 2300), "Payment £23.00, cash");
    expectUndoable<Doing>(move(MoneyKind::Refund, 1000), "Refund £10.00, cash");
    EXPECT_EQ(number("SELECT SUM(minor) FROM money_move"), 4300);
    expectRefused<Doing>(move(MoneyKind::Payment, 1001), "amount", "£10.00");
    expectRefused<Doing>(move(MoneyKind::Deposit, 1001), "amount", "£10.00");
    expectRefused<Doing>(move(MoneyKind::Refund, 4301), "amount", "£43.00");
    for (const auto kind : {MoneyKind::Deposit, MoneyKind::Payment, MoneyKind::Refund})
        for (const std::int64_t minor : {std::int64_t{0}, std::int64_t{-1}, INT64_MAX, INT64_MIN})
            expectRefused<Doing>(move(kind, minor), "amount");
    expectRefused<Doing>(
        [&] { return moveMoney(shop(), OrderId{9}, MoneyKind::Payment, {1}, PaidHow::Cash); }, "order");
    EXPECT_EQ(titlesOf(order.id).back(), "Took order 1");
}

TEST_F(OrderActions, DepositThatWasRefundedSinceCannotBeTakenBack) {
    const auto order = takeTees();
    ASSERT_TRUE(moveMoney(shop(), order.id, MoneyKind::Deposit, {1000}, PaidHow::Cash).ok());
    const auto deposit = shop().recent(1).front().id;
    ASSERT_TRUE(moveMoney(shop(), order.id, MoneyKind::Refund, {1000}, PaidHow::Cash).ok());
    const auto before = dump();
    const auto undone = shop().undo(deposit);
    ASSERT_FALSE(undone.ok());
    EXPECT_NE(undone.error().message.english().find("paid less than nothing"), std::string::npos);
    EXPECT_EQ(dump(), before);
}

TEST_F(OrderActions, CancellingGivesTheBlankToWhoWaits) {
    const auto lot = receiveTees(1);
    const auto order = takeTees();
    const auto waiting = takeTees();
    expectUndoable<Doing>([&] { return cancelOrder(shop(), order.id, "changed her mind"); },
                          "Order 1 cancelled: changed her mind");
    EXPECT_FALSE(lotOf(garmentOf(order)));
    EXPECT_EQ(lotOf(garmentOf(waiting)), lot);
    expectRefused<Doing>([&] { return cancelOrder(shop(), order.id, "once more"); }, "", "is cancelled");
    expectRefused<Doing>([&] { return moveMoney(shop(), order.id, MoneyKind::Payment, {1}, PaidHow::Cash); },
                         "", "cancelled");
    expectRefused<Doing>([&] { return movePromise(shop(), order.id, inDays(2), now()); }, "", "cancelled");
    expectRefused<Doing>([&] { return confirmWording(shop(), decalOf(order), "by phone"); }, "", "cancelled");
    expectRefused<Doing>([&] { return handOver(shop(), order.id, now()); }, "", "cancelled");
    for (const std::string& bad : {std::string{}, std::string{"ab"}, ofLength(201)})
        expectRefused<Doing>([&] { return cancelOrder(shop(), waiting.id, bad); }, "reason");
}

TEST_F(OrderActions, DepositOfACancelledOrderCanBeRefunded) {
    auto draft = aDraft();
    draft.deposit = {1000};
    const auto order = take(draft);
    ASSERT_TRUE(cancelOrder(shop(), order.id, "moved away").ok());
    EXPECT_TRUE(moveMoney(shop(), order.id, MoneyKind::Refund, {1000}, PaidHow::Transfer).ok());
}

TEST_F(OrderActions, CancellingCannotBeTakenBackOnceItsBlankIsKeptByAnother) {
    const auto lot = receiveTees(1);
    const auto order = takeTees();
    ASSERT_TRUE(cancelOrder(shop(), order.id, "changed her mind").ok());
    const auto cancelling = shop().recent(1).front().id;
    const auto later = takeTees();
    EXPECT_EQ(lotOf(garmentOf(later)), lot);
    const auto before = dump();
    const auto undone = shop().undo(cancelling);
    ASSERT_FALSE(undone.ok());
    EXPECT_NE(undone.error().message.english().find("2 garments would keep one of 1"), std::string::npos)
        << undone.error().message.english();
    EXPECT_EQ(dump(), before);
}

TEST_F(OrderActions, OrderOnThePressIsNotCancelled) {
    const auto order = readyToPress();
    ASSERT_TRUE(takeUp(shop(), garmentOf(order), routeFor(garmentOf(order)), now()).ok());
    expectRefused<Doing>([&] { return cancelOrder(shop(), order.id, "too late"); }, "",
                         "1-a is on the press");
}

TEST_F(OrderActions, PressedGarmentsAreHandedOverAndTheOrderWithTheLast) {
    const auto order = readyToPress(2);
    expectRefused<Doing>([&] { return handOver(shop(), order.id, now()); }, "", "is pressed yet");
    pressAll(garmentOf(order, 0));
    expectUndoable<Doing>([&] { return handOver(shop(), order.id, now()); },
                          "Handed over 1, 1 of 2 garments, £53.00 still owed");
    EXPECT_EQ(text("SELECT state FROM shop_order"), "confirmed");
    expectRefused<Doing>([&] { return handOver(shop(), order.id, now()); }, "", "is pressed yet");
    expectRefused<Doing>([&] { return cancelOrder(shop(), order.id, "too late"); }, "", "1-a is handed over");
    pressAll(garmentOf(order, 1));
    ASSERT_TRUE(moveMoney(shop(), order.id, MoneyKind::Payment, {5300}, PaidHow::Cash).ok());
    expectUndoable<Doing>([&] { return handOver(shop(), order.id, now()); },
                          "Handed over 1, 1 of 2 garments");
    EXPECT_EQ(text("SELECT state FROM shop_order"), "handed-over");
    expectRefused<Doing>([&] { return handOver(shop(), order.id, now()); }, "", "handed over already");
    expectRefused<Doing>([&] { return cancelOrder(shop(), order.id, "too late"); }, "",
                         "handed over already");
}

// From the table to the hand-over: every ledger, and a history that tells all of it.
TEST_F(OrderActions, MainRoadOfOneGarment) {
    const auto lot = receiveTees(2);
    auto draft = aDraft();
    draft.deposit = {1000};
    const auto order = take(draft);
    const auto garment = garmentOf(order);
    WashPlan plan;
    plan.parts = {{lot, 1}};
    plan.detergent = "mild";
    const auto load = startWash(shop(), plan);
    ASSERT_TRUE(load.ok());
    wait(Hours{12});
    ASSERT_TRUE(markDry(shop(), *load).ok());
    const auto washed = lotOf(garment);
    ASSERT_TRUE(washed && *washed != lot);
    ASSERT_TRUE(cutDecals(shop(), m_roll, decalsOf(garment), {240}, now()).ok());
    const Route route = routeFor(garment);
    pressAll(garment);
    EXPECT_EQ(unitsOf(lot), 1);
    EXPECT_EQ(unitsOf(*washed), 0);
    EXPECT_EQ(lengthOf(m_roll), 24'760);

    const auto facts = loadFactsOf(connection(), std::span{&order.id, 1});
    const auto progress = progressOf(facts, facts.garments.at(garment), route);
    EXPECT_TRUE(progress.isPressed());
    EXPECT_EQ(stageOf(facts, facts.garments.at(garment), route, progress, now()), Stage::Resting);
    wait(Hours{24});
    EXPECT_EQ(stageOf(facts, facts.garments.at(garment), route, progress, now()), Stage::Ready);
    ASSERT_TRUE(moveMoney(shop(), order.id, MoneyKind::Payment, {1650}, PaidHow::Card).ok());
    ASSERT_TRUE(handOver(shop(), order.id, now()).ok());

    std::vector<std::string> titles{"Handed over 1, 1 garment", "Payment £16.50, card",
                                    "1-a pressed, rests 24 h"};
    for (std::size_t step = route.steps.size() - 1; step-- > 0;)
        titles.push_back("1-a, done: " + route.steps[step].title.english());
    for (const char* title : {"1-a put on the press", "Cut 1 decal from R-01, 0.24 m", "1 blank dry",
                              "Washed 1 blank", "Took order 1, deposit £10.00 cash"})
        titles.push_back(title);
    EXPECT_EQ(titlesOf(order.id), titles);
    expectSound();
}

} // namespace
} // namespace holdfast::db
