// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Measures of the fair table alone, in logical pixels.

class QWidget;

namespace holdfast::app {

class Choice;

// What a finger meets while standing at the table.
inline constexpr int kStallTarget = 44;

// As narrow as what is chosen can be.
inline constexpr int kNarrowestColumn = 300;

// Segments as high as that.
void makeTall(Choice* segments);

// Whether its room stays while it is hidden, so that nothing else moves.
void keepRoom(QWidget* widget, bool isKept = true);

} // namespace holdfast::app
