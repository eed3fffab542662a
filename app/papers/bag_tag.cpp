// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/bag_tag.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/papers/decal_shapes.h"
#include "app/papers/press_words.h"
#include "core/shop/settled_day.h"
#include "core/trade/paper_code.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr QSizeF kTagSize{70, 65};
constexpr double kTagEdge = 4;
constexpr double kTagRight = kTagSize.width() - kTagEdge;
constexpr double kBesideTagCode = 40; // wide
constexpr double kRowName = 12;       // wide
constexpr std::size_t kMostDecals = 4;
constexpr double kMeasuresShare = 0.62; // of a line with both

constexpr PaperType kTagLabel{10.5, QFont::Bold};
constexpr PaperType kTagBlank{3.8, QFont::DemiBold};
constexpr PaperType kTagRow{3, QFont::Normal};
constexpr PaperType kTagStrong{3, QFont::Bold};

struct TagRow {
    QString name;
    QString value;
};

struct TagDecal {
    QPainterPath shape; // 1 wide or high
    QString where;      // "Heron, chest"
    QString size;       // "280 × 300 mm, 75 mm down, Dusk"
};

struct TagWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::BagTag)

public:
    QString label;
    std::string code;
    QString blank;
    std::vector<TagRow> rows;
    std::vector<TagDecal> decals;
    QString more;
};

QString atTime(const ReckonedShop& shop, Instant when) {
    const LocalTime local = shop.now.toLocal(when);
    return QStringLiteral("%1 %2").arg(day(dateOf(local)), clock(local));
}

QString washWords(const ReckonedShop& shop, const Garment& garment) {
    const BlankStyle& style = shop.facts.styleOf(garment);
    const BlankLot* lot = garment.lot ? shop.facts.lots.find(*garment.lot) : nullptr;
    const WashLoad* load = lot ? shop.facts.lastLoadOf(*lot) : nullptr;
    if (load && load->isDry())
        return TagWords::tr("washed, dry %1").arg(day(dateOf(shop.now.toLocal(*load->dryAt))));
    if (load)
        return TagWords::tr("washed, still to dry");
    if (!style.washedFirst())
        return TagWords::tr("not before pressing");
    return garment.lot ? TagWords::tr("before pressing") : TagWords::tr("before pressing; no blank yet");
}

QString pressedWords(const ReckonedShop& shop, const Garment& garment) {
    const Assessment& assessment = shop.of(garment.id);
    const QString how = heatWords(assessment.route);
    if (assessment.progress.pressedAt)
        return TagWords::tr("pressed %1").arg(atTime(shop, *assessment.progress.pressedAt));
    const PlannedGarment* planned = shop.plan.find(garment.id);
    const QString when = planned ? atTime(shop, planned->begins) : QString();
    return when.isEmpty() ? how : how.isEmpty() ? when : QStringLiteral("%1, %2").arg(when, how);
}

std::vector<TagRow> tagRows(const ReckonedShop& shop, const Garment& garment) {
    const Assessment& assessment = shop.of(garment.id);
    const Order& order = shop.facts.orderOf(garment);
    std::vector<TagRow> rows;
    if (const Finding* hold = assessment.firstHold())
        rows.push_back({TagWords::tr("Held"), words(hold->what)});
    rows.push_back({TagWords::tr("Wash"), washWords(shop, garment)});
    rows.push_back({TagWords::tr("Press"), pressedWords(shop, garment)});
    const QString rest = TagWords::tr("%1 h").arg(shop.facts.settings.restBeforeWash.count());
    rows.push_back({TagWords::tr("Rest"),
                    assessment.restUntil ? TagWords::tr("until %1").arg(atTime(shop, *assessment.restUntil))
                                         : TagWords::tr("%1 before a wash").arg(rest)});
    rows.push_back({TagWords::tr("Ready"),
                    whatUnsettlesDay(shop, order)
                        ? TagWords::tr("no day yet")
                        : QStringLiteral("%1 %2").arg(day(dateOf(order.promised)), clock(order.promised))});
    return rows;
}

TagDecal tagDecal(const ReckonedShop& shop, const Decal& decal) {
    const double largest =
        static_cast<double>(std::max({decal.width.value, decal.height.value, std::int64_t{1}}));
    return {QTransform::fromScale(1 / largest, 1 / largest).map(decalShape(decal)),
            QStringLiteral("%1, %2").arg(words(decal.describe()), words(placementName(decal.placement))),
            TagWords::tr("%1 × %2 mm, %3 mm down, %4")
                .arg(decal.width.value)
                .arg(decal.height.value)
                .arg(decal.below.value)
                .arg(words(shop.facts.films.at(decal.film).shade))};
}

