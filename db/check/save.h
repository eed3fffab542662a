// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Brings what can be read of a damaged shop file into a new one. Rows that are lost are written again as
// their history has them, where the journal came through whole.

#include "core/trade/result.h"
#include "db/check/check.h"

#include <filesystem>
#include <string>
#include <vector>

namespace holdfast::db {

struct Saved {
    std::int64_t rows = 0;        // read and brought over
    std::int64_t fromHistory = 0; // lost or other in the file, and written as their history has them
    std::vector<Sentence> lost;   // what could not be saved
};

// The damaged file is only read. The new one appears under its name when it is done; a name that is taken is
// refused.
Result<Saved> saveWhatCanBe(const std::filesystem::path& damaged, const std::filesystem::path& newFile,
                            const TellCheck& tell = {});

} // namespace holdfast::db
