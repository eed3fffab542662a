// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/claim_ticket.h"

#include "app/desk/bill_words.h"
#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "core/shop/settled_day.h"
#include "core/trade/paper_code.h"

#include <QCoreApplication>
#include <QRectF>
#include <QRegularExpression>
#include <QStringList>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr QSizeF kTicketSize{148, 74};
constexpr double kTear = 108;
constexpr double kLeft = 6;
constexpr double kRight = 102;
constexpr double kStubMiddle = (kTear + kTicketSize.width()) / 2;
constexpr double kStubWidth = 34;
// The customer's half has a code of its own, so that the order opens by a scan when it is collected.
constexpr QRectF kCustomersCode{kRight - 20, 1.5, 20, 20};
constexpr double kBesideCode = kRight - 20 - kLeft - 2; // wide

// Lines of garments: one column for a few, two for many, the rest summed up in the last.
constexpr double kLinesTop = 37.6;
constexpr double kLinesHigh = 16.6;
constexpr std::size_t kOneColumn = 3;
constexpr std::size_t kMostLines = 12;
constexpr double kBetweenColumns = 6;

constexpr PaperType kTicketShop{4.8, QFont::DemiBold, true};
constexpr PaperType kTicketNumber{18, QFont::Bold};
constexpr PaperType kTicketReady{5.4, QFont::Bold};
constexpr PaperType kTicketLine{3.2, QFont::Normal};
constexpr PaperType kTicketSmall{2.8, QFont::Normal};
constexpr PaperType kTicketOwed{5, QFont::Bold};
constexpr PaperType kStubNumber{11.5, QFont::Bold};
constexpr PaperType kStubName{3.8, QFont::DemiBold};
constexpr PaperType kStubOwed{4.2, QFont::Bold};

struct TicketLine {
    QString words;
    QString amount;
};

struct TicketWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::ClaimTicket)

public:
    QString shop;
    QString taken;
    QString number;
    std::string code;
    QString ready;
    QString after;
    std::vector<TicketLine> lines;
    QString total; // empty: of one garment its line says it
    QString paid;
    QString paidAmount;
    QString toPay;
    QString toPayAmount;
    QString collect;
    QString customer;
    QString garments;
    QString stubOwed;
};

// Garments of one order that read alike and cost the same.
struct AlikeGarments {
    QString words;
    Money each;
    std::vector<std::size_t> places; // in the order, from 0
    QStringList letters;             // of their numbers

    Money together() const { return each * static_cast<std::int64_t>(places.size()); }
};

QString wordsOf(const ShopFacts& facts, const Garment& garment) {
    QStringList decals;
    for (const Decal& decal : garment.decals)
        decals << words(decal.describe());
    const QString name = garmentName(facts, garment);
    return decals.isEmpty() ? name
                            : TicketWords::tr("%1, with %2").arg(name, decals.join(TicketWords::tr(" and ")));
}

std::vector<AlikeGarments> gathered(const ShopFacts& facts, const std::vector<const Garment*>& garments) {
    std::vector<AlikeGarments> all;
    for (std::size_t at = 0; at < garments.size(); ++at) {
        const QString said = wordsOf(facts, *garments[at]);
        auto found = std::ranges::find_if(all, [&](const AlikeGarments& alike) {
            return alike.words == said && alike.each == garments[at]->price;
        });
        if (found == all.end())
            found = all.insert(all.end(), {said, garments[at]->price, {}, {}});
        found->places.push_back(at);
        found->letters << words(garments[at]->letter());
    }
    return all;
}

// "a", "a–c", "a–c, e": garments that follow each other are named by the first and the last.
QString lettersOf(const AlikeGarments& alike) {
    QStringList runs;
    for (std::size_t first = 0; first < alike.places.size();) {
        std::size_t last = first;
        while (last + 1 < alike.places.size() && alike.places[last + 1] == alike.places[last] + 1)
            ++last;
        const QString& begins = alike.letters[static_cast<qsizetype>(first)];
        runs << (last == first
                     ? begins
                     : TicketWords::tr("%1–%2").arg(begins, alike.letters[static_cast<qsizetype>(last)]));
        first = last + 1;
    }
    return runs.join(QStringLiteral(", "));
}

TicketLine lineOf(const AlikeGarments& alike, const Currency& currency, bool isOneOfMany) {
    QString said = alike.words;
    if (alike.places.size() > 1)
        said = TicketWords::tr("%1 × %2").arg(alike.places.size()).arg(said);
    if (isOneOfMany)
        said = QStringLiteral("%1  %2").arg(lettersOf(alike), said);
    return {said, moneyBare(alike.together(), currency)};
}

