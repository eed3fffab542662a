#include "app/places/fair_table/taken_block.h"

#include "app/desk/formats.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QAccessible>
#include <QFontMetricsF>
#include <QPainter>

namespace holdfast::app {

TakenBlock::TakenBlock(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("taken"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void TakenBlock::show(const TakenOrder& taken, const Currency& currency, LocalDate today) {
    m_isQuotation = taken.isQuotation;
    m_number = QString::number(taken.number);
    m_lead = taken.isQuotation ? tr("Quotation %1 kept").arg(m_number) : tr("Order %1 taken").arg(m_number);
    m_customer = tr("for %1").arg(taken.customer);
    m_day =
        dateOf(taken.readyAt) == today ? tr("Ready today") : tr("Ready %1").arg(day(dateOf(taken.readyAt)));
    m_hour = tr("after %1").arg(clock(taken.readyAt));
    m_paid = taken.paid.minor > 0 ? tr("%1 paid").arg(money(taken.paid, currency)) : tr("nothing paid yet");
    const Money owed = taken.total - taken.paid;
    m_owed = owed.minor > 0 ? tr("%1 owed").arg(money(owed, currency)) : tr("nothing owed");
    const QString told =
        QStringList{m_lead, m_customer, m_day, m_hour, m_paid, m_owed}.join(QStringLiteral(", "));
    update();
    if (told == accessibleName())
        return;
    setAccessibleName(told);
    QAccessibleEvent alert(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
}

void TakenBlock::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    const QRectF box(rect());
    paintBox(painter, box, kButtonRadius, m_isQuotation ? dyes.sunk : dyes.greenTint, {});
    const QRectF inner = box.adjusted(kSpace16, 0, -kSpace16, 0);
    const double spare = std::max(0.0, box.height() - minimumSizeHint().height()) / 2;
    double y = 10 + spare;
    const auto line = [&](const QString& text, Type type, const QColor& ink, double high) {
        paintLine(painter, QRectF(inner.left(), y, inner.width(), high), text, type, ink, Qt::AlignHCenter);
        y += high;
    };
    const double leadWide = widthOf(m_lead, Type::BodyStrong) + kIcon + kSpace8;
    paintIcon(painter, QRectF(box.center().x() - leadWide / 2, y, kIcon, kIcon),
              m_isQuotation ? QStringLiteral("tag") : QStringLiteral("done"),
              m_isQuotation ? dyes.ink2 : dyes.green);
    paintLine(painter, QRectF(box.center().x() - leadWide / 2 + kIcon + kSpace8, y, leadWide, kIcon), m_lead,
              Type::BodyStrong, dyes.ink);
    y += kIcon + 4;
    line(m_number, Type::Panel, dyes.ink, 54);
    line(QFontMetricsF(fontOf(Type::Body)).elidedText(m_customer, Qt::ElideRight, inner.width()), Type::Body,
         dyes.ink2, 20);
    y += 6;
    line(m_day, Type::Value, dyes.ink, 26);
    line(m_hour, Type::Body, dyes.ink, 20);
    y += 4;
    line(m_paid + QStringLiteral(" · ") + m_owed, Type::SupportStrong, dyes.ink2, 20);
}

} // namespace holdfast::app
