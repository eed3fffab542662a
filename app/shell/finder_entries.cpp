// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/finder_entries.h"

#include "app/desk/formats.h"
#include "app/desk/search_words.h"
#include "app/desk/use_by_words.h"
#include "app/shell/finder_actions.h"
#include "app/shell/finder_papers.h"
#include "app/shell/finder_stock.h"
#include "app/shell/places.h"
#include "core/shop/films_to_cut.h"
#include "db/tables/customer_page.h"
#include "db/tables/undone_orders.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <utility>

namespace holdfast::app {

namespace {

constexpr int kMostOrders = 12;
constexpr int kMostCustomers = 6;
constexpr int kNewestOrders = 4; // with nothing typed
constexpr int kAsOrders = 1;     // the best rank of a customer: that of an order
constexpr int kNearly = 3;       // the rank of what has a wrong letter: after all else

class FinderWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::FinderWords)

public:
    static QString kind(FinderKind kind) {
        switch (kind) {
        case FinderKind::Place:
            return tr("Go to");
        case FinderKind::Action:
            return tr("Action");
        case FinderKind::Order:
            return tr("Order");
        case FinderKind::Customer:
            return tr("Customer");
        case FinderKind::Roll:
            return tr("Roll");
        case FinderKind::Lot:
            return tr("Lot");
        }
        return {};
    }

    static FinderEntry order(const db::OrderLine& line, const Currency& currency, LocalDate today) {
        QString state;
        switch (line.state) {
        case OrderState::Quoted:
            state = tr("quoted");
            break;
        case OrderState::Confirmed:
            state = tr("promised %1").arg(dayNear(dateOf(line.promised), today));
            break;
        case OrderState::HandedOver:
            state = tr("handed over");
            break;
        case OrderState::Cancelled:
            state = tr("cancelled");
            break;
        }
        if (line.isUndone)
            state = tr("undone");
        if (line.isUnread)
            state = tr("cannot be read");
        QString second = tr("%n garment, %1|%n garments, %1", nullptr, howMany(line.garments)).arg(state);
        if (line.owed().minor > 0)
            second = tr("%1, %2 owed").arg(second, money(line.owed(), currency));
        SlipTarget matter;
        matter.order = line.id;
        return {.kind = FinderKind::Order,
                .title = QStringLiteral("%1  %2").arg(line.number).arg(words(line.customer)),
                .second = second,
                .iconName = QStringLiteral("order-book"),
                .shade = {},
                .keys = {},
                .target = GoTo{PlaceName::OrderBook, matter}};
    }

    static QString customerWord() { return tr("customer"); }

    static FinderEntry customer(const db::CustomerFound& found, const Currency& currency) {
        QString second = tr("%n order|%n orders", nullptr, howMany(found.orders));
        if (found.owed.minor > 0)
            second = tr("%1, %2 owed").arg(second, money(found.owed, currency));
        if (!found.customer.phone.empty())
            second = tr("%1, %2").arg(words(found.customer.phone), second);
        SlipTarget matter;
        matter.customer = found.customer.id;
        return {.kind = FinderKind::Customer,
                .title = words(found.customer.name),
                .second = second,
                .also = customerWord(),
                .iconName = QStringLiteral("person"),
                .shade = {},
                .keys = {},
                .target = AskSlip{SlipName::Customer, matter}};
    }

    static FinderEntry roll(const FilmRoll& roll, const Film& film, const RollCondition* condition,
                            LocalDate today) {
        QString second = tr("%1 left").arg(metres(roll.left));
        if (roll.state == RollState::PutAway)
            second = tr("%1, put away").arg(second);
        else if (roll.state == RollState::UsedUp)
            second = tr("used up");
        else if (condition != nullptr && condition->stripFailed)
            second = tr("%1, failed its test strip").arg(second);
        else if (condition != nullptr && condition->isPastAge(today))
            second = condition->useByIsEstimate ? tr("%1, past its estimated use-by").arg(second)
                                                : tr("%1, past its use-by").arg(second);
        else if (condition != nullptr && condition->useBy)
            second = tr("%1, use by %2").arg(second, useByInShort(*condition, today));
        SlipTarget matter;
        matter.roll = roll.id;
        matter.film = film.id;
        return {.kind = FinderKind::Roll,
                .title = QStringLiteral("%1  %2").arg(words(roll.label()), words(film.name())),
                .second = second,
                .iconName = {},
                .shade = app::colourOf(film.rgb),
                .keys = {},
                .target = GoTo{PlaceName::FilmShelf, matter}};
    }

