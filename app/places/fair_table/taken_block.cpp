// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/taken_block.h"

#include "app/desk/formats.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/text_runs.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QAccessible>
#include <QPainter>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kPadding = 10;

} // namespace

TakenBlock::TakenBlock(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("taken"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void TakenBlock::show(const TakenOrder& taken, const Currency& currency, LocalDate today) {
    m_taken = taken;
    m_number = QString::number(taken.number);
    m_lead = taken.isChange                  ? tr("Order %1 changed").arg(m_number)
             : taken.isQuotation             ? tr("Quotation %1 saved").arg(m_number)
             : taken.leavesDayOpen.isEmpty() ? tr("Order %1 taken").arg(m_number)
                                             : tr("Order %1 taken, held").arg(m_number);
    m_customer = tr("for %1").arg(taken.customer);
    readDay(today);
    m_paid = taken.paid.minor <= 0            ? tr("nothing paid yet")
             : taken.paidHow == PaidHow::Card ? tr("%1 paid by card").arg(money(taken.paid, currency))
                                              : tr("%1 paid in cash").arg(money(taken.paid, currency));
    const Money owed = taken.total - taken.paid;
    m_owed = owed.minor > 0 ? tr("%1 owed").arg(money(owed, currency)) : tr("nothing owed");
    updateGeometry();
    update();
    const QString told =
        QStringList{m_lead, m_customer, m_day, m_reason, m_paid, m_owed}.join(QStringLiteral(", "));
    if (told == accessibleName())
        return;
    setAccessibleName(told);
    QAccessibleEvent alert(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
}

void TakenBlock::readDay(LocalDate today) {
    if (!m_taken.leavesDayOpen.isEmpty()) {
        m_day = tr("No day yet");
        m_reason = m_taken.leavesDayOpen;
        return;
    }
    const LocalDate ready = dateOf(m_taken.readyAt);
    m_day = ready == today ? tr("Ready today") : tr("Ready %1").arg(day(ready));
    m_reason = tr("from %1").arg(clock(m_taken.readyAt));
    if (!m_taken.dayWaitsFor.isEmpty())
        m_reason += QStringLiteral(", ") + m_taken.dayWaitsFor;
}

TakenBlock::Look TakenBlock::look() const {
    if (!m_taken.leavesDayOpen.isEmpty())
        return {&Tokens::madderTint, &Tokens::madder, "hold"};
    if (m_taken.isQuotation)
        return {&Tokens::sunk, &Tokens::ink2, "tag"};
    if (!m_taken.dayWaitsFor.isEmpty())
        return {&Tokens::weldTint, &Tokens::weld, "caution"};
    return {&Tokens::greenTint, &Tokens::green, "done"};
}

int TakenBlock::reasonHeight() const {
    const double room = std::max(200, width()) - 2 * kSpace16;
    const int lines = widthOf(m_reason, Type::Body) > room ? 2 : 1;
    return lines * lineHeight(Type::Body);
}

void TakenBlock::setLow(bool isLow) {
    m_isLow = isLow;
    updateGeometry();
    update();
}

Type TakenBlock::leadType() const {
    return m_isLow ? Type::Value : Type::BodyStrong;
}

QSize TakenBlock::minimumSizeHint() const {
    const int lead = std::max(kIcon, lineHeight(leadType()));
    const int number = m_isLow ? 0 : lineHeight(Type::Panel);
    return {280, 2 * kPadding + lead + kSpace4 + number + lineHeight(Type::Body) + 6 +
                     lineHeight(Type::Value) + reasonHeight() + kSpace4 + lineHeight(Type::SupportStrong)};
}

void TakenBlock::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    const QRectF box(rect());
    const Look dyed = look();
    paintBox(painter, box, kButtonRadius, dyes.*dyed.ground, {});
    const QRectF inner = box.adjusted(kSpace16, 0, -kSpace16, 0);
    double y = kPadding + std::max(0.0, box.height() - minimumSizeHint().height()) / 2;
    const auto line = [&](const QString& text, Type type, const QColor& ink) {
        paintLine(painter, QRectF(inner.left(), y, inner.width(), lineHeight(type)), text, type, ink,
                  Qt::AlignHCenter);
        y += lineHeight(type);
    };
    const double leadHigh = std::max(kIcon, lineHeight(leadType()));
    const double leadWide = widthOf(m_lead, leadType()) + kIcon + kSpace8;
    const double leadLeft = box.center().x() - leadWide / 2;
    paintIcon(painter, QRectF(leadLeft, y + (leadHigh - kIcon) / 2, kIcon, kIcon),
              QString::fromLatin1(dyed.iconName), dyes.*dyed.ink);
    paintLine(painter, QRectF(leadLeft + kIcon + kSpace8, y, leadWide, leadHigh), m_lead, leadType(),
              dyes.ink);
    y += leadHigh + kSpace4;
    if (!m_isLow)
        line(m_number, Type::Panel, dyes.ink);
    line(fitted(m_customer, Type::Body, inner.width()), Type::Body, dyes.ink2);
    y += 6;
    line(m_day, Type::Value, dyes.ink);
    painter.setFont(fontOf(Type::Body));
    painter.setPen(dyes.ink);
    painter.drawText(QRectF(inner.left(), y, inner.width(), reasonHeight()),
                     Qt::TextWordWrap | Qt::AlignHCenter | Qt::AlignTop, withRunsApart(m_reason));
    y += reasonHeight() + kSpace4;
    line(m_paid + QStringLiteral(" · ") + m_owed, Type::SupportStrong, dyes.ink2);
}

} // namespace holdfast::app
