#pragma once
// The day that can be promised for garments now being ordered: washing and drying, cutting, the press in
// opening hours behind all that is already promised, rest. Finite capacity, no promise given is broken.
//
//  - Blanks: washed and dry ones are taken first, then those still drying, then unwashed ones, then new ones
//  that
//    come after the shop's lead time. What is unwashed goes into the wash in the evening, when the workshop
//    closes (until 21:00, load after load as the washer holds them, those already promised first), and dries.
//  - Film: a roll on the shelf, else a new one after the shop's lead time.
//  - Press: what is already promised keeps the last hours before it is due (earliest due first, reckoned
//    backwards), so that its own blanks and films may come late; what is too late already takes the next
//    hours there are. This order takes the first hours left over once its material is there. The shop's
//    margin is added to all work. Films are cut on the day of pressing.
//  - Rest, then handing over in opening hours, on the half hour.
// Reckoned for the order as a whole, at most a year ahead, on the clock of the workshop's wall.

#include "core/shop/shop_facts.h"
#include "core/trade/dates.h"
#include "core/trade/result.h"

#include <span>
#include <string>
#include <vector>

namespace holdfast {

// What is being ordered, as far as a promise needs it.
struct AskedGarment {
    BlankStyleId style;
    std::string size;
    ColourId colour;
    std::vector<FilmId> films;
    Seconds pressTime{0}; // maker's and platen's, from its route
};

enum class PromiseStage { BuyBlank, BuyFilm, Wash, Dry, Cut, Press, Rest, Ready };

// One step of the way, for the last garment that takes it: when the blank or the film comes, the wash begins,
// the load is dry, pressing is done, rest begins, the order is ready.
struct PromiseStep {
    PromiseStage stage = PromiseStage::Press;
    LocalTime at{};
    std::string words; // "wash" over "tonight"
    std::string when;  // "today", "Wed" within the week, "25 Nov" after; of a rest, "24 h"
};

struct Promise {
    LocalTime readyAt{};
    std::vector<PromiseStep>
        path;        // in the order of time; cutting only where nothing else comes before the press
    std::string why; // the longest wait, in words
};

// What is already promised and takes hours at the press: pressing work by when it must be done (the promise
// less the rest).
struct PressLoad {
    LocalTime due{};
    Seconds work{0};
};

// An error where nothing is asked for, the shop is closed for the next year, or the press is taken for all of
// it; it says so in words. `load` is work of garments not pressed yet.
Result<Promise> promiseFor(std::span<const AskedGarment> asked, const ShopFacts& facts,
                           std::span<const PressLoad> load, const Now& now);

std::string promiseStageWords(PromiseStage stage);

} // namespace holdfast
