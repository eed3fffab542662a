// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/builders.h"

#include <algorithm>

namespace holdfast::test {

namespace {

constexpr std::int64_t kOrderIds = 1000;
constexpr std::int64_t kGarmentIds = 2000;
constexpr std::int64_t kDecalIds = 3000;
constexpr std::int64_t kDecalsEach = 100;

Order anOrder() {
    Order order;
    order.number = 418;
    order.customer = CustomerId{1};
    order.takenAt = daysAgo(7);
    order.takenAtPlace = "workshop";
    order.promised = LocalTime{localDate(2026, 11, 27)} + Hours{15};
    order.total = {2650};
    order.paid = {2650};
    return order;
}

Decal aHeron() {
    Decal decal;
    decal.id = DecalId{1};
    decal.film = kFilm;
    decal.content = Artwork{"heron"};
    decal.below = 75_mm;
    decal.width = 200_mm;
    decal.height = 280_mm;
    decal.confirmedBy = "at the table";
    decal.cutFrom = kRoll;
    decal.cutAt = daysAgo(1);
    return decal;
}

BlankLot aLot() {
    BlankLot lot;
    lot.id = kLot;
    lot.style = kTee;
    lot.size = "M";
    lot.colour = kMoss;
    lot.receivedOn = localDate(2026, 10, 12);
    lot.lastLoad = kLoad;
    lot.unitsLeft = 5;
    return lot;
}

WashLoad aLoad() {
    WashLoad load;
    load.id = kLoad;
    load.startedAt = daysAgo(3);
    load.detergent = "mild";
    load.dryAt = daysAgo(2);
    return load;
}

RollCondition inGoodOrder(const FilmRoll& roll) {
    RollCondition condition;
    condition.roll = roll.id;
    condition.calendarAge = Days{174};
    condition.effectiveDays = 180;
    condition.useBy = localDate(2027, 5, 1);
    condition.latest = ClimateReading{hoursAgo(2), 19_C, 44_rh};
    condition.latestHumidity = 44_rh;
    return condition;
}

PressCheck aCheck(PressId press) {
    PressCheck check;
    check.press = press;
    check.at = daysAgo(5);
    check.set = 150_C;
    check.readings = {150_C, 149_C, 151_C, 150_C, 150_C};
    check.by = "maker";
    return check;
}

template <class Thing>
void addUnlessThere(Roster<Thing>& roster, const Thing& thing) {
    if (!roster.find(thing.id))
        roster.add(thing);
}

} // namespace

Now theMoment() {
    return Now{Instant{std::chrono::sys_days{std::chrono::year{2026} / 11 / 25}} + Hours{10}};
}

Instant hoursAgo(std::int64_t hours) {
    return theMoment().instant - Hours{hours};
}

Instant daysAgo(std::int64_t days) {
    return theMoment().instant - Days{days};
}

BlankStyle aTee() {
    BlankStyle style;
    style.id = kTee;
    style.name = "Tee";
    style.outline = "tee";
    style.sizes = {"S", "M", "L"};
    style.colours = {{kMoss, "Moss", 0x66754c}};
    style.weight = 180_g;
    style.cost = {450};
    FabricLabel label;
    label.fibres = {{Fibre::Cotton, 100}};
    label.highestSafe = 200_C;
    label.readOn = localDate(2026, 10, 12);
    style.label = label;
    return style;
}

Film aFilm(FilmId id) {
    Film film;
    film.id = id;
    film.finish = "Marram Soft";
    film.shade = id == kFilm ? "Dusk" : "Oyster";
    film.shelfLife = Days{365};
    Recipe recipe;
    recipe.temperature = 150_C;
    recipe.dwell = Seconds{12};
    recipe.coolBeforePeel = Seconds{40};
    recipe.confirmedBy = "maker's sheet, 3 Nov";
    film.recipe = recipe;
    film.costPerMetre = {900};
    return film;
}

FilmRoll aRoll(RollId id, const Film& film) {
    FilmRoll roll;
    roll.id = id;
    roll.number = static_cast<int>(8 + id.value);
    roll.film = film.id;
    roll.width = film.rollWidth;
    roll.receivedOn = localDate(2026, 6, 4);
    roll.stays = {{kShelf, daysAgo(174)}};
    roll.left = 5000_mm;
    return roll;
}

Press aPress() {
    Press press;
    press.id = kBench;
    press.name = "Bench press";
    press.platenWidth = 380_mm;
    press.platenHeight = 380_mm;
    return press;
}

// ── a garment ───────────────────────────────────────────────────────────────────────────────────────────

GarmentBuilder::GarmentBuilder()
    : m_order(anOrder())
    , m_style(aTee())
    , m_lot(aLot())
    , m_load(aLoad())
    , m_films{aFilm()}
    , m_rolls{aRoll(kRoll, m_films.front())}
    , m_conditions{inGoodOrder(m_rolls.front())}
    , m_stepsEnd(theMoment().instant) {
    m_garment.style = kTee;
    m_garment.size = "M";
    m_garment.colour = kMoss;
    m_garment.lot = kLot;
    m_garment.price = {2650};
    m_garment.decals = {aHeron()};
}

GarmentBuilder& GarmentBuilder::onUnwashedTee() {
    m_load.reset();
    m_lot->lastLoad.reset();
    return *this;
}

GarmentBuilder& GarmentBuilder::onDampTee() {
    m_load->dryAt.reset();
    return *this;
}

GarmentBuilder& GarmentBuilder::onSoftenedTee() {
    m_load->softener = true;
    return *this;
}

GarmentBuilder& GarmentBuilder::onUnreadLabel() {
    m_style.label.reset();
    return *this;
}

GarmentBuilder& GarmentBuilder::onZipHoodie(std::optional<WayRound> way) {
    m_style.name = "Zip hoodie";
    m_style.outline = "hoodie";
    m_style.obstacles = {{Obstacle::Zip, way}};
    m_style.label->fibres = {{Fibre::Polyester, 20}, {Fibre::Cotton, 80}};
    return *this;
}

GarmentBuilder& GarmentBuilder::onNoBlank() {
    m_garment.lot.reset();
    m_lot.reset();
    return *this;
}

GarmentBuilder& GarmentBuilder::garment(const Change<Garment>& change) {
    change(m_garment);
    return *this;
}

GarmentBuilder& GarmentBuilder::order(const Change<Order>& change) {
    change(m_order);
    return *this;
}

GarmentBuilder& GarmentBuilder::style(const Change<BlankStyle>& change) {
    change(m_style);
    return *this;
}

GarmentBuilder& GarmentBuilder::label(const Change<FabricLabel>& change) {
    change(*m_style.label);
    return *this;
}

GarmentBuilder& GarmentBuilder::lot(const Change<BlankLot>& change) {
    change(*m_lot);
    return *this;
}

GarmentBuilder& GarmentBuilder::load(const Change<WashLoad>& change) {
    change(*m_load);
    return *this;
}

GarmentBuilder& GarmentBuilder::film(const Change<Film>& change) {
    change(m_films.front());
    return *this;
}

GarmentBuilder& GarmentBuilder::recipe(const Change<Recipe>& change) {
    change(*m_films.front().recipe);
    return *this;
}

GarmentBuilder& GarmentBuilder::roll(const Change<FilmRoll>& change) {
    change(m_rolls.front());
    return *this;
}

GarmentBuilder& GarmentBuilder::condition(const Change<RollCondition>& change) {
    change(m_conditions.front());
    return *this;
}

GarmentBuilder& GarmentBuilder::decal(const Change<Decal>& change) {
    change(m_garment.decals.back());
    return *this;
}

GarmentBuilder& GarmentBuilder::withDecal(const Change<Decal>& change) {
    Decal decal = aHeron();
    decal.id = DecalId{static_cast<std::int64_t>(m_garment.decals.size()) + 1};
    decal.layer = m_garment.decals.back().layer + 1;
    change(decal);
    m_garment.decals.push_back(decal);
    return *this;
}

GarmentBuilder& GarmentBuilder::withOtherFilm(const Change<Film>& change) {
    Film film = aFilm(kOtherFilm);
    change(film);
    m_films.push_back(film);
    m_rolls.push_back(aRoll(kOtherRoll, film));
    m_conditions.push_back(inGoodOrder(m_rolls.back()));
    return *this;
}

GarmentBuilder& GarmentBuilder::uncut() {
    for (Decal& decal : m_garment.decals) {
        decal.cutAt.reset();
        decal.cutFrom.reset();
    }
    return *this;
}

GarmentBuilder& GarmentBuilder::lacking(std::string words) {
    m_lack = std::move(words);
    return uncut();
}

GarmentBuilder& GarmentBuilder::waived(Rule rule, int attempt) {
    Waiver waiver;
    waiver.attempt = attempt;
    waiver.rule = rule;
    waiver.reason = "the customer knows";
    waiver.at = hoursAgo(1);
    m_waivers.push_back(waiver);
    return *this;
}

GarmentBuilder& GarmentBuilder::doneThrough(std::string key) {
    m_doneThrough = std::move(key);
    return *this;
}

GarmentBuilder& GarmentBuilder::underway(std::string key) {
    m_underway = std::move(key);
    return *this;
}

GarmentBuilder& GarmentBuilder::pressed(Instant lastFinish) {
    m_stepsEnd = lastFinish;
    return doneThrough("look-1");
}

// ── a shop ──────────────────────────────────────────────────────────────────────────────────────────────

ShopBuilder::ShopBuilder()
    : m_presses{aPress()}
    , m_checks{aCheck(kBench)} {}

ShopBuilder& ShopBuilder::with(const GarmentBuilder& garment) {
    m_garments.push_back(garment);
    return *this;
}

ShopBuilder& ShopBuilder::settings(const std::function<void(ShopSettings&)>& change) {
    change(m_settings);
    return *this;
}

ShopBuilder& ShopBuilder::press(const std::function<void(Press&)>& change) {
    change(m_presses.front());
    return *this;
}

ShopBuilder& ShopBuilder::check(const std::function<void(PressCheck&)>& change) {
    change(m_checks.front());
    return *this;
}

ShopBuilder& ShopBuilder::withPress(Press press) {
    m_checks.push_back(aCheck(press.id));
    m_presses.push_back(std::move(press));
    return *this;
}

ShopBuilder& ShopBuilder::withLot(BlankLot lot) {
    m_lots.push_back(std::move(lot));
    return *this;
}

ShopBuilder& ShopBuilder::withoutPress() {
    m_presses.clear();
    m_checks.clear();
    return *this;
}

ShopBuilder& ShopBuilder::withoutCheck() {
    m_checks.clear();
    return *this;
}

namespace {

// Records of the route's steps through `done`, one a minute, the last finished at `end`.
void recordSteps(ShopFacts& facts, const Garment& garment, const std::string& done,
                 const std::string& underway, Instant end) {
    const Route route = routeOf(facts, garment);
    std::vector<StepRecord> records;
    const auto record = [&](const std::string& key) {
        StepRecord made;
        made.garment = garment.id;
        made.attempt = garment.attempt;
        made.key = key;
        made.press = route.press;
        return made;
    };
    const auto last = std::ranges::find(route.steps, done, &RouteStep::key);
    if (!done.empty() && last != route.steps.end())
        for (auto step = route.steps.begin(); step != last + 1; ++step)
            records.push_back(record(step->key));
    Instant at = end - Minutes{static_cast<std::int64_t>(records.size())};
    for (StepRecord& made : records) {
        made.startedAt = at;
        at += Minutes{1};
        made.finishedAt = at;
    }
    if (!underway.empty()) {
        records.push_back(record(underway));
        records.back().startedAt = end;
    }
    facts.steps.insert(facts.steps.end(), records.begin(), records.end());
}

} // namespace

TestShop ShopBuilder::build() const {
    TestShop shop;
    shop.now = theMoment();
    ShopFacts& facts = shop.facts;
    facts.settings = m_settings;
    facts.presses = Roster<Press>(m_presses);
    facts.pressChecks = m_checks;
    facts.lots = Roster<BlankLot>(m_lots);
    facts.places.add({kShelf, "Film shelf"});
    facts.customers.add({CustomerId{1}, "Odile Farrant", ""});
    std::map<RollId, RollCondition> conditions;

    std::int64_t number = 0;
    for (const GarmentBuilder& built : m_garments) {
        Order order = built.m_order;
        order.id = OrderId{kOrderIds + number};
        Garment garment = built.m_garment;
        garment.id = GarmentId{kGarmentIds + number};
        garment.order = order.id;
        for (Decal& decal : garment.decals) {
            decal.id = DecalId{kDecalIds + number * kDecalsEach + decal.id.value};
            decal.garment = garment.id;
            if (decal.isCut())
                continue;
            if (!built.m_lack.empty())
                shop.allotment.lack[decal.id] = asItIs(built.m_lack);
            else if (order.state == OrderState::Confirmed)
                shop.allotment.rollOf[decal.id] = decal.film == kFilm ? kRoll : kOtherRoll;
        }
        facts.orders.add(order);
        facts.garments.add(garment);
        addUnlessThere(facts.styles, built.m_style);
        if (built.m_lot)
            addUnlessThere(facts.lots, *built.m_lot);
        if (built.m_load)
            addUnlessThere(facts.loads, *built.m_load);
        for (const Film& film : built.m_films)
            addUnlessThere(facts.films, film);
        for (const FilmRoll& roll : built.m_rolls)
            addUnlessThere(facts.rolls, roll);
        for (const RollCondition& condition : built.m_conditions)
            conditions.emplace(condition.roll, condition);
        for (Waiver waiver : built.m_waivers) {
            waiver.garment = garment.id;
            facts.waivers.push_back(waiver);
        }
        recordSteps(facts, garment, built.m_doneThrough, built.m_underway, built.m_stepsEnd);
        ++number;
    }
    shop.conditions = RollConditions(std::move(conditions));
    return shop;
}

std::optional<Finding> TestShop::finding(Rule rule) const {
    const auto all = findings();
    const auto found = std::ranges::find(all, rule, &Finding::rule);
    return found == all.end() ? std::nullopt : std::optional(*found);
}

GarmentBuilder aGarment() {
    return {};
}

ShopBuilder aShop() {
    return {};
}

} // namespace holdfast::test
