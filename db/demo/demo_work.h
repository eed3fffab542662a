// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The work on the demo's garments: cut, pressed, spoiled, let through, handed over; and the press walk of the
// last morning up to the very second.

#include "db/demo/demo_script.h"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::db::demo {

// A garment as the script names it: 418-b is {418, 'b'}.
struct Piece {
    std::int64_t order = 0;
    char letter = 'a';
};

// What hands do to pieces, taking as long as it takes.
class Bench {
public:
    explicit Bench(Script& script)
        : m_script(script) {}

    // Their uncut decals, film after film, each from the roll that is named or else from the oldest roll of
    // its film that has enough.
    void cut(const std::vector<Piece>& pieces, std::optional<int> roll = std::nullopt);
    void press(Piece piece);
    // Begins so that the step of this key is opened at that time, and leaves it open.
    void pressUntil(Piece piece, const std::string& stepKey, LocalTime opens);
    // All that is left of it, once an open wait is over.
    void finish(Piece piece);
    // Until its first press pass is over, and then it is lost.
    void spoil(Piece piece, const std::string& cause);
    // What is owed is paid first.
    void handOver(std::int64_t order);

    GarmentId garment(Piece piece);
    std::vector<Piece> piecesOf(std::int64_t order);

private:
    Script& m_script;
};

void writeEarlierWork(Script& script);
void writeThisMorning(Script& script);

} // namespace holdfast::db::demo
