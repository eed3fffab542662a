// SPDX-License-Identifier: GPL-3.0-or-later
// Changing an order that was taken: its wording, films, layers, blanks, promise, customer and note.
#include "core/trade/limits.h"
#include "db/actions/kept_blanks.h"
#include "db/actions/order_actions.h"
#include "db/actions/rows.h"
#include "db/tables/codes.h"

#include <set>

namespace holdfast::db {
namespace {

Result<DecalRow> openDecal(Connection& connection, DecalId decal) {
    auto row = decalRow(connection, decal);
    if (!row.ok())
        return row;
    if (const auto open = requireOpen(row->garment); !open.ok())
        return open.error();
    return row;
}

Result<DecalRow> uncutDecal(Connection& connection, DecalId decal) {
    auto row = openDecal(connection, decal);
    if (row.ok() && row->cutFrom)
        return plainError(said("{garment}: {decal} is cut already.",
                               {{"garment", row->garment.label()}, {"decal", row->words()}}));
    return row;
}

void concernsDecal(Writer& writer, const DecalRow& decal) {
    concernsGarment(writer, decal.garment);
    writer.concerns(decal.id);
}

} // namespace

Result<Done> confirmWording(Shop& shop, DecalId decal, const std::string& how, const std::string& outline) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto agreed = typedText(how, {.field = "how", .what = phrase("How the customer agreed")});
        if (!agreed.ok())
            return agreed.error();
        const auto row = openDecal(writer.connection(), decal);
        if (!row.ok())
            return row.error();
        writer.connection().run(
            "UPDATE decal SET confirmed_by = ?2, outline = COALESCE(outline, NULLIF(?3, '')) "
            "WHERE id = ?1",
            decal, *agreed, outline);
        writer.describe(
            said("{garment}: {decal} agreed {agreed}",
                 {{"garment", row->garment.label()}, {"decal", row->words()}, {"agreed", *agreed}}));
        concernsDecal(writer, *row);
        return Done{};
    });
}

Result<Done> rewordDecal(Shop& shop, DecalId decal, const std::string& wording, const std::string& outline) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto text = typedText(wording, {.field = "wording", .what = phrase("The wording"), .most = 60});
        if (!text.ok())
            return text.error();
        const auto row = uncutDecal(writer.connection(), decal);
        if (!row.ok())
            return row.error();
        const auto* before = std::get_if<Wording>(&row->content);
        if (!before)
            return fieldError("wording",
                              said("{decal} is a drawing; it has no wording.", {{"decal", row->words()}}));
        if (before->text == *text)
            return Done{};
        writer.connection().run(
            "UPDATE decal SET wording = ?2, confirmed_by = '', outline = NULLIF(?3, '') WHERE id = ?1", decal,
            *text, outline);
        writer.describe(
            said("{garment}: “{before}” is now “{wording}”",
                 {{"garment", row->garment.label()}, {"before", before->text}, {"wording", *text}}));
        concernsDecal(writer, *row);
        return Done{};
    });
}

Result<Done> confirmWordings(Shop& shop, std::span<const AgreedDecal> agreed, const std::string& how) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        std::string order;
        for (std::size_t at = 0; at < agreed.size(); ++at) {
            if (agreed[at].wording)
                if (const auto reworded =
                        rewordDecal(shop, agreed[at].decal, *agreed[at].wording, agreed[at].outline);
                    !reworded.ok())
                    return fieldError("wording-" + std::to_string(at + 1), reworded.error().message);
            if (const auto confirmed = confirmWording(shop, agreed[at].decal, how, agreed[at].outline);
                !confirmed.ok())
                return confirmed;
            const auto row = decalRow(writer.connection(), agreed[at].decal);
            order = row.ok() ? row->garment.order.label() : order;
        }
        if (agreed.size() > 1)
            writer.describe(said("{order}: {n} decals agreed {how}",
                                 {{"order", order}, {"n", agreed.size()}, {"how", trimmed(how)}}));
        return Done{};
    });
}

Result<Done> movePromise(Shop& shop, OrderId order, LocalTime promised, const Now& now) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        if (const auto checked = checkPromisedTime(promised, now); !checked.ok())
            return checked.error();
        const auto row = orderRow(writer.connection(), order);
        if (!row.ok())
            return row.error();
        if (const auto open = requireOpen(*row); !open.ok())
            return open.error();
        writer.connection().run("UPDATE shop_order SET promised = ?2 WHERE id = ?1", order, promised);
        writer.describe(said("Promise moved to {when}", {{"when", promised}}));
        writer.concerns(order);
        return Done{};
    });
}

