// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/readings_import.h"

namespace holdfast::app {

ReadingsWritten importBeside(const db::Shop& window, const KnownBefore& known, const ChosenPlace& place,
                             const ClimateSeries& readings,
                             const std::function<bool(double share)>& progress) {
    const auto beside = ShopBeside::open(window, known);
    if (!beside.ok())
        return {beside.error(), {}};
    db::Shop& file = (*beside)->file();
    auto imported = file.asOne([&]() -> Result<db::ReadingsImported> {
        const auto stored = place.in(file);
        return stored.ok() ? db::importReadings(file, *stored, readings, progress) : stored.error();
    });
    return {std::move(imported), (*beside)->written()};
}

} // namespace holdfast::app
