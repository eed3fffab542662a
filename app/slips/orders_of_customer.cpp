// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/orders_of_customer.h"

#include "app/desk/formats.h"
#include "app/theme/measures.h"
#include "app/theme/text_runs.h"

#include <QFontMetrics>
#include <QResizeEvent>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kOrderPad = 8;
constexpr int kOrderEdge = 8;

QString stateWords(const db::OrderLine& line, LocalDate today) {
    switch (line.state) {
    case OrderState::Quoted:
        return OrdersOfCustomer::tr("quoted");
    case OrderState::Confirmed:
        return OrdersOfCustomer::tr("promised %1").arg(dayNear(dateOf(line.promised), today));
    case OrderState::HandedOver:
        return OrdersOfCustomer::tr("handed over");
    case OrderState::Cancelled:
        break;
    }
    return OrdersOfCustomer::tr("cancelled");
}

QString moneyWords(const db::OrderLine& line, const Currency& currency) {
    const QString total = money(line.total, currency);
    if (line.owed() > Money{} && line.paid == Money{})
        return OrdersOfCustomer::tr("%1, all of it owed").arg(total);
    if (line.owed() > Money{})
        return OrdersOfCustomer::tr("%1, %2 paid, %3 owed")
            .arg(total, money(line.paid, currency), money(line.owed(), currency));
    if (line.paid == line.total)
        return OrdersOfCustomer::tr("%1, paid").arg(total);
    return OrdersOfCustomer::tr("%1, %2 paid").arg(total, money(line.paid, currency));
}

} // namespace

OrdersOfCustomer::OrdersOfCustomer(ShopDesk& desk, const std::vector<db::OrderOfCustomer>& orders,
                                   QWidget* parent)
    : PaintedLines(QStringLiteral("ordersOfCustomer"), tr("Orders of the customer"), parent) {
    const Now now = desk.now();
    for (const db::OrderOfCustomer& each : orders) {
        Line line;
        line.order = each.line.id;
        line.what = tr("%1, %2").arg(QString::number(each.line.number), stateWords(each.line, now.today()));
        line.money = moneyWords(each.line, desk.currency());
        line.taken = tr("taken %1, %n garment|taken %1, %n garments", nullptr, howMany(each.line.garments))
                         .arg(dayNear(dateOf(now.toLocal(each.takenAt)), now.today()));
        line.isOwing = each.line.owed() > Money{};
        m_lines.push_back(std::move(line));
    }
    layLines();
}

int OrdersOfCustomer::textHeight(const QString& text, Type type) const {
    const int room = std::max(80, width() - 2 * kOrderEdge);
    return QFontMetrics(fontOf(type)).boundingRect(0, 0, room, 2000, Qt::TextWordWrap, text).height();
}

void OrdersOfCustomer::layLines() {
    for (Line& line : m_lines)
        line.height = 2 * kOrderPad + textHeight(line.what, Type::SupportStrong) +
                      textHeight(line.money, Type::Small) + textHeight(line.taken, Type::Small);
    linesChanged();
}

void OrdersOfCustomer::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (event->oldSize().width() != event->size().width())
        layLines();
}

void OrdersOfCustomer::paintOne(QPainter& painter, int index, const QRectF& box, bool isCurrent) {
    const Tokens& dyes = tokens();
    const Line& line = at(index);
    if (isCurrent)
        painter.fillRect(box, dyes.woad);
    qreal top = box.top() + kOrderPad;
    const auto put = [&](const QString& text, Type type, const QColor& ink) {
        const int height = textHeight(text, type);
        painter.setFont(fontOf(type));
        painter.setPen(ink);
        painter.drawText(QRectF(box.left() + kOrderEdge, top, box.width() - 2 * kOrderEdge, height),
                         Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, withRunsApart(text));
        top += height;
    };
    put(line.what, Type::SupportStrong, dyes.ink);
    put(line.money, Type::Small, line.isOwing ? dyes.weld : dyes.ink2);
    put(line.taken, Type::Small, dyes.ink2);
    painter.fillRect(QRectF(box.left(), box.bottom() - 1, box.width(), 1), dyes.thread);
}

QString OrdersOfCustomer::spokenLine(int line) const {
    return QStringList{at(line).what, at(line).money, at(line).taken}.join(QStringLiteral(", "));
}

void OrdersOfCustomer::doWhatItOffers(int line) {
    emit orderAsked(at(line).order);
}

} // namespace holdfast::app
