// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/order.h"

#include "core/trade/paper_numbers.h"
#include "core/trade/unit_words.h"

#include <algorithm>

namespace holdfast {

namespace {

Sentence described(const Artwork& artwork) {
    std::string words = artwork.name;
    std::ranges::replace(words, '-', ' ');
    return asItIs(withCapital(std::move(words)));
}

Sentence described(const Wording& wording) {
    return said("Name “{wording}”", {{"wording", wording.text}});
}

} // namespace

Sentence Decal::describe() const {
    return std::visit([](const auto& held) { return described(held); }, content);
}

std::string Garment::letter() const {
    return garmentLetter(position);
}

std::string garmentLabel(const Order& order, const Garment& garment) {
    return garmentLabel(order.number, garment.position);
}

} // namespace holdfast
