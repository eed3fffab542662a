// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/walk_delegate.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/theme/drawings.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"

#include <QFontMetricsF>
#include <QPainter>

namespace holdfast::app {

namespace {

constexpr int kRunHeight = 56;
constexpr int kChangeHeight = 34;
constexpr int kGarmentHeight = 60;
constexpr qreal kThreadAt = 20.5; // from the list's left edge
constexpr qreal kKnot = 21;
constexpr qreal kTimeAt = 40;
constexpr qreal kPictureAt = 90;
constexpr qreal kPicture = 38;
constexpr qreal kGarmentWordsAt = 134;
constexpr qreal kWalkRight = 12;

QString colourName(const ShopFacts& facts, const Garment& garment) {
    const BlankStyle* style = facts.styles.find(garment.style);
    const Colour* colour = style ? style->colour(garment.colour) : nullptr;
    return colour ? words(colour->name) : QString();
}

} // namespace

WalkDelegate::WalkDelegate(const WalkModel& model, QObject* parent)
    : QStyledItemDelegate(parent)
    , m_model(model) {}

QSize WalkDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const int width = option.rect.width();
    switch (m_model.row(index.row()).kind) {
    case WalkRow::Kind::Change:
        return {width, kChangeHeight};
    case WalkRow::Kind::Run:
        return {width, kRunHeight};
    case WalkRow::Kind::Garment:
        break;
    }
    return {width, kGarmentHeight};
}

void WalkDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
    const WalkRow& row = m_model.row(index.row());
    const QRectF box(option.rect);
    painter->save();
    switch (row.kind) {
    case WalkRow::Kind::Change:
        paintChange(*painter, box, m_model.runOf(row),
                    m_model.runOf(row).entries.front().state != WalkState::Planned);
        break;
    case WalkRow::Kind::Run:
        paintRunHead(*painter, box, row);
        break;
    case WalkRow::Kind::Garment:
        paintGarmentRow(*painter, box, index, option.state & QStyle::State_Selected,
                        option.state & QStyle::State_HasFocus);
        break;
    }
    painter->restore();
}

void WalkDelegate::paintThreadThrough(QPainter& painter, const QRectF& box, bool isDoneAbove,
                                      bool isDoneBelow) const {
    const qreal x = box.left() + kThreadAt;
    const auto draw = [&](qreal from, qreal to, bool isDone) {
        if (isDone)
            paintThread(painter, {x, from}, {x, to}, tokens().indigo);
        else
            paintRunningStitch(painter, {x, from}, {x, to}, tokens().edge);
    };
    draw(box.top(), box.center().y(), isDoneAbove);
    draw(box.center().y(), box.bottom(), isDoneBelow);
}

void WalkDelegate::paintChange(QPainter& painter, const QRectF& box, const WalkRun& run, bool isDone) const {
    const Tokens& dyes = tokens();
    painter.fillRect(box, dyes.card);
    paintThreadThrough(painter, box, isDone, isDone);
    const bool isUp = !run.changedFrom || run.changedFrom->value < run.temperature.value;
    const QRectF iconBox(box.left() + kThreadAt - 9, box.center().y() - 9, 18, 18);
    painter.fillRect(iconBox, dyes.card);
    paintIcon(painter, iconBox, isUp ? QStringLiteral("heat-up") : QStringLiteral("cool-down"), dyes.weld);
    const QString number = QString::number(run.temperature.value);
    QString text;
    if (!run.changedFrom)
        text = tr("Heat up to %1").arg(number);
    else if (isUp)
        text = tr("Heat up %1 to %2").arg(QString::number(run.changedFrom->value), number);
    else
        text = tr("Let cool %1 to %2").arg(QString::number(run.changedFrom->value), number);
    paintLine(painter, box.adjusted(44, 0, -kWalkRight, 0), text, Type::SmallStrong, dyes.ink2);
    paintLine(painter, box.adjusted(44, 0, -kWalkRight, 0), timeSpan(run.change), Type::SmallStrong,
              dyes.ink2, Qt::AlignRight);
}

void WalkDelegate::paintRunHead(QPainter& painter, const QRectF& box, const WalkRow& row) const {
    const Tokens& dyes = tokens();
    const WalkRun& run = m_model.runOf(row);
    const Now& now = m_model.shop().now;
    painter.fillRect(box, dyes.sunk);
    painter.fillRect(QRectF(box.left(), box.bottom() - 1, box.width(), 1), dyes.thread);
    if (row.run > 0)
        painter.fillRect(QRectF(box.left(), box.top(), box.width(), 1), dyes.thread);

    const QRectF plate(box.left() + 8, box.top() + 6, 80, 44);
    paintBox(painter, plate, kButtonRadius, run.isDone() ? dyes.ink2 : dyes.ink, {});
    paintLine(painter, plate, celsius(run.temperature), Type::Value, dyes.card, Qt::AlignHCenter);

    const QString span = tr("%1–%2").arg(clock(now.toLocal(run.begins)), clock(now.toLocal(run.ends)));
    const std::size_t pressed = run.pressedCount();
    const bool isBegun = run.entries.front().state != WalkState::Planned;
    const QString state = run.isDone() ? tr("done")
                          : isBegun    ? tr("%n pressed", nullptr, howMany(pressed))
                                       : tr("planned");
    const QRectF upper(box.left() + 98, box.top() + 6, box.width() - 98 - kWalkRight, 22);
    const QRectF lower(upper.left(), box.top() + 28, upper.width(), 20);
    paintLine(painter, upper, span, Type::SmallStrong, run.isDone() ? dyes.ink2 : dyes.ink, Qt::AlignRight);
    paintLine(painter, lower, state, Type::Small, run.isDone() ? dyes.green : dyes.ink2, Qt::AlignRight);
    if (run.isDone()) {
        const qreal x = lower.right() - widthOf(state, Type::Small) - 20;
        paintIcon(painter, QRectF(x, lower.center().y() - 7, 15, 15), QStringLiteral("tick"), dyes.green);
    }

    // With several presses it matters at which; the time next to it leaves room for one of the two.
    const Press* press = m_model.hasManyPresses() ? m_model.shop().facts.presses.find(run.press) : nullptr;
    const QString title = press ? words(press->name) : tr("Run %1").arg(row.run + 1);
    const qreal room = upper.width() - widthOf(span, Type::SmallStrong) - 10;
    paintLine(painter, upper, fitted(title, Type::BodyStrong, room), Type::BodyStrong,
              run.isDone() ? dyes.ink2 : dyes.ink);
    paintLine(painter, lower, tr("%n garment|%n garments", nullptr, howMany(run.entries.size())), Type::Small,
              dyes.ink2);
}

