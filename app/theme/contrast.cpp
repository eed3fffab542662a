// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/theme/contrast.h"

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

double linear(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

} // namespace

double luminance(const QColor& colour) {
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
           0.0722 * linear(colour.blueF());
}

double contrast(const QColor& one, const QColor& other) {
    const auto [darker, lighter] = std::minmax({luminance(one), luminance(other)});
    return (lighter + 0.05) / (darker + 0.05);
}

QColor clearer(const QColor& ground, const QColor& one, const QColor& other) {
    return contrast(ground, one) >= contrast(ground, other) ? one : other;
}

} // namespace holdfast::app
