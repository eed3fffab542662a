// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/order_book/order_pages.h"

#include "app/desk/search_words.h"
#include "db/tables/claims.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace holdfast::app {

namespace {

std::vector<OrderId> eachOnce(std::vector<OrderId> orders) {
    std::ranges::sort(orders);
    orders.erase(std::unique(orders.begin(), orders.end()), orders.end());
    return orders;
}

db::OrderFilter filterOf(BookFilter filter) {
    switch (filter) {
    case BookFilter::Open:
        return db::OrderFilter::Open;
    case BookFilter::Owing:
        return db::OrderFilter::Owing;
    case BookFilter::Held:
    case BookFilter::CameBack:
    case BookFilter::All:
        break;
    }
    return db::OrderFilter::All;
}

} // namespace

void OrderPages::look(const QString& typed, BookFilter filter, db::OrderSort sort) {
    m_filter = filter;
    m_sort = sort;
    m_readFromFile = 0;
    m_undone.clear();
    m_wanted.reset();
    const db::OrderSearch search{searchIn(typed, m_desk.now())};
    auto wanted =
        m_desk.file().read([&](db::Connection& connection) { return db::OrderQuery{connection, search}; });
    if (!m_desk.done(wanted))
        return;
    m_wanted = std::move(*wanted);
    if (filter != BookFilter::All)
        return;
    auto undone =
        m_desk.file().read([&](db::Connection& connection) { return db::findUndone(connection, *m_wanted); });
    if (m_desk.done(undone))
        m_undone = std::move(*undone);
    std::ranges::sort(m_undone,
                      [this](const auto& one, const auto& other) { return comesBefore(one, other); });
}

bool OrderPages::comesBefore(const db::OrderLine& one, const db::OrderLine& other) const {
    if (m_sort == db::OrderSort::Promise)
        return std::tuple(one.promised, one.id) < std::tuple(other.promised, other.id);
    return one.id > other.id;
}

std::vector<db::OrderLine> OrderPages::fromFile(db::Connection& connection, int most) {
    if (m_filter == BookFilter::Held || m_filter == BookFilter::CameBack) {
        if (m_readFromFile > 0)
            return {};
        return db::findAmong(connection, *m_wanted, m_filter == BookFilter::Held ? held() : cameBack(),
                             m_sort);
    }
    return db::findOrders(connection, *m_wanted, filterOf(m_filter), most, m_readFromFile, m_sort);
}

std::vector<db::OrderLine> OrderPages::next(int most) {
    if (!m_wanted)
        return {};
    auto read = m_desk.file().read([&](db::Connection& connection) { return fromFile(connection, most); });
    if (!m_desk.done(read))
        return {};
    const std::vector<db::OrderLine>& stored = *read;
    const bool isEnd = std::ssize(stored) < most;
    std::vector<db::OrderLine> page;
    std::size_t used = 0;
    while (used < stored.size() || (isEnd && !m_undone.empty())) {
        if (std::ssize(page) == most && !(m_filter == BookFilter::Held || m_filter == BookFilter::CameBack))
            break;
        // The order of the number that was typed comes first whatever its age: the file's order is kept.
        const bool isUndoneNext =
            !m_undone.empty() && (used == stored.size() || comesBefore(m_undone.front(), stored[used]));
        if (isUndoneNext) {
            page.push_back(m_undone.front());
            m_undone.erase(m_undone.begin());
        } else {
            page.push_back(stored[used++]);
        }
    }
    m_readFromFile += static_cast<int>(used);
    return page;
}

OrderPages::UnderAll OrderPages::countUnderAll() {
    if (!m_wanted)
        return {};
    const auto count = m_desk.file().read([&](db::Connection& connection) {
        return UnderAll{db::countOrders(connection, *m_wanted, db::OrderFilter::All) +
                            std::ssize(db::findUndone(connection, *m_wanted)),
                        db::countOrders(connection, *m_wanted, db::OrderFilter::HandedOver)};
    });
    return m_desk.done(count) ? *count : UnderAll{};
}

std::vector<OrderId> OrderPages::held() {
    std::vector<OrderId> held;
    const auto& shop = m_desk.shop();
    for (const auto& [id, assessment] : shop->assessments)
        if (assessment.isHeld())
            held.push_back(shop->facts.garments.at(id).order);
    return eachOnce(std::move(held));
}

std::vector<OrderId> OrderPages::cameBack() {
    const auto claims = m_desk.file().read(db::openClaims);
    if (!m_desk.done(claims))
        return {};
    std::vector<OrderId> orders;
    for (const db::OpenClaim& claim : *claims)
        orders.push_back(claim.order);
    return eachOnce(std::move(orders));
}

} // namespace holdfast::app
