// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/film_actions.h"
#include "db/demo/demo_climate.h"
#include "db/demo/demo_films.h"
#include "db/demo/demo_workshop.h"

#include <array>
#include <optional>

namespace holdfast::db::demo {
namespace {

// Days count from the day that is shown. A roll received before the first day was written down on it.
struct RollPlan {
    int number;
    const char* shade;
    int received;
    int made;
    std::int64_t length; // mm
    const char* place;   // none: nobody noted where it was put
    std::optional<int> printedUseBy = std::nullopt;
};

constexpr const char* kNowhere = nullptr;

constexpr std::array kRolls{
    RollPlan{1, "Chalk", -300, -330, 1200, kFilmShelf},
    RollPlan{2, "Dusk", -280, -330, 800, kFilmShelf},
    RollPlan{3, "Oyster", -270, -310, 1500, kFilmShelf},
    RollPlan{4, "Rosehip", -260, -420, 600, kFilmShelf},
    RollPlan{5, "Slack tide", -250, -322, 1300, kFilmShelf},
    RollPlan{6, "Samphire", -240, -300, 1400, kFilmShelf},
    RollPlan{7, "Gorse", -230, -290, 900, kFilmShelf},
    RollPlan{8, "Ink-cap", -220, -425, 1600, kBackRoom},
    RollPlan{9, "Dusk", -156, -359, 5800, kFilmShelf, 33},
    RollPlan{10, "Brass", -150, -170, 5000, kBackRoom},
    RollPlan{11, "Chalk", -140, -324, 3200, kFilmShelf},
    RollPlan{12, "Gorse", -130, -291, 1500, kFilmShelf},
    RollPlan{13, "Bittern", -125, -160, 4000, kBackRoom},
    RollPlan{14, "Sandbar", -120, -250, 2600, kFilmShelf},
    RollPlan{15, "Samphire", -110, -329, 3600, kFilmShelf},
    RollPlan{16, "Slack tide", -105, -210, 3000, kBackRoom},
    RollPlan{17, "Rosehip", -100, -388, 1900, kFilmShelf, -6},
    RollPlan{18, "Moonlit", -38, -148, 2000, kFilmShelf},
    RollPlan{19, "Oyster", -36, -318, 2400, kFilmShelf},
    RollPlan{20, "Brass", -34, -60, 5000, kBackRoom},
    RollPlan{21, "Oyster", -32, -333, 6000, kFilmShelf},
    RollPlan{22, "Sandbar", -30, -130, 6000, kFilmShelf},
    RollPlan{23, "Slack tide", -28, -240, 7500, kFilmShelf},
    RollPlan{24, "Ink-cap", -20, -300, 5000, kBackRoom},
    RollPlan{25, "Moonlit", -9, -60, 3000, kNowhere},
    RollPlan{26, "Chalk", -3, -252, 10000, kFilmShelf},
};

void receive(Script& script, const RollPlan& plan) {
    RollReceived roll;
    roll.film = script.named.films.at(plan.shade);
    roll.width = Millimetres{500};
    roll.length = Millimetres{plan.length};
    roll.receivedOn = script.day(plan.received);
    roll.madeOn = script.day(plan.made);
    if (plan.printedUseBy)
        roll.printedUseBy = script.day(*plan.printedUseBy);
    if (plan.place)
        roll.place = script.named.places.at(plan.place);
    script.named.rolls[plan.number] = done(receiveRoll(script.shop(), roll, script.now())).id;
    script.wait(Seconds{50});
}

void writeReceipts(Script& script) {
    for (const RollPlan& plan : kRolls) {
        const bool wasThere = plan.received <= kFirstDay;
        script.at(wasThere ? kFirstDay : plan.received, wasThere ? clockAt(9, 40) : clockAt(11, 10),
                  [&script, plan] { receive(script, plan); });
    }
}

void strip(Script& script, int day, int roll, bool passed, std::int64_t used, const char* note) {
    script.at(day, clockAt(16, 40), [=, &script] {
        done(recordTestStrip(script.shop(), script.named.rolls.at(roll), passed, Millimetres{used}, note));
    });
}

void usedUp(Script& script, int day, int roll, const char* reason) {
    script.at(day, clockAt(17, 15),
              [=, &script] { done(useUpRoll(script.shop(), script.named.rolls.at(roll), reason)); });
}

void measured(Script& script, int day, int roll, std::int64_t length, const char* reason) {
    script.at(day, clockAt(17, 20), [=, &script] {
        done(correctLength(script.shop(), script.named.rolls.at(roll), Millimetres{length}, reason));
    });
}

} // namespace

void writeRolls(Script& script) {
    writeReceipts(script);

    usedUp(script, -60, 2, "offcut too narrow to cut from");
    usedUp(script, -51, 4, "end of the roll, creased");
    usedUp(script, -37, 6, "last of it stuck to its backing");
    usedUp(script, -33, 3, "end of the roll");
    usedUp(script, -29, 1, "end of the roll");
    usedUp(script, -27, 7, "edge gone hard");

    strip(script, -43, 8, false, 60, "lifted at one corner after a wash");
    script.at(-43, clockAt(16, 50),
              [&script] { done(putRollAway(script.shop(), script.named.rolls.at(8), true)); });
    strip(script, -30, 16, true, 60, "held after two washes");
    strip(script, -12, 5, true, 50, "stretched to half as much again, held");
    strip(script, -5, 13, false, 50, "came away when it was stretched");
    script.at(-33, clockAt(11, 40),
              [&script] { done(putRollAway(script.shop(), script.named.rolls.at(20), true)); });

    // The damp in the back room was seen on its third day.
    script.at(-43, clockAt(9, 30), [&script] {
        done(moveRoll(script.shop(), script.named.rolls.at(16), script.named.places.at(kFilmShelf)));
    });

    measured(script, -12, 12, 350, "a length was torn off at the fair");
    measured(script, -8, 17, 1100, "measured on the bench");
    measured(script, -8, 9, 3900, "measured on the bench");
}

} // namespace holdfast::db::demo
