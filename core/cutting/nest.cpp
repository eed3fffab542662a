// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/nest.h"

#include "core/cutting/nest_layout.h"
#include "core/trade/unit_words.h"

#include <algorithm>
#include <utility>

namespace holdfast {

namespace {

// The decals of one film on their way onto rolls.
class FilmNesting {
public:
    FilmNesting(const FilmToNest& task, const NestRules& rules, const std::function<bool()>& shouldStop)
        : m_rules(rules)
        , m_shouldStop(shouldStop)
        , m_film(*task.film)
        , m_margins{std::max(Millimetres{}, rules.gap), task.edge}
        , m_mayTurn(rules.mayTurn && !m_film.hasGrain) {
        chooseRolls(task);
        chooseDecals(task);
    }

    bool hasRoll() const { return !m_rolls.empty(); }

    // `search` none: at once.
    FilmNests nests(const StripSearch* search) const {
        FilmNests made;
        made.lack = m_lack;
        std::vector<const Decal*> left = m_decals;
        for (const FilmRoll* roll : m_rolls) {
            if (left.empty())
                break;
            Nest nest = nestOn(*roll, left, roll == m_rolls.front(), search);
            std::erase_if(left, [&](const Decal* decal) { return nest.find(decal->id); });
            if (!nest.decals.empty())
                made.nests.push_back(std::move(nest));
        }
        for (const Decal* decal : left)
            made.lack.emplace(decal->id, whyOnNoRoll(*decal, made.nests));
        return made;
    }

private:
    void chooseRolls(const FilmToNest& task) {
        for (const FilmRoll* roll : task.rolls) {
            const bool isFit =
                roll->left > Millimetres{0} && stripWidth(roll->width, m_margins) > Millimetres{};
            if (isFit && std::ranges::find(m_rolls, roll) == m_rolls.end())
                m_rolls.push_back(roll);
        }
    }

    void chooseDecals(const FilmToNest& task) {
        const std::int64_t longest = kLongestSide - m_margins.gap.value;
        for (const Decal* decal : task.decals) {
            const std::vector<NamedValue> size{{"size", Extent{decal->width, decal->height}}};
            if (decal->width.value < 1 || decal->height.value < 1)
                m_lack.emplace(decal->id,
                               said("A decal must be at least 1 × 1 mm; this one is {size}.", size));
            else if (decal->width.value > longest || decal->height.value > longest)
                m_lack.emplace(decal->id, said("No roll is long enough for {size}.", size));
            else if (m_decals.size() == kMostPieces)
                m_lack.emplace(decal->id, said("Only {most} decals are nested at once: cut those first.",
                                               {{"most", Numeral{kMostPieces}}}));
            else
                m_decals.push_back(decal);
        }
    }

    Nest nestOn(const FilmRoll& roll, const std::vector<const Decal*>& decals, bool mayHavePins,
                const StripSearch* search) const {
        Nest nest;
        nest.roll = roll.id;
        nest.film = m_film.id;
        nest.rollWidth = roll.width;
        nest.rollLeft = roll.left;
        nest.gap = m_margins.gap;
        nest.edge = m_margins.edge;
        nest.mayTurn = m_mayTurn;

        StripTask task{stripWidth(roll.width, m_margins).value, roll.left.value, {}};
        for (const Decal* decal : decals)
            task.pieces.push_back(pieceOf(*decal, m_mayTurn, m_margins));
        if (mayHavePins)
            pinDown(task, decals);

        const Result<StripPacking> packing =
            search ? packWithin(task, shareOf(*search)) : packAtOnce(task, m_shouldStop);
        if (!packing.ok())
            return nest;
        for (std::size_t index = 0; index < decals.size(); ++index) {
            if (!packing->places[index])
                continue;
            nest.decals.push_back(nestedAt(*decals[index], *packing->places[index], roll.width, m_margins));
            nest.decals.back().isPinned = task.pieces[index].pinned.has_value();
        }
        settle(nest);
        return nest;
    }

    // Drops a pin that would make the task invalid.
    void pinDown(StripTask& task, const std::vector<const Decal*>& decals) const {
        std::vector<const StripPiece*> pinned;
        for (std::size_t index = 0; index < decals.size(); ++index) {
            const auto pin = m_rules.pins.find(decals[index]->id);
            if (pin == m_rules.pins.end())
                continue;
            StripPiece piece = task.pieces[index];
            piece.pinned = placeOf(pin->second, m_margins);
            // A square lies the same both ways.
            if (piece.across == piece.along)
                piece.pinned->isTurned = false;
            const auto isUnderPin = [&](const StripPiece* other) { return lieOverOneAnother(piece, *other); };
            if (!checkTask({task.width, task.length, {piece}}).ok() ||
                std::ranges::any_of(pinned, isUnderPin))
                continue;
            task.pieces[index] = piece;
            pinned.push_back(&task.pieces[index]);
        }
    }

    static bool lieOverOneAnother(const StripPiece& one, const StripPiece& other) {
        const StripExtent size = extentOf(one, one.pinned->isTurned);
        const StripExtent otherSize = extentOf(other, other.pinned->isTurned);
        return one.pinned->across < other.pinned->across + otherSize.across &&
               other.pinned->across < one.pinned->across + size.across &&
               one.pinned->along < other.pinned->along + otherSize.along &&
               other.pinned->along < one.pinned->along + size.along;
    }

    StripSearch shareOf(const StripSearch& search) const {
        StripSearch share = search;
        share.budget = search.budget / static_cast<std::int64_t>(m_rolls.size());
        if (search.work)
            share.work = *search.work / m_rolls.size();
        share.improved = {};
        return share;
    }

    Sentence whyOnNoRoll(const Decal& decal, const std::vector<Nest>& nests) const {
        const Millimetres side = m_mayTurn ? std::min(decal.width, decal.height) : decal.width;
        const FilmRoll* widest = *std::ranges::max_element(m_rolls, {}, &FilmRoll::width);
        if (side + m_margins.edge * 2 > widest->width)
            return said("{size} needs {needs} of width; the widest roll chosen, {roll}, has {width}.",
                        {{"size", Extent{decal.width, decal.height}},
                         {"needs", side + m_margins.edge * 2},
                         {"roll", widest->label()},
                         {"width", widest->width}});
        const auto leftOn = [&](const FilmRoll* roll) {
            const auto nest = std::ranges::find(nests, roll->id, &Nest::roll);
            return nest == nests.end() ? roll->left : roll->left - nest->length;
        };
        const FilmRoll* longest = *std::ranges::max_element(m_rolls, {}, leftOn);
        return said("{size} finds no room: {roll} has {left} left after the others.",
                    {{"size", Extent{decal.width, decal.height}},
                     {"roll", longest->label()},
                     {"left", leftOn(longest)}});
    }

    const NestRules& m_rules;
    const std::function<bool()>& m_shouldStop; // of what is laid at once
    const Film& m_film;
    NestMargins m_margins;
    bool m_mayTurn;
    std::vector<const FilmRoll*> m_rolls;
    std::vector<const Decal*> m_decals; // by promise
    std::map<DecalId, Sentence> m_lack;
};

} // namespace

Result<FilmNests> nestOnRolls(const FilmToNest& task, const NestRules& rules, const StripSearch* search,
                              const std::function<bool()>& shouldStop) {
    const FilmNesting nesting(task, rules, shouldStop);
    if (!nesting.hasRoll())
        return fieldError("roll",
                          said("No roll of {film} may be cut from: receive one, or press a test strip.",
                               {{"film", task.film->name()}}));
    return nesting.nests(search);
}

} // namespace holdfast
