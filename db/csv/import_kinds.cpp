// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/csv/import_kinds.h"

#include <array>

namespace holdfast::db {

namespace {

constexpr std::string_view kOfCustomer[] = {"Customer"};
constexpr std::string_view kBesideCustomer[] = {"Telephone", "Note"};

constexpr std::string_view kOfStyle[] = {"Style", "Drawing", "Weight (g)", "Sizes", "Colours"};
constexpr std::string_view kBesideStyle[] = {"Cost",           "Obstacles",  "Not washed first because",
                                             "For a child",    "Sleepwear",  "Cords",
                                             "Law checked by", "Label read", "Fibres",
                                             "Stretch",        "Coating",    "Highest safe (°C)",
                                             "Wash (°C)",      "Agitation",  "Tumble",
                                             "Iron (°C)",      "Bleach",     "Solvents",
                                             "Retired",        "Supplier"};

constexpr std::string_view kOfLot[] = {"Style", "Size", "Colour", "Units", "Received"};
constexpr std::string_view kBesideLot[] = {
    "Washed",          "Dry",         "Detergent",          "Softener",          "Water (°C)",
    "Drying",          "Dryer sheet", "Length before (mm)", "Length after (mm)", "Width before (mm)",
    "Width after (mm)"};
constexpr std::string_view kNotReadOfLot[] = {"Units received"};

constexpr std::string_view kOfFilm[] = {"Finish", "Shade", "Colour"};
constexpr std::string_view kBesideFilm[] = {"Temperature (°C)",
                                            "Dwell (s)",
                                            "Pressure",
                                            "Peel",
                                            "Preheat (s)",
                                            "Cool before peel (s)",
                                            "Finish front (s)",
                                            "Finish back (s)",
                                            "Tack (s)",
                                            "Recipe confirmed by",
                                            "Follows stretch",
                                            "Grips coated cloth",
                                            "Not for",
                                            "Wash (°C)",
                                            "Agitation",
                                            "Tumble",
                                            "Iron (°C)",
                                            "Bleach",
                                            "Solvents",
                                            "Shelf life (days)",
                                            "Humidity from (%)",
                                            "Humidity to (%)",
                                            "Stored from (°C)",
                                            "Stored to (°C)",
                                            "Allowed outside (h)",
                                            "Ageing factor",
                                            "Ageing reference (°C)",
                                            "Test strip adds (days)",
                                            "May lie under",
                                            "May lie over",
                                            "Grain",
                                            "Roll width (mm)",
                                            "Cost of a metre",
                                            "Retired",
                                            "Supplier"};

constexpr std::string_view kOfRoll[] = {"Finish", "Shade", "Width (mm)", "Length (mm)", "Received"};
constexpr std::string_view kBesideRoll[] = {"Roll", "Made", "Printed use-by", "Place", "State"};
constexpr std::string_view kNotReadOfRoll[] = {"Length received (mm)"};

constexpr std::string_view kOfWash[] = {"Started", "Softener", "Dryer sheet"};
constexpr std::string_view kBesideWash[] = {"Detergent", "Water (°C)", "Drying", "Dry"};
constexpr std::string_view kNotReadOfWash[] = {"Units"};

constexpr std::string_view kOfSetting[] = {"Setting", "Value"};

constexpr std::string_view kOfPlace[] = {"Place"};
constexpr std::string_view kBesidePlace[] = {"Retired"};
constexpr std::string_view kOfReading[] = {"Place", "When", "Temperature (°C)", "Humidity (%)"};

constexpr std::string_view kOfPress[] = {"Press", "Platen width (mm)", "Platen height (mm)"};
constexpr std::string_view kBesidePress[] = {"Small platen",   "Heats (°C a minute)", "Cools (°C a minute)",
                                             "Tolerance (°C)", "Even within (°C)",    "Checked every (days)",
                                             "Retired"};

constexpr std::string_view kOfFair[] = {"Fair", "First day", "Opens", "Closes"};
constexpr std::string_view kBesideFair[] = {"Last day", "Stall", "Other costs", "Worked (min)", "Note"};

constexpr std::array<ImportKind, 11> kKinds{{
    {phrase("rolls"), kOfRoll, kBesideRoll, kNotReadOfRoll, importRoll},
    {phrase("blanks received"), kOfLot, kBesideLot, kNotReadOfLot, importLot},
    {phrase("blank styles"), kOfStyle, kBesideStyle, {}, importStyle},
    {phrase("readings"), kOfReading, {}, {}, importReading},
    {phrase("films"), kOfFilm, kBesideFilm, {}, importFilm},
    {phrase("customers"), kOfCustomer, kBesideCustomer, {}, importCustomer},
    {phrase("storage places"), kOfPlace, kBesidePlace, {}, importPlace},
    {phrase("presses"), kOfPress, kBesidePress, {}, importPress},
    {phrase("fairs"), kOfFair, kBesideFair, {}, importFair},
    {phrase("wash loads"), kOfWash, kBesideWash, kNotReadOfWash, importWash},
    {phrase("settings"), kOfSetting, {}, {}, importSetting},
}};

} // namespace

std::span<const ImportKind> importKinds() {
    return kKinds;
}

} // namespace holdfast::db
