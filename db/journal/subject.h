// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a journal entry is about, so that the history of one order, roll or lot can be read.

#include "core/trade/ids.h"

#include <cstdint>
#include <string_view>

namespace holdfast::db {

struct Subject {
    Subject(CustomerId subject)
        : kind("customer")
        , id(subject.value) {}
    Subject(OrderId subject)
        : kind("order")
        , id(subject.value) {}
    Subject(GarmentId subject)
        : kind("garment")
        , id(subject.value) {}
    Subject(DecalId subject)
        : kind("decal")
        , id(subject.value) {}
    Subject(BlankStyleId subject)
        : kind("blank style")
        , id(subject.value) {}
    Subject(ColourId subject)
        : kind("colour")
        , id(subject.value) {}
    Subject(BlankLotId subject)
        : kind("blank lot")
        , id(subject.value) {}
    Subject(WashLoadId subject)
        : kind("wash load")
        , id(subject.value) {}
    Subject(FilmId subject)
        : kind("film")
        , id(subject.value) {}
    Subject(RollId subject)
        : kind("roll")
        , id(subject.value) {}
    Subject(PlaceId subject)
        : kind("place")
        , id(subject.value) {}
    Subject(PressId subject)
        : kind("press")
        , id(subject.value) {}
    Subject(FairId subject)
        : kind("fair")
        , id(subject.value) {}

    std::string_view kind;
    std::int64_t id;
};

} // namespace holdfast::db
