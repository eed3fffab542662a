// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/demo/demo_work.h"

#include "db/actions/claim_actions.h"
#include "db/actions/film_actions.h"
#include "db/actions/press_actions.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <iterator>
#include <memory>

namespace holdfast::db::demo {
namespace {

void cut(Script& script, int day, Seconds at, const std::vector<Piece>& pieces,
         std::optional<int> roll = std::nullopt) {
    script.at(day, at, [&script, pieces, roll] { Bench{script}.cut(pieces, roll); });
}

void press(Script& script, int day, Seconds at, const std::vector<Piece>& pieces) {
    script.at(day, at, [&script, pieces] {
        for (const Piece& piece : pieces)
            Bench{script}.press(piece);
    });
}

void handOver(Script& script, int day, Seconds at, std::int64_t order) {
    script.at(day, at, [&script, order] { Bench{script}.handOver(order); });
}

// An order that went through without a word: pressed one day, fetched later.
struct SmoothOrder {
    std::int64_t order;
    int pressed;
    int fetched;
};

// Orders that are cut together on an afternoon, so that their decals share the width of a roll.
struct CutTogether {
    int day;
    std::vector<std::int64_t> orders;
};

void writeCutTogether(Script& script, const CutTogether& together) {
    script.at(together.day, clockAt(15, 10), [&script, together] {
        Bench bench{script};
        std::vector<Piece> pieces;
        for (const std::int64_t order : together.orders)
            std::ranges::copy(bench.piecesOf(order), std::back_inserter(pieces));
        bench.cut(pieces);
    });
}

void writeSmoothOrder(Script& script, const SmoothOrder& smooth) {
    script.at(smooth.pressed, clockAt(9, 15), [&script, smooth] {
        Bench bench{script};
        for (const Piece& piece : bench.piecesOf(smooth.order))
            bench.press(piece);
    });
    handOver(script, smooth.fetched, clockAt(15, 30), smooth.order);
}

// 396-b: the sheet slid on the platen; its decal was cut and its blank pressed again.
void writeSpoiledOrder(Script& script) {
    cut(script, -43, clockAt(15, 10), {{396, 'a'}, {396, 'b'}, {396, 'c'}});
    script.at(-42, clockAt(9, 15), [&script] {
        Bench bench{script};
        bench.press({396, 'a'});
        bench.spoil({396, 'b'}, "the sheet slid, the heron is askew");
        bench.press({396, 'c'});
    });
    cut(script, -42, clockAt(15, 40), {{396, 'b'}});
    press(script, -41, clockAt(9, 20), {{396, 'b'}});
    handOver(script, -39, clockAt(12, 10), 396);
}

// 398-a: cut the wrong way round the first time.
void writeMiscutOrder(Script& script) {
    cut(script, -30, clockAt(14, 30), {{398, 'a'}});
    script.at(-30, clockAt(14, 40), [&script] {
        const GarmentId garment = Bench{script}.garment({398, 'a'});
        const std::vector<OrderId> orders{script.named.orders.at(398)};
        const ShopFacts facts = loadFactsOf(script.shop().connection(), orders);
        done(markMiscut(script.shop(), facts.garments.at(garment).decals.front().id,
                        "cut without the mirror"));
    });
    cut(script, -30, clockAt(14, 50), {{398, 'a'}, {399, 'a'}, {399, 'b'}, {400, 'a'}});
    press(script, -29, clockAt(9, 15), {{398, 'a'}});
    handOver(script, -26, clockAt(15, 10), 398);
}

// Pressed within the last days, and still on the peg.
void writeOnThePeg(Script& script) {
    cut(script, -9, clockAt(15, 10), {{410, 'a'}, {411, 'c'}}, 17); // while R-17 was still in date
    cut(script, -7, clockAt(15, 10), {{406, 'a'}, {407, 'a'}});
    press(script, -6, clockAt(9, 15), {{406, 'a'}, {407, 'a'}});

    cut(script, -4, clockAt(18, 30), {{409, 'a'}, {409, 'b'}, {409, 'e'}});
    press(script, -3, clockAt(10, 15), {{409, 'a'}, {409, 'b'}, {409, 'e'}});

    cut(script, -3, clockAt(15, 10),
        {{411, 'a'}, {411, 'b'}, {411, 'd'}, {418, 'c'}, {413, 'a'}, {415, 'b'}});
    press(script, -2, clockAt(9, 15), {{413, 'a'}, {411, 'a'}, {411, 'b'}, {411, 'd'}, {418, 'c'}});

    press(script, -1, clockAt(15, 20), {{415, 'b'}});
}

// What the last afternoon cut for the last morning.
void writeCutForThisMorning(Script& script) {
    cut(script, -1, clockAt(13, 30), {{421, 'b'}, {421, 'c'}});
    cut(script, -1, clockAt(13, 40), {{423, 'a'}, {423, 'b'}, {425, 'a'}, {425, 'c'}});
    cut(script, -1, clockAt(13, 55),
        {{420, 'a'}, {420, 'b'}, {420, 'c'}, {420, 'd'}, {420, 'e'}, {420, 'f'}, {415, 'a'}});
    cut(script, -1, clockAt(14, 15),
        {{418, 'a'}, {418, 'b'}, {419, 'a'}, {419, 'b'}, {421, 'a'}, {409, 'c'}, {409, 'd'}, {426, 'a'}});
    cut(script, -1, clockAt(14, 55), {{413, 'b'}, {422, 'a'}, {423, 'c'}}, 24);
    cut(script, -1, clockAt(15, 5), {{424, 'a'}, {425, 'd'}}, 25);
    script.at(-1, clockAt(16, 30), [&script] {
        done(waive(script.shop(), Bench{script}.garment({413, 'b'}), Rule::SoftenerLeft,
                   "rinsed three times by hand, a strip held on it"));
    });
}

// What a customer reported about a garment one evening.
struct Telling {
    Fault fault;
    int washes;
    const char* note;
};

// Two days later it is said what was done, if anything was.
void writeTelling(Script& script, int day, Piece piece, const Telling& told,
                  std::optional<ClaimAnswer> answer) {
    const auto claim = std::make_shared<ClaimId>();
    script.at(day, clockAt(17, 45), [&script, piece, told, claim] {
        const GarmentId garment = Bench{script}.garment(piece);
        const LocalDate today = script.now().today();
        *claim = done(recordClaim(script.shop(), {garment, {}, today, told.fault, told.washes, told.note},
                                  script.now()));
    });
    if (!answer)
        return;
    script.at(day + 2, clockAt(17, 20),
              [&script, claim, answer] { done(answerClaim(script.shop(), *claim, *answer, script.now())); });
}

void writeWhatCameBack(Script& script) {
    writeTelling(script, -38, {392, 'c'}, {Fault::EdgeLifts, 6, "one corner of the name"},
                 ClaimAnswer::PressedAgain);
    writeTelling(script, -31, {397, 'e'}, {Fault::NotAsOrdered, 0, "the boat is too low"},
                 ClaimAnswer::MadeAgain);
    writeTelling(script, -9, {391, 'a'}, {Fault::Cracked, 8, "washed at 60 °C and tumbled hot"},
                 ClaimAnswer::Advised);
    writeTelling(script, -1, {400, 'a'}, {Fault::EdgeLifts, 3, "brings it to the next market"}, {});
}

} // namespace

void writeEarlierWork(Script& script) {
    for (const SmoothOrder& smooth : {SmoothOrder{388, -75, -72},
                                      {389, -71, -68},
                                      {390, -70, -68},
                                      {391, -69, -67},
                                      {392, -61, -58},
                                      {394, -50, -47},
                                      {395, -49, -46},
                                      {397, -36, -34},
                                      {399, -28, -26},
                                      {400, -27, -25},
                                      {401, -20, -17},
                                      {402, -15, -12},
                                      {404, -14, -11},
                                      {405, -13, -11},
                                      {408, -7, -4},
                                      {410, -8, -5},
                                      {412, -5, -2}})
        writeSmoothOrder(script, smooth);
    for (const CutTogether& together : {CutTogether{-76, {388}},
                                        {-72, {389, 390, 391}},
                                        {-62, {392}},
                                        {-51, {394, 395}},
                                        {-37, {397}},
                                        {-21, {401}},
                                        {-16, {402, 404, 405}},
                                        {-8, {408}},
                                        {-6, {412}}})
        writeCutTogether(script, together);
    writeSpoiledOrder(script);
    writeMiscutOrder(script);
    writeOnThePeg(script);
    writeCutForThisMorning(script);
    writeWhatCameBack(script);
}

} // namespace holdfast::db::demo
