// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/csv/order_file_reading.h"

#include "core/csv/csv.h"
#include "core/orders/order_change.h"
#include "core/orders/order_sum.h"
#include "core/shop/promises_in_turn.h"
#include "core/trade/folded.h"
#include "core/trade/limits.h"
#include "db/csv/order_file_lines.h"
#include "db/tables/facts.h"
#include "db/tables/order_file_rows.h"

#include <algorithm>
#include <set>

namespace holdfast::db {

namespace {

using Columns = std::map<std::string, std::size_t, std::less<>>;

Result<CsvRecord> headOf(CsvReader& reader) {
    auto head = reader.next();
    if (!head)
        return head.error();
    if (!*head)
        return plainError(said("The file is empty."));
    std::set<std::string> seen;
    for (std::string& heading : (*head)->fields) {
        heading = unguarded(trimmed(heading));
        if (!heading.empty() && !seen.insert(heading).second)
            return fieldError("columns",
                              said("The heading “{heading}” is there twice.", {{"heading", heading}}));
    }
    return std::move(**head);
}

// Without the ids under which they were taken: like them, and not they.
std::map<GarmentId, GarmentDraft> likesOf(Connection& connection, const OrderFileNaming& naming) {
    std::set<OrderId> orders;
    for (const auto& [item, garment] : naming.items)
        if (const auto order = orderOfGarment(connection, garment))
            orders.insert(*order);
    const std::vector<OrderId> all(orders.begin(), orders.end());
    const ShopFacts facts = loadFactsOf(connection, all);
    std::map<GarmentId, GarmentDraft> likes;
    for (const OrderId order : all) {
        if (!facts.orders.find(order))
            continue;
        for (GarmentDraft garment : draftOf(facts, order).garments) {
            const GarmentId id = *std::exchange(garment.taken, std::nullopt);
            for (DecalDraft& decal : garment.decals)
                decal.taken.reset();
            likes.emplace(id, std::move(garment));
        }
    }
    return likes;
}

// An order as its lines are read.
struct Gathered {
    FiledOrder order;
    SaidOfOrder said;
    std::size_t firstLine = 0; // of the file
    CsvRecord paidIn;          // the line that says what is paid
    bool isWrong = false;
    bool isUnconfirmed = false;
};

class OrdersReader {
public:
    OrdersReader(Connection& connection, const OrderFileNaming& naming, const ReckonedShop& shop,
                 const Letter& letter)
        : m_shop(shop)
        , m_likes(likesOf(connection, naming))
        , m_known(referencesOf(connection, trimmed(naming.shop)))
        , m_lines(naming, m_likes, shop, letter)
        , m_promises(shop) {
        m_read.naming = naming;
    }

    Result<Done> readLines(CsvReader& reader, const CsvRecord& head,
                           const std::function<bool(double)>& goesOn) {
        for (std::size_t at = 0; at < head.fields.size(); ++at)
            m_columns.emplace(head.fields[at], at);
        m_row.emplace(m_columns, m_numbers, m_shop.facts.settings.currency);
        for (;;) {
            auto record = reader.next();
            if (!record)
                return record.error();
            if (!*record)
                return Done{};
            if ((*record)->fields.size() != head.fields.size())
                return plainError(said("Line {line} has {fields} fields, the headings are {headings}.",
                                       {{"line", (*record)->line},
                                        {"fields", (*record)->fields.size()},
                                        {"headings", head.fields.size()}}));
            take(**record);
            if (goesOn && !goesOn(reader.share() / 2))
                return plainError(said("Stopped. Nothing was read."));
        }
    }

    Result<OrderFileRead> finish(const std::function<bool(double)>& goesOn) {
        for (std::size_t at = 0; at < m_orders.size(); ++at) {
            if (!m_orders[at].isWrong)
                complete(m_orders[at]);
            if (!m_orders[at].isWrong)
                m_read.orders.push_back(std::move(m_orders[at].order));
            if (goesOn &&
                !goesOn(0.5 + 0.5 * static_cast<double>(at + 1) / static_cast<double>(m_orders.size())))
                return plainError(said("Stopped. Nothing was read."));
        }
        return std::move(m_read);
    }

private:
    void take(const CsvRecord& record) {
        m_row->hold(record);
        FiledLine line = m_lines.read(*m_row);
        if (const auto known = m_known.find(line.reference); known != m_known.end()) {
            line.known = known->second;
            line.garment.reset();
            line.caution = {};
            m_read.lines.push_back(std::move(line));
            return;
        }
        const auto [place, isNew] = m_placeOf.try_emplace(line.reference, m_orders.size());
        if (isNew) {
            m_orders.push_back(
                {{line.reference, {}, {}, {}}, m_lines.saidOfOrder(*m_row), line.line, record, false, false});
        } else {
            takeAlso(m_orders[place->second], record);
        }
        Gathered& order = m_orders[place->second];
        order.order.lines.push_back(m_read.lines.size());
        order.isUnconfirmed = order.isUnconfirmed || !line.caution.empty();
        keep(order, std::move(line));
    }

