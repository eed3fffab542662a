// SPDX-License-Identifier: GPL-3.0-or-later
// What is typed into the order book, against a plain look at every order: random shops, random words, every
// filter and sort, page by page. The rules are those that order_search.h says.
#include "core/trade/folded.h"
#include "core/trade/phone_number.h"
#include "db/tables/order_book.h"
#include "tests/db/small_shop.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <random>
#include <set>

namespace holdfast::db {
namespace {

constexpr std::array kFirstNames{"Odile", "Teo", "Sunniva", "Amabel", "Ossian"};
constexpr std::array kLastNames{"Farrant", "Lindqvist", "Okafor 2", "Tully", "Åkesson"};
constexpr std::array kNotes{"", "fold 077", "ring 12 first", "for the 421st", "no bag"};
// Typed as well as drawn phones, so that most of them are somewhere.
constexpr std::array kPhoneBeginnings{"07700 9", "07700-900", "+44 (0)7700 9", "0770 09", "912", "12 "};

struct PlainOrder {
    std::int64_t id = 0;
    std::int64_t number = 0;
    std::string state;
    std::string promised;
    bool isOwing = false;
    std::vector<std::string> words; // of the number, the customer, the phone and all else that is looked at
    PhoneNumber phone;
};

bool isAllDigits(std::string_view text) {
    return std::ranges::all_of(text, [](char each) { return each >= '0' && each <= '9'; });
}

std::vector<std::string> plainWords(std::string_view text) {
    std::vector<std::string> words;
    bool isInWord = false;
    for (const char each : folded(text)) {
        const bool isPart =
            static_cast<unsigned char>(each) >= 0x80 || std::isalnum(static_cast<unsigned char>(each));
        if (isPart && !isInWord)
            words.emplace_back();
        if (isPart)
            words.back() += each;
        isInWord = isPart;
    }
    return words;
}

bool isFoundBy(const PlainOrder& order, const std::string& word) {
    const bool isNumber = isAllDigits(word);
    if (std::ranges::any_of(order.words, [&](const std::string& each) {
            const std::size_t at = each.find(word);
            return at == 0 || (at != std::string::npos && !isNumber && word.size() >= 3);
        }))
        return true;
    return isNumber && word.size() >= 3 && isPartOfPhone(readPhone(word), order.phone);
}

// Groups of digits next to each other are one phone number, or else words; what is part of one is tested in
// core/phone_number_test.cpp.
bool isFoundByAll(const PlainOrder& order, const std::vector<std::string>& words) {
    for (std::size_t at = 0; at < words.size();) {
        std::size_t end = at;
        std::string run;
        bool isEachFound = true;
        for (; end < words.size() && isAllDigits(words[end]); ++end) {
            run += words[end];
            isEachFound = isEachFound && isFoundBy(order, words[end]);
        }
        if (end == at)
            isEachFound = isFoundBy(order, words[end++]);
        const bool isPhone = run.size() >= 6 && isPartOfPhone(readPhone(run), order.phone);
        if (!isEachFound && !isPhone)
            return false;
        at = end;
    }
    return true;
}

class SearchingByChance : public SmallShop {
protected:
    template <class List>
    std::string pick(const List& list) {
        return list[draw(static_cast<int>(list.size()))];
    }
    std::size_t draw(int below) {
        return static_cast<std::size_t>(std::uniform_int_distribution<int>{0, below - 1}(m_chance));
    }
    std::string aPhone() {
        return draw(4) == 0 ? "" : pick(kPhoneBeginnings) + std::to_string(draw(4) == 0 ? 421 : draw(3000));
    }

    void takeAny() {
        auto draft = aDraft();
        draft.customerName = pick(kFirstNames) + " " + pick(kLastNames);
        draft.customerPhone = aPhone();
        draft.promised = inDays(1 + static_cast<int>(draw(20)));
        draft.garments[0].decals[0].content = Wording{pick(kFirstNames)};
        draft.note = pick(kNotes);
        const OrderTaken taken = take(draft);
        const std::size_t then = draw(4);
        if (then == 0) {
            ASSERT_TRUE(cancelOrder(shop(), taken.id, "changed mind").ok());
        } else if (then == 1) {
            const Money price = draft.garments[0].price;
            ASSERT_TRUE(moveMoney(shop(), taken.id, MoneyKind::Payment, price, PaidHow::Cash).ok());
        }
    }

