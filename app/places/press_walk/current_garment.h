// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The card of the garment in hand: its drawing, who it is for, and its steps.

#include "app/widgets/card.h"
#include "core/shop/reckoned_shop.h"

#include <memory>

namespace holdfast::app {

class ElidingLabel;
class GarmentSheet;
class RouteList;

class CurrentGarment : public Card {
    Q_OBJECT

public:
    explicit CurrentGarment(QWidget* parent = nullptr);

    // A garment that is not begun yet is shown as the one to come.
    void show(const std::shared_ptr<const ReckonedShop>& shop, std::optional<GarmentId> garment);
    std::optional<GarmentId> garment() const { return m_garment; }
    // Its head alone, where there is no room for the drawing and the steps.
    void setCompact(bool isCompact);

private:
    class Heading;

    std::optional<GarmentId> m_garment;
    GarmentSheet* m_sheet = nullptr;
    Heading* m_heading = nullptr;
    ElidingLabel* m_customer = nullptr;
    RouteList* m_route = nullptr;
};

} // namespace holdfast::app
