// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Hours in which a place was outside its humidity band and outside its temperature band at once: they are
// hours of each, and must not count twice where the two are added.

#include "core/film/exposure.h"

#include <vector>

namespace holdfast {

class BothOutside {
public:
    // Nothing yet.
    BothOutside() = default;

    // Appends what the two curves hold between the two instants. Takes as long as there are
    // readings between them.
    // REQUIRES: `from` is not before the last `to`.
    void add(const ExposureCurve& humidity, const ExposureCurve& temperature, Instant from, Instant to);

    double hoursBetween(Instant from, Instant to) const;

private:
    struct Stretch {
        Instant begins;
        Instant ends;
        double hoursBefore = 0; // of the stretches before it
    };

    double upTo(Instant instant) const;

    std::vector<Stretch> m_stretches; // the earliest first
};

} // namespace holdfast
