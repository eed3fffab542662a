// SPDX-License-Identifier: GPL-3.0-or-later
// The rows of the large shop. Garments and decals go in before their order, so that the order's card is
// written once; references are checked at the end instead of at each row.

#include "db/sqlite/connection.h"
#include "db/sqlite/transaction.h"
#include "tests/bench/large_shop.h"

#include <array>
#include <cmath>
#include <map>
#include <stdexcept>
#include <string>

namespace holdfast::bench {
namespace {

using db::Connection;
using db::Query;

constexpr int kCustomers = 7'000;
constexpr int kStyles = 8;
constexpr int kColours = 6;
constexpr int kFilms = 12;
constexpr int kRolls = 60;
constexpr int kStepsEach = 12;
constexpr std::int64_t kWashedLots = 1'000; // ids: kWashedLots + style × 10 + colour
constexpr std::int64_t kUnwashedLots = 2'000;
constexpr std::int64_t kLotsUsedUp = 100'000;
constexpr std::int64_t kRollsUsedUp = 200'000;
constexpr std::int64_t kUnitsALot = 24;
constexpr std::int64_t kCutsARoll = 90;
constexpr std::int64_t kCutLength = 260; // mm
constexpr std::int64_t kFirstOrderId = 1'000'000;
constexpr std::int64_t kFirstGarmentId = 2'000'000;

constexpr std::array kBeginnings{"Am",  "Bro", "Cor", "Dil", "El", "Fen", "Gre", "Han", "Id",  "Jo",
                                 "Kes", "Low", "Mar", "No",  "Os", "Pet", "Ru",  "Sun", "Tam", "Wil"};
constexpr std::array kEndings{"a", "nagh", "in", "ys", "speth", "wick", "ta", "ne", "ris", "ry"};
constexpr std::array kFamilies{"Whitlock", "Tully", "Dace",      "Okafor",  "Rowe",    "Oakes",
                               "Ashwell",  "Birk",  "Pell",      "Fenn",    "Tamsett", "Holt",
                               "Sandling", "Quill", "Castellan", "Solheim", "Varga"};
constexpr std::array kStyleNames{"Tee", "Long sleeve", "Zip hoodie", "Tote",
                                 "Bib", "Bodysuit",    "Cap",        "Apron"};
constexpr std::array kOutlines{"tee", "long-sleeve", "hoodie", "tote", "bib", "bodysuit", "cap", "apron"};
constexpr std::array kColourNames{"Fog", "Ink", "Moss", "Brick", "Chalk", "Slate"};
constexpr std::array kShades{"Dusk",    "Oyster",  "Samphire", "Chalk",   "Gorse",   "Slack tide",
                             "Rosehip", "Ink-cap", "Sandbar",  "Bittern", "Moonlit", "Brass"};
constexpr std::array kArtworks{"heron", "tern", "boat", "fish", "waves", "samphire", "thimble"};
constexpr const char* kFairName = "Saltmarsh Makers’ Market";
constexpr std::array kFaults{"edge-lifts", "came-off", "cracked", "bubbled", "not-as-ordered"};
constexpr std::array kTemperatures{130.0, 150.0, 160.0};

template <class List>
const char* pick(const List& list, std::int64_t at) {
    return list[static_cast<std::size_t>(at) % list.size()];
}

// Spreads numbers, the same each time.
std::int64_t spread(std::int64_t number, std::int64_t below) {
    auto mixed = static_cast<std::uint64_t>(number) * 0x9E3779B97F4A7C15u;
    mixed ^= mixed >> 29;
    return static_cast<std::int64_t>(mixed % static_cast<std::uint64_t>(below));
}

// What an order's garments are like: all handed over, or open at one of these stages.
enum class State { HandedOver, Ready, ToCut, ToWash, NoBlank, Pressed };

State stateOf(int order, int orders) {
    const int open = order - (orders - kOpenOrders);
    if (open < 0)
        return State::HandedOver;
    if (open < kReadyOrders)
        return State::Ready;
    constexpr std::array rest{State::ToCut, State::ToWash, State::NoBlank, State::Pressed};
    return rest[static_cast<std::size_t>(open) % rest.size()];
}

class Rows {
public:
    Rows(Connection& connection, int orders)
        : m_connection(connection)
        , m_now(largeShopNow())
        , m_orders(orders)
        , m_betweenOrders(Hours{7} * kOrders / orders) {}