    static FinderEntry bench(const FilmToCut& toCut, const Film& film) {
        const std::size_t waiting = toCut.waiting.size();
        SlipTarget matter;
        matter.film = film.id;
        return {.kind = FinderKind::Action,
                .title = tr("Cut %1").arg(words(film.name())),
                .second = waiting == 0 ? tr("nothing may be cut yet")
                                       : tr("%n decal waits|%n decals wait", nullptr, howMany(waiting)),
                .iconName = {},
                .shade = app::colourOf(film.rgb),
                .keys = {},
                .target = GoTo{PlaceName::CuttingBench, matter}};
    }

    static FinderEntry lot(const BlankLot& lot, const BlankStyle& style) {
        const Colour* colour = style.colour(lot.colour);
        const QString state = lot.lastLoad ? tr("%n washed", nullptr, howMany(lot.unitsLeft))
                                           : tr("%n unwashed", nullptr, howMany(lot.unitsLeft));
        SlipTarget matter;
        matter.lot = lot.id;
        matter.style = lot.style;
        matter.colour = lot.colour;
        matter.size = words(lot.size);
        return {.kind = FinderKind::Lot,
                .title = tr("%1, %2, %3")
                             .arg(words(style.name), words(lot.size),
                                  colour != nullptr ? words(colour->name) : QString()),
                .second = tr("%1, lot of %2").arg(state, date(lot.receivedOn)),
                .iconName = {},
                .shade = colour != nullptr ? app::colourOf(colour->rgb) : QColor(),
                .keys = {},
                .target = GoTo{PlaceName::BlankRail, matter}};
    }
};

// Words of letters and digits, small.
QStringList wordsIn(const QString& text) {
    QStringList found;
    QString word;
    for (const QChar letter : text.toCaseFolded()) {
        if (letter.isLetterOrNumber() || letter.isMark()) {
            word.append(letter);
        } else if (!word.isEmpty()) {
            found.append(word);
            word.clear();
        }
    }
    if (!word.isEmpty())
        found.append(word);
    return found;
}

bool beginsOneOf(const QString& typed, const QStringList& among) {
    return std::ranges::any_of(among, [&](const QString& word) { return word.startsWith(typed); });
}

// 0 is best; none: no match.
std::optional<int> rank(const FinderEntry& entry, const QStringList& typed) {
    const QStringList title = wordsIn(entry.title);
    const QStringList all = title + wordsIn(entry.second) + wordsIn(entry.also);
    bool isTitleOnly = true;
    for (const QString& word : typed) {
        if (!beginsOneOf(word, all))
            return std::nullopt;
        isTitleOnly = isTitleOnly && beginsOneOf(word, title);
    }
    const bool beginsTitle = !title.isEmpty() && !typed.isEmpty() && title.front().startsWith(typed.front());
    if (beginsTitle && isTitleOnly)
        return 0;
    return isTitleOnly ? 1 : 2;
}

bool leadsSomewhere(const FinderEntry& entry) {
    const auto* place = std::get_if<GoTo>(&entry.target);
    return place == nullptr || builtPlace(place->place) != nullptr;
}

struct Ranked {
    int rank;
    FinderEntry entry;
};

void addMatching(std::vector<Ranked>& ranked, std::vector<FinderEntry> entries, const QStringList& typed) {
    for (FinderEntry& entry : entries)
        if (const auto found = rank(entry, typed); found && leadsSomewhere(entry))
            ranked.push_back({*found, std::move(entry)});
}

std::vector<FinderEntry> rolls(const ReckonedShop& shop) {
    std::vector<FinderEntry> entries;
    for (const FilmRoll& roll : shop.facts.rolls)
        entries.push_back(FinderWords::roll(roll, shop.facts.films.at(roll.film),
                                            shop.conditions.find(roll.id), shop.now.today()));
    return entries;
}

// Films that have something to cut, to turn to them on the cutting bench.
std::vector<FinderEntry> filmsToCutNow(const ReckonedShop& shop) {
    std::vector<FinderEntry> entries;
    for (const FilmToCut& film : filmsToCut(shop))
        entries.push_back(FinderWords::bench(film, shop.facts.films.at(film.film)));
    return entries;
}

std::vector<FinderEntry> lots(const ReckonedShop& shop) {
    std::vector<FinderEntry> entries;
    for (const BlankLot& lot : shop.facts.lots)
        entries.push_back(FinderWords::lot(lot, shop.facts.styles.at(lot.style)));
    return entries;
}

struct OrdersFound {
    std::vector<db::OrderLine> lines;
    std::vector<db::CustomerFound> customers;
    bool isNearly = false;
};

