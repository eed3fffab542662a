// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A list of sizes typed once more: which of them are new, gone, or named otherwise.

#include <functional>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace holdfast {

struct SizeChanges {
    std::vector<std::pair<std::string, std::string>> renamed; // before, after
    std::vector<std::string> added;
    std::vector<std::string> gone;

    bool empty() const { return renamed.empty() && added.empty() && gone.empty(); }
};

// Where as many sizes were typed in the place of others as there were, those that are in use got another
// name: they could not be taken away. One that is in no use is gone, so that what was made in it once stays
// as it was.
SizeChanges sizeChanges(std::span<const std::string> before, std::span<const std::string> after,
                        const std::function<bool(const std::string&)>& isInUse);

} // namespace holdfast
