// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/small_shop.h"

#include "core/press/route.h"

namespace holdfast::db {
namespace {

template <class Outcome>
auto valueOf(Outcome outcome) {
    if (!outcome.ok())
        throw std::runtime_error(outcome.error().field + ": " + outcome.error().message.english());
    return std::move(outcome).value();
}

std::vector<std::string> columnNames(Connection& connection, const std::string& table) {
    std::vector<std::string> names;
    Query rows = connection.query("SELECT name FROM pragma_table_info(?1) ORDER BY cid", table);
    while (rows.step())
        names.push_back(rows.text(0));
    return names;
}

} // namespace

SmallShop::SmallShop()
    : m_instant(std::chrono::sys_days{std::chrono::year{2026} / 11 / 11} + Hours{8} + Minutes{30})
    , m_shop(Shop::createInMemory([this] { return m_instant; })) {
    m_place = valueOf(addPlace(shop(), "Front shelf"));
    m_damp = valueOf(addPlace(shop(), "Back room shelf"));
    Press press;
    press.name = "Left";
    press.platenWidth = {380};
    press.platenHeight = {380};
    m_press = valueOf(addPress(shop(), press));
    m_film = valueOf(addFilm(shop(), aFilm("Dusk")));
    m_roll = valueOf(receiveRoll(shop(), aRoll(), now())).id;
    m_tee = valueOf(addStyle(shop(), aStyle("Tee")));
    const auto facts = loadFactsOf(connection(), {});
    m_moss = facts.styles.at(m_tee).colours.at(0).id;
    m_ink = facts.styles.at(m_tee).colours.at(1).id;
}

std::string SmallShop::text(std::string_view sql) {
    Query row = connection().query(sql);
    return row.step() ? row.text(0) : std::string{};
}

BlankStyle SmallShop::aStyle(const std::string& name) const {
    BlankStyle style;
    style.name = name;
    style.outline = "tee";
    style.sizes = {"S", "M", "L"};
    style.colours = {{{}, "Moss", 0x6B7F5A}, {{}, "Ink", 0x20304F}};
    style.weight = {180};
    style.cost = {450};
    FabricLabel label;
    label.fibres = {{Fibre::Cotton, 80}, {Fibre::Polyester, 20}};
    label.readOn = now().today();
    style.label = label;
    return style;
}

Film SmallShop::aFilm(const std::string& shade) const {
    Film film;
    film.finish = "Marram Soft";
    film.shade = shade;
    film.rgb = 0x4A4668;
    Recipe recipe;
    recipe.temperature = {150};
    recipe.dwell = Seconds{12};
    recipe.coolBeforePeel = Seconds{40};
    recipe.confirmedBy = "me";
    film.recipe = recipe;
    film.shelfLife = Days{365};
    film.costPerMetre = {900};
    return film;
}

RollReceived SmallShop::aRoll() const {
    RollReceived roll;
    roll.film = m_film;
    roll.width = {500};
    roll.length = {25'000};
    roll.receivedOn = now().today();
    roll.place = m_place;
    return roll;
}

BlankLotId SmallShop::receiveTees(std::int64_t units, const std::string& size) {
    return valueOf(receiveBlanks(shop(), m_tee, size, m_moss, units, now()));
}

BlankLotId SmallShop::receiveCleanTees(std::int64_t units, const std::string& size) {
    const BlankLotId lot = receiveTees(units, size);
    washAll(lot);
    return lot;
}

void SmallShop::washAll(BlankLotId lot) {
    WashPlan plan;
    plan.parts = {{lot, unitsOf(lot)}};
    plan.detergent = "mild, no scent";
    const auto load = valueOf(startWash(shop(), plan));
    valueOf(markDry(shop(), load));
}

GarmentDraft SmallShop::aTee(const std::string& size) const {
    GarmentDraft garment;
    garment.style = m_tee;
    garment.size = size;
    garment.colour = m_moss;
    garment.price = {2650};
    DecalDraft decal;
    decal.film = m_film;
    decal.content = Artwork{"heron"};
    decal.below = {70};
    decal.width = {200};
    decal.height = {220};
    garment.decals = {decal};
    return garment;
}

OrderDraft SmallShop::aDraft(int garments) const {
    OrderDraft draft;
    draft.customerName = "Odile Farrant";
    draft.customerPhone = "07700 902281";
    for (int count = 0; count < garments; ++count)
        draft.garments.push_back(aTee());
    draft.promised = inDays(3);
    return draft;
}

OrderTaken SmallShop::take(const OrderDraft& draft) {
    return valueOf(takeOrder(shop(), draft, now()));
}

std::vector<GarmentId> SmallShop::garmentsOf(OrderId order) {
    std::vector<GarmentId> garments;
    Query rows = connection().query("SELECT id FROM garment WHERE order_id = ?1 ORDER BY position", order);
    while (rows.step())
        garments.push_back(rows.id<GarmentId>(0));
    return garments;
}

std::vector<DecalId> SmallShop::decalsOf(GarmentId garment) {
    std::vector<DecalId> decals;
    Query rows = connection().query("SELECT id FROM decal WHERE garment_id = ?1 ORDER BY layer, id", garment);
    while (rows.step())
        decals.push_back(rows.id<DecalId>(0));
    return decals;
}

Route SmallShop::routeFor(GarmentId garment) {
    const OrderId order{connection().number("SELECT order_id FROM garment WHERE id = ?1", garment)};
    const auto facts = loadFactsOf(connection(), std::span{&order, 1});
    return routeOf(facts, facts.garments.at(garment));
}

void SmallShop::cutAll(const OrderTaken& order) {
    for (const GarmentId garment : garmentsOf(order.id)) {
        const auto decals = decalsOf(garment);
        valueOf(cutDecals(shop(), m_roll, decals, {240}, now()));
    }
}

void SmallShop::pressAll(GarmentId garment) {
    const Route route = routeFor(garment);
    valueOf(takeUp(shop(), garment, route, now()));
    for (std::size_t step = 0; step < route.steps.size(); ++step) {
        wait(Seconds{20});
        valueOf(finishStep(shop(), garment, route));
    }
}

OrderTaken SmallShop::readyToPress(int garments) {
    receiveCleanTees(garments);
    const OrderTaken order = takeTees(garments);
    cutAll(order);
    return order;
}

std::int64_t SmallShop::unitsOf(BlankLotId lot) {
    return connection().number("SELECT SUM(units) FROM lot_move WHERE lot_id = ?1", lot);
}

std::int64_t SmallShop::lengthOf(RollId roll) {
    return connection().number("SELECT SUM(mm) FROM roll_move WHERE roll_id = ?1", roll);
}

std::optional<BlankLotId> SmallShop::lotOf(GarmentId garment) {
    Query row = connection().query("SELECT lot_id FROM garment WHERE id = ?1", garment);
    row.step();
    return row.optionalId<BlankLotId>(0);
}

Dump SmallShop::dump() {
    std::vector<std::string> tables;
    {
        Query names = connection().query(
            "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' "
            "AND name NOT LIKE 'sqlite%' AND name NOT LIKE 'journal%' AND name NOT LIKE 'seat%'");
        while (names.step())
            tables.push_back(names.text(0));
    }
    Dump dumped;
    for (const std::string& table : tables) {
        std::string sql = "SELECT ''";
        for (const std::string& column : columnNames(connection(), table))
            sql += " || '" + column + "=' || quote(\"" + column + "\") || ' '";
        Query rows = connection().query(sql + " FROM \"" + table + "\" ORDER BY 1");
        while (rows.step())
            dumped[table].push_back(rows.text(0));
    }
    return dumped;
}

std::string SmallShop::lastTitle() {
    const auto entries = shop().recent(1);
    return entries.empty() ? std::string{} : entries.front().title.english();
}

std::vector<std::string> SmallShop::titlesOf(Subject subject) {
    std::vector<std::string> titles;
    for (const HistoryEntry& entry : shop().history(subject, 1000))
        titles.push_back(entry.title.english());
    return titles;
}

void SmallShop::expectTakenBackAndDoneAgain(const Dump& before, const std::string& title) {
    EXPECT_EQ(lastTitle(), title);
    expectSound();
    const Dump after = dump();
    ASSERT_NE(after, before);
    const auto back = shop().undo(shop().recent(1).front().id);
    ASSERT_TRUE(back.ok()) << back.error().message.english();
    EXPECT_EQ(dump(), before);
    expectSound();
    const auto again = shop().undo(*back);
    ASSERT_TRUE(again.ok()) << again.error().message.english();
    EXPECT_EQ(dump(), after);
    expectSound();
}

// What must hold after every action and every taking back.
void SmallShop::expectSound() {
    EXPECT_EQ(text("SELECT group_concat(message) FROM ledger_fault"), "");
    const char* columns =
        "id, number, customer, phone, words, state, promised, garments, total_minor, paid_minor";
    for (const auto& [one, other] :
         {std::pair{"order_card", "order_card_source"}, std::pair{"order_card_source", "order_card"}})
        EXPECT_EQ(number(std::string{"SELECT COUNT(*) FROM (SELECT "} + columns + " FROM " + one +
                         " EXCEPT SELECT " + columns + " FROM " + other + ")"),
                  0)
            << one << " says what " << other << " does not";
    for (const char* apart : {"garment_card EXCEPT SELECT * FROM garment_card_source",
                              "garment_card_source EXCEPT SELECT * FROM garment_card"})
        EXPECT_EQ(number(std::string{"SELECT COUNT(*) FROM (SELECT * FROM "} + apart + ")"), 0) << apart;
    EXPECT_LE(number("SELECT COUNT(*) FROM press_step WHERE finished_at IS NULL AND (step_key LIKE 'press%' "
                     "OR step_key LIKE 'preheat%' OR step_key LIKE 'finish%')"),
              1)
        << "the platen is closed over one garment";
    EXPECT_EQ(number("SELECT COUNT(*) FROM (SELECT garment_id FROM press_step WHERE finished_at IS NULL "
                     "GROUP BY garment_id HAVING COUNT(*) > 1)"),
              0);
    connection().allowWriting(true);
    EXPECT_NO_THROW(
        connection().run("INSERT INTO order_text (order_text, rank) VALUES ('integrity-check', 1)"));
    connection().allowWriting(false);
}

} // namespace holdfast::db
