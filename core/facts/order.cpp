// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/order.h"

#include "core/trade/paper_numbers.h"
#include "core/trade/unit_words.h"

#include <algorithm>

namespace holdfast {

namespace {

std::string described(const Artwork& artwork) {
    std::string words = artwork.name;
    std::ranges::replace(words, '-', ' ');
    return withCapital(std::move(words));
}

std::string described(const Wording& wording) {
    return "Name “" + wording.text + "”";
}

} // namespace

std::string Decal::describe() const {
    return std::visit([](const auto& held) { return described(held); }, content);
}

std::string Garment::letter() const {
    return garmentLetter(position);
}

std::string garmentLabel(const Order& order, const Garment& garment) {
    return garmentLabel(order.number, garment.position);
}

} // namespace holdfast
