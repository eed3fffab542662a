// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The backups that the tour's pictures show, the same on every machine.

#include "app/desk/backups_beside.h"
#include "core/trade/dates.h"

namespace holdfast::app {

// The last days, one on which news was brought in, and a stick that is not there.
BackupsKnown backupsForPictures(const Now& now);

} // namespace holdfast::app
