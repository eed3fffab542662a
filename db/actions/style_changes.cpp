// SPDX-License-Identifier: GPL-3.0-or-later
// A blank style changed: any of its facts, its sizes and colours, and whether it is offered.
#include "core/facts/size_changes.h"
#include "db/actions/blank_actions.h"
#include "db/actions/changed_fields.h"
#include "db/actions/rows.h"
#include "db/actions/style_parts.h"
#include "db/tables/codes.h"
#include "db/tables/fact_readers.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <limits>
#include <map>
#include <set>

namespace holdfast::db {
namespace {

Result<BlankStyle> styleAsItIs(Connection& connection, BlankStyleId id) {
    UnreadFacts unread;
    std::vector<BlankStyle> styles = readStyles(connection, unread);
    const auto found = std::ranges::find(styles, id, &BlankStyle::id);
    if (found == styles.end())
        return fieldError("style", said("The shop has no such blank style any more."));
    return std::move(*found);
}

constexpr std::string_view kOpenGarments =
    "FROM garment JOIN shop_order ON shop_order.id = order_id WHERE state IN ('quoted', 'confirmed') "
    "AND garment.handed_over_at IS NULL AND garment.cancelled_at IS NULL AND style_id = ?1 ";

// What hangs of a size, and how many garments are ordered in it.
std::int64_t hanging(Connection& connection, BlankStyleId style, const std::string& size) {
    return connection.number(
        "SELECT COALESCE(SUM(units), 0) FROM lot_move JOIN blank_lot ON blank_lot.id = lot_id "
        "WHERE style_id = ?1 AND size = ?2",
        style, size);
}

std::int64_t ordered(Connection& connection, BlankStyleId style, const std::string& size) {
    return connection.number("SELECT COUNT(*) " + std::string{kOpenGarments} + "AND size = ?2", style, size);
}

Result<Done> checkMayGo(Connection& connection, BlankStyleId style, const std::vector<std::string>& sizes) {
    for (const std::string& size : sizes) {
        if (const std::int64_t units = hanging(connection, style, size); units > 0)
            return fieldError("sizes", said("{n} blank of size {size} is on the rail: the size stays.|"
                                            "{n} blanks of size {size} are on the rail: the size stays.",
                                            {{"n", units}, {"size", size}}));
        if (const std::int64_t garments = ordered(connection, style, size); garments > 0)
            return fieldError("sizes", said("{n} garment is ordered in size {size}: the size stays.|"
                                            "{n} garments are ordered in size {size}: the size stays.",
                                            {{"n", garments}, {"size", size}}));
    }
    return Done{};
}

// The rows of a style's sizes. Each keeps its key, whatever comes before it now.
class SizeRows {
public:
    SizeRows(Writer& writer, BlankStyleId style)
        : m_writer(writer)
        , m_connection(writer.connection())
        , m_style(style) {
        Query rows = m_connection.query(
            "SELECT size, position, COALESCE(rank, position) FROM style_size WHERE style_id = ?1", style);
        while (rows.step())
            m_rows.emplace(rows.text(0), Row{rows.integer(1), rows.real(2)});
    }

    void rename(const std::string& before, const std::string& after) {
        m_connection.run("UPDATE style_size SET size = ?3 WHERE style_id = ?1 AND size = ?2", m_style, before,
                         after);
        m_connection.run("UPDATE blank_lot SET size = ?3 WHERE style_id = ?1 AND size = ?2", m_style, before,
                         after);
        m_connection.run("UPDATE garment SET size = ?3 WHERE style_id = ?1 AND size = ?2", m_style, before,
                         after);
        if (auto row = m_rows.extract(before)) {
            row.key() = after;
            m_rows.insert(std::move(row));
        }
    }

    void remove(const std::string& size) {
        m_connection.run("DELETE FROM style_size WHERE style_id = ?1 AND size = ?2", m_style, size);
        m_rows.erase(size);
    }

    // In this order; those that are not there yet are added.
    void arrange(const std::vector<std::string>& sizes) {
        double last = -std::numeric_limits<double>::infinity();
        for (std::size_t at = 0; at < sizes.size(); ++at) {
            const auto row = m_rows.find(sizes[at]);
            if (row != m_rows.end() && row->second.rank > last) {
                last = row->second.rank;
                continue;
            }
            last = between(last, nextAfter(sizes, at, last));
            if (row != m_rows.end())
                m_connection.run("UPDATE style_size SET rank = ?3 WHERE style_id = ?1 AND position = ?2",
                                 m_style, row->second.key, last);
            else
                m_connection.run(
                    "INSERT INTO style_size (style_id, position, size, rank) VALUES (?1, ?2, ?3, ?4)",
                    m_style, m_writer.newId<RowId>(), sizes[at], last);
        }
    }

private:
    struct Row {
        std::int64_t key;
        double rank;
    };

