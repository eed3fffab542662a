// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A logger's file, read from the disk. It may be long: see ImportReadingsSlip, which has it read beside the
// window.

#include "core/film/climate_log.h"
#include "core/trade/result.h"

#include <QString>

#include <functional>
#include <optional>

namespace holdfast::app {

// Times without a zone are local, as `offsetAt` says; the order of day and month is found in the file unless
// it was chosen. Asks `progress` with the share done and stops where it answers false.
Result<ClimateLog> readLog(const QString& path, const OffsetAt& offsetAt, std::optional<DateOrder> dateOrder,
                           const std::function<bool(double share)>& progress);

} // namespace holdfast::app
