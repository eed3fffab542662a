// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What adding a blank style and changing one have in common.

#include "core/facts/blank_style.h"
#include "core/trade/result.h"
#include "db/journal/writer.h"

#include <cstdint>
#include <string>

namespace holdfast::db {

// As it may be written: texts trimmed, all within their limits, its name no other style's.
Result<BlankStyle> soundStyle(Connection& connection, const BlankStyle& typed);
// Why blanks of a style are not washed first; none: they are.
Result<std::string> noneOrReason(const std::string& typed);
Result<Done> checkRgb(std::uint32_t rgb);

ColourId writeColour(Writer& writer, BlankStyleId style, std::int64_t position, const Colour& colour);
// A new row, or over the one there is.
void writeObstacle(Connection& connection, BlankStyleId style, const ObstacleOnStyle& obstacle);

} // namespace holdfast::db