    // The rank of the next size that can stay where it is.
    double nextAfter(const std::vector<std::string>& sizes, std::size_t at, double last) const {
        for (std::size_t later = at + 1; later < sizes.size(); ++later)
            if (const auto row = m_rows.find(sizes[later]); row != m_rows.end() && row->second.rank > last)
                return row->second.rank;
        return std::numeric_limits<double>::infinity();
    }

    static double between(double low, double high) {
        if (low == -std::numeric_limits<double>::infinity())
            return high == std::numeric_limits<double>::infinity() ? 1 : high - 1;
        const double middle = (low + high) / 2;
        return middle > low && middle < high ? middle : low + 1;
    }

    Writer& m_writer;
    Connection& m_connection;
    BlankStyleId m_style;
    std::map<std::string, Row> m_rows;
};

class StyleChanging {
public:
    StyleChanging(Writer& writer, const BlankStyle& before, const BlankStyle& after)
        : m_writer(writer)
        , m_connection(writer.connection())
        , m_before(before)
        , m_after(after) {}

    Result<Done> change() {
        noteRow();
        if (const auto sizes = changeSizes(); !sizes.ok())
            return sizes;
        if (const auto colours = changeColours(); !colours.ok())
            return colours;
        changeObstacles();
        noteRetiring();
        if (m_changes.empty())
            return Done{};
        writeRow();
        m_writer.describe(said("Blank style {style} changed: {changes}",
                               {{"style", m_after.name}, {"changes", m_changes.words()}}));
        m_writer.concerns(m_after.id);
        return Done{};
    }

private:
    void noteRow() {
        const Currency currency = loadSettings(m_connection).currency;
        m_changes.note("name", m_before.name, m_after.name);
        m_changes.note("cost_minor", Amount{m_before.cost, currency}, Amount{m_after.cost, currency});
        m_changes.noteText("supplier", m_before.supplier, m_after.supplier);
        m_changes.note("weight_g", gramsWords(m_before.weight), gramsWords(m_after.weight));
        m_changes.note("outline", m_before.outline, m_after.outline);
        m_changes.noteText("not_prewashed_because", m_before.notPrewashedBecause,
                           m_after.notPrewashedBecause);
        m_changes.noteYesNo("for_child", m_before.forChild, m_after.forChild);
        m_changes.noteYesNo("sleepwear", m_before.sleepwear, m_after.sleepwear);
        m_changes.noteYesNo("has_cords", m_before.hasCords, m_after.hasCords);
        m_changes.noteText("law_checked_by", m_before.lawCheckedBy, m_after.lawCheckedBy);
    }

    void writeRow() {
        m_connection.run("UPDATE blank_style SET name = ?2, outline = ?3, weight_g = ?4, cost_minor = ?5, "
                         "not_prewashed_because = ?6, for_child = ?7, sleepwear = ?8, has_cords = ?9, "
                         "law_checked_by = ?10, supplier = ?11 WHERE id = ?1",
                         m_after.id, m_after.name, m_after.outline, m_after.weight, m_after.cost,
                         m_after.notPrewashedBecause, m_after.forChild, m_after.sleepwear, m_after.hasCords,
                         m_after.lawCheckedBy, m_after.supplier);
        writeRetired(m_connection, "blank_style", m_after.id, m_after.isRetired, m_writer.now());
    }

    Result<Done> changeSizes() {
        const auto isInUse = [this](const std::string& size) {
            return hanging(m_connection, m_after.id, size) > 0 || ordered(m_connection, m_after.id, size) > 0;
        };
        const SizeChanges sizes = sizeChanges(m_before.sizes, m_after.sizes, isInUse);
        if (auto mayGo = checkMayGo(m_connection, m_after.id, sizes.gone); !mayGo.ok())
            return mayGo;
        SizeRows rows{m_writer, m_after.id};
        for (const std::string& size : sizes.gone) {
            rows.remove(size);
            m_changes.add(said("size {size} taken away", {{"size", size}}));
        }
        for (const auto& [was, now] : sizes.renamed) {
            rows.rename(was, now);
            m_changes.note("size", was, now);
        }
        for (const std::string& size : sizes.added)
            m_changes.add(said("size {size} added", {{"size", size}}));
        rows.arrange(m_after.sizes);
        if (sizes.empty() && m_before.sizes != m_after.sizes)
            m_changes.add(said("sizes in another order"));
        return Done{};
    }

