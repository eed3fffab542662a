#pragma once
// The parts of a form that ask where something stands: one of the shop's storage places, or a new one.

#include "app/desk/shop_desk.h"
#include "core/trade/result.h"

#include <optional>
#include <vector>

namespace holdfast::app {

class Form;

class PlacePick {
public:
    PlacePick(Form& form, ShopDesk& desk, const QString& label, std::optional<PlaceId> chosen);

    // The place chosen. A new one is written down by this; call it when all else that was typed is sound.
    Result<PlaceId> taken();
    std::optional<PlaceId> known() const; // none: a new one
    // Marks a missing name.
    void check();

private:
    void showName();

    Form& m_form;
    ShopDesk& m_desk;
    std::vector<PlaceId> m_places;
};

// The place that film was put last, for the next roll.
std::optional<PlaceId> lastUsedPlace(const ReckonedShop& shop);
// The place that has waited longest for a reading, those with film before those without.
std::optional<PlaceId> stalestPlace(const ReckonedShop& shop);

} // namespace holdfast::app
