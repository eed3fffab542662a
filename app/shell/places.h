// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The places that are built: their names, keys and signs, and how each is made. The one table that the rail,
// the shortcuts, the command finder and the tour go by.

#include "app/desk/place.h"

#include <QKeySequence>
#include <QString>

#include <optional>
#include <span>

namespace holdfast::app {

// Where in the workshop a place is; the rail sews a running stitch between two of them.
enum class PlaceGroup { Stall, Bench, Desk };

struct BuiltPlace {
    PlaceName name;
    int key; // with Ctrl
    PlaceGroup group;
    const char* code; // stable: in notes and in the names of pictures
    const char* title;
    const char* iconName;
    bool needsClimate; // shows what depends on how the rolls were kept: holds, the walk, the shelf
    Place* (*make)(ShopDesk& desk, QWidget* parent);

    QString words() const; // the title in the person's language
    QString icon() const;
    QKeySequence keys() const;
};

// By key.
std::span<const BuiltPlace> builtPlaces();
// None where it is not built.
const BuiltPlace* builtPlace(PlaceName name);
const BuiltPlace* builtPlace(const QString& code);

} // namespace holdfast::app
