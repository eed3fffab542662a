// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Choices that are in several kinds of files, read by their words.

#include "core/facts/blank_style.h"
#include "core/facts/care_limits.h"
#include "db/csv/import_row.h"

#include <string>
#include <string_view>

namespace holdfast::db {

Fibre fibreOf(ImportRow& row, std::string_view heading, const std::string& word);
Stretch stretchOf(ImportRow& row, std::string_view heading, Stretch fallback);
// The columns of washing, tumbling, ironing, bleach and solvents; what is not said is as in `fallback`.
CareLimits careOf(ImportRow& row, const CareLimits& fallback);

} // namespace holdfast::db
