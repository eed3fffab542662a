// SPDX-License-Identifier: GPL-3.0-or-later
// The walk of one garment along its route, step by step.
#include "db/actions/press_actions.h"

#include "core/press/step_key.h"
#include "core/trade/count_phrases.h"
#include "core/trade/limits.h"
#include "core/trade/unit_words.h"
#include "db/actions/kept_blanks.h"
#include "db/actions/rows.h"
#include "db/tables/facts.h"

#include <algorithm>

namespace holdfast::db {
namespace {

// "lint-roll-1" → "lint roll"
std::string keyWords(std::string_view key) {
    std::string words{key.substr(0, key.find_last_of('-'))};
    std::ranges::replace(words, '-', ' ');
    return words;
}

// A garment that is taken up wants the maker's hands; one that is under way may be turned to between two
// steps of another (a warm peel does not wait), but never while that one is under the closed platen.
enum class Needs { Hands, OpenPlaten };

Result<Done> requireFree(Connection& connection, GarmentId garment, Needs needs) {
    std::optional<GarmentId> other;
    {
        // CROSS JOIN keeps the order of looking: the few open orders first, not years of steps.
        Query open = connection.query(
            "SELECT garment.id, step_key FROM shop_order "
            "CROSS JOIN garment ON garment.order_id = shop_order.id "
            "CROSS JOIN press_step ON press_step.garment_id = garment.id AND press_step.attempt = "
            "garment.attempt "
            "WHERE shop_order.state IN ('quoted', 'confirmed') AND garment.cancelled_at IS NULL "
            "AND finished_at IS NULL AND garment.id <> ?1",
            garment);
        while (open.step() && !other)
            if (needs == Needs::Hands ? !isWaitingKey(open.view(1)) : isHeatKey(open.view(1)))
                other = open.id<GarmentId>(0);
    }
    if (!other)
        return Done{};
    const auto row = garmentRow(connection, *other);
    if (!row.ok())
        return row.error();
    return plainError(said("{garment} is on the press. Finish its step first.", {{"garment", row->label()}}));
}

Result<Done> requireSound(Connection& connection, const Route& route) {
    if (route.steps.empty())
        return plainError(said("There is no step to be done at the press."));
    if (route.press)
        if (const auto press = pressName(connection, *route.press); !press.ok())
            return press.error();
    return Done{};
}

Result<Done> requireReady(Connection& connection, const GarmentRow& garment) {
    if (const auto open = requireOpen(garment); !open.ok())
        return open.error();
    if (const auto fresh = requireNotBegun(garment); !fresh.ok())
        return fresh.error();
    if (garment.order.state == OrderState::Quoted)
        return plainError(
            said("Order {order} is a quotation. Confirm it first.", {{"order", garment.order.label()}}));
    if (!garment.lot)
        return plainError(said("{garment} has no blank yet.", {{"garment", garment.label()}}));
    if (connection.number("SELECT COUNT(*) FROM decal WHERE garment_id = ?1 AND cut_at IS NULL", garment.id) >
        0)
        return plainError(
            said("{garment}: not all of its decals are cut yet.", {{"garment", garment.label()}}));
    if (connection.number("SELECT COALESCE(SUM(units), 0) FROM lot_move WHERE lot_id = ?1", *garment.lot) < 1)
        return plainError(said("The lot with the blank reserved for {garment} has none left. Count it.",
                               {{"garment", garment.label()}}));
    return Done{};
}

void openStep(Writer& writer, const GarmentRow& garment, const std::string& key,
              std::optional<PressId> press) {
    writer.connection().run(
        "INSERT INTO press_step (id, garment_id, attempt, step_key, press_id, started_at) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
        writer.newId<RowId>(), garment.id, garment.attempt, key, press, writer.now());
}

// A clock that was set back must not make a step end before it began.
void closeStep(Writer& writer, RowId row) {
    writer.connection().run("UPDATE press_step SET finished_at = MAX(started_at, ?2) WHERE id = ?1", row,
                            writer.now());
}

void moveUnit(Writer& writer, const GarmentRow& garment, int units, const std::string& reason) {
    writer.connection().run("INSERT INTO lot_move (id, lot_id, at, units, reason, garment_id) "
                            "VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
                            writer.newId<RowId>(), garment.lot, writer.now(), units, reason, garment.id);
}

// The step after the furthest that is finished. Steps that a changed recipe took out of the route count for
// nothing.
const RouteStep* stepAfterFinished(Connection& connection, const GarmentRow& garment, const Route& route) {
    std::size_t next = 0;
    Query finished =
        connection.query("SELECT step_key FROM press_step WHERE garment_id = ?1 AND attempt = ?2 "
                         "AND finished_at IS NOT NULL",
                         garment.id, garment.attempt);
    while (finished.step()) {
        const auto at = std::ranges::find(route.steps, finished.view(0), &RouteStep::key);
        if (at != route.steps.end())
            next = std::max(next, static_cast<std::size_t>(at - route.steps.begin()) + 1);
    }
    return next < route.steps.size() ? &route.steps[next] : nullptr;
}

Sentence titleOf(const Route& route, const std::string& key) {
    const auto at = std::ranges::find(route.steps, key, &RouteStep::key);
    return at == route.steps.end() ? asItIs(withCapital(keyWords(key))) : at->title;
}

Sentence pressedTitle(const GarmentRow& garment, const Route& route) {
    const std::vector<NamedValue> values{
        {"garment", garment.label()},
        {"rest", hourCount(std::chrono::duration_cast<Hours>(route.restAfter).count())}};
    return route.restAfter >= Hours{1} ? said("{garment} pressed, rests {rest}", values)
                                       : said("{garment} pressed", {values.front()});
}

// Its blank is on the rail again, still reserved for it.
void leavePress(Writer& writer, const GarmentRow& garment) {
    moveUnit(writer, garment, 1, garment.label() + " taken off the press");
    writer.describe(said("{garment} put back on the walk", {{"garment", garment.label()}}));
    writer.concerns(*garment.lot);
    concernsGarment(writer, garment);
}

// "155 min too long under heat", where that is longer than the shop takes as harmless; else nothing.
Sentence tooLongWords(Writer& writer, const GarmentRow& garment, const Route& route) {
    const auto step = std::ranges::find(route.steps, *garment.openStep, &RouteStep::key);
    if (step == route.steps.end() || step->platen.count() <= 0)
        return {};
    const std::int64_t started =
        writer.connection().number("SELECT started_at FROM press_step WHERE id = ?1", *garment.openRow);
    const Seconds over = writer.now() - Instant{Seconds{started}} - step->platen;
    if (over.count() <= 0 || over < loadSettings(writer.connection()).mostOverUnderHeat)
        return {};
    return over < Minutes{2}
               ? said("{time} too long under heat", {{"time", over}})
               : said("{minutes} min too long under heat", {{"minutes", (over.count() + 30) / 60}});
}

Result<GarmentRow> garmentOnPress(Connection& connection, GarmentId garment) {
    auto row = garmentRow(connection, garment);
    if (row.ok() && !row->isOnPress())
        return plainError(said("{garment} is not on the press.", {{"garment", row->label()}}));
    return row;
}

} // namespace

Result<Done> takeUp(Shop& shop, GarmentId garment, const Route& route, const Now& now,
                    KnownConditions known) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto row = garmentRow(writer.connection(), garment);
        if (!row.ok())
            return row.error();
        if (const auto ready = requireReady(writer.connection(), *row); !ready.ok())
            return ready.error();
        if (const auto sound = requireSound(writer.connection(), route); !sound.ok())
            return sound.error();
        if (const auto held = requireNotHeld(writer.connection(), *row, now, known); !held.ok())
            return held.error();
        if (const auto free = requireFree(writer.connection(), garment, Needs::Hands); !free.ok())
            return free.error();
        openStep(writer, *row, route.steps.front().key, route.press);
        moveUnit(writer, *row, -1, row->label() + " put on the press");
        writer.describe(said("{garment} put on the press", {{"garment", row->label()}}));
        concernsGarment(writer, *row);
        writer.concerns(*row->lot);
        if (route.press)
            writer.concerns(*route.press);
        return Done{};
    });
}

