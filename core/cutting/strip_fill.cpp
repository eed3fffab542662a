#include "core/cutting/strip_fill.h"

#include <algorithm>
#include <limits>

namespace holdfast {

namespace {

constexpr std::int64_t kNoWall = std::numeric_limits<std::int64_t>::max() / 4;
constexpr std::size_t kPiecesBetweenAsking = 64;

struct Level {
    std::int64_t across = 0;
    std::int64_t width = 0;
    std::int64_t along = 0;
};

struct Gap {
    std::size_t level = 0;
    std::int64_t across = 0;
    std::int64_t width = 0;
    std::int64_t along = 0;
    std::int64_t leftWall = 0; // height above the gap
    std::int64_t rightWall = 0;
    std::int64_t ceiling = 0; // height that is free over the whole gap
};

class Skyline {
public:
    explicit Skyline(const FillFrame& frame)
        : m_frame(frame)
        , m_levels{{0, frame.width, 0}} {}

    // The lowest, leftmost gap, grown around pins; none: all is filled up to the frame's end.
    std::optional<Gap> lowest() {
        for (;;) {
            const auto found = std::ranges::min_element(m_levels, {}, &Level::along);
            if (found->along >= m_frame.end)
                return std::nullopt;
            const auto level = static_cast<std::size_t>(found - m_levels.begin());
            if (!growAroundPins(level))
                return gapAt(level);
        }
    }

    void lay(const Gap& gap, std::int64_t across, std::int64_t width, std::int64_t along) {
        raise(gap.level, across, width, gap.along + along);
    }

    // Nothing fits: the gap is given up to its lower wall, or to the next pin over it.
    void giveUp(const Gap& gap) {
        std::int64_t along = m_frame.end;
        if (gap.leftWall < kNoWall)
            along = std::min(along, gap.along + gap.leftWall);
        if (gap.rightWall < kNoWall)
            along = std::min(along, gap.along + gap.rightWall);
        for (const TakenArea& pin : m_frame.pins) {
            if (isOver(pin, gap.across, gap.width) && pin.along > gap.along)
                along = std::min(along, pin.along);
        }
        raise(gap.level, gap.across, gap.width, along);
    }

    bool isFree(std::int64_t across, std::int64_t width, std::int64_t along, std::int64_t height) const {
        return along + height <= m_frame.end && std::ranges::none_of(m_frame.pins, [&](const TakenArea& pin) {
                   return isOver(pin, across, width) && pin.along < along + height && pin.alongEnd > along;
               });
    }

    std::int64_t highest() const { return std::ranges::max_element(m_levels, {}, &Level::along)->along; }

private:
    static bool isOver(const TakenArea& pin, std::int64_t across, std::int64_t width) {
        return pin.across < across + width && pin.acrossEnd > across;
    }

    bool growAroundPins(std::size_t level) {
        const Level at = m_levels[level];
        for (const TakenArea& pin : m_frame.pins) {
            if (!isOver(pin, at.across, at.width) || pin.along > at.along || pin.alongEnd <= at.along)
                continue;
            const std::int64_t across = std::max(pin.across, at.across);
            raise(level, across, std::min(pin.acrossEnd, at.across + at.width) - across, pin.alongEnd);
            return true;
        }
        return false;
    }

    Gap gapAt(std::size_t level) const {
        const Level& at = m_levels[level];
        Gap gap{level, at.across, at.width, at.along, kNoWall, kNoWall, m_frame.end - at.along};
        if (level > 0)
            gap.leftWall = m_levels[level - 1].along - at.along;
        if (level + 1 < m_levels.size())
            gap.rightWall = m_levels[level + 1].along - at.along;
        for (const TakenArea& pin : m_frame.pins) {
            if (isOver(pin, at.across, at.width) && pin.along > at.along)
                gap.ceiling = std::min(gap.ceiling, pin.along - at.along);
        }
        return gap;
    }

