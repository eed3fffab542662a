// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/next_at_press.h"

#include <tuple>

namespace holdfast {

namespace {

const OnTheRack* firstDue(std::span<const OnTheRack> rack) {
    // Warm before cool, then the one due longest, then the earlier on the rack.
    const auto isBefore = [](const OnTheRack& one, const OnTheRack& other) {
        return std::tuple(one.peel != Peel::Warm, one.left) <
               std::tuple(other.peel != Peel::Warm, other.left);
    };
    const OnTheRack* first = nullptr;
    for (const OnTheRack& entry : rack)
        if (entry.isDue() && (!first || isBefore(entry, *first)))
            first = &entry;
    return first;
}

const OnTheRack* firstToEnd(std::span<const OnTheRack> rack) {
    const OnTheRack* first = nullptr;
    for (const OnTheRack& entry : rack)
        if (!first || std::tuple(!entry.isKnown, entry.left) < std::tuple(!first->isKnown, first->left))
            first = &entry;
    return first;
}

} // namespace

std::optional<GarmentId> dueOnRack(std::span<const OnTheRack> rack) {
    const OnTheRack* due = firstDue(rack);
    return due ? std::optional{due->garment} : std::nullopt;
}

NextAtPress nextAtPress(const AtThePress& press) {
    using Kind = NextAtPress::Kind;
    const OnTheRack* due = firstDue(press.rack);
    if (press.inHand && (press.isUnderPlaten || !due || due->peel != Peel::Warm))
        return {Kind::GoOn, press.inHand};
    if (due)
        return {Kind::BringBack, due->garment};
    if (press.planned)
        return {Kind::TakeUp, press.planned};
    if (const OnTheRack* first = firstToEnd(press.rack))
        return {Kind::AwaitRack, first->garment};
    return {};
}

} // namespace holdfast
