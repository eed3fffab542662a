// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Actions as parts of a larger one, for reading in files: each checks, writes and names its subjects as the
// action of the same name does; the larger action then says what was done on the whole.

#include "core/facts/climate.h"
#include "db/actions/blank_actions.h"
#include "db/actions/fair_actions.h"
#include "db/actions/film_actions.h"
#include "db/actions/press_actions.h"
#include "db/journal/writer.h"

#include <optional>
#include <string>

namespace holdfast::db {

Result<BlankStyleId> addStyle(Writer& writer, const BlankStyle& style);
// Received on an earlier day, too.
Result<BlankLotId> receiveBlanks(Writer& writer, BlankStyleId style, const std::string& size, ColourId colour,
                                 std::int64_t units, LocalDate receivedOn);
Result<FilmId> addFilm(Writer& writer, const Film& film);
// With the number that is written on it, if that is free; it may be an offcut then, of 20 mm or more. Without
// one it gets the next.
Result<RollOnShelf> receiveRoll(Writer& writer, const RollReceived& roll, std::optional<int> number,
                                const Now& now);
Result<PlaceId> addPlace(Writer& writer, const std::string& name);
Result<PressId> addPress(Writer& writer, const Press& press);
Result<FairId> addFair(Writer& writer, const Fair& fair);

Sentence measuredWords(const ClimateReading& reading); // "44 %, 19.5 °C"
// −40…80 °C, 0–100 % RH or none, from 2000 until now.
Result<Done> checkReading(const ClimateReading& reading, Instant now);
// Checked already. False where there is one of that moment; else it is in `rows`, for Writer::insertMany.
bool addReading(Connection& connection, Query& insert, PlaceId place, const ClimateReading& reading,
                InsertedRows& rows);
Query readingInsert(Writer& writer);
InsertedRows readingRows();

} // namespace holdfast::db
