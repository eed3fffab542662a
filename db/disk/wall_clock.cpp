// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/disk/wall_clock.h"

#include <time.h>

namespace holdfast::db {

std::chrono::seconds wallOffsetAt(Instant instant) {
    const std::time_t since = instant.time_since_epoch().count();
    std::tm local{};
    if (!localtime_r(&since, &local))
        return std::chrono::seconds{0};
    return std::chrono::seconds{timegm(&local) - since};
}

} // namespace holdfast::db
