// SPDX-License-Identifier: GPL-3.0-or-later
// Rules over the film of each decal: does it suit the cloth, is its recipe known, may it lie where it lies.

#include "core/holds/rules.h"
#include "core/press/layers.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

namespace {

// A fibre counts from this share on: 16 CFR 303.16 names fibres of 5 % and more on the label.
constexpr int kFibreCountsFrom = 5;

// Acrylic and polyamide are not ironed hotter: they glaze, then melt (household tables of ironing
// temperatures, second-hand; the label wins).
constexpr Celsius kSoftFibresBear{135};

Finding onFilm(Rule rule, Grade grade, const Film& film) {
    Finding finding;
    finding.rule = rule;
    finding.grade = grade;
    finding.film = film.id;
    return finding;
}

Finding unfit(Rule rule, const Film& film, const BlankStyle& style, Sentence what, Sentence why) {
    Finding finding = onFilm(rule, Grade::Hold, film);
    finding.what = std::move(what);
    finding.why = std::move(why);
    finding.frees = {FreeingAct::ChooseFilm, FreeingAct::ChooseBlank};
    finding.style = style.id;
    return finding;
}

Phrase stretchWords(Stretch stretch) {
    switch (stretch) {
    case Stretch::None:
        return phrase("no stretch");
    case Stretch::Some:
        return phrase("some stretch");
    case Stretch::High:
        return phrase("high stretch");
    }
    return {};
}

void stretchUnfit(const Film& film, const BlankStyle& style, Findings& findings) {
    if (style.label->stretch <= film.follows)
        return;
    findings.push_back(unfit(Rule::FilmUnfitStretch, film, style, said("Stretches more than the film"),
                             said("{style} has {stretch}; {film} follows at most {most}.",
                                  {{"style", style.name},
                                   {"stretch", stretchWords(style.label->stretch)},
                                   {"film", film.name()},
                                   {"most", stretchWords(film.follows)}})));
}

void coatingUnfit(const Film& film, const BlankStyle& style, Findings& findings) {
    if (style.label->coating == Coating::None || film.gripsCoated)
        return;
    const std::vector<NamedValue> values{{"style", style.name}, {"film", film.name()}};
    findings.push_back(
        unfit(Rule::FilmUnfitCoating, film, style, said("Film slips on the coating"),
              style.label->coating == Coating::Waxed
                  ? said("{style} is waxed; {film} does not grip coated cloth.", values)
                  : said("{style} is water-repellent; {film} does not grip coated cloth.", values)));
}

std::optional<Phrase> softFibreOf(const FabricLabel& label) {
    for (const FibreShare& share : label.fibres)
        if (share.percent >= kFibreCountsFrom &&
            (share.fibre == Fibre::Acrylic || share.fibre == Fibre::Polyamide))
            return fibreName(share.fibre);
    return std::nullopt;
}

void heatUnfit(const Film& film, const BlankStyle& style, Findings& findings) {
    if (!film.recipe)
        return;
    const Celsius needed = film.recipe->temperature;
    const auto values = [&](std::vector<NamedValue> further) {
        further.insert(further.begin(), {{"film", film.name()}, {"needed", needed}, {"style", style.name}});
        return further;
    };
    if (const auto safe = style.label->highestSafe) {
        if (needed <= *safe)
            return;
        findings.push_back(unfit(
            Rule::FilmUnfitHeat, film, style, said("Too hot for the cloth"),
            said("{film} is pressed at {needed}; {style} takes at most {safe}.", values({{"safe", *safe}}))));
        return;
    }
    const int iron = style.label->care.ironCelsius;
    if (iron == 0) {
        findings.push_back(
            unfit(Rule::FilmUnfitHeat, film, style, said("The label forbids heat"),
                  said("{film} is pressed at {needed}; the label of {style} says do not iron.", values({}))));
        return;
    }
    const Celsius ironed{static_cast<double>(iron)};
    if (needed <= ironed)
        return;
    const auto soft = softFibreOf(*style.label);
    if (soft && needed > kSoftFibresBear) {
        findings.push_back(
            unfit(Rule::FilmUnfitHeat, film, style, said("Too hot for {fibre}", {{"fibre", *soft}}),
                  said("{film} is pressed at {needed}; the label of {style} says iron at up to {ironed}, and "
                       "{fibre} glazes or melts above some {bears}.",
                       values({{"ironed", ironed}, {"fibre", *soft}, {"bears", kSoftFibresBear}}))));
        return;
    }
    Finding caution =
        unfit(Rule::FilmUnfitHeat, film, style, said("Hotter than its label allows"),
              said("{film} is pressed at {needed}; the label of {style} says iron at up to {ironed}; how hot "
                   "a platen may be is not known. Press a spare or a hidden spot.",
                   values({{"ironed", ironed}})));
    caution.grade = Grade::Caution;
    findings.push_back(std::move(caution));
}

void fibreUnfit(const Film& film, const BlankStyle& style, Findings& findings) {
    for (const FibreShare& share : style.label->fibres) {
        if (share.percent < kFibreCountsFrom ||
            std::ranges::find(film.notFor, share.fibre) == film.notFor.end())
            continue;
        const Phrase fibre = fibreName(share.fibre);
        findings.push_back(unfit(Rule::FilmUnfitFibre, film, style,
                                 said("Film not for {fibre}", {{"fibre", fibre}}),
                                 said("{style} is {percent} % {fibre}; {film} is not made for {fibre}.",
                                      {{"style", style.name},
                                       {"percent", share.percent},
                                       {"fibre", fibre},
                                       {"film", film.name()}})));
    }
}

// Each film of a garment once, with the first decal cut from it.
struct FilmInUse {
    const Film* film;
    const Decal* decal;
};

std::vector<FilmInUse> filmsOf(const Subject& subject) {
    std::vector<FilmInUse> films;
    for (const Decal& decal : subject.garment.decals)
        if (std::ranges::none_of(films, [&](const FilmInUse& use) { return use.film->id == decal.film; }))
            films.push_back({&subject.facts().films.at(decal.film), &decal});
    return films;
}

} // namespace

