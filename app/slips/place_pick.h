// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The parts of a form that ask where something is stored: one of the shop's storage places, or a new one.

#include "app/desk/shop_desk.h"
#include "core/trade/result.h"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::app {

class Form;

// A storage place of the shop, or the name of one to be added.
struct ChosenPlace {
    std::optional<PlaceId> known;
    std::string newName;

    // A new one is added by this: call it in one with what it is added for (Shop::asOne).
    Result<PlaceId> in(db::Shop& shop) const;
};

// A place that is retired gets no more rolls; as long as some are there, its air is read.
enum class PlacesFor { Rolls, Readings };

class PlacePick {
public:
    PlacePick(Form& form, ShopDesk& desk, const QString& label, std::optional<PlaceId> chosen,
              PlacesFor what);

    ChosenPlace chosen() const;
    std::optional<PlaceId> known() const; // none: a new one
    // Marks a missing name.
    void check();

private:
    void showName();

    Form& m_form;
    std::vector<PlaceId> m_places;
};

// The place that film was put last, for the next roll.
std::optional<PlaceId> lastUsedPlace(const ReckonedShop& shop);
// The place that has waited longest for a reading, those with film before those without.
std::optional<PlaceId> stalestPlace(const ReckonedShop& shop);

} // namespace holdfast::app
