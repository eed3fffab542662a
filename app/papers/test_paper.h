// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is printed to see whether a printer keeps sizes: rulers to be measured with a real one. It goes the
// same way as every other paper.

#include "app/papers/paper.h"
#include "app/papers/printer_choice.h"

namespace holdfast::app {

Paper testPaper(PaperUse use);

} // namespace holdfast::app
