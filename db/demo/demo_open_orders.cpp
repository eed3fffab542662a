// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/demo/demo_orders.h"

namespace holdfast::db::demo {
namespace {

using P = Placement;

GarmentPlan samphireTote() {
    return garment("Tote", "One size", "Oat",
                   {{.shade = "Sandbar", .artwork = "samphire", .placement = P::Front, .width = {140}}});
}

// A play by the sea in which nothing is what it is made of: four garments to be talked over first.
std::vector<GarmentPlan> costumes() {
    return {
        garment("Bodysuit", "12–18 months", "Chalk", {{.shade = "Samphire", .artwork = "samphire"}}),
        garment("Apron", "One size", "Slate", {{.shade = "Dusk", .artwork = "waves", .placement = P::Front}}),
        garment("Zip hoodie", "L", "Reed", {{.shade = "Bittern", .artwork = "heron", .placement = P::Back}}),
        garment("Tote", "One size", "Slate",
                {{.shade = "Brass", .artwork = "waves", .placement = P::Front},
                 {.shade = "Oyster", .artwork = "boat", .placement = P::Front, .layer = 2, .width = {120}},
                 {.shade = "Ink-cap", .artwork = "fish", .placement = P::Back},
                 {.shade = "Gorse", .words = "Fin", .placement = P::Back, .layer = 2}}),
    };
}

} // namespace

std::vector<OrderPlan> openOrders() {
    return {
        order(406, -11, clockAt(9, 50), "Sunniva Holt", "07700 900390", 4, clockAt(12, 0),
              {garment("Tee", "S", "Fog",
                       {{.shade = "Samphire", .artwork = "boat", .placement = P::LeftChest}}),
               garment("Tee", "M", "Fog", {{.shade = "Bittern", .artwork = "heron", .width = {180}}})}),
        order(407, -11, clockAt(10, 40), "Ama Whitlock", "07700 900388", -2, clockAt(10, 0),
              {garment("Tee", "M", "Chalk", {{.shade = "Samphire", .artwork = "samphire", .width = {150}}})},
              FirstMoney::All),
        order(
            409, -11, clockAt(14, 20), "Noor Castellan", "07700 900409", 1, clockAt(12, 0),
            {garment("Tee", "L", "Fog", {{.shade = "Dusk", .artwork = "waves", .width = {200}}}),
             garment("Tee", "M", "Ink", {{.shade = "Oyster", .artwork = "waves", .width = {200}}}),
             garment("Tote", "One size", "Oat",
                     {{.shade = "Dusk", .artwork = "boat", .placement = P::Front, .width = {150}}}),
             garment("Long sleeve", "L", "Brick", {{.shade = "Oyster", .artwork = "heron", .width = {180}}}),
             garment("Tee", "S", "Ink", {{.shade = "Oyster", .artwork = "waves", .width = {180}}})}),
        order(411, -9, clockAt(11, 30), "Dilys Okafor", "07700 900411", 0, clockAt(17, 0),
              {garment("Tee", "M", "Chalk", {{.shade = "Samphire", .artwork = "heron", .width = {180}}}),
               garment("Tee", "L", "Chalk", {{.shade = "Samphire", .artwork = "heron", .width = {180}}}),
               garment("Tee", "XL", "Chalk", {{.shade = "Rosehip", .artwork = "heron", .width = {180}}}),
               garment("Tee", "S", "Chalk", {{.shade = "Samphire", .artwork = "heron", .width = {160}}})}),
        order(413, -8, clockAt(15, 40), "Yusra Fenn", "07700 900399", 2, clockAt(11, 0),
              {garment("Tee", "M", "Fog", {{.shade = "Slack tide", .artwork = "fish"}}),
               garment(
                   "Tee", "S", "Slate",
                   {{.shade = "Ink-cap", .artwork = "thimble", .placement = P::LeftChest, .width = {60}}})}),
        order(414, -7, clockAt(16, 5), "Oskar Lindmoor", "07700 900400", 6, clockAt(12, 0),
              {garment("Cap", "One size", "Ink",
                       {{.shade = "Chalk", .artwork = "fish", .placement = P::Front}})}),
        order(415, -4, clockAt(10, 15), "Petra Solheim", "07700 900415", 1, clockAt(15, 0),
              {garment("Tee", "L", "Fog", {{.shade = "Sandbar", .artwork = "boat", .width = {200}}}),
               garment("Bodysuit", "6–12 months", "Chalk", {{.shade = "Slack tide", .artwork = "tern"}})}),
        order(416, -4, clockAt(11, 10), "Quayside Players", "07700 900416", 12, clockAt(17, 0), costumes(),
              FirstMoney::None, true, "First night is a month away. Asks what can be done at all."),
        order(417, -4, clockAt(13, 35), "Wilf Ansah", "07700 900417", 2, clockAt(15, 0),
              {garment("Long sleeve", "S", "Moss",
                       {{.shade = "Chalk", .artwork = "heron", .width = {180}},
                        {.shade = "Chalk", .words = "Wilf", .placement = P::Sleeve}})}),
        order(418, -4, clockAt(14, 18), "Odile Farrant", "07700 900228", 1, clockAt(10, 30),
              {garment("Zip hoodie", "L", "Ink",
                       {{.shade = "Oyster", .artwork = "tern", .placement = P::LeftChest}}),
               garment("Zip hoodie", "M", "Reed",
                       {{.shade = "Dusk", .artwork = "tern", .placement = P::LeftChest}}),
               garment("Tote", "One size", "Oat",
                       {{.shade = "Samphire", .artwork = "samphire", .placement = P::Front}})},
              FirstMoney::Thirty, false, "Rings the bell twice."),
        order(419, -4, clockAt(14, 50), "Jory Blackmore", "07700 900419", 1, clockAt(15, 0),
              {garment("Tee", "S", "Ink",
                       {{.shade = "Chalk", .artwork = "heron", .placement = P::Back, .width = {327}}}),
               garment("Tee", "L", "Ink",
                       {{.shade = "Samphire", .artwork = "tern", .placement = P::LeftChest}})}),
        order(
            420, -4, clockAt(15, 30), "Fen & Fold Books", "07700 900420", 1, clockAt(15, 0),
            {samphireTote(), samphireTote(), samphireTote(), samphireTote(), samphireTote(), samphireTote()}),
        order(
            421, -4, clockAt(16, 25), "Marisol Adeyinka", "07700 900421", 1, clockAt(14, 0),
            {garment("Bib", "One size", "Chalk", {{.shade = "Dusk", .words = "Juno", .placement = P::Front}}),
             garment("Bib", "One size", "Fog",
                     {{.shade = "Gorse", .artwork = "fish", .placement = P::Front}}),
             garment("Tee", "S", "Chalk",
                     {{.shade = "Gorse", .artwork = "fish", .placement = P::LeftChest}})},
            FirstMoney::All),
        order(422, -3, clockAt(9, 40), "Imre Vasko", "07700 900422", 1, clockAt(16, 0),
              {garment("Apron", "One size", "Slate",
                       {{.shade = "Ink-cap", .artwork = "thimble", .placement = P::Front, .width = {90}}})}),
        order(423, -3, clockAt(12, 30), "Saltmarsh Rowing Club", "07700 900423", 3, clockAt(12, 0),
              {garment("Tee", "L", "Ink",
                       {{.shade = "Slack tide", .artwork = "boat", .placement = P::LeftChest}}),
               garment("Tee", "M", "Ink",
                       {{.shade = "Slack tide", .artwork = "boat", .placement = P::LeftChest}}),
               garment("Tee", "XL", "Chalk",
                       {{.shade = "Ink-cap", .artwork = "boat", .placement = P::LeftChest}}),
               garment("Zip hoodie", "XL", "Ink",
                       {{.shade = "Oyster", .artwork = "boat", .placement = P::LeftChest},
                        {.shade = "Dusk", .artwork = "waves", .placement = P::Back, .width = {240}},
                        {.shade = "Chalk", .words = "Cox", .placement = P::Sleeve}})}),
        order(424, -2, clockAt(11, 50), "Hatty Penrose", "07700 900424", 2, clockAt(15, 0),
              {garment("Tee", "M", "Moss", {{.shade = "Moonlit", .artwork = "waves", .width = {180}}}),
               garment("Long sleeve", "M", "Moss", {{.shade = "Dusk", .artwork = "boat", .width = {200}}})},
              FirstMoney::None),
        order(425, -2, clockAt(15, 15), "Creek Lane Nursery", "07700 900425", 2, clockAt(12, 0),
              {garment("Bodysuit", "0–3 months", "Rose", {{.shade = "Slack tide", .artwork = "fish"}}),
               garment("Bib", "One size", "Chalk",
                       {{.shade = "Oyster", .words = "Ren", .placement = P::Front}}),
               garment("Bodysuit", "3–6 months", "Chalk", {{.shade = "Slack tide", .artwork = "fish"}}),
               garment("Bib", "One size", "Fog",
                       {{.shade = "Moonlit", .artwork = "thimble", .placement = P::Front, .width = {50}}})}),
        order(426, -1, clockAt(11, 42), "Bronagh Tully", "07700 900441", 1, clockAt(15, 0),
              {garment("Tee", "M", "Moss",
                       {{.shade = "Oyster", .artwork = "heron", .width = {203}},
                        {.shade = "Oyster", .words = "Juno", .below = Millimetres{374}}})},
              FirstMoney::Ten),
        order(427, 0, clockAt(8, 31), "Teo Lindqvist", "07700 900427", 9, clockAt(15, 0),
              {garment("Tee", "L", "Rose",
                       {{.shade = "Gorse", .artwork = "heron", .placement = P::Back, .width = {290}},
                        {.shade = "Oyster", .words = "Teo", .placement = P::Chest}})}),
    };
}

} // namespace holdfast::db::demo
