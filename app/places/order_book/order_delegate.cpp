// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/order_book/order_delegate.h"

#include "app/desk/formats.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/text_runs.h"
#include "app/theme/type.h"

#include <QAbstractItemView>
#include <QFontMetricsF>
#include <QMouseEvent>
#include <QPainter>

namespace holdfast::app {

namespace {

constexpr int kHeadHeight = 34;
constexpr qreal kOrderPad = 16;
constexpr qreal kIconWidth = 26;
constexpr qreal kPromisedAndOwed = 200;
constexpr qreal kNarrow = 620;

} // namespace

OrderColumns::OrderColumns(qreal width)
    : isNarrow(width < kNarrow) {
    number = kOrderPad;
    owedRight = width - kOrderPad;
    promised = width - kPromisedAndOwed;
    customer = 76;
    if (isNarrow) {
        garmentsRight = promised - 16;
        where = customer;
        return;
    }
    // What is left is shared: the place needs room for a reason, which is never cut.
    const qreal room = promised - customer;
    where = customer + room * 0.46 + 26;
    garmentsRight = where - 24;
}

int OrderColumns::rowHeight() const {
    return lineHeight(Type::Body) + kSpace20 + (isNarrow ? lineHeight(Type::Support) : 0);
}

OrderDelegate::OrderDelegate(const OrderModel& model, QObject* parent)
    : QStyledItemDelegate(parent)
    , m_model(model) {}

QSize OrderDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const {
    // Before the list is laid out it has no width of its own: ask the view.
    const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
    const int width = view != nullptr ? view->viewport()->width() : option.rect.width();
    return {width, OrderColumns(width).rowHeight()};
}

void OrderDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const {
    const Tokens& dyes = tokens();
    const QRectF box(option.rect);
    const OrderColumns columns(box.width());
    const db::OrderLine& line = m_model.line(index.row());
    const bool isSelected = option.state & QStyle::State_Selected;
    painter->save();

    painter->fillRect(box, isSelected ? dyes.woad : dyes.card);
    if (isSelected) {
        painter->fillRect(QRectF(box.left(), box.top(), 4, box.height()), dyes.indigo);
        painter->fillRect(QRectF(box.left(), box.top(), box.width(), 2), dyes.indigo);
        painter->fillRect(QRectF(box.left(), box.bottom() - 2, box.width(), 2), dyes.indigo);
    } else {
        painter->fillRect(QRectF(box.left(), box.bottom() - 1, box.width(), 1), dyes.thread);
    }

    const qreal upper = columns.isNarrow ? lineHeight(Type::Body) + kSpace12 : box.height();
    const auto cell = [&](qreal left, qreal right) {
        return QRectF(box.left() + left, box.top(), right - left, upper);
    };
    const Type nameType = isSelected ? Type::BodyStrong : Type::Body;
    const QColor nameInk = line.isUndone ? dyes.ink2 : dyes.ink;
    paintLine(*painter, cell(columns.number, columns.customer), QString::number(line.number),
              Type::BodyStrong, dyes.ink);
    const qreal nameRoom = columns.garmentsRight - 30 - columns.customer;
    paintLine(*painter, cell(columns.customer, columns.garmentsRight - 30),
              fitted(words(line.customer), nameType, nameRoom), nameType, nameInk);
    paintLine(*painter, cell(columns.garmentsRight - 30, columns.garmentsRight),
              line.isUnread ? QString() : QString::number(line.garments), Type::Body, dyes.ink2,
              Qt::AlignRight);

    QRectF room = cell(columns.where, columns.promised - 12);
    if (columns.isNarrow)
        room = QRectF(box.left() + columns.where, box.top() + upper - kSpace4,
                      columns.owedRight - columns.where, lineHeight(Type::Support) + kSpace4);
    paintWhere(*painter, room, m_model.where(index.row()));

    const Role promisedInk = m_model.promisedInk(index.row());
    paintLine(*painter, cell(columns.promised, columns.owedRight), m_model.promisedWords(index.row()),
              promisedInk == &Tokens::ink ? Type::Support : Type::SupportStrong, dyes.*promisedInk);
    const bool owes = line.owed().minor > 0;
    paintLine(*painter, cell(columns.promised, columns.owedRight), m_model.owedWords(index.row()),
              owes ? Type::BodyStrong : Type::Small, owes ? dyes.ink : dyes.ink3, Qt::AlignRight);
    painter->restore();
}

void OrderDelegate::paintWhere(QPainter& painter, const QRectF& room, const WhereWords& where) const {
    const Tokens& dyes = tokens();
    const bool isTold = where.tone == Tone::Held || where.tone == Tone::Ready;
    const QColor ink = isTold ? toneInk(where.tone) : dyes.ink;
    paintIcon(painter, QRectF(room.left(), room.center().y() - 9, 18, 18), where.iconName,
              isTold ? ink : dyes.ink2);
    const QRectF text = room.adjusted(kIconWidth, 0, 0, 0);
    const Type type = isTold ? Type::SupportStrong : Type::Support;
    // A reason too long for the line goes on two; the card at the right says it whole with its numbers.
    if (widthOf(where.words, type) <= text.width()) {
        paintLine(painter, text, where.words, type, ink);
        return;
    }
    painter.setFont(fontOf(isTold ? Type::SmallStrong : Type::Small));
    painter.setPen(ink);
    painter.drawText(text.adjusted(0, 0, 4, 0), Qt::AlignVCenter | Qt::AlignLeft | Qt::TextWordWrap,
                     withRunsApart(where.words));
}

OrderHeads::OrderHeads(QWidget* parent)
    : QWidget(parent) {
    setFixedHeight(kHeadHeight);
}

void OrderHeads::setSort(db::OrderSort sort) {
    m_sort = sort;
    update();
}

void OrderHeads::setCurrencySign(const QString& sign) {
    m_sign = sign;
    update();
}

void OrderHeads::setBarWidth(int width) {
    m_barWidth = width;
    update();
}

void OrderHeads::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    painter.fillRect(rect(), dyes.sunk);
    painter.fillRect(QRectF(0, height() - 1, width(), 1), dyes.thread);
    const OrderColumns columns(width() - m_barWidth);
    const auto head = [&](qreal left, qreal right, const QString& text, Qt::Alignment across, bool sorts) {
        const QRectF box(left, 0, right - left, height());
        paintLine(painter, box, text, Type::SmallStrong, dyes.ink2, across);
        if (sorts)
            paintIcon(painter,
                      QRectF(left + widthOf(text, Type::SmallStrong) + 4, height() / 2.0 - 7, 14, 14),
                      QStringLiteral("chevron-down"), dyes.ink2);
    };
    head(columns.number, columns.customer, tr("No."), Qt::AlignLeft, m_sort == db::OrderSort::Newest);
    head(columns.customer, columns.garmentsRight, tr("Customer"), Qt::AlignLeft, false);
    if (!columns.isNarrow) {
        head(columns.customer, columns.garmentsRight, tr("Garments"), Qt::AlignRight, false);
        head(columns.where, columns.promised, tr("Where it is"), Qt::AlignLeft, false);
    }
    head(columns.promised, columns.owedRight - 60, tr("Promised"), Qt::AlignLeft,
         m_sort == db::OrderSort::Promise);
    head(columns.promised, columns.owedRight, tr("Owed %1").arg(m_sign), Qt::AlignRight, false);
}

void OrderHeads::mousePressEvent(QMouseEvent* event) {
    const OrderColumns columns(width() - m_barWidth);
    const qreal x = event->position().x();
    if (x < columns.customer)
        emit sortAsked(db::OrderSort::Newest);
    else if (x >= columns.promised && x < columns.owedRight - 60)
        emit sortAsked(db::OrderSort::Promise);
}

} // namespace holdfast::app
