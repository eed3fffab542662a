// SPDX-License-Identifier: GPL-3.0-or-later
// What the knife follows, as path data, and the codes of our papers: texts that come with an order or a scan.
#include "core/garments/svg_path.h"
#include "core/trade/paper_code.h"
#include "tests/long/fuzz/fuzz_target.h"

namespace holdfast::fuzz {
namespace {

void readOutline(std::string_view input) {
    (void)linesOfPath(input);
    if (const auto code = readPaperCode(input)) {
        (void)code->label();
        (void)code->fits(1);
    }
}

const Registered registeredOutline{"outline", readOutline};

} // namespace
} // namespace holdfast::fuzz
