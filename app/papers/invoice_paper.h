// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Invoice and credit note on paper, as they were made: of the shop as it is now they say nothing.

#include "app/papers/paper.h"
#include "core/facts/invoice.h"

#include <span>
#include <vector>

namespace holdfast::app {

// `all` of the order: a credit note names the invoice that it corrects.
std::vector<Paper> invoicePapers(const Invoice& invoice, std::span<const Invoice> all);

} // namespace holdfast::app
