// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The file of a web shop, read and taken beside the window.

#include "app/desk/shop_beside.h"
#include "core/orders/order_file.h"
#include "db/actions/order_file_actions.h"

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::app {

using GoesOn = std::function<bool(double share)>; // false: stop

// What the file says before its columns are named.
struct OrdersHead {
    std::string text; // all of it
    std::vector<std::string> headings;
    std::vector<std::string> first; // the first value under each heading that has one
    OrderFileNaming naming;         // as it was named last, else as the headings make it likely
    bool isKnown = false;           // it was named before
};

// Up to 20 MB; the field of an error is "path".
Result<std::string> orderFileText(const std::filesystem::path& path);

// `connection` of the shop, for what was named before.
Result<OrdersHead> orderFileHead(db::Connection& connection, std::string text);

struct OrdersTaken {
    Result<db::OrdersOfFile> outcome;
    WrittenBeside written;
};

// Takes what was read, unless the file is no longer what it was then. REQUIRES: a thread of its own, and a
// window's shop with a file, which outlives it.
OrdersTaken takeOrdersBeside(const db::Shop& window, const KnownBefore& known,
                             const std::filesystem::path& path, const std::string& textRead,
                             const OrderFileRead& read, const GoesOn& goesOn);

// A refusal where the file is not the text any more.
Result<Done> requireUnchanged(const std::filesystem::path& path, const std::string& textRead);

} // namespace holdfast::app
