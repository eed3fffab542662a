// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/order_parts.h"

#include "core/trade/limits.h"
#include "db/tables/codes.h"
#include "db/tables/joined_customers.h"

namespace holdfast::db {
namespace {

using Text = std::optional<std::string>;

// What is on it, as the columns have it: either artwork or wording.
struct ContentColumns {
    Text artwork;
    Text wording;
    Text face;
    Text outline;
};

ContentColumns columnsOf(const DecalContent& content) {
    if (const auto* artwork = std::get_if<Artwork>(&content))
        return {trimmed(artwork->name), {}, {}, {}};
    const auto& wording = std::get<Wording>(content);
    return {{},
            trimmed(wording.text),
            std::string{codeOf(wording.face)},
            wording.outline.empty() ? Text{} : Text{wording.outline}};
}

// Either an amount or a part of what the garments cost.
struct WorthColumns {
    std::optional<std::int64_t> minor;
    std::optional<std::int64_t> share;
};

WorthColumns columnsOf(const BillLine& line) {
    if (const auto* share = std::get_if<Percentage>(&line.worth))
        return {{}, share->hundredths};
    return {std::get<Money>(line.worth).minor, {}};
}

} // namespace

Result<CustomerId> customerFor(Writer& writer, const OrderDraft& draft) {
    Connection& connection = writer.connection();
    const bool isForgotten =
        draft.customer && connection.number("SELECT COUNT(*) FROM forgotten_customer WHERE customer_id = ?1",
                                            *draft.customer) > 0;
    if (draft.customer && !isForgotten) {
        if (connection.number("SELECT COUNT(*) FROM customer WHERE id = ?1", *draft.customer) == 0)
            return fieldError("customer", said("The shop has no such customer any more."));
        return keptCustomer(connection, *draft.customer);
    }
    const std::string name = trimmed(draft.customerName);
    const std::string phone = trimmed(draft.customerPhone);
    if (!phone.empty()) {
        Query known = connection.query(
            "SELECT id FROM customer WHERE phone = ?1 AND name = ?2 COLLATE NOCASE ORDER BY id LIMIT 1",
            phone, name);
        if (known.step())
            return keptCustomer(connection, known.id<CustomerId>(0));
    }
    const auto customer = writer.newId<CustomerId>();
    connection.run("INSERT INTO customer (id, name, phone) VALUES (?1, ?2, ?3)", customer, name, phone);
    return customer;
}

GarmentId addGarment(Writer& writer, OrderId order, const GarmentDraft& draft, int position,
                     const char* confirmedBy) {
    const auto garment = writer.newId<GarmentId>();
    writer.connection().run(
        "INSERT INTO garment (id, order_id, position, style_id, size, colour_id, price_minor) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
        garment, order, position, draft.style, draft.size, draft.colour, draft.price);
    for (const DecalDraft& decal : draft.decals)
        addDecal(writer, garment, decal, confirmedBy);
    writer.concerns(garment);
    return garment;
}

void addDecal(Writer& writer, GarmentId garment, const DecalDraft& draft, const char* confirmedBy) {
    const ContentColumns content = columnsOf(draft.content);
    writer.connection().run(
        "INSERT INTO decal (id, garment_id, film_id, artwork, wording, face, placement, below_mm, "
        "aside_mm, width_mm, height_mm, layer, confirmed_by, outline) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14)",
        writer.newId<DecalId>(), garment, draft.film, content.artwork, content.wording, content.face,
        codeOf(draft.placement), draft.below, draft.aside, draft.width, draft.height, draft.layer,
        confirmedBy, content.outline);
}

void addBillLine(Writer& writer, OrderId order, const BillLine& line) {
    const WorthColumns worth = columnsOf(line);
    writer.connection().run(
        "INSERT INTO bill_line (id, order_id, kind, words, minor, share) VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
        writer.newId<BillLineId>(), order, codeOf(line.kind), trimmed(line.words), worth.minor, worth.share);
}

void rewriteBillLine(Writer& writer, const BillLine& line) {
    const WorthColumns worth = columnsOf(line);
    writer.connection().run(
        "UPDATE bill_line SET kind = ?2, words = ?3, minor = ?4, share = ?5 WHERE id = ?1", *line.taken,
        codeOf(line.kind), trimmed(line.words), worth.minor, worth.share);
}

Result<Done> requireNotBelowNothing(Connection& connection, OrderId order, std::int64_t number) {
    if (connection.number("SELECT total_minor FROM order_card WHERE id = ?1", order) >= 0)
        return Done{};
    return fieldError("garments", said("More would be taken off order {order} than it comes to. Change its "
                                       "discount first.",
                                       {{"order", Numeral{number}}}));
}

void rewriteDecal(Writer& writer, DecalId decal, const DecalDraft& draft) {
    const ContentColumns content = columnsOf(draft.content);
    writer.connection().run(
        "UPDATE decal SET film_id = ?2, artwork = ?3, wording = ?4, face = ?5, placement = ?6, below_mm = "
        "?7, "
        "aside_mm = ?8, width_mm = ?9, height_mm = ?10, layer = ?11, outline = ?12 WHERE id = ?1",
        decal, draft.film, content.artwork, content.wording, content.face, codeOf(draft.placement),
        draft.below, draft.aside, draft.width, draft.height, draft.layer, content.outline);
}

} // namespace holdfast::db