void WalkDelegate::paintGarmentRow(QPainter& painter, const QRectF& box, const QModelIndex& index,
                                   bool isSelected, bool hasFocus) const {
    const Tokens& dyes = tokens();
    const WalkRow& row = m_model.row(index.row());
    const WalkRun& run = m_model.runOf(row);
    const WalkEntry& entry = m_model.entryOf(row);
    const ReckonedShop& shop = m_model.shop();
    const Garment& garment = shop.facts.garments.at(entry.garment);
    const bool isCurrent = m_model.isInHand(entry.garment);
    const bool isBegun = entry.state != WalkState::Planned;
    const bool isPressed = entry.state == WalkState::Pressed;

    painter.fillRect(box, isCurrent ? dyes.woad : dyes.card);
    if (row.entry > 0)
        painter.fillRect(QRectF(box.left(), box.top(), box.width(), 1), dyes.thread);

    const bool isNextBegun = row.entry + 1 < run.entries.size()
                                 ? run.entries[row.entry + 1].state != WalkState::Planned
                                 : isPressed && run.isDone();
    paintThreadThrough(painter, box, isBegun, isNextBegun && isBegun);
    const Knot knot = isPressed ? Knot::Done : isBegun ? Knot::Current : Knot::Planned;
    paintKnot(painter, {box.left() + kThreadAt, box.center().y()}, knot, kKnot);

    if (isCurrent)
        paintOutline(painter, box.adjusted(0, row.entry > 0 ? 0 : 1, 0, 0), 0, dyes.indigo, 2);
    if (isSelected && hasFocus)
        paintOutline(painter, box.adjusted(4, 4, -4, -4), kButtonRadius, dyes.indigo, 3);

    const QColor ink = isPressed ? dyes.ink3 : dyes.ink;
    const QRectF time(box.left() + kTimeAt, box.top(), kPictureAt - kTimeAt, box.height());
    paintLine(painter, time, clock(shop.now.toLocal(entry.begins)), Type::SupportStrong,
              entry.late.count() > 0 ? dyes.weld : ink);
    const QColor cloth = clothOf(shop.facts, garment);
    paintGarment(painter,
                 QRectF(box.left() + kPictureAt, box.center().y() - kPicture / 2, kPicture, kPicture),
                 outlineName(shop.facts, garment), isPressed ? blended(cloth, dyes.card, 0.5) : cloth);

    const qreal left = box.left() + kGarmentWordsAt;
    const qreal room = box.right() - kWalkRight - left;
    const QString number = garmentNumber(shop.facts, garment);
    const qreal upper = box.top() + 26;
    const qreal lower = box.top() + 45;
    const qreal behind = paintRun(painter, {left, upper}, number, Type::BodyStrong, ink) + 5;
    // A colour that has no room after the name begins the next line: the blank is fetched by it.
    const QString name = garmentName(shop.facts, garment);
    const bool fits = widthOf(name, Type::Body) <= left + room - behind;
    paintRun(painter, {behind, upper},
             fits ? name : fitted(garmentInShort(shop.facts, garment), Type::Body, left + room - behind),
             Type::Body, ink);
    const QString colour = fits ? QString() : colourName(shop.facts, garment);
    const QString below =
        colour.isEmpty() ? decalWords(garment) : tr("%1 · %2").arg(colour, decalWords(garment));

    QString warning;
    if (entry.late.count() > 0)
        warning = tr("late %1").arg(timeSpan(entry.late));
    else if (entry.isAfterClosing && entry.state == WalkState::Planned)
        warning = tr("after closing");
    else if (entry.state == WalkState::Cooling)
        warning = tr("cooling");
    else if (entry.state == WalkState::OnPress && !isCurrent)
        warning = tr("waiting");
    const bool isWarning =
        entry.late.count() > 0 || (entry.isAfterClosing && entry.state == WalkState::Planned);
    const qreal warned = warning.isEmpty() ? 0 : widthOf(warning, Type::SmallStrong) + 8;
    paintRun(painter, {left, lower}, fitted(below, Type::Small, room - warned), Type::Small,
             isPressed ? dyes.ink3 : dyes.ink2);
    if (!warning.isEmpty())
        paintRun(painter, {left + room - warned + 8, lower}, warning, Type::SmallStrong,
                 isWarning ? dyes.weld : dyes.ink2);
}

} // namespace holdfast::app
