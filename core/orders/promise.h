#pragma once
// The day that can be promised for garments now being ordered: washing and drying, cutting, the press in
// opening hours behind all that is already promised, rest. Finite capacity, no promise given is broken.

#include "core/shop/shop_facts.h"
#include "core/trade/dates.h"

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

struct PromiseStep {
    PromiseStage stage = PromiseStage::Press;
    LocalTime at{};
    std::string words; // "wash" over "tonight"
    std::string when;
};

struct Promise {
    LocalTime readyAt{};
    std::vector<PromiseStep> path;
    std::string why; // the longest wait, in words
};

// What is already promised and takes hours at the press: pressing work by the day it must be done.
struct PressLoad {
    LocalTime due{};
    Seconds work{0};
};

// None if the shop is closed for the next year. `load` is work of garments not pressed yet.
Result<Promise> promiseFor(std::span<const AskedGarment> asked, const ShopFacts& facts,
                           std::span<const PressLoad> load, const Now& now);

std::string promiseStageWords(PromiseStage stage);

} // namespace holdfast
