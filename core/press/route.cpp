// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/route.h"

#include "core/press/layers.h"
#include "core/trade/unit_words.h"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace holdfast {

namespace {

// The maker's hands at each step. Common practice, no source.
constexpr Seconds kReadTag{5};
constexpr Seconds kLintRoll{15};
constexpr Seconds kWayRound{20};
constexpr Seconds kPlaceDecal{25};
constexpr Seconds kLoad{5};
constexpr Seconds kUnload{5};
constexpr Seconds kPeel{10};
constexpr Seconds kCoverSheet{5};
constexpr Seconds kTurn{10};
constexpr Seconds kLook{10};

constexpr Millimetres kPieceOverlap{20};

std::string_view keyStem(StepKind kind) {
    switch (kind) {
    case StepKind::ReadTag:
        return "read-tag";
    case StepKind::LintRoll:
        return "lint-roll";
    case StepKind::WayRound:
        return "way-round";
    case StepKind::Preheat:
        return "preheat";
    case StepKind::PlaceDecal:
        return "place";
    case StepKind::Press:
        return "press";
    case StepKind::Cool:
        return "cool";
    case StepKind::PeelCarrier:
        return "peel";
    case StepKind::Turn:
        return "turn";
    case StepKind::FinishFront:
        return "finish-front";
    case StepKind::FinishBack:
        return "finish-back";
    case StepKind::LookForTexture:
        return "look";
    }
    return {};
}

constexpr std::size_t kStepKinds = static_cast<std::size_t>(StepKind::LookForTexture) + 1;

Sentence tagDetail(const BlankStyle& style) {
    return style.label && !style.label->fibres.empty() ? fibreText(style.label->fibres)
                                                       : said("not read yet");
}

Sentence spotDetail(const Decal& decal) {
    const std::vector<NamedValue> values{{"below", decal.below},
                                         {"aside", Millimetres{std::abs(decal.aside.value)}}};
    if (decal.aside.value > 0)
        return said("{below} below the seam, {aside} to wearer's left", values);
    if (decal.aside.value < 0)
        return said("{below} below the seam, {aside} to wearer's right", values);
    return said("{below} below the seam", {values.front()});
}

Sentence placeDetail(const Decal& decal, bool isNamed) {
    return isNamed ? said("{decal} · {spot}", {{"decal", decal.describe()}, {"spot", spotDetail(decal)}})
                   : spotDetail(decal);
}

Sentence pressDetail(const DecalPass& pass) {
    return said("{temperature} · {closed} · {pressure}", {{"temperature", pass.recipe.temperature},
                                                          {"closed", pass.closed()},
                                                          {"pressure", pressureName(pass.recipe.pressure)}});
}

Sentence coolDetail(const Recipe& recipe) {
    const bool isWarm = recipe.peel == Peel::Warm;
    if (recipe.coolBeforePeel.count() <= 0)
        return isWarm ? said("to warm") : said("until cool");
    const std::vector<NamedValue> about{{"about", recipe.coolBeforePeel}};
    return isWarm ? said("to warm, about {about}", about) : said("until cool, about {about}", about);
}

Decal around(std::span<const DecalPass> passes) {
    std::vector<const Decal*> decals(passes.size());
    std::ranges::transform(passes, decals.begin(), &DecalPass::decal);
    return decalAround(decals);
}

class RouteMaker {
public:
    RouteMaker(const Press* press, const ShopFacts& facts, const Garment& garment)
        : m_garment(garment)
        , m_style(facts.styleOf(garment))
        , m_press(press)
        , m_passes(passesOf(facts, garment)) {
        if (m_press)
            m_route.press = m_press->id;
        m_route.restAfter = facts.settings.restBeforeWash;
    }

    Route make() {
        prepare();
        preheat();
        pressAll();
        finish();
        add(StepKind::LookForTexture).attended = kLook;
        return std::move(m_route);
    }

private:
    RouteStep& add(StepKind kind) {
        RouteStep step;
        step.kind = kind;
        const int number = ++m_counts[static_cast<std::size_t>(kind)];
        step.key = std::string(keyStem(kind)) + "-" + std::to_string(number);
        step.title = stepTitle(kind);
        m_route.steps.push_back(std::move(step));
        return m_route.steps.back();
    }

    RouteStep& addHeat(StepKind kind, Celsius temperature, Seconds closed) {
        RouteStep& step = add(kind);
        step.attended = kLoad + kUnload;
        step.platen = closed;
        step.temperature = temperature;
        step.detail = said("{closed}", {{"closed", closed}});
        return step;
    }

