// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/assertion.h"

#include <cstdio>
#include <cstdlib>

namespace holdfast {

void assertionFailed(const char* condition, const char* file, int line) noexcept {
    std::fprintf(stderr,
                 "holdfast: a mistake in the program, at %s:%d: “%s” is not so. It ends; what was done is in "
                 "the shop file.\n",
                 file, line, condition);
    std::fflush(stderr);
    std::abort();
}

} // namespace holdfast
