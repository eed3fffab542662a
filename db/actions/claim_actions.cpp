// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/claim_actions.h"

#include "core/trade/limits.h"
#include "db/actions/rows.h"
#include "db/tables/codes.h"

namespace holdfast::db {
namespace {

std::optional<LocalDate> handedOverOn(Connection& connection, GarmentId garment, const Now& now) {
    Query found = connection.query("SELECT handed_over_at FROM garment WHERE id = ?1", garment);
    if (!found.step() || found.isNull(0))
        return std::nullopt;
    return dateOf(now.toLocal(found.instant(0)));
}

Result<Done> checkDay(LocalDate on, LocalDate handedOver, LocalDate today) {
    if (on > today)
        return fieldError("on", said("The day must be no later than today."));
    if (on < handedOver)
        return fieldError("on",
                          said("It was handed over on {handedOver}; the day must be that one or a later one.",
                               {{"handedOver", handedOver}}));
    return Done{};
}

Result<Done> checkWashes(std::optional<std::int64_t> washes) {
    if (!washes)
        return Done{};
    return within(*washes,
                  {.field = "washes", .what = phrase("The number of washes"), .least = 0, .most = 500});
}

// "418-b came back: Heron cracked after 3 washes"
Sentence titleOf(const GarmentRow& garment, const std::optional<DecalRow>& decal, const ClaimTold& told) {
    const std::vector<NamedValue> values{{"decal", decal ? decal->words() : Sentence{}},
                                         {"fault", faultWords(told.fault)}};
    Sentence what = decal ? said("{decal}, {fault}", values) : said("{fault}", {values.back()});
    if (told.washes)
        what = *told.washes == 0 ? said("{what}, not washed yet", {{"what", std::move(what)}})
                                 : said("{what} after {n} wash|{what} after {n} washes",
                                        {{"what", std::move(what)}, {"n", *told.washes}});
    return said("{garment} came back: {what}", {{"garment", garment.label()}, {"what", std::move(what)}});
}

} // namespace

Result<ClaimId> recordClaim(Shop& shop, const ClaimTold& told, const Now& now) {
    return shop.act([&](Writer& writer) -> Result<ClaimId> {
        Connection& connection = writer.connection();
        const auto garment = garmentRow(connection, told.garment);
        if (!garment.ok())
            return garment.error();
        const auto handedOver = handedOverOn(connection, told.garment, now);
        if (!handedOver)
            return fieldError("garment", said("{garment} is not handed over yet. What goes wrong before that "
                                              "is marked spoiled at the press.",
                                              {{"garment", garment->label()}}));
        std::optional<DecalRow> decal;
        if (told.decal) {
            auto row = decalRow(connection, *told.decal);
            if (!row.ok())
                return row.error();
            if (row->garment.id != told.garment)
                return fieldError("decal",
                                  said("That decal is on {garment}, not on {other}.",
                                       {{"garment", row->garment.label()}, {"other", garment->label()}}));
            decal = std::move(row).value();
        }
        const auto note = typedText(
            told.note,
            {.field = "note", .what = phrase("The note"), .least = 0, .most = 300, .mayBreakLines = true});
        if (!note.ok())
            return note.error();
        if (const auto wrong =
                firstError({checkDay(told.on, *handedOver, now.today()), checkWashes(told.washes)}))
            return *wrong;

        const auto id = writer.newId<ClaimId>();
        connection.run("INSERT INTO claim (id, garment_id, decal_id, told_on, fault, washes, note) "
                       "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
                       id, told.garment, told.decal, told.on, codeOf(told.fault), told.washes, *note);
        writer.describe(titleOf(*garment, decal, told));
        concernsGarment(writer, *garment);
        writer.concerns(garment->order.customer);
        return id;
    });
}

Result<Done> answerClaim(Shop& shop, ClaimId claim, ClaimAnswer answer, const Now& now) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        Connection& connection = writer.connection();
        std::optional<GarmentId> named;
        {
            Query found = connection.query("SELECT garment_id FROM claim WHERE id = ?1", claim);
            if (found.step())
                named = found.id<GarmentId>(0);
        }
        if (!named)
            return fieldError("claim", said("The note of what came back is no longer there."));
        const auto garment = garmentRow(connection, *named);
        if (!garment.ok())
            return garment.error();
        connection.run("UPDATE claim SET answer = ?2, answered_on = ?3 WHERE id = ?1", claim, codeOf(answer),
                       now.today());
        writer.describe(said("{garment} came back, done about it: {answer}",
                             {{"garment", garment->label()}, {"answer", answerWords(answer)}}));
        concernsGarment(writer, *garment);
        writer.concerns(garment->order.customer);
        return Done{};
    });
}

} // namespace holdfast::db
