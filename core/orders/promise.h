// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The day that can be promised for garments now being ordered: washing and drying, cutting, the press in
// opening hours after all that is already promised, rest. Finite capacity, no promise given is broken.
//
//  - Blanks: washed and dry ones are taken first, then those still drying, then unwashed ones, then new ones
//    that come after the shop's lead time. What is unwashed goes into the wash in the evening, when the
//    workshop closes (until 21:00, load after load as the washer holds them, those already promised first),
//    and dries.
//  - Film: rolls that are in date until it is pressed, less what is promised to others; else new film after
//    the shop's lead time.
//  - Hands: cutting and pressing are done by one maker in opening hours. What is already promised keeps the
//    last hours before it is due (earliest due first, counted backwards), so that its own blanks and films
//    may come late; what is too late already takes the next hours there are. This order takes the first hours
//    left over: cutting once its film is there, pressing once it is cut and its blanks are dry. The shop's
//    margin is added to all work.
//  - Rest, then handing over in opening hours, on the half hour.
// Calculated for the order as a whole, at most a year ahead, on the clock of the workshop's wall. Where that
// is put forward or back, what takes its time (drying, rest, work) takes the same minutes; of opening hours,
// an hour that the clock leaves out is not there, and one that it has twice counts once.

#include "core/facts/shop_facts.h"
#include "core/orders/cutting_time.h"
#include "core/trade/dates.h"
#include "core/trade/result.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace holdfast {

// What is being ordered, as far as a promise needs it. Of an order that was taken before: what is still to
// do.
struct AskedGarment {
    BlankStyleId style;
    std::string size;
    ColourId colour;
    std::vector<DecalToCut> decals;  // that are not cut yet
    Seconds pressTime{0};            // maker's and platen's, from its route
    std::optional<BlankLotId> lot{}; // keeps a unit for it already
    bool isOnPress = false;          // begun: its blank needs nothing more
};

enum class PromiseStage { BuyBlank, BuyFilm, Wash, Dry, Cut, Press, Rest, Ready };

// One step of the way, for the last garment that takes it: when the blank or the film comes, the wash begins,
// the load is dry, cutting or pressing is done, rest begins, the order is ready.
struct PromiseStep {
    PromiseStage stage = PromiseStage::Press;
    LocalTime at{};
    Sentence words; // "wash" over "tonight"
    Sentence when;  // "today", "Wed" within the week, "25 Nov" after; of a rest, "24 h"
};

struct Promise {
    LocalTime readyAt{};
    std::vector<PromiseStep> path; // in the order of time; only steps that take any
    Sentence why;                  // the longest wait, in words
};

// ── what promises already given take ──

// Cutting and pressing that is still to be done, by when (the promise less the rest).
struct PromisedWork {
    LocalTime due{};
    Seconds work{0};
};

// A blank still to be washed, from when it is there.
struct PromisedWash {
    LocalTime there{};
    Grams weight;
};

// A roll that may be used, less what is allotted to promised decals.
struct FreeFilm {
    FilmId film;
    Millimetres width;
    Millimetres left;
    std::optional<LocalDate> useBy;
};

struct Promised {
    std::vector<PromisedWork> work;
    std::vector<PromisedWash> washes; // earliest promise first
    std::vector<FreeFilm> film;       // those to use up first in front
    Seconds longestGarment{0};        // longest single job at the press; a later garment may wait that long
};

// An error where nothing is asked for, the shop is closed for the next year, the washer holds nothing, or the
// press is taken for all of the year; it says so in words. Units of `facts` that are kept for garments in it
// are not free.
Result<Promise> promiseFor(std::span<const AskedGarment> asked, const ShopFacts& facts,
                           const Promised& promised, const Now& now);
// The same if the shop's own numbers were these: to ask what other hours would change.
Result<Promise> promiseFor(std::span<const AskedGarment> asked, const ShopFacts& facts,
                           const ShopSettings& settings, const Promised& promised, const Now& now);

// Why no day can be promised where no hour is open.
Sentence closedForAYear();

// When something that rests until then can be handed over: on the half hour while the workshop is open, else
// when it opens next. None: it does not within a year.
std::optional<LocalTime> handedOverFrom(const ShopSettings& settings, LocalTime rested);

Phrase promiseStageWords(PromiseStage stage);

} // namespace holdfast