    // What a further line says of its order must be what the first ones said.
    void takeAlso(Gathered& order, const CsvRecord& record) {
        const SaidOfOrder also = m_lines.saidOfOrder(*m_row);
        const auto same = [&](OrderColumn column, std::string& before, const std::string& now) {
            if (before.empty())
                before = now;
            else if (!now.empty() && now != before)
                m_row->wrong(m_lines.heading(column),
                             said("{reference} has “{before}” in line {line} and “{now}” here. Lines of one "
                                  "order must say the same.",
                                  {{"reference", order.order.reference},
                                   {"before", before},
                                   {"line", order.firstLine},
                                   {"now", now}}));
        };
        same(OrderColumn::Customer, order.said.customer, also.customer);
        same(OrderColumn::Phone, order.said.phone, also.phone);
        if (order.said.paid.empty())
            order.paidIn = record;
        same(OrderColumn::Paid, order.said.paid, also.paid);
        same(OrderColumn::Note, order.said.note, also.note);
        if (!order.said.wanted)
            order.said.wanted = also.wanted;
        else if (also.wanted && also.wanted != order.said.wanted)
            m_row->wrong(m_lines.heading(OrderColumn::Wanted),
                         said("lines of one order must ask for the same day."));
    }

    void keep(Gathered& order, FiledLine line) {
        if (m_row->whatIsWrong()) {
            line.wrong = m_row->whatIsWrong()->message;
            line.garment.reset();
            order.isWrong = true;
        }
        m_read.lines.push_back(std::move(line));
    }

    // Its first line bears what is wrong with the order as a whole.
    void refuse(Gathered& order, OrderColumn column, const Sentence& wrong, std::size_t at = 0) {
        FiledLine& line = m_read.lines[order.order.lines[at]];
        const std::string heading = m_lines.heading(column);
        line.wrong = heading.empty() ? said("Line {line}: {wrong}", {{"line", line.line}, {"wrong", wrong}})
                                     : said("Line {line}, {heading}: {wrong}",
                                            {{"line", line.line}, {"heading", heading}, {"wrong", wrong}});
        order.isWrong = true;
    }

    void complete(Gathered& order) {
        OrderDraft& draft = order.order.draft;
        draft.customerName = order.said.customer;
        draft.customerPhone = order.said.phone;
        draft.isConfirmed = !order.isUnconfirmed;
        draft.depositHow = PaidHow::Transfer;
        draft.tax = m_shop.facts.settings.prices.tax;
        std::vector<std::size_t> lineOf; // of each garment
        for (std::size_t at = 0; at < order.order.lines.size(); ++at) {
            const FiledLine& line = m_read.lines[order.order.lines[at]];
            draft.garments.insert(draft.garments.end(), line.copies, *line.garment);
            lineOf.insert(lineOf.end(), line.copies, at);
            if (draft.garments.size() > static_cast<std::size_t>(kMostCopies))
                break; // more than an order can have, which is said below
        }
        if (!isSound(order, lineOf) || !promise(order))
            return;
        addLines(order);
        writeNote(order);
        pay(order);
        if (order.isWrong)
            return;
        if (const auto checked = checkDraft(draft, m_shop.facts, m_shop.now); !checked.ok())
            refuse(order, OrderColumn::Reference, checked.error().message);
    }

    bool isSound(Gathered& order, const std::vector<std::size_t>& lineOf) {
        const OrderDraft& draft = order.order.draft;
        if (const auto customer = checkCustomerOf(draft); !customer.ok())
            refuse(order,
                   customer.error().field == "customerPhone" ? OrderColumn::Phone : OrderColumn::Customer,
                   customer.error().message);
        else if (const auto count = checkGarmentCount(draft); !count.ok())
            refuse(order, OrderColumn::Copies, count.error().message);
        for (std::size_t at = 0; at < draft.garments.size() && !order.isWrong; ++at)
            if (const auto garment = checkGarment(draft, at, m_shop.facts); !garment.ok())
                refuse(order, garment.error().field == "price" ? OrderColumn::Price : OrderColumn::Item,
                       garment.error().message, lineOf[at]);
        return !order.isWrong;
    }

