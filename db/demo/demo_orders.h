// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The demo's orders as they were taken, and what became of the agreements: money, wording, promises.

#include "core/orders/order_draft.h"
#include "db/demo/demo_script.h"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::db::demo {

struct DecalPlan {
    const char* shade = nullptr;
    const char* artwork = nullptr; // or else words
    const char* words = nullptr;
    Placement placement = Placement::Chest;
    int layer = 1;
    Millimetres width{};                // 0: as is usual there
    std::optional<Millimetres> below{}; // none: as is usual there
};

struct GarmentPlan {
    const char* style = nullptr;
    const char* size = nullptr;
    const char* colour = nullptr;
    std::vector<DecalPlan> decals;
};

GarmentPlan garment(const char* style, const char* size, const char* colour, std::vector<DecalPlan> decals);

enum class FirstMoney { Usual, None, Thirty, Ten, All };

struct OrderPlan {
    int number = 0;
    int day = 0;
    Seconds at{};
    const char* customer = nullptr;
    const char* phone = "";
    int promisedDay = 0;
    Seconds promisedAt{};
    std::vector<GarmentPlan> garments;
    FirstMoney money = FirstMoney::Usual;
    bool isQuotation = false;
    const char* note = "";
};

// Taken on that day at that time, promised for the other.
OrderPlan order(int number, int day, Seconds at, const char* customer, const char* phone, int promisedDay,
                Seconds promisedAt, std::vector<GarmentPlan> garments, FirstMoney money = FirstMoney::Usual,
                bool isQuotation = false, const char* note = "");

// Orders that are long handed over or cancelled, and those that are open.
std::vector<OrderPlan> earlierOrders();
std::vector<OrderPlan> openOrders();

void writeOrders(Script& script);

} // namespace holdfast::db::demo
