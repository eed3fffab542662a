// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/amount_pad.h"

#include "app/places/fair_table/table_measures.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/widgets/button.h"

#include <QApplication>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>

namespace holdfast::app {

namespace {

constexpr int kPadWide = 236;
constexpr int kAcross = 3;

} // namespace

AmountPad::AmountPad(QLineEdit* amount, QWidget* ground)
    : QWidget(ground)
    , m_amount(amount) {
    setObjectName(QStringLiteral("amountPad"));
    setAccessibleName(tr("Digits of the amount"));
    hide();
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(kSpace8, kSpace8, kSpace8, kSpace8);
    grid->setSpacing(kSpace8);
    const QStringList signs{
        QStringLiteral("1"), QStringLiteral("2"), QStringLiteral("3"), QStringLiteral("4"),
        QStringLiteral("5"), QStringLiteral("6"), QStringLiteral("7"), QStringLiteral("8"),
        QStringLiteral("9"), QStringLiteral("."), QStringLiteral("0"), tr("Clear"),
    };
    for (int at = 0; at < signs.size(); ++at) {
        auto* button = new Button(signs[at]);
        button->setObjectName(QStringLiteral("amountPad-%1").arg(at));
        button->setFocusPolicy(Qt::NoFocus); // the amount keeps the keyboard
        button->setTargetHeight(kStallTarget);
        connect(button, &QAbstractButton::clicked, this, [this, sign = signs[at]] { press(sign); });
        grid->addWidget(button, at / kAcross, at % kAcross);
        if (signs[at] == QStringLiteral("."))
            m_point = button;
    }
}

void AmountPad::openAbove(const QWidget& row, bool hasFractions) {
    keepRoom(m_point);
    m_point->setVisible(hasFractions);
    const QSize size(kPadWide, layout()->sizeHint().height());
    const QPoint corner = row.mapTo(parentWidget(), QPoint(0, 0));
    const int above = corner.y() - size.height() - kSpace4;
    const int below = corner.y() + row.height() + kSpace4;
    setGeometry(QRect(QPoint(corner.x(), above >= 0 ? above : below), size));
    show();
    raise();
}

// Through the line's own keys, so that it is heard as if it were typed.
void AmountPad::press(const QString& sign) {
    const bool isSign = sign.size() == 1;
    if (!isSign)
        m_amount->selectAll();
    QKeyEvent key(QEvent::KeyPress, isSign ? 0 : Qt::Key_Delete, Qt::NoModifier, isSign ? sign : QString());
    QApplication::sendEvent(m_amount, &key);
}

void AmountPad::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintBox(painter, QRectF(rect()), kButtonRadius, tokens().card, tokens().edge, 1.2);
}

} // namespace holdfast::app