Result<std::string> finishStep(Shop& shop, GarmentId garment, const Route& route) {
    return shop.act([&](Writer& writer) -> Result<std::string> {
        if (const auto sound = requireSound(writer.connection(), route); !sound.ok())
            return sound.error();
        const auto row = garmentOnPress(writer.connection(), garment);
        if (!row.ok())
            return row.error();
        const Sentence tooLong = tooLongWords(writer, *row, route);
        closeStep(writer, *row->openRow);
        const RouteStep* next = stepAfterFinished(writer.connection(), *row, route);
        if (next && !isWaitingKey(next->key))
            if (const auto free = requireFree(writer.connection(), garment, Needs::OpenPlaten); !free.ok())
                return free.error();
        if (next)
            openStep(writer, *row, next->key, route.press);
        const Sentence done =
            next ? said("{garment}, done: {step}",
                        {{"garment", row->label()}, {"step", titleOf(route, *row->openStep)}})
                 : pressedTitle(*row, route);
        writer.describe(tooLong.empty() ? done
                                        : said("{done}, {tooLong}", {{"done", done}, {"tooLong", tooLong}}));
        concernsGarment(writer, *row);
        if (route.press)
            writer.concerns(*route.press);
        return next ? next->key : std::string{};
    });
}

Result<Done> restartStep(Shop& shop, GarmentId garment) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto row = garmentOnPress(writer.connection(), garment);
        if (!row.ok())
            return row.error();
        writer.connection().run("UPDATE press_step SET started_at = ?2 WHERE id = ?1", row->openRow,
                                writer.now());
        writer.describe(said("{garment}, started again: {step}",
                             {{"garment", row->label()}, {"step", withCapital(keyWords(*row->openStep))}}));
        concernsGarment(writer, *row);
        return Done{};
    });
}

