// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/garments_in_turn.h"

#include "db/tables/order_rows.h"

#include <algorithm>
#include <charconv>
#include <string>
#include <tuple>

namespace holdfast::db {

namespace {

DecalInTurn inBrief(const Decal& decal) {
    const auto short32 = [](Millimetres length) { return static_cast<std::int32_t>(length.value); };
    return {decal.garment,
            decal.id,
            decal.film,
            decal.cutFrom.value_or(RollId{}),
            short32(decal.below),
            short32(decal.aside),
            short32(decal.width),
            short32(decal.height),
            decal.layer,
            decal.placement,
            std::holds_alternative<Wording>(decal.content)};
}

} // namespace

Decal DecalInTurn::asDecal() const {
    Decal decal;
    decal.id = id;
    decal.garment = garment;
    decal.film = film;
    decal.content = isWording ? DecalContent{Wording{}} : Artwork{};
    decal.placement = placement;
    decal.below = {below};
    decal.aside = {aside};
    decal.width = {width};
    decal.height = {height};
    decal.layer = layer;
    if (cutFrom.isSet())
        decal.cutFrom = cutFrom;
    return decal;
}

std::vector<PressId> GarmentCard::pressIds() const {
    std::vector<PressId> ids;
    for (std::string_view left = presses; !left.empty();) {
        PressId press;
        const auto [end, error] = std::from_chars(left.data(), left.data() + left.size(), press.value);
        if (error != std::errc{})
            break;
        ids.push_back(press);
        left.remove_prefix(std::min(static_cast<std::size_t>(end - left.data()) + 1, left.size()));
    }
    return ids;
}

GarmentsInTurn::GarmentsInTurn(Connection& connection)
    : m_rows(connection.query(std::string{"SELECT "} + kGarmentColumns +
                              "FROM garment WHERE cancelled_at IS NULL ORDER BY garment.id"))
    , m_cards(connection.query("SELECT id, pressed_at, presses FROM garment_card ORDER BY id"))
    , m_isCardThere(m_cards.step()) {
    readDecals(connection);
}

bool GarmentsInTurn::next() {
    if (!m_rows.step())
        return false;
    const GarmentId garment = id();
    while (m_nextDecal < m_decals.size() && m_decals[m_nextDecal].garment < garment)
        ++m_nextDecal;
    const std::size_t first = m_nextDecal;
    while (m_nextDecal < m_decals.size() && m_decals[m_nextDecal].garment == garment)
        ++m_nextDecal;
    m_own = std::span{m_decals}.subspan(first, m_nextDecal - first);
    while (m_isCardThere && m_cards.id<GarmentId>(0) < garment)
        m_isCardThere = m_cards.step();
    m_card.reset();
    if (m_isCardThere && m_cards.id<GarmentId>(0) == garment)
        m_card = GarmentCard{m_cards.isNull(1) ? std::nullopt : std::optional{m_cards.integer(1)},
                             m_cards.view(2)};
    return true;
}

// By garment: decals are written with it, so they mostly lie in its order already.
void GarmentsInTurn::readDecals(Connection& connection) {
    Query rows =
        connection.query(std::string{"SELECT "} + kDecalColumns + kNoOutline + "FROM decal ORDER BY id");
    UnreadFacts namedWithTheirOrders;
    readFacts(
        rows, namedWithTheirOrders, "decal",
        [this](const FactRow& row) { m_decals.push_back(inBrief(decalFrom(row))); },
        [this](const Query& row) { m_withUnread.insert(row.id<GarmentId>(1)); });
    const auto place = [](const DecalInTurn& decal) {
        return std::tuple(decal.garment, decal.layer, decal.id);
    };
    if (!std::ranges::is_sorted(m_decals, {}, place))
        std::ranges::sort(m_decals, {}, place);
}

} // namespace holdfast::db
