// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Words of scripts that are read from right to left, in a line that is read from left to right.
//
// The Unicode bidirectional algorithm (UAX #9) draws digits and punctuation that follow such a word as part
// of it, so that "סלמא, 36 × 19 mm" would show its figures in another order. Each run of such words is put
// between FIRST STRONG ISOLATE and POP DIRECTIONAL ISOLATE, as the standard recommends for text put into
// other text. Only for what is drawn: what is stored and typed stays as it is.

#include <QString>

namespace holdfast::app {

QString withRunsApart(const QString& text);

} // namespace holdfast::app
