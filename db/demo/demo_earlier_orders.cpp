// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/demo/demo_orders.h"

namespace holdfast::db::demo {
namespace {

using P = Placement;

GarmentPlan bibFor(const char* name) {
    return garment("Bib", "One size", "Chalk", {{.shade = "Dusk", .words = name, .placement = P::Front}});
}

GarmentPlan boatTote() {
    return garment("Tote", "One size", "Oat",
                   {{.shade = "Dusk", .artwork = "boat", .placement = P::Front, .width = {150}}});
}

GarmentPlan choirTee(const char* size, const char* colour, const char* shade) {
    return garment("Tee", size, colour, {{.shade = shade, .artwork = "waves", .placement = P::LeftChest}});
}

} // namespace

std::vector<OrderPlan> earlierOrders() {
    return {
        order(388, -78, clockAt(10, 20), "Ama Whitlock", "07700 900388", -72, clockAt(12, 0),
              {garment("Tee", "M", "Ink", {{.shade = "Chalk", .artwork = "heron", .width = {300}}})}),
        order(389, -74, clockAt(10, 5), "Jory Blackmore", "07700 900419", -68, clockAt(15, 0),
              {garment("Tee", "L", "Fog", {{.shade = "Dusk", .artwork = "boat", .width = {300}}}),
               garment("Tee", "S", "Chalk", {{.shade = "Samphire", .artwork = "fish"}})}),
        order(390, -74, clockAt(11, 40), "Sunniva Holt", "07700 900390", -68, clockAt(15, 0),
              {garment("Tote", "One size", "Oat",
                       {{.shade = "Samphire", .artwork = "samphire", .placement = P::Front}})}),
        order(391, -74, clockAt(14, 15), "Bram Oakes", "07700 900391", -67, clockAt(12, 0),
              {garment("Zip hoodie", "L", "Ink",
                       {{.shade = "Oyster", .artwork = "tern", .placement = P::LeftChest},
                        {.shade = "Oyster", .words = "MARSH", .placement = P::Back, .width = {300}}})}),
        order(392, -66, clockAt(9, 50), "Creek Lane Nursery", "07700 900425", -58, clockAt(16, 0),
              {bibFor("Otis"), bibFor("Mina"), bibFor("Ferne"), bibFor("Rafi"), bibFor("Elke")},
              FirstMoney::Usual, false, "One invoice for all, please."),
        order(393, -53, clockAt(10, 30), "Tamsin Rudge", "07700 900393", -46, clockAt(15, 0),
              {garment("Tee", "M", "Brick", {{.shade = "Chalk", .artwork = "tern", .width = {200}}}),
               garment("Tee", "S", "Brick", {{.shade = "Chalk", .artwork = "tern", .width = {200}}})}),
        order(394, -53, clockAt(12, 10), "Idris Pell", "07700 900394", -47, clockAt(12, 0),
              {garment("Apron", "One size", "Slate",
                       {{.shade = "Rosehip", .artwork = "thimble", .placement = P::Front, .width = {90}}})}),
        order(395, -53, clockAt(15, 25), "Maren Quill", "07700 900395", -46, clockAt(15, 0),
              {garment("Bodysuit", "3–6 months", "Rose", {{.shade = "Slack tide", .artwork = "fish"}}),
               garment("Bodysuit", "3–6 months", "Rose", {{.shade = "Slack tide", .artwork = "fish"}})}),
        order(396, -46, clockAt(11, 0), "Corin Dace", "07700 900396", -39, clockAt(12, 0),
              {garment("Tee", "M", "Fog", {{.shade = "Dusk", .artwork = "heron", .width = {300}}}),
               garment("Tee", "L", "Ink", {{.shade = "Oyster", .artwork = "heron", .width = {180}}}),
               garment("Tee", "S", "Brick",
                       {{.shade = "Chalk", .artwork = "tern", .placement = P::LeftChest}})}),
        order(397, -42, clockAt(16, 10), "Fen & Fold Books", "07700 900420", -34, clockAt(10, 0),
              {boatTote(), boatTote(), boatTote(), boatTote(), boatTote(), boatTote()}, FirstMoney::Usual,
              false, "For the shop window."),
        order(398, -32, clockAt(9, 55), "Lowri Tamsett", "07700 900398", -26, clockAt(15, 0),
              {garment("Long sleeve", "M", "Brick",
                       {{.shade = "Oyster", .artwork = "heron", .width = {180}}})}),
        order(399, -32, clockAt(11, 15), "Yusra Fenn", "07700 900399", -26, clockAt(15, 0),
              {garment("Tee", "M", "Chalk", {{.shade = "Samphire", .artwork = "samphire", .width = {150}}}),
               garment("Bib", "One size", "Fog",
                       {{.shade = "Dusk", .artwork = "tern", .placement = P::Front}})}),
        order(400, -32, clockAt(14, 45), "Oskar Lindmoor", "07700 900400", -25, clockAt(12, 0),
              {garment("Zip hoodie", "M", "Ink",
                       {{.shade = "Oyster", .artwork = "fish", .placement = P::LeftChest}})}),
        order(401, -26, clockAt(17, 20), "The Mudlark Choir", "07700 900401", -17, clockAt(17, 0),
              {choirTee("S", "Ink", "Oyster"), choirTee("M", "Ink", "Oyster"), choirTee("L", "Ink", "Oyster"),
               choirTee("XL", "Ink", "Oyster"), choirTee("M", "Chalk", "Dusk"),
               choirTee("L", "Chalk", "Dusk")},
              FirstMoney::None, true, "Sings on the quay that evening."),
        order(402, -18, clockAt(10, 35), "Priya Sandling", "07700 900402", -12, clockAt(15, 0),
              {garment("Tee", "L", "Chalk", {{.shade = "Samphire", .artwork = "heron", .width = {180}}})}),
        order(403, -18, clockAt(11, 5), "Greta Ashwell", "07700 900403", -11, clockAt(15, 0),
              {garment("Zip hoodie", "S", "Reed",
                       {{.shade = "Dusk", .artwork = "tern", .placement = P::LeftChest}})}),
        order(404, -18, clockAt(13, 20), "Benno Varga", "07700 900404", -11, clockAt(12, 0),
              {garment("Tee", "M", "Fog", {{.shade = "Slack tide", .artwork = "fish"}}),
               garment("Tee", "S", "Fog", {{.shade = "Slack tide", .artwork = "fish"}}),
               garment("Tote", "One size", "Slate",
                       {{.shade = "Slack tide", .artwork = "boat", .placement = P::Front}})}),
        order(405, -17, clockAt(16, 30), "Elspeth Rowe", "07700 900405", -11, clockAt(11, 0),
              {garment("Apron", "One size", "Oat",
                       {{.shade = "Rosehip", .artwork = "fish", .placement = P::Front}})}),
        order(408, -11, clockAt(12, 50), "Hanne Birk", "07700 900408", -4, clockAt(10, 0),
              {garment("Tee", "XL", "Chalk", {{.shade = "Dusk", .artwork = "tern", .width = {340}}}),
               garment("Tote", "One size", "Oat",
                       {{.shade = "Slack tide", .artwork = "fish", .placement = P::Front}})}),
        order(410, -10, clockAt(9, 45), "Corin Dace", "07700 900396", -5, clockAt(12, 0),
              {garment("Apron", "One size", "Oat",
                       {{.shade = "Rosehip", .artwork = "fish", .placement = P::Front}})}),
        order(412, -8, clockAt(10, 10), "Lowri Tamsett", "07700 900398", -2, clockAt(15, 0),
              {garment("Zip hoodie", "M", "Reed",
                       {{.shade = "Dusk", .artwork = "tern", .placement = P::LeftChest}}),
               garment("Bib", "One size", "Fog",
                       {{.shade = "Dusk", .artwork = "thimble", .placement = P::Front}})}),
    };
}

} // namespace holdfast::db::demo
