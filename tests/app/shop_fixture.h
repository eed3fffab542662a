// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A shop file of its own for each test, an open desk over it, and a clock that stands until it is moved. What
// is in the shop is put there by the program's own actions:
//
//     const UsualShop usual = stockUsualShop();   // a tee, a film with a roll, a press: nothing holds
//     const auto taken = takeOrder({aGarment(usual)});

#include "app/desk/shop_desk.h"
#include "core/orders/order_draft.h"
#include "db/actions/order_actions.h"

#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <QWidget>

#include <filesystem>
#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace holdfast::app::test {

using namespace std::chrono_literals;
using namespace holdfast::literals;

// Wednesday, 25 November 2026, 10:00 in the workshop, which keeps UTC.
inline constexpr Instant kMorning = std::chrono::sys_days{std::chrono::year{2026} / 11 / 25} + 10h;

class HandClock {
public:
    explicit HandClock(Instant at = kMorning);

    Clock clock() const; // shares the hands: moves with them
    Now now() const { return Now{m_hands->wall}; }

    void pass(std::chrono::milliseconds span); // the wall clock and the steady one
    void setWall(Instant at);                  // the wall clock alone: set forward or back

private:
    struct Hands {
        Instant wall;
        std::chrono::milliseconds steady{1'000'000};
        std::chrono::milliseconds sinceSecond{0};
    };
    std::shared_ptr<Hands> m_hands;
};

// The value of a result, or a failed test that says the reason, and the end of the program.
[[noreturn]] void stopBecause(const std::string& reason);
template <class T>
T valueOf(Result<T> result) {
    if (!result.ok())
        stopBecause(result.error().message.english());
    return std::move(result).value();
}

struct UsualShop {
    BlankStyleId style; // "Tee", S M L XL, label read: cotton
    ColourId moss;
    ColourId chalk;
    FilmId film; // Marram Soft, Dusk: 150 °C, 12 s, warm peel after 40 s; confirmed
    PlaceId place;
    RollId roll; // 5 m, received today
    PressId press;
    BlankLotId washed;   // 6 of M, Moss, washed and dry
    BlankLotId unwashed; // 4 of L, Moss
};

class ShopFixture : public testing::Test {
protected:
    ShopFixture();
    ~ShopFixture() override;

    ShopDesk& desk() { return *m_desk; }
    db::Shop& file() { return m_desk->file(); }
    HandClock& time() { return m_time; }
    Now now() const { return m_time.now(); }
    std::filesystem::path path() const;

    // Closes the desk and opens the same file again, as after a restart of the program. Widgets that hold the
    // desk must be gone.
    void reopen();
    void close() { m_desk.reset(); }

    // ── what the shop has ──
    BlankStyleId addStyle(const std::string& name, const std::function<void(BlankStyle&)>& change = {});
    std::vector<Colour> coloursOf(BlankStyleId style);
    FilmId addFilm(const std::string& shade, const std::function<void(Film&)>& change = {});
    PlaceId addPlace(const std::string& name); // with a reading of now: 19 °C, 44 %
    RollId receiveRoll(FilmId film, PlaceId place, Millimetres length = 5000_mm);
    PressId addPress(const std::string& name = "Bench press"); // checked today at 150 °C
    BlankLotId receiveBlanks(BlankStyleId style, const std::string& size, ColourId colour,
                             std::int64_t units);
    // The washed and dry part of the lot; its load took two days.
    BlankLotId wash(BlankLotId lot, std::int64_t units);
    UsualShop stockUsualShop();

    // ── orders ──
    GarmentDraft aGarment(const UsualShop& usual,
                          const std::string& size = "M"); // Moss, a heron on its chest
    OrderDraft anOrder(std::vector<GarmentDraft> garments, const std::string& customer = "Odile Farrant");
    db::OrderTaken takeOrder(std::vector<GarmentDraft> garments,
                             const std::string& customer = "Odile Farrant");
    std::vector<GarmentId> garmentsOf(OrderId order);
    void cut(GarmentId garment, RollId roll); // all its decals
    // Through every step of its route, each as long as it takes; the clock moves on.
    void press(GarmentId garment);
    Stage stageOf(GarmentId garment);

private:
    HandClock m_time;
    QTemporaryDir m_folder;
    std::unique_ptr<ShopDesk> m_desk;
};

// Shows the widget as a window of this size and waits until it has the keyboard.
void showWindow(QWidget& window, QSize size = {1366, 768});

// Types any text, also what is not ASCII, into whatever has the keyboard.
void typeText(const QString& text);

} // namespace holdfast::app::test