// "reed customer": whoever says that a customer is meant is answered so.
QString withoutKind(const QString& typed) {
    QStringList words = typed.split(u' ', Qt::SkipEmptyParts);
    if (words.size() > 1)
        words.removeIf([](const QString& word) { return word.toLower() == FinderWords::customerWord(); });
    return words.join(u' ');
}

OrdersFound ordersFound(db::Connection& connection, const db::OrderSearch& search, const QString& typed,
                        const Now& now) {
    const db::OrderQuery wanted{connection, search};
    OrdersFound found;
    found.isNearly = wanted.spelling == db::Spelling::Near;
    found.lines = db::findOrders(connection, wanted, db::OrderFilter::All, kMostOrders);
    for (db::OrderLine& undone : db::findUndone(connection, wanted))
        if (std::ssize(found.lines) < kMostOrders)
            found.lines.push_back(std::move(undone));
    const QString named = withoutKind(typed);
    const db::OrderQuery wantedOf{connection, db::OrderSearch{searchIn(named, now)}};
    found.customers = db::customersFound(connection, wantedOf, plain(named), kMostCustomers);
    return found;
}

// The order book's own search decides which; one whose number is just what was typed comes before all else.
// Who has several orders comes before them, and whoever has one after it.
void addOrders(std::vector<Ranked>& ranked, ShopDesk& desk, const QString& typed) {
    if (builtPlace(PlaceName::OrderBook) == nullptr)
        return;
    const db::OrderSearch search{searchIn(typed, desk.now())};
    const auto found = desk.file().read(
        [&](db::Connection& connection) { return ordersFound(connection, search, typed, desk.now()); });
    if (!found.ok())
        return;
    const auto rankOf = [&](const FinderEntry& entry) {
        return found->isNearly ? kNearly : rank(entry, wordsIn(typed)).value_or(2);
    };
    const auto addCustomers = [&](bool withSeveral) {
        for (const db::CustomerFound& each : found->customers)
            if ((each.orders > 1) == withSeveral) {
                FinderEntry entry = FinderWords::customer(each, desk.currency());
                const int asFound = std::max(rankOf(entry), kAsOrders);
                ranked.push_back({asFound, std::move(entry)});
            }
    };
    addCustomers(true);
    for (const db::OrderLine& line : found->lines) {
        FinderEntry entry = FinderWords::order(line, desk.currency(), desk.now().today());
        const bool isNumber = search.isNumber() && std::to_string(line.number) == search.number();
        const int asFound = isNumber ? -1 : rankOf(entry);
        ranked.push_back({asFound, std::move(entry)});
    }
    addCustomers(false);
}

void addNewestOrders(std::vector<Ranked>& ranked, ShopDesk& desk) {
    const auto lines = desk.file().read([&](db::Connection& connection) {
        return db::findOrders(connection, {}, db::OrderFilter::All, kNewestOrders);
    });
    if (!lines.ok())
        return;
    for (const db::OrderLine& line : *lines)
        ranked.push_back({0, FinderWords::order(line, desk.currency(), desk.now().today())});
}

} // namespace

QString finderKindWords(FinderKind kind) {
    return FinderWords::kind(kind);
}

std::vector<FinderEntry> findEntries(ShopDesk& desk, const QString& typed, std::size_t limit) {
    const QStringList typedWords = wordsIn(typed);
    std::vector<Ranked> ranked;
    if (typedWords.isEmpty()) {
        addMatching(ranked, waitingEntries(desk), typedWords);
        addNewestOrders(ranked, desk);
    } else {
        addMatching(ranked, placeEntries(), typedWords);
    }
    addMatching(ranked, actionEntries(desk), typedWords);
    if (!typedWords.isEmpty()) {
        addOrders(ranked, desk, typed);
        if (!desk.awaitsClimate()) {
            addMatching(ranked, filmsToCutNow(*desk.shop()), typedWords);
            addMatching(ranked, rolls(*desk.shop()), typedWords);
        }
        addMatching(ranked, lots(*desk.shop()), typedWords);
        if (typedWords.size() > 1)
            addMatching(ranked, paperEntries(*desk.shop(), typedWords), typedWords);
        addMatching(ranked, fairEntries(desk), typedWords);
        addMatching(ranked, stockEntries(desk), typedWords);
        std::ranges::stable_sort(ranked, {}, &Ranked::rank);
    }
    std::vector<FinderEntry> found;
    for (Ranked& each : ranked)
        if (found.size() < limit)
            found.push_back(std::move(each.entry));
    return found;
}

} // namespace holdfast::app