    bool promise(Gathered& order) {
        std::vector<AskedGarment> asked;
        for (const GarmentDraft& garment : order.order.draft.garments)
            asked.push_back(askedFor(m_shop.facts, garment));
        const auto promise = m_promises.ask(asked);
        if (!promise.ok()) {
            refuse(order, OrderColumn::Wanted, promise.error().message);
            return false;
        }
        order.order.draft.promised = promise->readyAt;
        if (order.said.wanted) {
            order.order.wanted = answerWanted(m_shop.facts.settings, promise->readyAt, *order.said.wanted);
            order.order.draft.promised = order.order.wanted->promised;
        }
        m_promises.give(asked, order.order.draft.promised);
        return true;
    }

    // By the shop's rules only where the prices are the shop's: a web shop's prices are agreed.
    void addLines(Gathered& order) {
        if (!m_lines.heading(OrderColumn::Price).empty())
            return;
        OrderDraft& draft = order.order.draft;
        const PriceRules& rules = m_shop.facts.settings.prices;
        if (auto line = forManyLine(rules, std::ssize(draft.garments)))
            draft.lines.push_back(std::move(*line));
        const bool isKept = order.order.wanted && order.order.wanted->answer == WantedDay::Answer::Kept;
        if (isKept)
            if (auto line = rushLine(rules, order.order.wanted->day, m_shop.now.today()))
                draft.lines.push_back(std::move(*line));
    }

    // The file's own words: the reference is found by the search, and a day that cannot be kept is not lost.
    void writeNote(Gathered& order) {
        std::string& note = order.order.draft.note;
        note = m_read.naming.shop + " " + order.order.reference;
        if (order.order.wanted && order.order.wanted->answer != WantedDay::Answer::Kept)
            note += "\n" + m_lines.heading(OrderColumn::Wanted) + ": " + isoDate(order.order.wanted->day);
        if (!order.said.note.empty())
            note += "\n" + order.said.note;
        if (const auto checked = checkNote(note); !checked.ok())
            refuse(order, OrderColumn::Note, checked.error().message);
    }

    void pay(Gathered& order) {
        if (order.isWrong || order.said.paid.empty())
            return;
        m_row->hold(order.paidIn);
        order.order.draft.deposit = m_lines.paid(*m_row, order.said.paid, order.order.draft.total());
        if (m_row->whatIsWrong()) {
            m_read.lines[order.order.lines.front()].wrong = m_row->whatIsWrong()->message;
            order.isWrong = true;
        }
    }

    const ReckonedShop& m_shop;
    const std::map<GarmentId, GarmentDraft> m_likes;
    const std::map<std::string, std::int64_t> m_known;
    OrderFileRead m_read;
    OrderLineReader m_lines;
    PromisesInTurn m_promises;
    Columns m_columns;
    CsvNumbers m_numbers;
    std::optional<ImportRow> m_row;
    std::vector<Gathered> m_orders;
    std::map<std::string, std::size_t> m_placeOf;
};

} // namespace

Result<std::vector<std::string>> headingsOfOrders(std::string_view text) {
    CsvReader reader{text};
    auto head = headOf(reader);
    if (!head)
        return head.error();
    return std::move(head->fields);
}

Result<std::vector<std::string>> itemsOfOrders(std::string_view text, const std::string& heading) {
    CsvReader reader{text};
    const auto head = headOf(reader);
    if (!head)
        return head.error();
    const auto found = std::ranges::find(head->fields, heading);
    if (found == head->fields.end())
        return fieldError("columns", said("The file has no column “{heading}”.", {{"heading", heading}}));
    const auto at = static_cast<std::size_t>(found - head->fields.begin());
    std::vector<std::string> items;
    std::set<std::string> seen;
    for (;;) {
        const auto record = reader.next();
        if (!record)
            return record.error();
        if (!*record)
            return items;
        const std::string item =
            at < (*record)->fields.size() ? unguarded(trimmed((*record)->fields[at])) : "";
        if (!item.empty() && seen.insert(item).second)
            items.push_back(item);
    }
}

Result<OrderFileRead> readOrders(Connection& connection, std::string_view text, const OrderFileNaming& naming,
                                 const ReckonedShop& shop, const Letter& letter,
                                 const std::function<bool(double share)>& goesOn) {
    if (const auto sound = checkNaming(naming); !sound.ok())
        return sound.error();
    CsvReader reader{text};
    const auto head = headOf(reader);
    if (!head)
        return head.error();
    OrdersReader orders{connection, naming, shop, letter};
    if (const auto lines = orders.readLines(reader, *head, goesOn); !lines.ok())
        return lines.error();
    return orders.finish(goesOn);
}

} // namespace holdfast::db
