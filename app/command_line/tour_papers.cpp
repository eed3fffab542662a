// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/tour_papers.h"

#include "app/command_line/verbs.h"
#include "app/desk/formats.h"
#include "app/papers/bag_tag.h"
#include "app/papers/care_card_paper.h"
#include "app/papers/claim_ticket.h"
#include "app/papers/day_sheet.h"
#include "app/papers/paper_making.h"
#include "app/papers/quotation_paper.h"
#include "app/papers/roll_label.h"
#include "app/theme/tokens.h"

#include <QImage>
#include <QPainter>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr double kPaperPixels = 6; // a millimetre
constexpr double kTableAround = 4; // mm
constexpr std::size_t kDayPages = 2;

Paper named(Paper paper, const QString& kind) {
    paper.name = QStringLiteral("papers-") + kind;
    return paper;
}

std::vector<OrderId> byGarments(const ShopFacts& facts) {
    std::vector<OrderId> orders;
    for (const Order& order : facts.orders)
        if (order.isOpen())
            orders.push_back(order.id);
    std::ranges::stable_sort(orders, {}, [&](OrderId order) { return facts.garmentsOf(order).size(); });
    return orders;
}

template <class Wanted>
std::optional<GarmentId> firstGarment(const ReckonedShop& shop, Wanted&& wanted) {
    for (const auto& [id, assessment] : shop.assessments)
        if (wanted(assessment))
            return id;
    return std::nullopt;
}

// Of the order with the fewest garments and of one with the most, of a pressed, a held and a waiting garment.
std::vector<Paper> papersToShow(const ReckonedShop& shop) {
    std::vector<Paper> shown;
    const std::vector<OrderId> orders = byGarments(shop.facts);
    if (!orders.empty()) {
        shown.push_back(named(claimTicket(shop, orders.front()), QStringLiteral("claim-ticket")));
        shown.push_back(named(claimTicket(shop, orders.back()), QStringLiteral("claim-ticket-many")));
    }
    const auto pressed =
        firstGarment(shop, [](const Assessment& each) { return each.restUntil.has_value(); });
    if (pressed)
        shown.push_back(named(careCardPaper(shop, *pressed), QStringLiteral("care-card")));
    const auto waiting = firstGarment(
        shop, [](const Assessment& each) { return each.stage == Stage::ToPress && !each.isHeld(); });
    if (waiting)
        shown.push_back(named(bagTag(shop, *waiting), QStringLiteral("bag-tag")));
    const auto held = firstGarment(shop, [](const Assessment& each) { return each.isHeld(); });
    if (held)
        shown.push_back(named(bagTag(shop, *held), QStringLiteral("bag-tag-held")));
    if (!shop.allotment.useFirst.empty())
        shown.push_back(
            named(labelOfRoll(shop, shop.allotment.useFirst.front().roll), QStringLiteral("roll-label")));
    for (const Order& order : shop.facts.orders)
        if (order.state == OrderState::Quoted) {
            shown.push_back(named(quotationPapers(shop, order.id).front(), QStringLiteral("quotation")));
            break;
        }
    const std::vector<Paper> day = daySheet(shop);
    for (std::size_t page = 0; page < std::min(kDayPages, day.size()); ++page)
        shown.push_back(named(day[page], day[page].name));
    return shown;
}

// The paper on its table.
QImage pictureOfPaper(const Paper& paper, double pixelsPerMillimetre) {
    const QSizeF table = paper.size + QSizeF(2 * kTableAround, 2 * kTableAround);
    QImage picture((table * pixelsPerMillimetre).toSize(), QImage::Format_RGB32);
    picture.fill(tokens().ground);
    QPainter painter(&picture);
    painter.scale(pixelsPerMillimetre / kTenthsOfMillimetre, pixelsPerMillimetre / kTenthsOfMillimetre);
    painter.translate(kTableAround * kTenthsOfMillimetre, kTableAround * kTenthsOfMillimetre);
    painter.fillRect(QRectF(QPointF(0, 0), paper.size * kTenthsOfMillimetre), Qt::white);
    PaperInk ink(painter, Letters::AsOutlines);
    paper.draw(ink);
    return picture;
}

} // namespace

Result<int> drawPaperPictures(const std::filesystem::path& shop, const Clock& clock,
                              const std::filesystem::path& folder, int scale) {
    Arguments arguments;
    arguments.shop = shop;
    const auto reckoned = reckonedShop(arguments, clock);
    if (!reckoned.ok())
        return reckoned.error();
    int drawn = 0;
    for (const Paper& paper : papersToShow(**reckoned)) {
        const std::filesystem::path path = folder / (plain(paper.name) + (scale == 2 ? "@2x" : "") + ".png");
        if (!pictureOfPaper(paper, kPaperPixels * scale).save(words(path.string()), "PNG"))
            return plainError(
                said("The picture {picture} could not be written.", {{"picture", path.string()}}));
        ++drawn;
    }
    return drawn;
}

} // namespace holdfast::app