// As many as leave room for garments; the rest in one.
std::vector<TicketLine> besideGarments(const ShopFacts& facts, OrderId id) {
    const Order& order = facts.orders.at(id);
    std::vector<TicketLine> lines;
    for (const BillWords& each : billWords(facts, order))
        lines.push_back({each.words, each.amount});
    constexpr std::size_t kMostBeside = 4;
    if (order.lines.size() <= kMostBeside)
        return lines;
    std::vector<Money> prices;
    for (const Garment* garment : facts.garmentsOf(id))
        prices.push_back(garment->price);
    const OrderSum sum = sumOf(prices, order.lines, order.tax);
    Money rest;
    for (std::size_t at = kMostBeside - 1; at < order.lines.size(); ++at)
        rest += sum.lines[at];
    const auto first = lines.begin() + kMostBeside - 1;
    *first = {TicketWords::tr("and %1 more").arg(order.lines.size() - kMostBeside + 1),
              moneyBare(rest, facts.settings.currency)};
    lines.erase(first + 1, lines.begin() + static_cast<std::ptrdiff_t>(order.lines.size()));
    return lines;
}

std::vector<TicketLine> ticketLines(const ShopFacts& facts, OrderId order) {
    const std::vector<TicketLine> beside = besideGarments(facts, order);
    const std::size_t most = kMostLines - beside.size();
    const auto garments = facts.garmentsOf(order);
    const std::vector<AlikeGarments> all = gathered(facts, garments);
    const Currency& currency = facts.settings.currency;
    const std::size_t named = all.size() > most ? most - 1 : all.size();
    std::vector<TicketLine> lines;
    for (std::size_t at = 0; at < named; ++at)
        lines.push_back(lineOf(all[at], currency, garments.size() > 1));
    Money rest;
    std::size_t more = 0;
    for (std::size_t at = named; at < all.size(); ++at) {
        rest = rest + all[at].together();
        more += all[at].places.size();
    }
    if (more > 0)
        lines.push_back({TicketWords::tr("and %1 more garments").arg(more), moneyBare(rest, currency)});
    lines.insert(lines.end(), beside.begin(), beside.end());
    return lines;
}

// The day and from when; or, while a hold leaves the day open, what is needed first.
void sayDay(const ReckonedShop& shop, const Order& order, TicketWords& ticket) {
    const QString readyOn = day(dateOf(order.promised));
    if (const Finding* open = whatUnsettlesDay(shop, order)) {
        ticket.ready = TicketWords::tr("No day yet");
        ticket.after = words(unsettledWords(*open));
    } else if (order.state == OrderState::Quoted) {
        ticket.ready = TicketWords::tr("Would be ready %1").arg(readyOn);
        ticket.after = TicketWords::tr("from %1; a quotation, not an order yet").arg(clock(order.promised));
    } else {
        ticket.ready = TicketWords::tr("Ready %1").arg(readyOn);
        ticket.after = TicketWords::tr("from %1").arg(clock(order.promised));
    }
}

TicketWords ticketWords(const ReckonedShop& shop, OrderId id) {
    const ShopFacts& facts = shop.facts;
    const Order& order = facts.orders.at(id);
    const Currency& currency = facts.settings.currency;
    const auto garments = facts.garmentsOf(id).size();
    const QString where =
        order.takenAtPlace == "workshop" ? TicketWords::tr("At the workshop") : words(order.takenAtPlace);
    const LocalDate takenOn = dateOf(shop.now.toLocal(order.takenAt));
    const Money owed = order.owed();

    TicketWords ticket;
    ticket.shop = words(facts.settings.shopName);
    ticket.taken = QStringLiteral("%1, %2").arg(where, date(takenOn));
    ticket.number = QString::number(order.number);
    ticket.code = paperCode(std::to_string(order.number), order.id.value);
    sayDay(shop, order, ticket);
    ticket.lines = ticketLines(facts, id);
    if (garments != 1 || !order.lines.empty() || order.tax.kind == TaxKind::Added)
        ticket.total = moneyBare(order.total, currency);
    ticket.paid = order.paid.minor > 0 ? TicketWords::tr("Paid") : TicketWords::tr("Nothing paid yet");
    if (order.paid.minor > 0)
        ticket.paidAmount = moneyBare(order.paid, currency);
    ticket.toPay = owed.minor > 0 ? TicketWords::tr("To pay on collecting") : TicketWords::tr("Paid in full");
    if (owed.minor > 0)
        ticket.toPayAmount = money(owed, currency);
    if (!facts.settings.collectAt.empty())
        ticket.collect = TicketWords::tr("Collect: %1").arg(words(facts.settings.collectAt));
    ticket.customer = nameForStub(words(facts.customers.at(order.customer).name));
    ticket.garments = TicketWords::tr("%n garment|%n garments", nullptr, howMany(garments));
    ticket.stubOwed =
        owed.minor > 0 ? TicketWords::tr("%1 to pay").arg(money(owed, currency)) : TicketWords::tr("paid");
    return ticket;
}

void drawTicketHead(PaperInk& ink, const TicketWords& ticket) {
    double y = 10;
    if (!ticket.shop.isEmpty()) {
        const PaperType shop = shrunkTo(kBesideCode, ticket.shop, kTicketShop, 2);
        ink.line({kLeft, y}, ticket.shop, shop);
        y += 5;
    }
    ink.line({kLeft, y}, ticket.taken, shrunkTo(kBesideCode, ticket.taken, kTicketSmall, 1.8));
    ink.code(kCustomersCode, ticket.code);

    const PaperType number = shrunkTo(54, ticket.number, kTicketNumber, 6);
    ink.line({kLeft, 33}, ticket.number, number);
    const double beside = kLeft + paperWidth(ticket.number, number) + 5;
    ink.line({beside, 26.4}, ticket.ready, shrunkTo(kRight - beside, ticket.ready, kTicketReady, 2.6));
    ink.line({beside, 32.6}, ticket.after, shrunkTo(kRight - beside, ticket.after, kTicketLine.at(3.6), 2));
    ink.rule(kLeft, kRight, 36.4);
}

