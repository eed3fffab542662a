// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/demo/demo_work.h"

namespace holdfast::db::demo {
namespace {

struct Cooling {
    Piece piece;
    Seconds since;
};

// The long cool peels go through side by side: while one cools, the next is pressed.
void pressUntilCooling(Script& script, const Cooling& cooling) {
    // Begun early enough for its hands-on steps, which take less than two minutes.
    script.at(0, cooling.since - std::chrono::minutes{2}, [&script, cooling] {
        Bench{script}.pressUntil(cooling.piece, "cool-1", script.time(0, cooling.since));
    });
}

void pressAll(Script& script, Seconds at, const std::vector<Piece>& pieces) {
    script.at(0, at, [&script, pieces] {
        for (const Piece& piece : pieces)
            Bench{script}.press(piece);
    });
}

void finishAt(Script& script, Seconds at, Piece piece) {
    script.at(0, at, [&script, piece] { Bench{script}.finish(piece); });
}

} // namespace

void writeThisMorning(Script& script) {
    // 130 °C
    pressAll(script, clockAt(8, 36),
             {{421, 'b'}, {421, 'c'}, {423, 'a'}, {423, 'b'}, {425, 'a'}, {425, 'c'}});
    // 150 °C
    pressUntilCooling(script, {{420, 'a'}, clockAt(9, 2, 20)});
    pressUntilCooling(script, {{420, 'b'}, clockAt(9, 4, 30)});
    pressAll(script, clockAt(9, 4, 40), {{418, 'a'}, {419, 'b'}});
    finishAt(script, clockAt(9, 12, 30), {420, 'a'});
    finishAt(script, clockAt(9, 13, 50), {420, 'b'});
    pressAll(script, clockAt(9, 17), {{409, 'c'}});
    // On the rack at the end, and the one under the platen with five of its twelve seconds gone.
    pressUntilCooling(script, {{415, 'a'}, clockAt(9, 30, 18)});
    pressUntilCooling(script, {{420, 'c'}, clockAt(9, 34, 5)});
    pressUntilCooling(script, {{420, 'd'}, clockAt(9, 37, 40)});
    script.at(0, clockAt(9, 38, 10), [&script] {
        Bench{script}.pressUntil({418, 'b'}, "press-1", script.time(0, clockAt(9, 39, 55)));
    });
}

} // namespace holdfast::db::demo