    void write() {
        writeStock();
        writeClimate();
        for (int customer = 1; customer <= kCustomers; ++customer)
            m_connection.run("INSERT INTO customer (id, name, phone) VALUES (?1, ?2, ?3)", customer,
                             std::string(pick(kBeginnings, customer)) + pick(kEndings, customer / 20) + " " +
                                 pick(kFamilies, customer / 7),
                             "07700 9" + std::to_string(10'000 + customer));
        writeFairs();
        for (int order = 0; order < m_orders; ++order)
            writeOrder(order);
        m_connection.run("UPDATE seat_here SET next_order_number = ?1", m_orders + 1);
    }

private:
    Instant takenAt(int order) const { return m_now.instant - m_betweenOrders * (m_orders - order); }

    void writeStock() {
        for (int style = 1; style <= kStyles; ++style) {
            m_connection.run(
                "INSERT INTO blank_style (id, name, outline, weight_g, cost_minor, label_read_on, "
                "highest_safe_c, care_wash_c, care_iron_c, law_checked_by) "
                "VALUES (?1, ?2, ?3, 180, 450, '2020-01-01', 200.0, 40, 150, 'the maker')",
                style, pick(kStyleNames, style - 1), pick(kOutlines, style - 1));
            m_connection.run("INSERT INTO style_size VALUES (?1, 1, 'M')", style);
            m_connection.run("INSERT INTO style_fibre VALUES (?1, 'cotton', 100)", style);
            for (int colour = 0; colour < kColours; ++colour)
                writeColour(style, colour);
        }
        for (int film = 0; film < kFilms; ++film)
            m_connection.run("INSERT INTO film (id, finish, shade, rgb, recipe_c, dwell_s, cool_s, "
                             "recipe_confirmed_by, shelf_life_days, cost_per_metre) "
                             "VALUES (?1, 'Marram Soft', ?2, 3425658, ?3, 12, 40, 'the maker', 730, 1150)",
                             film + 1, pick(kShades, film),
                             kTemperatures[static_cast<std::size_t>(film) % kTemperatures.size()]);
        for (int roll = 1; roll <= kRolls; ++roll)
            writeRoll(roll);
        m_connection.run("INSERT INTO press (id, name, platen_width_mm, platen_height_mm, heats_per_minute, "
                         "cools_per_minute, tolerance_c, even_within_c, check_every_days) "
                         "VALUES (1, 'Bench press', 380, 380, 10.0, 5.0, 3.0, 6.0, 30)");
        m_connection.run("INSERT INTO press_check VALUES (1, 1, ?1, 150.0, 'the maker')",
                         m_now.instant - Hours{30});
        m_connection.run("INSERT INTO press_check_reading VALUES (1, 1, 150.0)");
    }

    void writeColour(int style, int colour) {
        const std::int64_t id = style * 10 + colour;
        m_connection.run("INSERT INTO style_colour VALUES (?1, ?2, ?3, ?4, 6714700)", id, style, colour + 1,
                         pick(kColourNames, colour));
        m_connection.run("INSERT INTO wash_load VALUES (?1, ?2, 'mild', 0, 30.0, 'line', 0, ?3)", id,
                         m_now.instant - Hours{60}, m_now.instant - Hours{40});
        for (const std::int64_t lot : {kWashedLots + id, kUnwashedLots + id}) {
            const bool isWashed = lot < kUnwashedLots;
            m_connection.run(
                "INSERT INTO blank_lot (id, style_id, size, colour_id, received_on, last_load_id) "
                "VALUES (?1, ?2, 'M', ?3, ?4, ?5)",
                lot, style, id, m_now.today() - Days{9},
                isWashed ? std::optional<std::int64_t>{id} : std::nullopt);
            m_connection.run("INSERT INTO lot_move VALUES (?1, ?1, ?2, 60, 'received', NULL)", lot,
                             m_now.instant - Hours{200});
        }
    }

    void writeRoll(int roll) {
        const LocalDate received = m_now.today() - Days{5 + roll % 90};
        m_connection.run("INSERT INTO film_roll (id, number, film_id, width_mm, received_on) "
                         "VALUES (?1, ?1, ?2, 500, ?3)",
                         roll, 1 + roll % kFilms, received);
        m_connection.run("INSERT INTO roll_stay VALUES (?1, ?1, ?2, ?3)", roll, 1 + roll % 2,
                         m_now.toInstant(LocalTime{received}));
        m_connection.run("INSERT INTO roll_move VALUES (?1, ?1, ?2, 25000, 'received', 'received')", roll,
                         m_now.toInstant(LocalTime{received}));
    }

    // Two places, three months, every two hours.
    void writeClimate() {
        for (const int place : {1, 2}) {
            m_connection.run("INSERT INTO storage_place VALUES (?1, ?2)", place,
                             place == 1 ? "Film shelf" : "Back room shelf");
            for (int at = 0; at < 92 * 12; ++at)
                m_connection.run("INSERT INTO climate_reading VALUES (?1, ?2, ?3, ?4)", place,
                                 m_now.instant - Hours{2 * at}, 19 + std::sin(at * 0.52),
                                 42 + 4 * std::sin(at * 0.05));
        }
    }

    // Of every second month the first ten days, since the first order was taken.
    void writeFairs() {
        const auto first = std::chrono::year_month_day{dateOf(m_now.toLocal(takenAt(0)))};
        std::int64_t id = 0;
        for (auto month = first.year() / first.month(); LocalDate{month / 10} < m_now.today();
             month += std::chrono::months{2})
            m_connection.run("INSERT INTO fair (id, name, first_day, last_day, opens_min, closes_min, "
                             "stall_minor, other_minor) VALUES (?1, ?2, ?3, ?4, 600, 960, 4500, 1200)",
                             ++id, kFairName, LocalDate{month / 1}, LocalDate{month / 10});
    }

    void writeOrder(int order) {
        const std::int64_t id = kFirstOrderId + order;
        const State state = stateOf(order, m_orders);
        for (int position = 1; position <= kGarmentsEach; ++position)
            writeGarment(order, position, state);
        const bool isOpen = state != State::HandedOver;
        const LocalTime promised = isOpen
                                       ? LocalTime{m_now.today()} + Days{1 + order % 14} + Hours{15}
                                       : std::chrono::floor<Minutes>(m_now.toLocal(takenAt(order) + Days{8}));
        m_connection.run("INSERT INTO money_move VALUES (?1, ?2, ?3, 2000, 'deposit', 'cash')", id * 2, id,
                         takenAt(order));
        if (!isOpen)
            m_connection.run("INSERT INTO money_move VALUES (?1, ?2, ?3, 5500, 'payment', 'card')",
                             id * 2 + 1, id, takenAt(order) + Days{8});
        m_connection.run("INSERT INTO shop_order (id, number, customer_id, state, taken_at, taken_at_place, "
                         "promised, handed_over_at) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
                         id, order + 1, 1 + spread(order, kCustomers), isOpen ? "confirmed" : "handed-over",
                         takenAt(order), order % 3 == 0 ? "workshop" : kFairName, promised,
                         isOpen ? std::nullopt : std::optional{takenAt(order) + Days{8}});
    }

    void writeGarment(int order, int position, State state) {
        const std::int64_t id = kFirstGarmentId + order * kGarmentsEach + position;
        const std::int64_t style = 1 + spread(id, kStyles);
        const std::int64_t colour = style * 10 + spread(id * 7, kColours);
        std::optional<std::int64_t> lot = kWashedLots + colour;
        if (state == State::ToWash)
            lot = kUnwashedLots + colour;
        if (state == State::NoBlank)
            lot.reset();
        if (state == State::HandedOver)
            lot = lotUsedUp(style, colour, takenAt(order));
        m_connection.run("INSERT INTO garment (id, order_id, position, style_id, size, colour_id, lot_id, "
                         "price_minor, handed_over_at) VALUES (?1, ?2, ?3, ?4, 'M', ?5, ?6, 2500, ?7)",
                         id, kFirstOrderId + order, position, style, colour, lot,
                         state == State::HandedOver ? std::optional{takenAt(order) + Days{8}} : std::nullopt);
        writeDecal(id, order, state);
        if (state == State::HandedOver) {
            writeSteps(id, takenAt(order) + Days{5});
            writeClaim(id, takenAt(order) + Days{8});
            m_connection.run("INSERT INTO lot_move VALUES (?1, ?2, ?3, -1, 'pressed', ?1)", id, *lot,
                             takenAt(order) + Days{5});
        } else if (state == State::Pressed)
            writeLastSteps(id);
    }

    void writeDecal(std::int64_t garment, int order, State state) {
        const bool isCut = state != State::ToCut && state != State::NoBlank;
        const std::int64_t film = 1 + spread(garment * 3, kFilms);
        // Rolls on the shelf follow the films in turn: the roll of this number is of this film.
        const std::int64_t roll = state == State::HandedOver ? rollUsedUp(film, takenAt(order))
                                  : film == 1                ? std::int64_t{kFilms}
                                                             : film - 1;
        const bool isName = garment % 5 == 0;
        using Text = std::optional<std::string>;
        m_connection.run(
            "INSERT INTO decal (id, garment_id, film_id, artwork, wording, face, placement, below_mm, "
            "aside_mm, "
            "width_mm, height_mm, layer, confirmed_by, cut_roll_id, cut_at) "
            "VALUES (?1, ?1, ?2, ?3, ?4, ?5, 'chest', 75, 0, ?8, 240, 1, 'at the table', ?6, ?7)",
            garment, film, isName ? Text{} : Text{pick(kArtworks, garment)},
            isName ? Text{pick(kBeginnings, garment / 5)} : Text{}, isName ? Text{"book-serif"} : Text{},
            isCut ? std::optional{roll} : std::nullopt,
            isCut ? std::optional{takenAt(order) + Hours{1}} : std::nullopt,
            // Of the open ones all are alike, so that the walk is the same in every shop.
            state == State::HandedOver ? 100 + spread(garment * 5, 180) : 180);
        if (!isCut)
            return;
        m_connection.run("INSERT INTO roll_move VALUES (?1, ?2, ?3, ?4, 'cut', 'cut')", garment, roll,
                         takenAt(order) + Hours{1}, -kCutLength);
    }

    // Out of a lot of two dozen that were bought and washed for it, the last of which is used up with it.
    std::int64_t lotUsedUp(std::int64_t style, std::int64_t colour, Instant at) {
        Stock& stock = m_lots[colour];
        if (stock.left == 0) {
            stock = {kLotsUsedUp + ++m_lotsUsedUp, kUnitsALot};
            m_connection.run(
                "INSERT INTO blank_lot (id, style_id, size, colour_id, received_on, last_load_id) "
                "VALUES (?1, ?2, 'M', ?3, ?4, ?3)",
                stock.id, style, colour, dateOf(m_now.toLocal(at)));
            m_connection.run("INSERT INTO lot_move VALUES (?1, ?1, ?2, ?3, 'received', NULL)", stock.id, at,
                             kUnitsALot);
        }
        --stock.left;
        return stock.id;
    }

    // The same of a roll, of which the end is thrown away.
    std::int64_t rollUsedUp(std::int64_t film, Instant at) {
        Stock& stock = m_rolls[film];
        if (stock.left == 0) {
            stock = {kRollsUsedUp + ++m_rollsUsedUp, kCutsARoll};
            m_connection.run("INSERT INTO film_roll (id, number, film_id, width_mm, received_on, state) "
                             "VALUES (?1, ?1 - ?2, ?3, 500, ?4, 'used-up')",
                             stock.id, kRollsUsedUp - 100, film, dateOf(m_now.toLocal(at)));
            m_connection.run("INSERT INTO roll_move VALUES (?1, ?1, ?2, 25000, 'received', 'received')",
                             stock.id, at);
            m_connection.run("INSERT INTO roll_move VALUES (?1, ?2, ?3, ?4, 'used up', 'used-up')",
                             stock.id + 50'000, stock.id, at + Days{60}, kCutsARoll * kCutLength - 25'000);
        }
        --stock.left;
        return stock.id;
    }

    // One garment in fifty comes back.
    void writeClaim(std::int64_t garment, Instant handedOver) {
        if (spread(garment * 11, 50) != 0)
            return;
        const LocalDate told =
            std::min(dateOf(m_now.toLocal(handedOver)) + Days{1 + spread(garment * 13, 400)}, m_now.today());
        m_connection.run("INSERT INTO claim (id, garment_id, told_on, fault, answer, answered_on) "
                         "VALUES (?1, ?1, ?2, ?3, 'advised', ?2)",
                         garment, told, pick(kFaults, garment / 50));
    }

    void writeStep(std::int64_t garment, const std::string& key, Instant begins, Instant ends) {
        m_connection.run("INSERT INTO press_step VALUES (?1, ?2, 1, ?3, 1, ?4, ?5)", ++m_lastStep, garment,
                         key, begins, ends);
    }

    void writeSteps(std::int64_t garment, Instant at) {
        constexpr std::array<const char*, kStepsEach> keys{
            "read-tag-1", "lint-roll-1",    "preheat-1",     "place-1", "press-1",     "cool-1",
            "peel-1",     "finish-front-1", "finish-back-1", "turn-1",  "way-round-1", "look-1"};
        for (std::size_t step = 0; step < keys.size(); ++step)
            writeStep(garment, keys[step], at + Seconds{20} * static_cast<std::int64_t>(step),
                      at + Seconds{20} * static_cast<std::int64_t>(step + 1));
    }

    void writeLastSteps(std::int64_t garment) {
        const Instant at = m_now.instant - Hours{16};
        writeStep(garment, "press-1", at, at + Seconds{22});
        writeStep(garment, "look-1", at + Seconds{120}, at + Seconds{130});
    }

    Connection& m_connection;
    Now m_now;
    int m_orders;
    Seconds m_betweenOrders;
    std::int64_t m_lastStep = 0;
    struct Stock {
        std::int64_t id = 0;
        std::int64_t left = 0;
    };
    std::map<std::int64_t, Stock> m_lots;  // in use, by colour
    std::map<std::int64_t, Stock> m_rolls; // by film
    std::int64_t m_lotsUsedUp = 0;
    std::int64_t m_rollsUsedUp = 0;
};

} // namespace

Now largeShopNow() {
    return {std::chrono::sys_days{std::chrono::year{2026} / 11 / 11} + Minutes{8 * 60 + 30}, Seconds{0}};
}

void makeLargeShop(const std::filesystem::path& path, int orders) {
    {
        auto created = db::Shop::create(path, [] { return largeShopNow().instant; });
        if (!created.ok())
            throw std::runtime_error(created.error().message.english());
    }
    Connection connection = Connection::open(path, db::Access::ReadWrite);
    connection.script("PRAGMA foreign_keys = OFF; PRAGMA synchronous = OFF;");
    db::Transaction transaction{connection};
    Rows{connection, orders}.write();
    transaction.commit();
    if (connection.query("PRAGMA foreign_key_check").step())
        throw std::runtime_error("The large shop has rows that belong to nothing.");
    connection.script("PRAGMA wal_checkpoint(TRUNCATE);");
}

} // namespace holdfast::bench
