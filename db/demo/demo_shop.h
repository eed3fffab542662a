// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// An invented workshop next to a salt marsh on one of its mornings: the shop to try the program with, and
// what its pictures and tests are made from.
//
// Everything in it came about by the program's own actions, over the three months before `on`, so that its
// journal tells how. It is 09:40 by the wall clock of `on`, in the middle of the press walk, with a fair
// tomorrow. The same day makes the same content, down to the ids. Names, films and places are invented.

#include "core/trade/dates.h"
#include "core/trade/result.h"

#include <filesystem>

namespace holdfast::db {

// The moment at which the demo's shop is on that day, with this machine's offset from UTC at that time.
Now demoNow(LocalDate on);

// Refuses a name that is taken, and days before 2002; leaves no file behind when it fails.
Result<Done> makeDemoShop(const std::filesystem::path& path, LocalDate on);

} // namespace holdfast::db
