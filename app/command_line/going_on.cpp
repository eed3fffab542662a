// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/going_on.h"

#include <QByteArray>

#include <chrono>
#include <unistd.h>

namespace holdfast::app {

namespace {

using namespace std::chrono_literals;

constexpr const char* kHandedOn = "HOLDFAST_GOES_ON"; // "SECONDS PATH"
constexpr std::chrono::seconds kSameClock = 10s;      // a start takes less

} // namespace

Clock GoingOn::clock() const {
    const Clock system = systemClock();
    return std::chrono::abs(system.now() - at) < kSameClock ? system : clockFrom(at);
}

std::optional<GoingOn> handedOn() {
    const QByteArray handed = qgetenv(kHandedOn);
    qunsetenv(kHandedOn);
    const auto space = handed.indexOf(' ');
    bool isNumber = false;
    const auto seconds = handed.left(space).toLongLong(&isNumber);
    if (space < 0 || !isNumber)
        return std::nullopt;
    return GoingOn{handed.mid(space + 1).toStdString(), Instant{std::chrono::seconds{seconds}}};
}

void goOn(const GoingOn& on, char** argv) {
    qputenv(kHandedOn, QByteArray::number(static_cast<qlonglong>(on.at.time_since_epoch().count())) + ' ' +
                           QByteArray::fromStdString(on.shop.string()));
    ::execv("/proc/self/exe", argv);
    qunsetenv(kHandedOn);
}

} // namespace holdfast::app
