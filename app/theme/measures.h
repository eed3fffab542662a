// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Every measure of the look, in logical pixels. Places take sizes from here and colours from tokens.h.

namespace holdfast::app {

// The frame of the window.
inline constexpr int kRailWidth = 96;
inline constexpr int kHeaderHeight = 60;
inline constexpr int kGutter = 16;      // between the window's edge and the cards
inline constexpr int kCardGap = 14;     // between card columns
inline constexpr int kCardStack = 12;   // between cards that are above each other
inline constexpr int kCardPadding = 16; // from a card's edge to what is in it

// The steps that all other distances are made of.
inline constexpr int kSpace4 = 4;
inline constexpr int kSpace8 = 8;
inline constexpr int kSpace12 = 12;
inline constexpr int kSpace16 = 16;
inline constexpr int kSpace20 = 20;
inline constexpr int kSpace32 = 32;

// Radii.
inline constexpr int kKeyRadius = 5;
inline constexpr int kChipRadius = 6;
inline constexpr int kButtonRadius = 8;
inline constexpr int kCardRadius = 10;
inline constexpr int kNextRadius = 12;

// Smallest targets: at the stall and desk, at the press with busy hands, and the one key Next.
inline constexpr int kTarget = 40;
inline constexpr int kPressTarget = 56;
inline constexpr int kNextTarget = 80;

// The focus ring is outside what it frames: a gap, then the ring. Leave kFocusRoom free around it.
inline constexpr int kFocusGap = 2;
inline constexpr int kFocusWidth = 3;
inline constexpr int kFocusRoom = kFocusGap + kFocusWidth;

inline constexpr int kIcon = 20;      // in buttons and titles
inline constexpr int kSmallIcon = 16; // in chips and support lines
inline constexpr int kKeyCap = 22;    // height of a key cap
inline constexpr int kChipHeight = 26;
inline constexpr int kCardTitleHeight = 40;

} // namespace holdfast::app