Result<Done> changeFilm(Shop& shop, DecalId decal, FilmId film) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto name = filmName(writer.connection(), film);
        if (!name.ok())
            return name.error();
        const auto row = uncutDecal(writer.connection(), decal);
        if (!row.ok())
            return row.error();
        writer.connection().run("UPDATE decal SET film_id = ?2 WHERE id = ?1", decal, film);
        writer.describe(said("{garment}: {decal} in {film}",
                             {{"garment", row->garment.label()}, {"decal", row->words()}, {"film", *name}}));
        concernsDecal(writer, *row);
        writer.concerns(film);
        return Done{};
    });
}

Result<Done> changeLayer(Shop& shop, DecalId decal, int layer) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        if (const auto checked =
                within(layer, {.field = "layer", .what = phrase("The layer"), .least = 1, .most = 12});
            !checked.ok())
            return checked.error();
        const auto row = openDecal(writer.connection(), decal);
        if (!row.ok())
            return row.error();
        if (const auto fresh = requireNotBegun(row->garment); !fresh.ok())
            return fresh.error();
        writer.connection().run("UPDATE decal SET layer = ?2 WHERE id = ?1", decal, layer);
        writer.describe(
            said("{garment}: {decal} on layer {layer}",
                 {{"garment", row->garment.label()}, {"decal", row->words()}, {"layer", Numeral{layer}}}));
        concernsDecal(writer, *row);
        return Done{};
    });
}

Result<Done> reorderLayers(Shop& shop, GarmentId garment, std::span<const DecalId> fromCloth) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto row = garmentRow(writer.connection(), garment);
        if (!row.ok())
            return row.error();
        if (const auto open = requireOpen(*row); !open.ok())
            return open.error();
        if (const auto fresh = requireNotBegun(*row); !fresh.ok())
            return fresh.error();
        std::set<DecalId> left;
        Query decals = writer.connection().query("SELECT id FROM decal WHERE garment_id = ?1", garment);
        while (decals.step())
            left.insert(decals.id<DecalId>(0));
        for (const DecalId decal : fromCloth)
            if (left.erase(decal) == 0)
                return fieldError("layers", said("The decals of {garment} changed meanwhile.",
                                                 {{"garment", row->label()}}));
        if (!left.empty())
            return fieldError(
                "layers", said("Say of each decal of {garment} where it lies.", {{"garment", row->label()}}));
        Sentence order;
        for (std::size_t at = 0; at < fromCloth.size(); ++at) {
            writer.connection().run("UPDATE decal SET layer = ?2 WHERE id = ?1", fromCloth[at], at + 1);
            const auto decal = decalRow(writer.connection(), fromCloth[at]);
            if (!decal.ok())
                return decal.error();
            order = at == 0 ? decal->words()
                            : said("{before}, then {decal}",
                                   {{"before", asAlone(std::move(order))}, {"decal", decal->words()}});
            writer.concerns(fromCloth[at]);
        }
        writer.describe(
            said("{garment} layered from the cloth: {order}", {{"garment", row->label()}, {"order", order}}));
        concernsGarment(writer, *row);
        return Done{};
    });
}

Result<Done> changeBlank(Shop& shop, GarmentId garment, BlankStyleId style, const std::string& size,
                         ColourId colour) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto words = blankWords(writer.connection(), style, size, colour);
        if (!words.ok())
            return words.error();
        const auto row = garmentRow(writer.connection(), garment);
        if (!row.ok())
            return row.error();
        if (const auto open = requireOpen(*row); !open.ok())
            return open.error();
        if (const auto fresh = requireNotBegun(*row); !fresh.ok())
            return fresh.error();
        const BlankKind before{row->style, row->size, row->colour};
        const BlankKind after{style, size, colour};
        if (before == after)
            return Done{};
        giveBack(writer, garment);
        writer.connection().run("UPDATE garment SET style_id = ?2, size = ?3, colour_id = ?4 WHERE id = ?1",
                                garment, style, size, colour);
        if (row->order.state == OrderState::Confirmed)
            keepBlank(writer, garment, after);
        if (row->lot) {
            writer.concerns(*row->lot);
            giveToWaiting(writer, before);
        }
        writer.describe(said("{garment} on {blank} instead", {{"garment", row->label()}, {"blank", *words}}));
        concernsGarment(writer, *row);
        return Done{};
    });
}

Result<Done> changeNote(Shop& shop, OrderId order, const std::string& note) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto text = typedText(note, {.field = "note",
                                           .what = phrase("The note"),
                                           .least = 0,
                                           .most = kMostNoteCharacters,
                                           .mayBreakLines = true});
        if (!text.ok())
            return text.error();
        const auto row = orderRow(writer.connection(), order);
        if (!row.ok())
            return row.error();
        writer.connection().run("UPDATE shop_order SET note = ?2 WHERE id = ?1", order, *text);
        writer.describe(text->empty() ? said("Note of {order} taken off", {{"order", row->label()}})
                                      : said("Note written on {order}", {{"order", row->label()}}));
        writer.concerns(order);
        return Done{};
    });
}

} // namespace holdfast::db