    // Out of the tables that actions write, and not out of the cards.
    std::vector<PlainOrder> plainOrders() {
        std::vector<PlainOrder> orders;
        Query rows{connection(),
                   "SELECT shop_order.id, number, state, promised, (SELECT SUM(price_minor) FROM garment "
                   "WHERE order_id = shop_order.id) > (SELECT COALESCE(SUM(minor), 0) FROM money_move WHERE "
                   "order_id = shop_order.id), customer.phone, number || ' ' || customer.name || ' ' || "
                   "customer.phone || ' ' || taken_at_place || ' ' || shop_order.note || ' ' || (SELECT "
                   "group_concat(blank_style.name || ' ' || style_colour.name || ' ' || "
                   "COALESCE(decal.wording, decal.artwork) || ' ' || film.shade, ' ') FROM garment JOIN "
                   "blank_style ON blank_style.id = garment.style_id JOIN style_colour ON style_colour.id = "
                   "colour_id JOIN decal ON decal.garment_id = garment.id JOIN film ON film.id = film_id "
                   "WHERE order_id = shop_order.id) FROM shop_order JOIN customer ON customer.id = "
                   "customer_id"};
        while (rows.step()) {
            PlainOrder order{rows.integer(0),        rows.integer(1),      rows.text(2),
                             rows.text(3),           rows.integer(4) != 0, plainWords(rows.text(6)),
                             readPhone(rows.text(5))};
            orders.push_back(std::move(order));
        }
        return orders;
    }

    // A part of a word that is in the shop, or digits of a phone with any signs between them.
    std::string aWord(const std::vector<PlainOrder>& orders) {
        const PlainOrder& order = orders[draw(static_cast<int>(orders.size()))];
        if (draw(3) == 0 && order.phone.digits.size() >= 3) {
            const std::size_t from = draw(static_cast<int>(order.phone.digits.size()) - 2);
            return order.phone.digits.substr(draw(2) == 0 ? 0 : from, 1 + draw(8));
        }
        const std::string& word = order.words[draw(static_cast<int>(order.words.size()))];
        const std::size_t length = 1 + draw(static_cast<int>(word.size()));
        const bool mayBeInside = length >= 3 && !isAllDigits(word);
        const std::string part =
            word.substr(mayBeInside ? draw(static_cast<int>(word.size() - length) + 1) : 0, length);
        // No letter is cut in half.
        return std::ranges::any_of(part, [](char each) { return static_cast<unsigned char>(each) >= 0x80; })
                   ? word
                   : part;
    }

    static bool isUnder(const PlainOrder& order, OrderFilter filter) {
        switch (filter) {
        case OrderFilter::Open:
            return order.state == "confirmed" || order.state == "quoted";
        case OrderFilter::Owing:
            return order.isOwing && order.state != "cancelled";
        case OrderFilter::HandedOver:
            return order.state == "handed-over";
        case OrderFilter::All:
            break;
        }
        return true;
    }

    static std::vector<std::int64_t> plainlyFound(const std::vector<PlainOrder>& orders,
                                                  const std::string& typed, OrderFilter filter,
                                                  OrderSort sort) {
        const auto words = plainWords(typed);
        std::vector<PlainOrder> found;
        std::ranges::copy_if(orders, std::back_inserter(found), [&](const PlainOrder& order) {
            return isUnder(order, filter) && isFoundByAll(order, words);
        });
        // The order of the number that was typed is the first of the newest.
        const bool isNumber = words.size() == 1 && isAllDigits(words[0]);
        const std::int64_t number = isNumber ? std::stoll(words[0]) : -1;
        std::ranges::sort(found, [&](const PlainOrder& one, const PlainOrder& other) {
            if (sort == OrderSort::Promise)
                return std::tie(one.promised, one.id) < std::tie(other.promised, other.id);
            return std::tuple(one.number == number, one.id) > std::tuple(other.number == number, other.id);
        });
        std::vector<std::int64_t> ids;
        for (const PlainOrder& order : found)
            ids.push_back(order.id);
        return ids;
    }

