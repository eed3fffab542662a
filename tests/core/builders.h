// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A shop for tests, built from the usual case: a washed, dry cotton tee, one heron on its chest cut from an
// in-date roll, a confirmed recipe, a checked press, a confirmed order. Nothing holds it. A test names the
// odd fact and nothing else:
//
//     const auto shop = aShop().with(aGarment().onUnwashedTee()).build();
//     EXPECT_TRUE(shop.raises(Rule::BlankUnwashed));

#include "core/holds/assessment.h"

#include <functional>
#include <initializer_list>
#include <map>
#include <string>
#include <vector>

namespace holdfast::test {

using namespace holdfast::literals;

inline constexpr BlankStyleId kTee{1};
inline constexpr ColourId kMoss{1};
inline constexpr BlankLotId kLot{1};
inline constexpr WashLoadId kLoad{1};
inline constexpr FilmId kFilm{1};
inline constexpr FilmId kOtherFilm{2};
inline constexpr RollId kRoll{1};
inline constexpr RollId kOtherRoll{2};
inline constexpr PlaceId kShelf{1};
inline constexpr PressId kBench{1};

// Wednesday, 25 November 2026, 10:00 in the workshop, which keeps UTC.
Now theMoment();
Instant hoursAgo(std::int64_t hours);
Instant daysAgo(std::int64_t days);

BlankStyle aTee();
Film aFilm(FilmId id = kFilm);               // Marram Soft, Dusk: 150 °C, 12 s, warm peel after 40 s
FilmRoll aRoll(RollId id, const Film& film); // …: 5 m left
Press aPress();                              // Bench press, 380 × 380 mm

// One garment with its order, its blank and its film; changes are made on the usual case.
class GarmentBuilder {
public:
    template <class Thing>
    using Change = std::function<void(Thing&)>;

    GarmentBuilder();

    GarmentBuilder& onUnwashedTee();
    GarmentBuilder& onDampTee();
    GarmentBuilder& onSoftenedTee();
    GarmentBuilder& onUnreadLabel();
    GarmentBuilder& onZipHoodie(std::optional<WayRound> way);
    GarmentBuilder& onNoBlank();

    GarmentBuilder& garment(const Change<Garment>& change);
    GarmentBuilder& order(const Change<Order>& change);
    GarmentBuilder& style(const Change<BlankStyle>& change);
    GarmentBuilder& label(const Change<FabricLabel>& change);
    GarmentBuilder& lot(const Change<BlankLot>& change);
    GarmentBuilder& load(const Change<WashLoad>& change);
    GarmentBuilder& film(const Change<Film>& change);
    GarmentBuilder& recipe(const Change<Recipe>& change);
    GarmentBuilder& roll(const Change<FilmRoll>& change);
    GarmentBuilder& condition(const Change<RollCondition>& change);
    GarmentBuilder& decal(const Change<Decal>& change); // the one added last

    // A further decal of the same film and place in the next layer; and a second film with a roll of its own.
    GarmentBuilder& withDecal(const Change<Decal>& change);
    GarmentBuilder& withOtherFilm(const Change<Film>& change);

    GarmentBuilder& uncut();                    // its decals are still to be cut from their rolls
    GarmentBuilder& lacking(std::string words); // … and there is no roll for them
    GarmentBuilder& waived(Rule rule, int attempt = 1);

    // Steps of its route, done one a minute up to now: through this key; and with this one open.
    GarmentBuilder& doneThrough(std::string key);
    GarmentBuilder& underway(std::string key);
    GarmentBuilder& pressed(Instant lastFinish);

private:
    friend class ShopBuilder;

    Garment m_garment;
    Order m_order;
    BlankStyle m_style;
    std::optional<BlankLot> m_lot;
    std::optional<WashLoad> m_load;
    std::vector<Film> m_films;
    std::vector<FilmRoll> m_rolls;
    std::vector<RollCondition> m_conditions;
    std::vector<Waiver> m_waivers;
    std::string m_lack;
    std::string m_doneThrough;
    std::string m_underway;
    Instant m_stepsEnd;
};

struct TestShop {
    ShopFacts facts;
    RollConditions conditions;
    Allotment allotment;
    Now now;

    Surroundings around() const { return {facts, conditions, allotment, now}; }
    const Garment& garment() const { return *facts.garments.begin(); } // the first
    Route route() const { return routeOf(facts, garment()); }
    Progress progress() const { return progressOf(facts, garment(), route()); }
    Stage stage() const { return assess(around(), garment()).stage; }
    std::vector<Finding> findings() const { return findingsFor(around(), garment()); }
    // The first finding of a rule over the first garment.
    std::optional<Finding> finding(Rule rule) const;
    bool raises(Rule rule) const { return finding(rule).has_value(); }
};

class ShopBuilder {
public:
    ShopBuilder();

    // Each garment gets ids of its own for itself, its order and its decals; blanks, films and rolls are
    // shared by id, the first garment's standing.
    ShopBuilder& with(const GarmentBuilder& garment);
    ShopBuilder& settings(const std::function<void(ShopSettings&)>& change);
    ShopBuilder& press(const std::function<void(Press&)>& change);
    ShopBuilder& check(const std::function<void(PressCheck&)>& change);
    ShopBuilder& withPress(Press press); // a further one, checked like the first
    ShopBuilder& withLot(BlankLot lot);
    ShopBuilder& withoutPress();
    ShopBuilder& withoutCheck();

    TestShop build() const;

private:
    ShopSettings m_settings;
    std::vector<Press> m_presses;
    std::vector<PressCheck> m_checks;
    std::vector<BlankLot> m_lots;
    std::vector<GarmentBuilder> m_garments;
};

GarmentBuilder aGarment();
ShopBuilder aShop();

} // namespace holdfast::test
