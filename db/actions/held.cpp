// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/held.h"

#include "core/holds/assessment.h"
#include "core/holds/cutting_holds.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <cctype>
#include <map>
#include <set>
#include <vector>

namespace holdfast::db {
namespace {

Error heldBy(const std::string& label, const Finding& hold) {
    std::vector<NamedValue> values{{"garment", label}, {"what", hold.what}, {"why", hold.why}};
    if (hold.frees.empty())
        return plainError(
            said("{garment} is held. {what}: {why} Needed: let it through with a reason.", values));
    values.push_back({"act", withinLine(freeingWords(hold.frees.front()))});
    return plainError(
        said("{garment} is held. {what}: {why} Needed: {act}, or let it through with a reason.", values));
}

// The facts with just these rolls: only how they were kept is asked.
RollConditions conditionsOf(Connection& connection, ShopFacts facts, const std::set<RollId>& rolls,
                            const Now& now) {
    std::vector<FilmRoll> wanted;
    std::set<PlaceId> places;
    for (const FilmRoll& roll : facts.rolls) {
        if (!rolls.contains(roll.id))
            continue;
        wanted.push_back(roll);
        for (const RollStay& stay : roll.stays)
            places.insert(stay.place);
    }
    facts.rolls = Roster{std::move(wanted)};
    const std::vector<PlaceId> list(places.begin(), places.end());
    return ClimateReckoner{}.reckon(facts, loadClimateOf(connection, list), now);
}

std::set<RollId> rollsOf(const Garment& garment) {
    std::set<RollId> rolls;
    for (const Decal& decal : garment.decals)
        if (decal.cutFrom)
            rolls.insert(*decal.cutFrom);
    return rolls;
}

struct RollFault {
    Rule rule;
    Sentence words;
};

std::optional<RollFault> faultOf(const RollCondition& condition, const Film& film, const FilmRoll& roll,
                                 LocalDate today) {
    const NamedValue label{"roll", roll.label()};
    if (condition.isPastAge(today))
        return RollFault{Rule::RollPastAge, said("{roll} is past its {useBy}. Press a test strip first.",
                                                 {label, {"useBy", condition.useByName()}})};
    if (condition.stripFailed)
        return RollFault{Rule::StripFailed,
                         said("{roll} failed its last test strip. Cut from another roll.", {label})};
    if (condition.isBadlyKept(film))
        return RollFault{Rule::RollBadlyKept,
                         said("{roll} was stored outside its limits. Press a test strip first.", {label})};
    return std::nullopt;
}

bool isWaived(const ShopFacts& facts, const GarmentRow& garment, Rule rule) {
    return std::ranges::any_of(facts.waiversOf(garment.id), [&](const Waiver& waiver) {
        return waiver.attempt == garment.attempt && waiver.rule == rule;
    });
}

// A garment that the facts leave out may be neither cut nor pressed.
Result<const Garment*> garmentAmong(const ShopFacts& facts, const GarmentRow& garment) {
    if (const Garment* found = facts.garments.find(garment.id))
        return found;
    const auto why = std::ranges::find(facts.unread, std::optional{garment.order.id}, &UnreadRow::order);
    if (why != facts.unread.end())
        return cannotBeRead(*why);
    return plainError(
        said("{garment} cannot be read, so nothing can be done with it.", {{"garment", garment.label()}}));
}

} // namespace

Result<Done> requireNotHeld(Connection& connection, const GarmentRow& garment, const Now& now,
                            KnownConditions known) {
    const ShopFacts facts = loadHoldFacts(connection, std::span{&garment.order.id, 1});
    const auto found = garmentAmong(facts, garment);
    if (!found.ok())
        return found.error();
    const Garment& held = **found;
    const RollConditions conditions =
        known != nullptr ? *known : conditionsOf(connection, facts, rollsOf(held), now);
    for (const Finding& finding : findingsFor({facts, conditions, Allotment{}, now}, held))
        if (finding.holds())
            return heldBy(garment.label(), finding);
    return Done{};
}

Result<Done> requireMayBeCut(Connection& connection, RollId roll, std::span<const DecalRow> decals,
                             const Now& now, KnownConditions known) {
    std::set<OrderId> orders;
    for (const DecalRow& decal : decals)
        orders.insert(decal.garment.order.id);
    const std::vector<OrderId> list(orders.begin(), orders.end());
    const ShopFacts facts = loadHoldFacts(connection, list);
    const RollConditions conditions =
        known != nullptr ? *known : conditionsOf(connection, facts, {roll}, now);

    const FilmRoll* shelved = facts.rolls.find(roll);
    if (shelved == nullptr)
        return fieldError("roll", said("This roll cannot be read, so nothing can be cut from it."));
    const FilmRoll& from = *shelved;
    const RollCondition* condition = conditions.find(roll);
    const auto fault = condition != nullptr
                           ? faultOf(*condition, facts.films.at(from.film), from, now.today())
                           : std::nullopt;
    std::map<GarmentId, std::vector<Finding>> findings;
    for (const DecalRow& decal : decals) {
        if (fault && !isWaived(facts, decal.garment, fault->rule))
            return fieldError("roll", fault->words);
        const auto read = garmentAmong(facts, decal.garment);
        if (!read.ok())
            return read.error();
        const Garment& garment = **read;
        auto [found, isNew] = findings.try_emplace(garment.id);
        if (isNew)
            found->second = findingsFor({facts, conditions, Allotment{}, now}, garment);
        const auto own = std::ranges::find(garment.decals, decal.id, &Decal::id);
        if (own == garment.decals.end())
            continue;
        if (const Finding* hold = stopsTheKnife(found->second, *own))
            return heldBy(decal.garment.label(), *hold);
    }
    return Done{};
}

} // namespace holdfast::db