    // A part of one level is raised; neighbours of one height become one level.
    void raise(std::size_t level, std::int64_t across, std::int64_t width, std::int64_t along) {
        const Level before = m_levels[level];
        m_levels[level] = {across, width, along};
        if (across + width < before.across + before.width)
            m_levels.insert(at(level + 1),
                            {across + width, before.across + before.width - across - width, before.along});
        if (across > before.across) {
            m_levels.insert(at(level), {before.across, across - before.across, before.along});
            ++level;
        }
        if (level + 1 < m_levels.size() && m_levels[level + 1].along == along) {
            m_levels[level].width += m_levels[level + 1].width;
            m_levels.erase(at(level + 1));
        }
        if (level > 0 && m_levels[level - 1].along == along) {
            m_levels[level - 1].width += m_levels[level].width;
            m_levels.erase(at(level));
        }
    }

    std::vector<Level>::iterator at(std::size_t level) {
        return m_levels.begin() + static_cast<std::ptrdiff_t>(level);
    }

    const FillFrame& m_frame;
    std::vector<Level> m_levels;
};

// How many sides meet something. A piece as wide as the gap leaves no part of it over.
int fitOf(const Gap& gap, std::int64_t across, std::int64_t along) {
    const bool meetsTop = along == gap.leftWall || along == gap.rightWall || along == gap.ceiling;
    if (across == gap.width)
        return meetsTop ? 4 : 3;
    return meetsTop ? 2 : 1;
}

struct Choice {
    std::size_t index = 0; // in what is left
    bool isTurned = false;
    int fit = 0;
    std::int64_t width = 0;
    std::int64_t height = 0;
    std::int64_t across = 0;
};

class Filler {
public:
    Filler(const FillFrame& frame, std::span<const FillPiece> order)
        : m_skyline(frame)
        , m_left(order.begin(), order.end()) {}

    Filling fill(const std::function<bool()>& shouldStop) {
        std::size_t asked = 0;
        while (!m_left.empty()) {
            if (shouldStop && ++asked % kPiecesBetweenAsking == 0 && shouldStop()) {
                m_filling.isStopped = true;
                break;
            }
            const std::optional<Gap> gap = m_skyline.lowest();
            if (!gap)
                break;
            const Choice choice = bestFor(*gap);
            if (choice.fit == 0)
                m_skyline.giveUp(*gap);
            else
                lay(*gap, choice);
        }
        return std::move(m_filling);
    }

private:
    Choice bestFor(const Gap& gap) const {
        Choice best;
        for (std::size_t index = 0; index < m_left.size() && best.fit < 4; ++index) {
            const FillPiece& piece = m_left[index];
            consider(gap, {index, false, 0, piece.across, piece.along, 0}, best);
            if (piece.mayTurn)
                consider(gap, {index, true, 0, piece.along, piece.across, 0}, best);
        }
        return best;
    }

    // At the left wall, or at the right one where its top meets that; where a pin is in the way, at the
    // other.
    void consider(const Gap& gap, Choice choice, Choice& best) const {
        if (choice.width > gap.width)
            return;
        choice.fit = fitOf(gap, choice.width, choice.height);
        if (choice.fit <= best.fit)
            return;
        const std::int64_t left = gap.across;
        const std::int64_t right = gap.across + gap.width - choice.width;
        const bool isAtRight = choice.height == gap.rightWall && choice.height != gap.leftWall;
        choice.across = isAtRight ? right : left;
        if (choice.height > gap.ceiling &&
            !m_skyline.isFree(choice.across, choice.width, gap.along, choice.height)) {
            choice.across = isAtRight ? left : right;
            if (!m_skyline.isFree(choice.across, choice.width, gap.along, choice.height))
                return;
        }
        best = choice;
    }

    void lay(const Gap& gap, const Choice& choice) {
        m_skyline.lay(gap, choice.across, choice.width, choice.height);
        m_filling.places.push_back({m_left[choice.index].piece, choice.across, gap.along, choice.isTurned});
        m_filling.end = std::max(m_filling.end, gap.along + choice.height);
        m_left.erase(m_left.begin() + static_cast<std::ptrdiff_t>(choice.index));
    }

    Skyline m_skyline;
    std::vector<FillPiece> m_left;
    Filling m_filling;
};

} // namespace

Filling fillStrip(const FillFrame& frame, std::span<const FillPiece> order,
                  const std::function<bool()>& shouldStop) {
    return Filler{frame, order}.fill(shouldStop);
}

} // namespace holdfast
