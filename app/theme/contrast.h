// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How well one colour can be distinguished from another: WCAG 2.2, "relative luminance" and "contrast ratio".

#include <QColor>

namespace holdfast::app {

double luminance(const QColor& colour);                                       // 0 black, 1 white
double contrast(const QColor& one, const QColor& other);                      // 1 the same, 21 black on white
QColor clearer(const QColor& ground, const QColor& one, const QColor& other); // the one seen better on it

} // namespace holdfast::app