void unfitness(const Film& film, const BlankStyle& style, Findings& findings) {
    if (!style.label)
        return;
    stretchUnfit(film, style, findings);
    coatingUnfit(film, style, findings);
    heatUnfit(film, style, findings);
    fibreUnfit(film, style, findings);
}

void filmUnfit(const Subject& subject, Findings& findings) {
    for (const FilmInUse& use : filmsOf(subject)) {
        const auto before = findings.size();
        unfitness(*use.film, subject.style, findings);
        for (auto at = before; at < findings.size(); ++at)
            findings[at].decal = use.decal->id;
    }
}

std::optional<Finding> missingRecipe(const Film& film) {
    if (film.recipe)
        return std::nullopt;
    Finding finding = onFilm(Rule::RecipeMissing, Grade::Hold, film);
    finding.what = said("No recipe");
    finding.why = said("{film}: no temperature, dwell and pressure on record.", {{"film", film.name()}});
    finding.frees = {FreeingAct::EnterRecipe, FreeingAct::ChooseFilm};
    return finding;
}

void recipeMissing(const Subject& subject, Findings& findings) {
    for (const FilmInUse& use : filmsOf(subject)) {
        auto finding = missingRecipe(*use.film);
        if (!finding)
            continue;
        finding->decal = use.decal->id;
        findings.push_back(std::move(*finding));
    }
}

void recipeUnconfirmed(const Subject& subject, Findings& findings) {
    for (const FilmInUse& use : filmsOf(subject)) {
        const auto& recipe = use.film->recipe;
        if (!recipe || recipe->isConfirmed())
            continue;
        Finding finding = onFilm(Rule::RecipeUnconfirmed, Grade::Caution, *use.film);
        finding.what = said("Recipe not confirmed");
        finding.why = said(
            "{film}, {temperature} for {dwell}: not compared with the maker's sheet yet.",
            {{"film", use.film->name()}, {"temperature", recipe->temperature}, {"dwell", recipe->dwell}});
        finding.frees = {FreeingAct::ConfirmRecipe};
        finding.decal = use.decal->id;
        findings.push_back(std::move(finding));
    }
}

