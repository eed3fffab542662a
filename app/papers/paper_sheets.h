// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Papers laid on the pages that a printer has in it. On a sheet small papers go together, to be cut apart: as
// many as fit, with solid marks at their corners. On a label each goes alone, turned where it is larger so.

#include "app/papers/paper.h"

namespace holdfast::app {

// Large enough for several papers and a pair of scissors: from A5 and half a Letter on. Rolls of labels are
// narrower.
bool isSheet(const QSizeF& page);

// How large a paper comes out alone on such a page: 1 as it is, less where the page is smaller, turned or
// not.
double scaleOn(const QSizeF& page, const QSizeF& paper);

// Every page is of this size. Neighbours of one size share sheets, upright or turned, whichever takes more. A
// paper that is alone on its page is in the middle of it.
std::vector<Paper> laidOnSheets(const std::vector<Paper>& papers, const QSizeF& page);

} // namespace holdfast::app
