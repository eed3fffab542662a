// SPDX-License-Identifier: GPL-3.0-or-later
// The note of a half-typed order: never half a draft.
#include "app/places/fair_table/draft_note.h"
#include "tests/long/fuzz/fuzz_target.h"

namespace holdfast::fuzz {
namespace {

// A shop that knows what the kept notes speak of.
const ShopFacts& someFacts() {
    static const ShopFacts facts = [] {
        ShopFacts some;
        BlankStyle style;
        style.id = BlankStyleId{11};
        style.name = "Tee";
        style.outline = "tee";
        style.sizes = {"S", "M", "L"};
        style.colours = {{ColourId{12}, "Moss", 0x6B7F5A}};
        some.styles.add(style);
        Film film;
        film.id = FilmId{13};
        film.finish = "Marram Soft";
        film.shade = "Dusk";
        some.films.add(film);
        return some;
    }();
    return facts;
}

void readNote(std::string_view input) {
    const auto draft = app::draftFromNote(
        QByteArray::fromRawData(input.data(), static_cast<qsizetype>(input.size())), someFacts());
    if (!draft.ok()) {
        require(!draft.error().message.english().empty(), "a refusal has words");
        return;
    }
    const QByteArray written = app::noteOf(*draft);
    const auto again = app::draftFromNote(written, someFacts());
    require(again.ok() && app::noteOf(*again) == written, "what is kept reads as it was");
}

const Registered registeredNote{"half_typed_order", readNote};

} // namespace
} // namespace holdfast::fuzz