namespace {

// Two decals of a garment that share cloth, the lower layer first.
struct Stacked {
    const Decal* lower;
    const Decal* upper;
    const Film* lowerFilm;
    const Film* upperFilm;
};

std::vector<Stacked> stacksOf(const Subject& subject) {
    std::vector<Stacked> stacks;
    const auto& decals = subject.garment.decals;
    for (auto one = decals.begin(); one != decals.end(); ++one) {
        for (auto other = one + 1; other != decals.end(); ++other) {
            if (!overlap(*one, *other))
                continue;
            const bool inOrder = one->layer <= other->layer;
            const Decal& lower = inOrder ? *one : *other;
            const Decal& upper = inOrder ? *other : *one;
            const auto& films = subject.facts().films;
            stacks.push_back({&lower, &upper, &films.at(lower.film), &films.at(upper.film)});
        }
    }
    return stacks;
}

// The same two films may meet in several places; that is said once.
void addOnce(Findings& findings, Finding finding) {
    const bool isSaid = std::ranges::any_of(findings, [&](const Finding& earlier) {
        return earlier.rule == finding.rule && earlier.why == finding.why;
    });
    if (!isSaid)
        findings.push_back(std::move(finding));
}

Sentence whyLayersAreNotAllowed(const Stacked& stack) {
    const auto values = [&](NamedValue further) {
        return std::vector<NamedValue>{
            {"lower", stack.lower->describe()}, {"upper", stack.upper->describe()}, std::move(further)};
    };
    if (stack.lower->layer == stack.upper->layer)
        return said("{lower} and {upper} overlap in layer {layer}; one must lie over the other.",
                    values({"layer", stack.lower->layer}));
    if (!stack.lowerFilm->mayLieUnder)
        return said("{upper} lies over {lower}; no film may lie over {film}.",
                    values({"film", stack.lowerFilm->name()}));
    if (!stack.upperFilm->mayLieOver)
        return said("{upper} lies over {lower}; {film} may not lie over another film.",
                    values({"film", stack.upperFilm->name()}));
    return {};
}

} // namespace

void layersNotAllowed(const Subject& subject, Findings& findings) {
    for (const Stacked& stack : stacksOf(subject)) {
        Sentence why = whyLayersAreNotAllowed(stack);
        if (why.empty())
            continue;
        Finding finding = onFilm(Rule::LayersNotAllowed, Grade::Hold, *stack.upperFilm);
        finding.what = said("Layers not allowed");
        finding.why = std::move(why);
        finding.frees = {FreeingAct::ReorderLayers, FreeingAct::ChooseFilm};
        finding.decal = stack.upper->id;
        addOnce(findings, std::move(finding));
    }
}

void filmsDisagree(const Subject& subject, Findings& findings) {
    for (const Stacked& stack : stacksOf(subject)) {
        if (!stack.lowerFilm->recipe || !stack.upperFilm->recipe)
            continue;
        const Celsius lower = stack.lowerFilm->recipe->temperature;
        const Celsius upper = stack.upperFilm->recipe->temperature;
        if (std::abs(upper.value - lower.value) <= kFilmsAgreeWithin)
            continue;
        Finding finding = onFilm(Rule::FilmsDisagree, Grade::Hold, *stack.upperFilm);
        finding.what = said("Films need different heat");
        finding.why =
            said("{lower} needs {lowerHeat}, {upper} over it {upperHeat}. Each needs its own pass, and "
                 "the lower one would be pressed at {upperHeat}.",
                 {{"lower", stack.lowerFilm->name()},
                  {"lowerHeat", lower},
                  {"upper", stack.upperFilm->name()},
                  {"upperHeat", upper}});
        finding.frees = {FreeingAct::ChooseFilm};
        finding.decal = stack.upper->id;
        addOnce(findings, std::move(finding));
    }
}

} // namespace holdfast
