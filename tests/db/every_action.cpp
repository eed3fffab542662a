// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/every_action.h"

#include "core/orders/order_change.h"
#include "db/actions/claim_actions.h"
#include "db/actions/customer_actions.h"
#include "db/actions/fair_actions.h"
#include "db/actions/invoice_actions.h"
#include "db/actions/order_file_actions.h"
#include "db/actions/put_back.h"
#include "db/actions/till_actions.h"
#include "db/tables/invoices.h"
#include "db/tables/settings_rows.h"

#include <array>
#include <iterator>
#include <stdexcept>
#include <utility>

namespace holdfast::db {

namespace {

template <class Value>
Value must(Result<Value> outcome) {
    if (!outcome.ok())
        throw std::runtime_error(outcome.error().field + ": " + outcome.error().message.english());
    return std::move(outcome).value();
}

// Whether it succeeded, whatever it answers.
template <class Value>
Result<Done> done(const Result<Value>& outcome) {
    return outcome.ok() ? Result<Done>{Done{}} : Result<Done>{outcome.error()};
}

Fair aMarket(LocalDate day, const std::string& name) {
    using namespace std::chrono_literals;
    Fair fair;
    fair.name = name;
    fair.firstDay = day;
    fair.lastDay = day + Days{1};
    fair.hours = {10h, 16h + 30min};
    fair.stallCost = {4500};
    return fair;
}

Result<InvoiceId> invoiceFor(Shop& shop, OrderId order, const Now& now) {
    return makeInvoice(shop, {order, "Odile Farrant", "4 Creek Lane; Saltmarsh"}, now,
                       [](const Sentence& words) { return words.english(); });
}

} // namespace

EveryAction::EveryAction() {
    prepareStock();
    prepareOrders();
    must(changeNote(shop(), m_at.open.id, "ring first"));
    m_at.lastAct = shop().recent(1).front().id;
    m_at.undone = takeTees();
    m_at.lastUndo = must(shop().undo(shop().recent(1).front().id));
}

void EveryAction::prepareStock() {
    BlankStyle hoodie = aStyle("Zip hoodie");
    hoodie.obstacles = {{Obstacle::Zip, std::nullopt}};
    m_at.hoodie = must(addStyle(shop(), hoodie));
    m_at.unwashed = receiveTees(6, "L");
    WashPlan plan;
    plan.detergent = "mild";
    plan.parts = {{m_at.unwashed, 2}};
    m_at.wet = must(startWash(shop(), plan));
    m_at.clean = receiveCleanTees(9);
    m_at.otherFilm = must(addFilm(shop(), aFilm("Oyster")));
    Film unread = aFilm("Reed");
    unread.recipe->confirmedBy.clear();
    m_at.unreadFilm = must(addFilm(shop(), unread));
    m_at.fair = must(addFair(shop(), aMarket(now().today() + Days{9}, "Saltmarsh Makers’ Market")));
    m_at.lastRead = now().instant - Hours{1};
    for (int hours = 30; hours >= 0; --hours)
        must(recordReading(shop(), m_place, {m_at.lastRead - Hours{hours}, {20}, {44}}));
}

void EveryAction::prepareOrders() {
    const auto pressed = [&] {
        const OrderTaken order = readyToPress();
        pressAll(garmentOf(order));
        return order;
    };
    m_at.collected = pressed();
    m_at.collectedGarment = garmentOf(m_at.collected);
    must(handOver(shop(), m_at.collected.id, now()));
    m_at.claim = must(recordClaim(
        shop(), {m_at.collectedGarment, std::nullopt, now().today(), Fault::Cracked, 3, ""}, now()));
    m_at.invoice = must(invoiceFor(shop(), m_at.collected.id, now()));
    m_at.finished = pressed();
    m_at.finishedGarment = garmentOf(m_at.finished);
    m_at.finishedDecal = decalOf(m_at.finished);

    m_at.open = takeTees(2);
    m_at.openGarment = garmentOf(m_at.open);
    m_at.openDecal = decalOf(m_at.open);
    OrderDraft quotation = aDraft();
    quotation.customerName = "Odil Farrant";
    quotation.isQuotation = true;
    m_at.quotation = take(quotation);
    OrderDraft worded = aDraft();
    worded.isConfirmed = false;
    worded.garments[0].decals[0].content = Wording{"Juno"};
    DecalDraft upper = worded.garments[0].decals[0];
    upper.content = Artwork{"heron"};
    upper.film = m_at.otherFilm;
    upper.layer = 2;
    worded.garments[0].decals.push_back(upper);
    m_at.worded = take(worded);
    m_at.wordedGarment = garmentOf(m_at.worded);
    m_at.wordedDecal = decalOf(m_at.worded);
    m_at.upperDecal = decalsOf(m_at.wordedGarment).at(1);
    m_at.customer =
        CustomerId{connection().number("SELECT customer_id FROM shop_order WHERE id = ?1", m_at.open.id)};

    m_at.ready = readyToPress();
    m_at.readyGarment = garmentOf(m_at.ready);
    m_at.readyDecal = decalOf(m_at.ready);
    m_at.readyRoute = routeFor(m_at.readyGarment);
    m_at.begun = readyToPress();
    m_at.begunGarment = garmentOf(m_at.begun);
    m_at.begunRoute = routeFor(m_at.begunGarment);
    must(takeUp(shop(), m_at.begunGarment, m_at.begunRoute, now()));
    must(finishStep(shop(), m_at.begunGarment, m_at.begunRoute));
    wait(Seconds{20});
}

std::vector<EveryAction::Doing> EveryAction::onBlanks() const {
    return {
        {"addStyle", [this](Shop& in) { return done(addStyle(in, aStyle("Bib"))); }},
        {"addColour", [this](Shop& in) { return done(addColour(in, m_tee, "Reed", 0xA9B8A0)); }},
        {"readLabel",
         [this](Shop& in) {
             FabricLabel label = *aStyle("").label;
             label.fibres = {{Fibre::Cotton, 100}};
             return readLabel(in, m_tee, label);
         }},
        {"markNotPrewashed", [this](Shop& in) { return markNotPrewashed(in, m_tee, "washed by its maker"); }},
        {"chooseWayRound",
         [this](Shop& in) { return chooseWayRound(in, m_at.hoodie, Obstacle::Zip, WayRound::Pillow); }},
        {"chooseWaysRound",
         [this](Shop& in) {
             const std::vector<ObstacleOnStyle> ways{{Obstacle::Zip, WayRound::Turn}};
             return chooseWaysRound(in, m_at.hoodie, ways);
         }},
        {"noteLawChecked", [this](Shop& in) { return noteLawChecked(in, m_at.hoodie, "Wren"); }},
        {"receiveBlanks",
         [this](Shop& in) { return done(receiveBlanks(in, m_tee, "M", m_moss, 12, now())); }},
        {"correctCount", [this](Shop& in) { return correctCount(in, m_at.unwashed, 1, "counted again"); }},
        {"startWash",
         [this](Shop& in) {
             WashPlan plan;
             plan.detergent = "mild";
             plan.parts = {{m_at.unwashed, 3}};
             return done(startWash(in, plan));
         }},
        {"markDry", [this](Shop& in) { return markDry(in, m_at.wet); }},
        {"measureShrinkage",
         [this](Shop& in) { return measureShrinkage(in, m_at.clean, {{700}, {672}, {500}, {495}}); }},
    };
}

std::vector<EveryAction::Doing> EveryAction::onFilm() const {
    return {
        {"addFilm", [this](Shop& in) { return done(addFilm(in, aFilm("Plum"))); }},
        {"changeFilmSheet",
         [this](Shop& in) {
             Film film = aFilm("Dusk");
             film.id = m_film;
             film.shelfLife = Days{200};
             return changeFilmSheet(in, film);
         }},
        {"enterRecipe",
         [this](Shop& in) {
             Recipe recipe = *aFilm("").recipe;
             recipe.temperature = {155};
             return enterRecipe(in, m_film, recipe);
         }},
        {"confirmRecipe", [this](Shop& in) { return confirmRecipe(in, m_at.unreadFilm, "Wren"); }},
        {"receiveRoll", [this](Shop& in) { return done(receiveRoll(in, aRoll(), now())); }},
        {"useUpRoll", [this](Shop& in) { return useUpRoll(in, m_roll, "creased through"); }},
        {"putRollAway", [this](Shop& in) { return putRollAway(in, m_roll, true); }},
        {"moveRoll", [this](Shop& in) { return moveRoll(in, m_roll, m_damp); }},
        {"correctLength", [this](Shop& in) { return correctLength(in, m_roll, {9000}, "measured"); }},
        {"recordTestStrip", [this](Shop& in) { return recordTestStrip(in, m_roll, true, {80}, "it stuck"); }},
        {"cutDecals",
         [this](Shop& in) { return cutDecals(in, m_roll, std::span{&m_at.openDecal, 1}, {230}, now()); }},
        {"cutFromRolls",
         [this](Shop& in) {
             const std::vector<RollCut> cuts{{m_roll, {m_at.openDecal}, {230}, {{{120}, {230}}}}};
             return cutFromRolls(in, cuts, now());
         }},
        {"markMiscut", [this](Shop& in) { return markMiscut(in, m_at.readyDecal, "blade slipped"); }},
    };
}

std::vector<EveryAction::Doing> EveryAction::onReadings() const {
    return {
        {"addPlace", [](Shop& in) { return done(addPlace(in, "Cellar")); }},
        {"recordReading",
         [this](Shop& in) { return recordReading(in, m_damp, {now().instant, {19}, {50}}); }},
        {"importReadings",
         [this](Shop& in) {
             ClimateSeries readings;
             for (int minutes = 500; minutes > 0; --minutes)
                 readings.push_back({now().instant - Minutes{minutes}, {19}, {50}});
             return done(importReadings(in, m_damp, readings));
         }},
        {"correctReading",
         [this](Shop& in) {
             return correctReading(in, m_place, m_at.lastRead, {m_at.lastRead, {21}, {45}});
         }},
        {"removeReadings",
         [this](Shop& in) {
             return done(removeReadings(in, m_place, m_at.lastRead - Hours{9}, m_at.lastRead));
         }},
    };
}

std::vector<EveryAction::Doing> EveryAction::onOrders() const {
    return {
        {"takeOrder",
         [this](Shop& in) {
             OrderDraft draft = aDraft(3);
             draft.customerName = "Teo Lindqvist";
             draft.deposit = {500};
             draft.lines = {{BillLineKind::Extra, "Gift wrap", Money{250}},
                            {BillLineKind::Discount, "regular customer", Percentage{-10'00}}};
             draft.tax = {TaxKind::Added, {5'00}, TaxedBy::Line, Rounding::HalfEven};
             return done(takeOrder(in, draft, now()));
         }},
        {"confirmQuotation", [this](Shop& in) { return confirmQuotation(in, m_at.quotation.id); }},
        {"movePromise", [this](Shop& in) { return movePromise(in, m_at.open.id, later(), now()); }},
        {"changeCustomer",
         [this](Shop& in) {
             return changeCustomer(in, m_at.customer, "Odile Farrant-Moss", "07700 902282", "pays late");
         }},
        {"joinCustomers",
         [this](Shop& in) {
             const CustomerId other{in.connection().number(
                 "SELECT MIN(id) FROM customer WHERE id <> ?1 AND joined_to IS NULL", m_at.customer)};
             return joinCustomers(in, m_at.customer, other);
         }},
        {"changeNote", [this](Shop& in) { return changeNote(in, m_at.open.id, "by the back door"); }},
        {"payment",
         [this](Shop& in) { return moveMoney(in, m_at.open.id, MoneyKind::Payment, {700}, PaidHow::Card); }},
        {"cancelOrder", [this](Shop& in) { return cancelOrder(in, m_at.open.id, "changed their mind"); }},
        {"changeOrder",
         [this](Shop& in) -> Result<Done> {
             const OrderId order = m_at.open.id;
             const ShopFacts facts = loadFactsOf(in.connection(), std::span{&order, 1});
             // In the midst of a day it may have been undone, split or joined.
             if (!facts.orders.find(order) || facts.garmentsOf(order).size() < 2)
                 return plainError(said("Its garments are elsewhere."));
             const OrderDraft before = draftOf(facts, order);
             OrderDraft after = before;
             after.garments[0].size = "L";
             after.garments[0].decals[0].content = Artwork{"waves"};
             after.garments[1].taken.reset(); // cancelled, and another one added
             after.garments[1].decals[0].taken.reset();
             after.note = "by the back door";
             after.lines.push_back({BillLineKind::Rush, {}, Percentage{25'00}});
             after.deposit = {700};
             return changeOrder(in, order, before, after, now());
         }},
        {"cancelGarment",
         [this](Shop& in) { return cancelGarment(in, m_at.openGarment, "one too many", now()); }},
        {"mergeOrders", [this](Shop& in) { return mergeOrders(in, m_at.open.id, m_at.worded.id); }},
        {"splitOrder",
         [this](Shop& in) { return done(splitOrder(in, m_at.open.id, std::span{&m_at.openGarment, 1})); }},
        {"handOver", [this](Shop& in) { return handOver(in, m_at.finished.id, now()); }},
        {"recordClaim",
         [this](Shop& in) {
             return done(recordClaim(
                 in, {m_at.collectedGarment, std::nullopt, now().today(), Fault::Faded, 5, ""}, now()));
         }},
        {"answerClaim",
         [this](Shop& in) { return answerClaim(in, m_at.claim, ClaimAnswer::MadeAgain, now()); }},
    };
}

std::vector<EveryAction::Doing> EveryAction::onInvoices() const {
    return {
        {"makeInvoice", [this](Shop& in) { return done(invoiceFor(in, m_at.finished.id, now())); }},
        {"makeCreditNote",
         [this](Shop& in) {
             std::vector<InvoiceRowId> rows;
             for (const Invoice& invoice : invoicesOf(in.connection(), m_at.collected.id))
                 if (invoice.id == m_at.invoice)
                     for (const InvoiceRow& row : invoice.rows)
                         rows.push_back(row.id);
             return done(makeCreditNote(in, {m_at.invoice, rows, "brought back"}, now()));
         }},
    };
}

std::vector<EveryAction::Doing> EveryAction::onDecals() const {
    return {
        {"confirmWording", [this](Shop& in) { return confirmWording(in, m_at.wordedDecal, "by phone"); }},
        {"rewordDecal", [this](Shop& in) { return rewordDecal(in, m_at.wordedDecal, "June"); }},
        {"confirmWordings",
         [this](Shop& in) {
             const std::vector<AgreedDecal> agreed{{m_at.wordedDecal, "June"}};
             return confirmWordings(in, agreed, "by letter");
         }},
        {"changeFilm", [this](Shop& in) { return changeFilm(in, m_at.openDecal, m_at.otherFilm); }},
        {"changeLayer", [this](Shop& in) { return changeLayer(in, m_at.openDecal, 3); }},
        {"reorderLayers",
         [this](Shop& in) {
             const std::vector<DecalId> fromCloth{m_at.upperDecal, m_at.wordedDecal};
             return reorderLayers(in, m_at.wordedGarment, fromCloth);
         }},
        {"changeBlank", [this](Shop& in) { return changeBlank(in, m_at.openGarment, m_tee, "L", m_moss); }},
    };
}

std::vector<EveryAction::Doing> EveryAction::atThePress() const {
    return {
        {"takeUp",
         [this](Shop& in) {
             return in.asOne([&]() -> Result<Done> {
                 const auto back = putBackOnWalk(in, m_at.begunGarment);
                 return back.ok() ? takeUp(in, m_at.readyGarment, m_at.readyRoute, now()) : back;
             });
         }},
        {"finishStep", [this](Shop& in) { return done(finishStep(in, m_at.begunGarment, m_at.begunRoute)); }},
        {"restartStep", [this](Shop& in) { return restartStep(in, m_at.begunGarment); }},
        {"backAStep", [this](Shop& in) { return backAStep(in, m_at.begunGarment); }},
        {"putBackOnWalk", [this](Shop& in) { return putBackOnWalk(in, m_at.begunGarment); }},
        {"waive",
         [this](Shop& in) {
             return waive(in, m_at.wordedGarment, Rule::WordingUnconfirmed, "a sample for the stall");
         }},
        {"markSpoiled", [this](Shop& in) { return markSpoiled(in, m_at.begunGarment, "scorched"); }},
        {"addPress",
         [](Shop& in) {
             Press press;
             press.name = "Right";
             press.platenWidth = {400};
             press.platenHeight = {500};
             return done(addPress(in, press));
         }},
        {"changePress",
         [this](Shop& in) {
             Press press;
             press.id = m_press;
             press.name = "Left, by the door";
             press.platenWidth = {380};
             press.platenHeight = {380};
             return changePress(in, press);
         }},
        {"recordPressCheck",
         [this](Shop& in) {
             return recordPressCheck(in, m_press, {150}, {{149}, {151}, {150}, {150}, {152}}, "Wren");
         }},
    };
}

std::vector<EveryAction::Doing> EveryAction::aroundTheShop() const {
    return {
        {"addFair",
         [this](Shop& in) {
             return done(addFair(in, aMarket(now().today() + Days{30}, "Kelp Street Fair")));
         }},
        {"changeFair",
         [this](Shop& in) {
             Fair fair = aMarket(now().today() + Days{10}, "Saltmarsh Makers’ Market");
             fair.id = m_at.fair;
             return changeFair(in, fair, now());
         }},
        {"takeFairOffList", [this](Shop& in) { return takeFairOffList(in, m_at.fair, now()); }},
        {"changeSettings",
         [](Shop& in) {
             ShopSettings settings = loadSettings(in.connection());
             settings.shopName = "Tern and Thistle";
             settings.prices.decalPrices = {{Millimetres{100}, {200}}, {Millimetres{300}, {450}}};
             for (const BlankStyle& style : loadOpenFacts(in.connection()).styles)
                 settings.prices.stylePrices[style.id] = {1500};
             settings.closedDays.push_back(LocalDate{std::chrono::year{2026} / 12 / 24});
             settings.otherHours[LocalDate{std::chrono::year{2026} / 12 / 23}] = {Hours{9}, Hours{19}};
             return changeSettings(in, settings);
         }},
        {"takeOrdersOfFile", [this](Shop& in) { return done(takeOrdersOfFile(in, ofAWebShop(), now())); }},
        {"countTill",
         [this](Shop& in) { return done(countTill(in, now().today(), Money{5000}, Money{5250}, now())); }},
        {"keepNote",
         [](Shop& in) {
             return in.keepNote("half-typed", "an order")
                        ? Result<Done>{Done{}}
                        : Result<Done>{plainError(said("The note was not kept."))};
         }},
    };
}

std::vector<EveryAction::Doing> EveryAction::onHistory() const {
    return {
        {"undo", [this](Shop& in) { return done(in.undo(m_at.lastAct)); }},
        {"redo", [this](Shop& in) { return done(redo(in, m_at.lastUndo)); }},
        {"putBackOrder", [this](Shop& in) { return putBackOrder(in, m_at.undone.id); }},
        {"asOne",
         [this](Shop& in) {
             return in.asOne([&]() -> Result<Done> {
                 const auto place = addPlace(in, "Loft");
                 return place.ok() ? moveRoll(in, m_roll, *place) : Result<Done>{place.error()};
             });
         }},
        {"beside",
         [this](Shop& in) -> Result<Done> {
             ChangedTables touched;
             {
                 auto beside = in.openBeside([this] { return now().instant; });
                 if (!beside.ok())
                     return beside.error();
                 (*beside)->onChanged([&](const ChangedTables& tables) { touched = tables; });
                 if (auto read = recordReading(**beside, m_damp, {now().instant, {18}, {51}}); !read.ok())
                     return read;
             }
             // The reading is acknowledged: what cannot be shown now is shown when the shop is read next.
             (void)in.catchUp(touched);
             return Done{};
         }},
    };
}

std::vector<EveryAction::Doing> EveryAction::everyAction() const {
    std::vector<Doing> all;
    for (std::vector<Doing> some :
         std::array{onBlanks(), onStock(), onFilm(), onReadings(), onOrders(), onInvoices(), onDecals(),
                    atThePress(), aroundTheShop(), onHistory()})
        std::ranges::move(some, std::back_inserter(all));
    return all;
}

} // namespace holdfast::db