    void prepare() {
        RouteStep& tag = add(StepKind::ReadTag);
        tag.attended = kReadTag;
        tag.detail = tagDetail(m_style);

        RouteStep& lint = add(StepKind::LintRoll);
        lint.attended = kLintRoll;
        lint.detail = sidesWords();

        for (const ObstacleOnStyle& obstacle : m_style.obstacles) {
            if (!obstacle.way)
                continue;
            RouteStep& round = add(StepKind::WayRound);
            round.attended = kWayRound;
            round.title = wayRoundTitle(obstacle.obstacle, *obstacle.way);
            if (*obstacle.way == WayRound::Pillow)
                round.detail = said("size {size}", {{"size", m_garment.size}});
        }
    }

    // "front", "front, then back"
    Sentence sidesWords() const {
        Sentence words;
        std::optional<Side> last;
        for (const DecalPass& pass : m_passes) {
            if (pass.side == last)
                continue;
            const Phrase side = sideName(pass.side);
            words = words.empty()
                        ? Sentence{side}
                        : said("{sides}, then {side}", {{"sides", withinLine(words)}, {"side", side}});
            last = pass.side;
        }
        return words.empty() ? Sentence{sideName(Side::Front)} : words;
    }

    Seconds longest(Seconds Recipe::* time) const {
        Seconds most{0};
        for (const DecalPass& pass : m_passes)
            most = std::max(most, pass.recipe.*time);
        return most;
    }

    void preheat() {
        const Seconds closed = longest(&Recipe::preheat);
        if (closed.count() > 0)
            addHeat(StepKind::Preheat, m_passes.front().recipe.temperature, closed);
    }

    // How many of the passes from here on are done in one: at least the first.
    std::size_t joined(std::size_t from) const {
        std::size_t count = 1;
        while (from + count < m_passes.size() && m_passes[from].mayJoin(m_passes[from + count])) {
            const Decal all = around(std::span(m_passes).subspan(from, count + 1));
            if (!m_press || piecesOn(*m_press, all).count() > 1)
                break;
            ++count;
        }
        return count;
    }

    void pressAll() {
        for (std::size_t from = 0; from < m_passes.size();) {
            if (from > 0 && m_passes[from].side != m_passes[from - 1].side)
                turnTo(m_passes[from].side);
            const std::size_t count = joined(from);
            pressTogether(std::span(m_passes).subspan(from, count));
            from += count;
        }
    }

    void turnTo(Side side) {
        RouteStep& turn = add(StepKind::Turn);
        turn.attended = kTurn;
        turn.detail = said("to the {side}", {{"side", sideName(side)}});
    }

    void pressTogether(std::span<const DecalPass> passes) {
        for (const DecalPass& pass : passes) {
            RouteStep& place = add(StepKind::PlaceDecal);
            place.attended = kPlaceDecal;
            place.detail = placeDetail(*pass.decal, m_garment.decals.size() > 1);
            place.decal = pass.decal->id;
        }
        const DecalPass& first = passes.front();
        const int pieces = m_press && passes.size() == 1 ? piecesOn(*m_press, *first.decal).count() : 1;
        for (int piece = 1; piece <= pieces; ++piece)
            pressPiece(first, piece, pieces);
        if (first.recipe.peel != Peel::Hot)
            cool(first);
        RouteStep& peel = add(StepKind::PeelCarrier);
        peel.attended = kPeel * static_cast<std::int64_t>(passes.size());
        peel.title = said("Peel {peel}, one motion", {{"peel", peelName(first.recipe.peel)}});
        peel.decal = first.decal->id;
        peel.peel = first.recipe.peel;
    }

    void pressPiece(const DecalPass& pass, int piece, int pieces) {
        RouteStep& press = addHeat(StepKind::Press, pass.recipe.temperature, pass.closed());
        if (pass.isTacked)
            press.title = said("Tack");
        press.detail = pressDetail(pass);
        if (pieces > 1)
            press.detail = said("part {piece} of {pieces} · {how}",
                                {{"piece", piece}, {"pieces", pieces}, {"how", press.detail}});
        press.decal = pass.decal->id;
    }

    void cool(const DecalPass& pass) {
        RouteStep& cool = add(StepKind::Cool);
        cool.waiting = std::max(Seconds{0}, pass.recipe.coolBeforePeel);
        cool.detail = coolDetail(pass.recipe);
        cool.decal = pass.decal->id;
        cool.peel = pass.recipe.peel;
    }

    void finish() {
        if (m_passes.empty())
            return;
        Celsius coolest = m_passes.front().recipe.temperature;
        for (const DecalPass& pass : m_passes)
            coolest = std::min(coolest, pass.recipe.temperature);

        const Seconds front = longest(&Recipe::finishFront);
        if (front.count() > 0)
            addHeat(StepKind::FinishFront, coolest, front).attended += kCoverSheet;
        const Seconds back = longest(&Recipe::finishBack);
        if (back.count() > 0)
            addHeat(StepKind::FinishBack, coolest, back).attended += kTurn + kCoverSheet;
    }

