// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/order_book/garment_lines.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/places/order_book/where_it_is.h"
#include "app/theme/drawings.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"

#include <QFontMetricsF>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kPlain = 54;
constexpr int kWithFreeing = 82;
constexpr qreal kGarmentPad = 16;
constexpr qreal kPicture = 40;
constexpr qreal kGarmentWordsAt = 72;

} // namespace

GarmentLines::GarmentLines(QWidget* parent)
    : PaintedLines(QStringLiteral("garmentLines"), tr("Garments of the order"), parent) {}

void GarmentLines::show(const OrderView& view) {
    m_view = view;
    m_lines.clear();
    const ShopFacts& facts = view.shop->facts;
    for (const Garment* garment : view.garments()) {
        const WhereWords where = whereIsGarment(*view.shop, *garment);
        Line line{garment,
                  garmentName(facts, *garment),
                  decalWords(*garment),
                  moneyBare(garment->price, facts.settings.currency),
                  where.words,
                  where.iconName,
                  {},
                  where.tone == Tone::Plain ? &Tokens::ink2 : toneRole(where.tone),
                  std::nullopt,
                  {}};
        if (const Finding* hold = view.shop->of(garment->id).firstHold(); hold && !hold->frees.empty()) {
            line.act = hold->frees.front();
            line.free = words(freeingWords(hold->frees.front()));
            line.matter = SlipTarget::of(*hold, *garment);
        }
        m_lines.push_back(std::move(line));
    }
    linesChanged();
}

std::optional<GarmentId> GarmentLines::current() const {
    if (currentLine() < 0)
        return std::nullopt;
    return at(currentLine()).garment->id;
}

void GarmentLines::turnTo(GarmentId garment) {
    const auto found = std::ranges::find(m_lines, garment, [](const Line& line) { return line.garment->id; });
    if (found == m_lines.end())
        return;
    moveTo(static_cast<int>(found - m_lines.begin()));
    bringIntoView();
}

int GarmentLines::heightOf(int line) const {
    return at(line).act ? kWithFreeing : kPlain;
}

QRectF GarmentLines::freeBox(int line, const QRectF& box) const {
    const qreal wide = widthOf(at(line).free, Type::SupportStrong) + 20 +
                       (line == currentLine() ? keyCapSize(tr("Enter")).width() + 8 : 0);
    return {kGarmentWordsAt - 4, box.top() + 51, wide, 26};
}

void GarmentLines::paintOne(QPainter& painter, int index, const QRectF& box, bool isCurrent) {
    const Tokens& dyes = tokens();
    const Line& line = at(index);
    painter.fillRect(box, isCurrent ? dyes.woad : dyes.card);
    painter.fillRect(QRectF(0, box.bottom() - 1, width(), 1), dyes.thread);
    paintGarment(painter, QRectF(kGarmentPad, box.top() + 5, kPicture, 44),
                 outlineName(m_view->shop->facts, *line.garment),
                 clothOf(m_view->shop->facts, *line.garment));

    const QRectF upper(kGarmentWordsAt, box.top() + 6, width() - kGarmentWordsAt - kGarmentPad, 22);
    const QRectF lower(kGarmentWordsAt, box.top() + 28, upper.width(), 20);
    paintLine(painter, upper, line.price, Type::BodyStrong, dyes.ink, Qt::AlignRight);
    const QString number = garmentNumber(m_view->shop->facts, *line.garment) + u' ';
    const qreal behind =
        paintRun(painter, {upper.left(), upper.bottom() - 6}, number, Type::BodyStrong, dyes.ink);
    const qreal nameRoom = upper.right() - widthOf(line.price, Type::BodyStrong) - 12 - behind;
    paintRun(painter, {behind, upper.bottom() - 6}, fitted(line.name, Type::Body, nameRoom), Type::Body,
             dyes.ink);

    const Type whereType = line.whereInk == &Tokens::ink2 ? Type::Small : Type::SmallStrong;
    const qreal whereWide = widthOf(line.where, whereType);
    paintLine(painter, lower, line.where, whereType, dyes.*line.whereInk, Qt::AlignRight);
    paintIcon(painter, QRectF(lower.right() - whereWide - 20, lower.center().y() - 8, 16, 16), line.whereIcon,
              dyes.*line.whereInk);
    const qreal decalRoom = lower.width() - whereWide - 32;
    if (decalRoom > 40)
        paintLine(painter, lower, fitted(line.decals, Type::Small, decalRoom), Type::Small, dyes.ink2);
    if (line.act)
        paintButton(painter, index, box);
}

void GarmentLines::paintButton(QPainter& painter, int line, const QRectF& box) const {
    const Tokens& dyes = tokens();
    const QRectF free = freeBox(line, box);
    paintBox(painter, free, kChipRadius, dyes.card, dyes.edge);
    paintLine(painter, free.adjusted(10, 0, 0, 0), at(line).free, Type::SupportStrong, dyes.indigo);
    if (line != currentLine())
        return;
    const QSizeF cap = keyCapSize(tr("Enter"));
    paintKeyCap(painter,
                QRectF(free.right() - cap.width() - 3, free.center().y() - cap.height() / 2, cap.width(),
                       cap.height()),
                tr("Enter"), dyes.ink2);
}

bool GarmentLines::isOnButton(int line, const QRectF& box, const QPointF& where) const {
    return at(line).act && freeBox(line, box).contains(where);
}

void GarmentLines::doWhatItOffers(int line) {
    if (at(line).act)
        emit freeAsked(*at(line).act, at(line).matter);
}

QString GarmentLines::spokenLine(int line) const {
    return at(line).name + u' ' + at(line).decals + u' ' + at(line).where + u' ' + at(line).free;
}

} // namespace holdfast::app
