// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What nearly every file of core and db includes of the standard library, compiled once.

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>
#include <variant>
#include <vector>