    const Garment& m_garment;
    const BlankStyle& m_style;
    const Press* m_press;
    std::vector<DecalPass> m_passes;
    Route m_route;
    std::array<int, kStepKinds> m_counts{};
};

std::int64_t piecesAlong(Millimetres decal, Millimetres platen) {
    if (decal <= platen)
        return 1;
    const std::int64_t step = platen.value - kPieceOverlap.value;
    return (decal.value - kPieceOverlap.value + step - 1) / step;
}

PlatenPieces piecesUpright(Millimetres platenWidth, Millimetres platenHeight, const Decal& decal) {
    // More pieces than this no maker presses; the number stays small for any input.
    constexpr std::int64_t kMost = 20;
    return {static_cast<int>(std::min(kMost, piecesAlong(decal.width, platenWidth))),
            static_cast<int>(std::min(kMost, piecesAlong(decal.height, platenHeight)))};
}

std::int64_t platenArea(const Press& press) {
    return press.platenWidth.value * press.platenHeight.value;
}

bool takesWhole(const Press& press, const Garment& garment) {
    return std::ranges::all_of(garment.decals,
                               [&](const Decal& decal) { return piecesOn(press, decal).count() == 1; });
}

bool wantsSmallPlaten(const BlankStyle& style) {
    return std::ranges::any_of(style.obstacles, [](const ObstacleOnStyle& obstacle) {
        return obstacle.way == WayRound::SmallPlaten;
    });
}

std::optional<PressId> pressBegunOn(const ShopFacts& facts, const Garment& garment) {
    const auto records = facts.stepsOf(garment);
    for (auto record = records.rbegin(); record != records.rend(); ++record)
        if (record->press)
            return record->press;
    return std::nullopt;
}

} // namespace

Seconds Route::total() const {
    Seconds sum{0};
    for (const RouteStep& step : steps)
        sum += step.total();
    return sum;
}

std::optional<Celsius> Route::firstTemperature() const {
    for (const RouteStep& step : steps)
        if (step.temperature)
            return step.temperature;
    return std::nullopt;
}

PlatenPieces piecesOn(const Press& press, const Decal& decal) {
    if (std::min(press.platenWidth, press.platenHeight) <= kPieceOverlap * 2)
        return {};
    const PlatenPieces upright = piecesUpright(press.platenWidth, press.platenHeight, decal);
    const PlatenPieces turned = piecesUpright(press.platenHeight, press.platenWidth, decal);
    return turned.count() < upright.count() ? turned : upright;
}

const Press* pressFor(const ShopFacts& facts, const Garment& garment) {
    return pressFor(facts, garment, pressBegunOn(facts, garment));
}

const Press* pressFor(const ShopFacts& facts, const Garment& garment, std::optional<PressId> begunOn) {
    if (const Press* begun = begunOn ? facts.presses.find(*begunOn) : nullptr)
        return begun;
    const bool needsSmallPlaten = wantsSmallPlaten(facts.styleOf(garment)) &&
                                  std::ranges::any_of(facts.presses, [](const Press& press) {
                                      return press.hasSmallPlaten && !press.isRetired;
                                  });
    const Press* largest = nullptr;
    for (const Press& press : facts.presses) {
        if (press.isRetired || (needsSmallPlaten && !press.hasSmallPlaten))
            continue;
        if (takesWhole(press, garment))
            return &press;
        if (!largest || platenArea(press) > platenArea(*largest))
            largest = &press;
    }
    return largest;
}

Route routeOf(const ShopFacts& facts, const Garment& garment) {
    return routeOn(pressFor(facts, garment), facts, garment);
}

Route routeOn(const Press* press, const ShopFacts& facts, const Garment& garment) {
    return RouteMaker(press, facts, garment).make();
}

Sentence wayRoundTitle(Obstacle obstacle, WayRound way) {
    const std::vector<NamedValue> name{{"obstacle", obstacleName(obstacle)}};
    switch (way) {
    case WayRound::Pillow:
        return said("Pillow under the {obstacle}", name);
    case WayRound::Turn:
        return said("Turn clear of the {obstacle}", name);
    case WayRound::SmallPlaten:
        return said("Small platen, clear of the {obstacle}", name);
    }
    return {};
}

Phrase stepTitle(StepKind kind) {
    switch (kind) {
    case StepKind::ReadTag:
        return phrase("Read the tag");
    case StepKind::LintRoll:
        return phrase("Lint roll");
    case StepKind::WayRound:
        return phrase("Way round");
    case StepKind::Preheat:
        return phrase("Preheat");
    case StepKind::PlaceDecal:
        return phrase("Place decal");
    case StepKind::Press:
        return phrase("Press");
    case StepKind::Cool:
        return phrase("Cool");
    case StepKind::PeelCarrier:
        return phrase("Peel, one motion");
    case StepKind::Turn:
        return phrase("Turn");
    case StepKind::FinishFront:
        return phrase("Cover sheet, front");
    case StepKind::FinishBack:
        return phrase("Cover sheet, back");
    case StepKind::LookForTexture:
        return phrase("Look for fabric texture");
    }
    return {};
}

} // namespace holdfast