    std::vector<std::int64_t> foundInPages(const OrderQuery& wanted, OrderFilter filter, OrderSort sort,
                                           int most) {
        std::vector<std::int64_t> ids;
        for (bool isEnd = false; !isEnd;) {
            const auto page =
                findOrders(connection(), wanted, filter, most, static_cast<int>(ids.size()), sort);
            for (const OrderLine& line : page)
                ids.push_back(line.id.value);
            isEnd = std::ssize(page) < most;
        }
        return ids;
    }

    // As the lists of what is held and what came back ask for it: any orders of the shop.
    void expectSameAmong(const OrderQuery& wanted, std::vector<std::int64_t> found) {
        std::vector<OrderId> some;
        std::erase_if(found, [&](std::int64_t id) {
            const bool isLeftOut = draw(2) == 0;
            if (!isLeftOut)
                some.push_back(OrderId{id});
            return isLeftOut;
        });
        std::ranges::sort(some);
        std::vector<std::int64_t> among;
        for (const OrderLine& line : findAmong(connection(), wanted, some, OrderSort::Newest))
            among.push_back(line.id.value);
        EXPECT_EQ(among, found);
    }

    void typeAnything(const std::vector<PlainOrder>& orders) {
        std::string typed = aWord(orders);
        for (std::size_t more = draw(3); more > 0; --more)
            typed += " " + aWord(orders);
        const OrderQuery wanted{connection(), typed};
        for (const OrderFilter filter : {OrderFilter::All, OrderFilter::Open, OrderFilter::Owing}) {
            for (const OrderSort sort : {OrderSort::Newest, OrderSort::Promise})
                ASSERT_EQ(foundInPages(wanted, filter, sort, 1 + static_cast<int>(draw(7))),
                          plainlyFound(orders, typed, filter, sort))
                    << '"' << typed << "\" under " << static_cast<int>(filter) << " by "
                    << static_cast<int>(sort);
            ASSERT_EQ(countOrders(connection(), wanted, filter),
                      std::ssize(plainlyFound(orders, typed, filter, OrderSort::Newest)))
                << typed;
        }
        expectSameAmong(wanted, plainlyFound(orders, typed, OrderFilter::All, OrderSort::Newest));
        m_found += plainlyFound(orders, typed, OrderFilter::All, OrderSort::Newest).size();
        m_byDigits += std::ranges::any_of(plainWords(typed), isAllDigits) ? 1U : 0U;
    }

    void typeMuch() {
        const std::vector<PlainOrder> orders = plainOrders();
        for (int each = 0; each < 40 && !HasFatalFailure(); ++each)
            typeAnything(orders);
    }

    std::mt19937 m_chance{20'261'130};
    std::size_t m_found = 0;
    std::size_t m_byDigits = 0;
};

TEST_F(SearchingByChance, IsThePlainLookAtEveryOrder) {
    for (int round = 0; round < 6; ++round) {
        for (int more = 0; more < 12; ++more)
            takeAny();
        typeMuch();
        // What is kept of the shop is no longer right after this.
        const CustomerId customer{number("SELECT MAX(customer_id) FROM shop_order")};
        ASSERT_TRUE(shop().act([&](Writer& writer) -> Result<Done> {
            writer.connection().run("UPDATE customer SET phone = ?1 WHERE id = ?2", aPhone(), customer);
            writer.describe(said("Wrote down another phone number"));
            return Done{};
        }));
        typeMuch();
        ASSERT_TRUE(shop().undo(shop().recent(1).front().id).ok());
    }
    EXPECT_GT(m_found, 1'000U);
    EXPECT_GT(m_byDigits, 200U);
}

} // namespace
} // namespace holdfast::db