    Result<Done> changeColours() {
        std::set<ColourId> stays;
        for (const Colour& colour : m_after.colours)
            stays.insert(colour.id);
        for (const Colour& colour : m_before.colours)
            if (!stays.contains(colour.id))
                if (auto removed = removeColour(colour); !removed.ok())
                    return removed;
        std::int64_t position = m_connection.number(
            "SELECT COALESCE(MAX(position), 0) FROM style_colour WHERE style_id = ?1", m_after.id);
        for (const Colour& colour : m_after.colours) {
            if (colour.id == ColourId{}) {
                writeColour(m_writer, m_after.id, ++position, colour);
                m_changes.add(said("colour {colour} added", {{"colour", colour.name}}));
            } else if (const Colour* was = m_before.colour(colour.id)) {
                changeColour(*was, colour);
            } else {
                return fieldError("colours",
                                  said("{style} has no such colour any more.", {{"style", m_before.name}}));
            }
        }
        return Done{};
    }

    Result<Done> removeColour(const Colour& colour) {
        if (m_connection.number("SELECT (SELECT COUNT(*) FROM blank_lot WHERE colour_id = ?1) + "
                                "(SELECT COUNT(*) FROM garment WHERE colour_id = ?1)",
                                colour.id) > 0)
            return fieldError("colours",
                              said("There were blanks or orders in {colour}: it can be retired, but not "
                                   "taken away.",
                                   {{"colour", colour.name}}));
        m_connection.run("DELETE FROM style_colour WHERE id = ?1", colour.id);
        m_changes.add(said("colour {colour} taken away", {{"colour", colour.name}}));
        return Done{};
    }

    void changeColour(const Colour& was, const Colour& now) {
        m_changes.note("colour_id", was.name, now.name);
        if (was.rgb != now.rgb)
            m_changes.add(said(
                "shade of {colour}: {after} (was {before})",
                {{"colour", now.name}, {"after", shadeWords(now.rgb)}, {"before", shadeWords(was.rgb)}}));
        if (was.isRetired != now.isRetired)
            m_changes.add(now.isRetired ? said("colour {colour} retired", {{"colour", now.name}})
                                        : said("colour {colour} brought back", {{"colour", now.name}}));
        m_connection.run("UPDATE style_colour SET name = ?2, rgb = ?3 WHERE id = ?1", now.id, now.name,
                         now.rgb);
        writeRetired(m_connection, "style_colour", now.id, now.isRetired, m_writer.now());
    }

    void changeObstacles() {
        for (const ObstacleOnStyle& was : m_before.obstacles)
            if (std::ranges::find(m_after.obstacles, was.obstacle, &ObstacleOnStyle::obstacle) ==
                m_after.obstacles.end()) {
                m_connection.run("DELETE FROM style_obstacle WHERE style_id = ?1 AND obstacle = ?2",
                                 m_after.id, codeOf(was.obstacle));
                m_changes.add(said("no {obstacle} in the way", {{"obstacle", obstacleName(was.obstacle)}}));
            }
        for (const ObstacleOnStyle& now : m_after.obstacles) {
            if (std::ranges::find(m_before.obstacles, now) != m_before.obstacles.end())
                continue;
            writeObstacle(m_connection, m_after.id, now);
            m_changes.add(said("{obstacle}: {way}",
                               {{"obstacle", obstacleName(now.obstacle)},
                                {"way", now.way ? wayRoundName(*now.way) : phrase("in the way")}}));
        }
    }

    void noteRetiring() {
        const std::int64_t units =
            m_connection.number("SELECT COALESCE(SUM(units), 0) FROM lot_move JOIN blank_lot ON blank_lot.id "
                                "= lot_id WHERE style_id = ?1",
                                m_after.id);
        m_changes.noteRetired(m_before.isRetired, m_after.isRetired,
                              units > 0 ? said("{n} blank left|{n} blanks left", {{"n", units}})
                                        : Sentence{});
    }

    Writer& m_writer;
    Connection& m_connection;
    const BlankStyle& m_before;
    const BlankStyle& m_after;
    ChangedFields m_changes;
};

} // namespace

Result<Done> changeStyle(Shop& shop, const BlankStyle& style) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto before = styleAsItIs(writer.connection(), style.id);
        if (!before.ok())
            return before.error();
        const auto after = soundStyle(writer.connection(), style);
        if (!after.ok())
            return after.error();
        return StyleChanging{writer, *before, *after}.change();
    });
}

} // namespace holdfast::db
