// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/care_card_paper.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/papers/care_pictures.h"
#include "app/papers/decal_shapes.h"
#include "app/theme/drawings.h"
#include "core/press/layers.h"
#include "core/shop/care_of_garment.h"
#include "core/trade/paper_code.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <functional>

namespace holdfast::app {

namespace {

constexpr QSizeF kCardSize{105, 148};
constexpr double kCardLeft = 9;
constexpr double kCardRight = kCardSize.width() - kCardLeft;
constexpr double kCardWidth = kCardRight - kCardLeft;
constexpr double kBesidePicture = 36; // where the garment's words begin
constexpr double kPictureSheet = 8;
constexpr double kFootHigh = 24;

constexpr PaperType kCardShop{6.2, QFont::DemiBold, true};
constexpr PaperType kCardUnder{3.6, QFont::DemiBold, true};
constexpr PaperType kCardGarment{4.8, QFont::DemiBold, true};
constexpr PaperType kCardPlain{3.1, QFont::Normal};
constexpr PaperType kCardWash{4.1, QFont::Bold};
constexpr PaperType kCardLead{3.7, QFont::Bold};
constexpr PaperType kCardRest{3.2, QFont::Normal};

// A line of care: what matters most, and the rest of it below.
struct CareWords {
    CareMatter about = CareMatter::Wash;
    QString lead;
    QString rest;
};

struct DrawnDecal {
    QPainterPath shape;
    QPointF at; // of its upper left corner, mm from the top seam at the centre line
};

struct CardWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::CareCardPaper)

public:
    QString shop;
    QString outline;
    double millimetresPerSheetUnit = 2;
    std::vector<DrawnDecal> decals;
    QString garment;
    QString decalWords;
    QString cloth;
    QString firstWash;
    std::vector<CareWords> care;
    QString edgeLifts;
    QString label;
    std::string code;
};

// "Mild detergent. No bleach, no softener." → "Mild detergent." and "No bleach, no softener."
CareWords careWordsOf(const CareLine& line) {
    const QString whole = words(line.words);
    const auto sentence = whole.indexOf(QStringLiteral(". "));
    const auto clause = whole.indexOf(QStringLiteral("; "));
    const auto parts = sentence < 0 ? clause : clause < 0 ? sentence : std::min(sentence, clause);
    if (parts < 0)
        return {line.about, whole, {}};
    QString rest = whole.mid(parts + 2);
    rest[0] = rest[0].toUpper();
    return {line.about, whole.left(parts) + u'.', rest};
}

// "80 % cotton, 20 % polyester"
QString fibreWords(const FabricLabel& label) {
    std::vector<FibreShare> shares = label.fibres;
    std::ranges::stable_sort(shares, std::ranges::greater{}, &FibreShare::percent);
    QStringList fibres;
    for (const FibreShare& share : shares)
        fibres << CardWords::tr("%1 % %2").arg(share.percent).arg(words(fibreName(share.fibre)));
    return fibres.join(QStringLiteral(", "));
}

QString clothWords(const BlankStyle& style) {
    const QString fibres =
        style.label ? fibreWords(*style.label) : CardWords::tr("fibres as its own label says");
    return style.washedFirst() ? CardWords::tr("%1; washed before it was pressed").arg(fibres) : fibres;
}

// Those on the front; a back print is in words only.
std::vector<DrawnDecal> frontDecals(const Garment& garment) {
    std::vector<DrawnDecal> decals;
    for (const Decal& decal : garment.decals)
        if (sideOf(decal.placement) == Side::Front)
            decals.push_back(
                {decalShape(decal),
                 {static_cast<double>(decal.aside.value) - static_cast<double>(decal.width.value) / 2,
                  static_cast<double>(decal.below.value)}});
    return decals;
}

CardWords cardWords(const ReckonedShop& shop, const Garment& garment) {
    const CareCard care = careOf(shop, garment);
    CardWords card;
    card.shop = words(shop.facts.settings.shopName);
    card.outline = outlineName(shop.facts, garment);
    card.millimetresPerSheetUnit = millimetresPerUnit(card.outline, words(garment.size));
    card.decals = frontDecals(garment);
    card.garment = garmentName(shop.facts, garment);
    QStringList decals;
    for (const Decal& decal : garment.decals)
        decals << CardWords::tr("%1 in %2")
                      .arg(words(decal.describe()), words(shop.facts.films.at(decal.film).name()));
    decals.removeDuplicates();
    card.decalWords = decals.join(QStringLiteral("; "));
    card.cloth = clothWords(shop.facts.styleOf(garment));
    card.firstWash = words(care.firstWash);
    for (const CareLine& line : care.lines)
        card.care.push_back(careWordsOf(line));
    card.edgeLifts = words(shop.facts.settings.whenEdgeLifts);
    card.label = garmentNumber(shop.facts, garment);
    card.code = paperCode(shop.facts.labelOf(garment), garment.id.value);
    return card;
}

double drawCardHead(PaperInk& ink, const CardWords& card) {
    double y = 8;
    if (!card.shop.isEmpty()) {
        const PaperType shop = shrunkTo(kCardWidth, card.shop, kCardShop, 4);
        y = ink.lines({kCardLeft, y}, kCardWidth, card.shop, shop);
    }
    ink.line({kCardLeft, y + 3.4}, CardWords::tr("how to keep it looking new"), kCardUnder);
    ink.rule(kCardLeft, kCardRight, y + 6.6);
    return y + 9;
}

