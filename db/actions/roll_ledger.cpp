// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/roll_ledger.h"

#include "core/trade/assertion.h"
#include "core/trade/limits.h"
#include "db/actions/rows.h"

namespace holdfast::db {
namespace {

const char* codeOfKind(LengthKind kind) {
    switch (kind) {
    case LengthKind::Received:
        return "received";
    case LengthKind::Cut:
        return "cut";
    case LengthKind::TestStrip:
        return "test-strip";
    case LengthKind::Correction:
        return "correction";
    case LengthKind::UsedUp:
        return "used-up";
    }
    return "";
}

} // namespace

void moveLength(Writer& writer, RollId roll, Millimetres length, const std::string& reason, LengthKind kind) {
    HOLDFAST_ASSERT(length.value != 0);
    writer.connection().run(
        "INSERT INTO roll_move (id, roll_id, at, mm, reason, kind) VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
        writer.newId<RowId>(), roll, writer.now(), length, reason, codeOfKind(kind));
}

std::string metres(Millimetres length) {
    return decimalNumber(length.metres(), 2) + " m";
}

} // namespace holdfast::db
