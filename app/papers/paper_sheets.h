#pragma once
// Small papers laid on the sheets that a printer has in it, to be cut apart: as many as fit, with solid marks
// at their corners.

#include "app/papers/paper.h"

namespace holdfast::app {

// Neighbours of one size share sheets, upright or turned, whichever takes more. A paper as large as the sheet
// goes on it alone, and a larger one is made to fit.
std::vector<Paper> laidOnSheets(const std::vector<Paper>& papers, const QSizeF& sheet);

} // namespace holdfast::app