void drawCardPicture(PaperInk& ink, const CardWords& card, const QRectF& box) {
    const QRectF sheet = ink.garment(box, card.outline);
    const double unit = sheet.width() / kGarmentSheetWidth; // mm of paper
    const QRectF body = garmentBody(card.outline);
    const QPointF seam = sheet.topLeft() + QPointF(body.center().x(), body.top()) * unit;
    const double scale = unit / card.millimetresPerSheetUnit;
    for (const DrawnDecal& decal : card.decals)
        ink.moved(seam + decal.at * scale, scale, [&] { ink.fill(decal.shape); });
}

// The largest letters of this kind that break into no more lines than this.
PaperType shrunkToLines(double width, const QString& text, PaperType type, qsizetype most, double floor) {
    while (type.millimetres > floor && brokenInto(width, text, type).size() > most)
        type.millimetres -= 0.1;
    return type;
}

double drawCardGarment(PaperInk& ink, const CardWords& card, double top) {
    drawCardPicture(ink, card, {kCardLeft, top, kBesidePicture - kCardLeft - 3, 24});
    const double width = kCardRight - kBesidePicture;
    const auto named = [&](double y, const QString& text, const PaperType& type, qsizetype most,
                           double floor) {
        const PaperType fits = shrunkToLines(width, text, type, most, floor);
        return ink.lines({kBesidePicture, y}, width, cutToLines(width, text, fits, most), fits);
    };
    double y = named(top, card.garment, kCardGarment, 2, 3);
    y = named(y + 0.6, card.decalWords, kCardPlain, 3, 2.2);
    y = named(y + 0.4, card.cloth, kCardPlain, 2, 2.2);
    return std::max(y, top + 24) + 2;
}

double drawFirstWash(PaperInk& ink, const CardWords& card, double top) {
    if (card.firstWash.isEmpty())
        return top;
    constexpr double kInside = 2.6;
    const double left = kCardLeft + kInside + kPictureSheet + 2;
    const double width = kCardRight - kInside - left;
    const double high = std::max(kPictureSheet + 2 * kInside,
                                 static_cast<double>(brokenInto(width, card.firstWash, kCardWash).size()) *
                                         lineStep(kCardWash) +
                                     2 * kInside - 1);
    ink.frame({kCardLeft, top, kCardWidth, high}, 0.5, 1.6);
    ink.stroke(clockPicture(), {kCardLeft + kInside, top + (high - kPictureSheet) / 2}, 0.5);
    ink.lines({left, top + kInside}, width, card.firstWash, kCardWash);
    return top + high + 2.4;
}

double careHeight(const CareWords& care, double width, double share) {
    const PaperType lead = kCardLead.at(kCardLead.millimetres * share);
    const PaperType rest = kCardRest.at(kCardRest.millimetres * share);
    return static_cast<double>(brokenInto(width, care.lead, lead).size()) * lineStep(lead) +
           static_cast<double>(brokenInto(width, care.rest, rest).size()) * lineStep(rest);
}

// All lines between `top` and `bottom`, their letters a little smaller where there are many.
void drawCare(PaperInk& ink, const CardWords& card, double top, double bottom) {
    const double left = kCardLeft + kPictureSheet + 3;
    const double width = kCardRight - left;
    constexpr double kSmallest = 0.6;
    double share = 1;
    double used = 0;
    for (;; share -= 0.05) {
        used = 0;
        for (const CareWords& care : card.care)
            used += std::max(careHeight(care, width, share), kPictureSheet * share);
        if (used <= bottom - top || share - 0.05 < kSmallest)
            break;
    }
    const double between =
        card.care.empty()
            ? 0
            : std::clamp((bottom - top - used) / static_cast<double>(card.care.size()), 0.0, 2.4);
    double y = top;
    for (const CareWords& care : card.care) {
        const double words = careHeight(care, width, share);
        const double high = std::max(words, kPictureSheet * share);
        const QPainterPath picture = carePicture(care.about);
        ink.moved({kCardLeft, y + (high - kPictureSheet * share) / 2}, share,
                  [&] { ink.stroke(picture, {}, 0.42); });
        double at = y + (high - words) / 2 - 0.3;
        at = ink.lines({left, at}, width, care.lead, kCardLead.at(kCardLead.millimetres * share));
        ink.lines({left, at}, width, care.rest, kCardRest.at(kCardRest.millimetres * share));
        y += high + between;
    }
}

void drawCardFoot(PaperInk& ink, const CardWords& card) {
    const double top = kCardSize.height() - kFootHigh - 4;
    ink.rule(kCardLeft, kCardRight, top);
    ink.code({kCardLeft - 3, top + 1, kFootHigh, kFootHigh}, card.code);
    const double left = kCardLeft + kFootHigh - 1;
    const double width = kCardRight - left;
    double y = top + 4.6;
    if (!card.edgeLifts.isEmpty()) {
        ink.line({left, y + 3}, CardWords::tr("An edge lifting?"), kCardLead.at(3.4));
        y = ink.lines({left, y + 4.4}, width, card.edgeLifts,
                      shrunkToLines(width, card.edgeLifts, kCardRest, 3, 2.2));
    }
    const QString say = card.edgeLifts.isEmpty() ? CardWords::tr("Garment") : CardWords::tr("Tell us number");
    ink.line({left, y + 4.2}, say, kCardRest);
    ink.line({left + paperWidth(say, kCardRest) + 1.4, y + 4.2}, card.label, kCardLead);
}

} // namespace

Paper careCardPaper(const ReckonedShop& shop, GarmentId garment) {
    const CardWords card = cardWords(shop, shop.facts.garments.at(garment));
    return {QStringLiteral("care-card-%1").arg(card.label), kCardSize, [card](PaperInk& ink) {
                double y = drawCardHead(ink, card);
                y = drawCardGarment(ink, card, y);
                y = drawFirstWash(ink, card, y);
                drawCare(ink, card, y, kCardSize.height() - kFootHigh - 6);
                drawCardFoot(ink, card);
            }};
}

} // namespace holdfast::app
