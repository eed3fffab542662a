// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/first_layout.h"

namespace holdfast::app {

namespace {

// A decal without pins counts for a hundred, and one more for each pin.
constexpr std::uint64_t kCountsFor = 100;
constexpr std::uint64_t kSoonLaid = 300'000;

bool& isNothingSoonLaid() {
    static bool isNothing = false;
    return isNothing;
}

} // namespace

void setNothingIsSoonLaid(bool isNothing) {
    isNothingSoonLaid() = isNothing;
}

bool isSoonLaid(std::size_t decals, std::size_t pins) {
    return !isNothingSoonLaid() && decals * (kCountsFor + pins) <= kSoonLaid;
}

FirstLayout firstLayout(const ReckonedShop& shop, const FilmToCut& film, const NestWish& wish,
                        const std::function<bool()>& shouldStop) {
    FirstLayout layout{nestFilm(shop, film, wish, nullptr, shouldStop), std::nullopt};
    if (!wish.pins.empty() && !(shouldStop && shouldStop())) {
        NestWish free = wish;
        free.pins.clear();
        if (auto known = nestFilm(shop, film, free, nullptr, shouldStop); known.ok())
            layout.withoutPins = std::move(known).value();
    }
    return layout;
}

LayingBeside::~LayingBeside() {
    wait();
}

void LayingBeside::begin(std::shared_ptr<const ReckonedShop> shop, const FilmToCut& film,
                         const NestWish& wish) {
    drop();
    m_isLaying = true;
    m_shouldStop = false;
    m_thread = std::thread([this, number = m_number, shop = std::move(shop), film, wish] {
        const FirstLayout layout = firstLayout(*shop, film, wish, [this] { return m_shouldStop.load(); });
        QMetaObject::invokeMethod(
            this, [this, number, layout] { take(number, layout); }, Qt::QueuedConnection);
    });
}

void LayingBeside::drop() {
    wait();
    ++m_number;
    m_isLaying = false;
}

void LayingBeside::wait() {
    m_shouldStop = true;
    if (m_thread.joinable())
        m_thread.join();
}

void LayingBeside::take(int number, const FirstLayout& layout) {
    if (number != m_number)
        return;
    wait();
    m_isLaying = false;
    emit laid(layout);
}

} // namespace holdfast::app
