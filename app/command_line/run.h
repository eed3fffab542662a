// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The program: reads its arguments and either opens the window or does its verb. Returns the exit status: 0
// done, 1 the work could not be done (one line on standard error says why), 2 wrong usage.

namespace holdfast::app {

int run(int argc, char** argv);

} // namespace holdfast::app
