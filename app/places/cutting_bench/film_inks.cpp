// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/film_inks.h"

#include "app/theme/contrast.h"
#include "app/theme/drawings.h"
#include "app/theme/tokens.h"

#include <cmath>

namespace holdfast::app {

namespace {

constexpr double kMostDimmed = 0.5; // white film in the evening

// A large white film would outshine everything else in a dim room.
QColor inThisLight(const QColor& shade) {
    if (light() == Light::Day)
        return shade;
    return blended(shade, tokens().bench, kMostDimmed * std::sqrt(luminance(shade)));
}

} // namespace

FilmInks::FilmInks(const QColor& shade)
    : film(inThisLight(shade)) {
    const Tokens& day = tokens(Light::Day);
    line = clearer(film, day.card, day.ink);
    decal = blended(film, line, 0.85);
    edge = outlineOf(film);
    core = blended(film, day.ink, 0.35);
    shine = blended(film, day.card, 0.22);
    patch = tokens().card;
    words = tokens().ink;
}

} // namespace holdfast::app