Result<Done> backAStep(Shop& shop, GarmentId garment) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto row = garmentOnPress(writer.connection(), garment);
        if (!row.ok())
            return row.error();
        writer.connection().run("DELETE FROM press_step WHERE id = ?1", row->openRow);

        std::optional<RowId> before;
        std::string key;
        {
            Query last =
                writer.connection().query("SELECT id, step_key FROM press_step WHERE garment_id = ?1 "
                                          "AND attempt = ?2 ORDER BY id DESC LIMIT 1",
                                          garment, row->attempt);
            if (last.step()) {
                before = last.id<RowId>(0);
                key = last.text(1);
            }
        }
        if (before) {
            if (!isWaitingKey(key))
                if (const auto free = requireFree(writer.connection(), garment, Needs::OpenPlaten);
                    !free.ok())
                    return free.error();
            writer.connection().run("UPDATE press_step SET started_at = ?2, finished_at = NULL WHERE id = ?1",
                                    *before, writer.now());
            writer.describe(
                said("{garment}, a step back: {step}", {{"garment", row->label()}, {"step", keyWords(key)}}));
            concernsGarment(writer, *row);
        } else {
            leavePress(writer, *row);
        }
        return Done{};
    });
}

Result<Done> putBackOnWalk(Shop& shop, GarmentId garment) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto row = garmentOnPress(writer.connection(), garment);
        if (!row.ok())
            return row.error();
        {
            Query finished = writer.connection().query(
                "SELECT step_key FROM press_step WHERE garment_id = ?1 AND attempt = ?2 "
                "AND finished_at IS NOT NULL",
                garment, row->attempt);
            while (finished.step())
                if (isHeatKey(finished.view(0)))
                    return plainError(said("{garment} has had heat. Finish it, or mark it spoiled.",
                                           {{"garment", row->label()}}));
        }
        writer.connection().run("DELETE FROM press_step WHERE garment_id = ?1 AND attempt = ?2", garment,
                                row->attempt);
        leavePress(writer, *row);
        return Done{};
    });
}

Result<Done> waive(Shop& shop, GarmentId garment, Rule rule, const std::string& reason) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto why =
            typedText(reason, {.field = "reason", .what = phrase("The reason"), .least = 3, .most = 200});
        if (!why.ok())
            return why.error();
        const auto row = garmentRow(writer.connection(), garment);
        if (!row.ok())
            return row.error();
        if (const auto open = requireOpen(*row); !open.ok())
            return open.error();
        const std::string code{ruleCode(rule)};
        if (writer.connection().number(
                "SELECT COUNT(*) FROM waiver WHERE garment_id = ?1 AND attempt = ?2 AND rule = ?3", garment,
                row->attempt, code) > 0)
            return plainError(said("{garment} was let through already.", {{"garment", row->label()}}));
        writer.connection().run("INSERT INTO waiver (id, garment_id, attempt, rule, reason, at) "
                                "VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
                                writer.newId<RowId>(), garment, row->attempt, code, *why, writer.now());
        std::string words = code;
        std::ranges::replace(words, '-', ' ');
        writer.describe(said("{garment} let through, {rule}: {why}",
                             {{"garment", row->label()}, {"rule", words}, {"why", *why}}));
        concernsGarment(writer, *row);
        return Done{};
    });
}

Result<Done> markSpoiled(Shop& shop, GarmentId garment, const std::string& cause) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto why =
            typedText(cause, {.field = "cause", .what = phrase("The cause"), .least = 3, .most = 200});
        if (!why.ok())
            return why.error();
        const auto row = garmentRow(writer.connection(), garment);
        if (!row.ok())
            return row.error();
        if (const auto open = requireOpen(*row); !open.ok())
            return open.error();
        // Its blank is still on the rail and in the lot's ledger: a count or a miscut says what was lost.
        if (!row->hasBegun())
            return plainError(said("{garment} has not been on the press. Correct the lot’s count, or mark "
                                   "its decal as cut wrong.",
                                   {{"garment", row->label()}}));
        Connection& connection = writer.connection();
        connection.run("INSERT INTO spoil (id, garment_id, attempt, at, cause) VALUES (?1, ?2, ?3, ?4, ?5)",
                       writer.newId<RowId>(), garment, row->attempt, writer.now(), *why);
        if (row->openRow)
            closeStep(writer, *row->openRow);
        connection.run("UPDATE decal SET cut_roll_id = NULL, cut_at = NULL WHERE garment_id = ?1", garment);
        // The spoiled unit stays taken from its lot.
        connection.run("UPDATE garment SET attempt = attempt + 1, lot_id = NULL WHERE id = ?1", garment);
        keepBlank(writer, garment, {row->style, row->size, row->colour});
        writer.describe(said("{garment} spoiled: {why}", {{"garment", row->label()}, {"why", *why}}));
        concernsGarment(writer, *row);
        if (row->lot)
            writer.concerns(*row->lot);
        return Done{};
    });
}

} // namespace holdfast::db
