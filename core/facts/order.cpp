#include "core/facts/order.h"

#include "core/trade/unit_words.h"

#include <algorithm>
#include <cassert>

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
    assert(position >= 1);
    std::string letters;
    // Counting without a zero: after z comes aa.
    for (int left = position; left > 0; left = (left - 1) / 26)
        letters.insert(letters.begin(), static_cast<char>('a' + (left - 1) % 26));
    return letters;
}

std::string garmentLabel(const Order& order, const Garment& garment) {
    return std::to_string(order.number) + "-" + garment.letter();
}

} // namespace holdfast
