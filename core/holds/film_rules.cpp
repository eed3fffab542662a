// SPDX-License-Identifier: GPL-3.0-or-later
// Rules over the film of each decal: does it suit the cloth, is its recipe known, may it lie where it lies.

#include "core/holds/rules.h"
#include "core/press/layers.h"
#include "core/trade/unit_words.h"

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

Finding unfit(Rule rule, const Film& film, const BlankStyle& style, std::string what, std::string why) {
    Finding finding = onFilm(rule, Grade::Hold, film);
    finding.what = std::move(what);
    finding.why = std::move(why);
    finding.frees = {FreeingAct::ChooseFilm, FreeingAct::ChooseBlank};
    finding.style = style.id;
    return finding;
}

std::string stretchWords(Stretch stretch) {
    switch (stretch) {
    case Stretch::None:
        return "no stretch";
    case Stretch::Some:
        return "some stretch";
    case Stretch::High:
        return "high stretch";
    }
    return {};
}

void stretchUnfit(const Film& film, const BlankStyle& style, Findings& findings) {
    if (style.label->stretch <= film.follows)
        return;
    findings.push_back(unfit(Rule::FilmUnfitStretch, film, style, "Stretches more than film",
                             style.name + " has " + stretchWords(style.label->stretch) + "; " + film.name() +
                                 " follows at most " + stretchWords(film.follows) + "."));
}

void coatingUnfit(const Film& film, const BlankStyle& style, Findings& findings) {
    if (style.label->coating == Coating::None || film.gripsCoated)
        return;
    const std::string coating = style.label->coating == Coating::Waxed ? "waxed" : "water-repellent";
    findings.push_back(
        unfit(Rule::FilmUnfitCoating, film, style, "Film slips on coating",
              style.name + " is " + coating + "; " + film.name() + " does not grip coated cloth."));
}

std::optional<std::string> softFibreOf(const FabricLabel& label) {
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
    const std::string pressedAt = film.name() + " is pressed at " + temperatureWords(needed);
    if (const auto safe = style.label->highestSafe) {
        if (needed <= *safe)
            return;
        findings.push_back(
            unfit(Rule::FilmUnfitHeat, film, style, "Too hot for cloth",
                  pressedAt + "; " + style.name + " takes at most " + temperatureWords(*safe) + "."));
        return;
    }
    const int iron = style.label->care.ironCelsius;
    if (iron == 0) {
        findings.push_back(unfit(Rule::FilmUnfitHeat, film, style, "Label forbids heat",
                                 pressedAt + "; the label of " + style.name + " says do not iron."));
        return;
    }
    if (needed <= Celsius{static_cast<double>(iron)})
        return;
    const std::string ironed = pressedAt + "; the label of " + style.name + " says iron at up to " +
                               temperatureWords(Celsius{static_cast<double>(iron)});
    const auto soft = softFibreOf(*style.label);
    if (soft && needed > kSoftFibresBear) {
        findings.push_back(unfit(Rule::FilmUnfitHeat, film, style, "Too hot for " + *soft,
                                 ironed + ", and " + *soft + " glazes or melts above some " +
                                     temperatureWords(kSoftFibresBear) + "."));
        return;
    }
    Finding caution =
        unfit(Rule::FilmUnfitHeat, film, style, "Hotter than its label irons",
              ironed + "; what a platen may have is not known. Press a spare or a hidden spot.");
    caution.grade = Grade::Caution;
    findings.push_back(std::move(caution));
}

void fibreUnfit(const Film& film, const BlankStyle& style, Findings& findings) {
    for (const FibreShare& share : style.label->fibres) {
        if (share.percent < kFibreCountsFrom ||
            std::ranges::find(film.notFor, share.fibre) == film.notFor.end())
            continue;
        const std::string fibre = fibreName(share.fibre);
        findings.push_back(unfit(Rule::FilmUnfitFibre, film, style, "Film not for " + fibre,
                                 style.name + " is " + std::to_string(share.percent) + " % " + fibre + "; " +
                                     film.name() + " is not made for " + fibre + "."));
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
    finding.what = "No recipe";
    finding.why = film.name() + ": no temperature, dwell and pressure on record.";
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
        finding.what = "Recipe not confirmed";
        finding.why = use.film->name() + ", " + temperatureWords(recipe->temperature) + " for " +
                      secondsWords(recipe->dwell) + ": nobody has compared it with the maker's sheet.";
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
    const bool isSaid = std::ranges::any_of(
        findings, [&](const Finding& said) { return said.rule == finding.rule && said.why == finding.why; });
    if (!isSaid)
        findings.push_back(std::move(finding));
}

std::string whyLayersAreNotAllowed(const Stacked& stack) {
    if (stack.lower->layer == stack.upper->layer)
        return stack.lower->describe() + " and " + stack.upper->describe() + " overlap in layer " +
               std::to_string(stack.lower->layer) + "; one must lie over the other.";
    if (!stack.lowerFilm->mayLieUnder)
        return stack.upper->describe() + " lies over " + stack.lower->describe() + "; no film may lie over " +
               stack.lowerFilm->name() + ".";
    if (!stack.upperFilm->mayLieOver)
        return stack.upper->describe() + " lies over " + stack.lower->describe() + "; " +
               stack.upperFilm->name() + " may not lie over another film.";
    return {};
}

} // namespace

void layersNotAllowed(const Subject& subject, Findings& findings) {
    for (const Stacked& stack : stacksOf(subject)) {
        std::string why = whyLayersAreNotAllowed(stack);
        if (why.empty())
            continue;
        Finding finding = onFilm(Rule::LayersNotAllowed, Grade::Hold, *stack.upperFilm);
        finding.what = "Layers not allowed";
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
        finding.what = "Films need different heat";
        finding.why = stack.lowerFilm->name() + " needs " + temperatureWords(lower) + ", " +
                      stack.upperFilm->name() + " over it " + temperatureWords(upper) +
                      ". Each needs its own pass, and the lower one would be pressed at " +
                      temperatureWords(upper) + ".";
        finding.frees = {FreeingAct::ChooseFilm};
        finding.decal = stack.upper->id;
        addOnce(findings, std::move(finding));
    }
}

} // namespace holdfast