void drawTicketLines(PaperInk& ink, const TicketWords& ticket) {
    const bool isOneColumn = ticket.lines.size() <= kOneColumn;
    const std::size_t columns = isOneColumn ? 1 : 2;
    const std::size_t rows = (ticket.lines.size() + columns - 1) / columns;
    const double step = rows == 0 ? kLinesHigh : std::min(5.0, kLinesHigh / static_cast<double>(rows));
    const PaperType type = kTicketLine.at(std::min(kTicketLine.millimetres, step * 0.8));
    const PaperType strong{type.millimetres, QFont::Bold};
    const double width = isOneColumn ? kRight - kLeft : (kRight - kLeft - kBetweenColumns) / 2;
    for (std::size_t at = 0; at < ticket.lines.size(); ++at) {
        const TicketLine& each = ticket.lines[at];
        const double left = at < rows ? kLeft : kLeft + width + kBetweenColumns;
        const double y = kLinesTop + step * (static_cast<double>(at % rows) + 0.8);
        const double room = width - paperWidth(each.amount, strong) - 2;
        const PaperType fits = shrunkTo(room, each.words, type, 2);
        ink.line({left, y}, cutTo(room, each.words, fits), fits);
        ink.line({left + width, y}, each.amount, strong, Across::Right);
    }
}

void drawTicketMoney(PaperInk& ink, const TicketWords& ticket) {
    const PaperType strong{kTicketLine.millimetres, QFont::Bold};
    ink.rule(kLeft, kRight, 55);
    const double middle = (kLeft + kRight) / 2;
    if (!ticket.total.isEmpty()) {
        ink.line({kLeft, 59.2}, TicketWords::tr("Total"), kTicketLine);
        ink.line({middle - kBetweenColumns / 2, 59.2}, ticket.total, strong, Across::Right);
    }
    ink.line({ticket.total.isEmpty() ? kLeft : middle + kBetweenColumns / 2, 59.2}, ticket.paid, kTicketLine);
    ink.line({kRight, 59.2}, ticket.paidAmount, strong, Across::Right);
    ink.line({kLeft, 65.4}, ticket.toPay, kTicketOwed);
    ink.line({kRight, 65.4}, ticket.toPayAmount, kTicketOwed, Across::Right);
    ink.line({kLeft, 70.4}, ticket.collect, shrunkTo(kRight - kLeft, ticket.collect, kTicketSmall, 1.8));
}

void drawTicketStub(PaperInk& ink, const TicketWords& ticket) {
    ink.tear(kTear, 0, kTicketSize.height());
    ink.line({kStubMiddle, 14.6}, ticket.number, shrunkTo(kStubWidth, ticket.number, kStubNumber, 5),
             Across::Middle);
    const PaperType name = shrunkTo(kStubWidth, ticket.customer, kStubName, 2.6);
    ink.line({kStubMiddle, 20.6}, cutTo(kStubWidth, ticket.customer, name), name, Across::Middle);
    ink.code({kStubMiddle - 14, 22.4, 28, 28}, ticket.code);
    ink.line({kStubMiddle, 55}, ticket.garments, kTicketLine, Across::Middle);
    ink.line({kStubMiddle, 61.4}, ticket.stubOwed, shrunkTo(kStubWidth, ticket.stubOwed, kStubOwed, 2.2),
             Across::Middle);
    ink.line({kStubMiddle, 66.4}, TicketWords::tr("pin to the bag"), kTicketLine, Across::Middle);
}

} // namespace

QString nameForStub(const QString& name) {
    static const QRegularExpression ofAFirm(QStringLiteral("[&+0-9]"));
    QStringList parts = name.split(u' ', Qt::SkipEmptyParts);
    if (parts.size() < 2 || name.contains(ofAFirm) || parts.contains(TicketWords::tr("and")))
        return parts.join(u' ');
    // "van der" belongs to the family name.
    const auto isParticle = [](const QString& part) { return part.front().isLower(); };
    const QString familyName = parts.takeLast();
    while (parts.size() > 1 && isParticle(parts.back()))
        parts.removeLast();
    return QStringLiteral("%1 %2.").arg(parts.join(u' '), familyName.left(1));
}

Paper claimTicket(const ReckonedShop& shop, OrderId order) {
    const TicketWords ticket = ticketWords(shop, order);
    return {QStringLiteral("claim-ticket-%1").arg(ticket.number), kTicketSize, [ticket](PaperInk& ink) {
                drawTicketHead(ink, ticket);
                drawTicketLines(ink, ticket);
                drawTicketMoney(ink, ticket);
                drawTicketStub(ink, ticket);
            }};
}

} // namespace holdfast::app