TagWords tagWords(const ReckonedShop& shop, const Garment& garment) {
    TagWords tag;
    tag.label = garmentNumber(shop.facts, garment);
    tag.code = paperCode(shop.facts.labelOf(garment), garment.id.value);
    tag.blank = garmentName(shop.facts, garment);
    tag.rows = tagRows(shop, garment);
    const std::size_t all = garment.decals.size();
    const std::size_t shown = all > kMostDecals ? kMostDecals - 1 : all;
    for (std::size_t at = 0; at < shown; ++at)
        tag.decals.push_back(tagDecal(shop, garment.decals[at]));
    if (shown < all)
        tag.more = TagWords::tr("and %1 more decals: see the order").arg(all - shown);
    return tag;
}

void drawTagHead(PaperInk& ink, const TagWords& tag) {
    ink.line({kTagEdge, 12}, tag.label, shrunkTo(kBesideTagCode, tag.label, kTagLabel, 5));
    ink.code({kTagRight - 22, 1.4, 24, 24}, tag.code);
    PaperType blank = kTagBlank;
    while (blank.millimetres > 2.4 && brokenInto(kBesideTagCode, tag.blank, blank).size() > 2)
        blank.millimetres -= 0.1;
    ink.lines({kTagEdge, 14.2}, kBesideTagCode, tag.blank, blank);
}

// Returns where the rows end; a value that is too long at its smallest goes on below.
double drawTagRows(PaperInk& ink, const TagWords& tag) {
    double y = 25.4;
    ink.rule(kTagEdge, kTagRight, y);
    const double step = tag.rows.size() > 4 ? 4 : 4.5;
    y += 0.6;
    for (const TagRow& row : tag.rows) {
        const double room = kTagRight - kTagEdge - kRowName;
        const PaperType value = shrunkTo(room, row.value, kTagStrong, 2.2);
        y += step;
        ink.line({kTagEdge, y}, row.name, kTagRow);
        const QStringList lines = brokenInto(room, row.value, value);
        for (qsizetype at = 0; at < lines.size(); ++at) {
            y += at > 0 ? lineStep(value) : 0;
            ink.line({kTagRight, y}, lines[at], value, Across::Right);
        }
    }
    return y + 2;
}

void drawTagDecals(PaperInk& ink, const TagWords& tag, double top) {
    ink.rule(kTagEdge, kTagRight, top);
    const double bottom = kTagSize.height() - 2.6 - (tag.more.isEmpty() ? 0 : 3.4);
    const auto count = static_cast<double>(std::max<std::size_t>(1, tag.decals.size()));
    const double step = std::min(11.5, (bottom - top - 1) / count);
    const bool isTall = step >= 6.6;
    double y = top + 1;
    for (const TagDecal& decal : tag.decals) {
        const double picture = step - 1;
        const QRectF bounds = decal.shape.boundingRect();
        ink.moved({kTagEdge + (picture - bounds.width() * picture) / 2,
                   y + 0.5 + (picture - bounds.height() * picture) / 2},
                  picture, [&] { ink.fill(decal.shape); });
        const double left = kTagEdge + (isTall ? picture : 4) + 2;
        const double room = kTagRight - left;
        if (isTall) {
            const PaperType where = shrunkTo(room, decal.where, kTagStrong.at(3.1), 2.2);
            const PaperType size = shrunkTo(room, decal.size, kTagRow.at(2.9), 2.2);
            ink.line({left, y + step / 2 - 0.5}, cutTo(room, decal.where, where), where);
            ink.line({left, y + step / 2 + 3}, cutTo(room, decal.size, size), size);
        } else {
            // Its measures are never cut; its name gets the room that is left.
            const PaperType small = kTagRow.at(std::min(2.8, step * 0.7));
            const PaperType size = shrunkTo(room * kMeasuresShare, decal.size, small, 1.9);
            const QString measures = cutTo(room * kMeasuresShare, decal.size, size);
            const double forName = room - paperWidth(measures, size) - 2;
            const PaperType where = shrunkTo(forName, decal.where, {small.millimetres, QFont::Bold}, 1.9);
            ink.line({left, y + step * 0.7}, cutTo(forName, decal.where, where), where);
            ink.line({kTagRight, y + step * 0.7}, measures, size, Across::Right);
        }
        y += step;
    }
    ink.line({kTagEdge, kTagSize.height() - 2.6}, tag.more, kTagRow.at(2.6));
}

} // namespace

Paper bagTag(const ReckonedShop& shop, GarmentId garment) {
    const TagWords tag = tagWords(shop, shop.facts.garments.at(garment));
    return {QStringLiteral("bag-tag-%1").arg(tag.label), kTagSize, [tag](PaperInk& ink) {
                drawTagHead(ink, tag);
                drawTagDecals(ink, tag, drawTagRows(ink, tag));
            }};
}

} // namespace holdfast::app
