// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/count_phrases.h"

namespace holdfast {

Sentence dayCount(std::int64_t days) {
    return said("{n} day|{n} days", {{"n", days}});
}

Sentence hourCount(std::int64_t hours) {
    return said("{n} h", {{"n", hours}});
}

} // namespace holdfast
