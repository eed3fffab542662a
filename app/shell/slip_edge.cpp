// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/slip_edge.h"

#include "app/shell/reading_order.h"
#include "app/theme/measures.h"
#include "app/theme/tokens.h"
#include "app/widgets/button.h"

#include <QApplication>
#include <QBoxLayout>
#include <QKeyEvent>
#include <QPainter>

namespace holdfast::app {

SlipEdge::SlipEdge(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("slipEdge"));
    m_leave = new Button(tr("Leave"), QStringLiteral("close"), Button::Kind::Quiet);
    m_leave->setObjectName(QStringLiteral("slipLeave"));
    m_leave->showKey(QKeySequence(Qt::Key_Escape));
    m_leave->setTargetHeight(32);
    connect(m_leave, &QAbstractButton::clicked, this, &SlipEdge::close);
    m_column = new QVBoxLayout(this);
    m_column->setContentsMargins(1, 0, 0, 0);
    m_column->setSpacing(0);
    auto* foot = new QHBoxLayout;
    foot->setContentsMargins(kSpace8, kSpace4, kSpace8, kSpace8);
    foot->addStretch();
    foot->addWidget(m_leave);
    m_column->addLayout(foot);
    hide();
}

void SlipEdge::open(Slip* slip, const QString& key) {
    if (!isVisible())
        m_before = QApplication::focusWidget();
    keepTyped();
    drop();
    m_slip = slip;
    m_key = key.isEmpty() ? slip->title() : key;
    m_column->insertWidget(0, slip, 1);
    setAccessibleName(slip->title());
    connect(slip, &Slip::finished, this, &SlipEdge::finish);
    connect(slip, &Slip::freshAsked, this, &SlipEdge::clear);
    show();
    raise();
    slip->show();
    takeKeyboard();
    if (const auto left = m_left.find(m_key); left != m_left.end()) {
        slip->putBack(*left);
        takeKeyboard();
    }
}

void SlipEdge::takeKeyboard() {
    m_slip->begin();
    if (!hasKeyboard())
        m_leave->setFocus(Qt::OtherFocusReason);
}

void SlipEdge::keepTyped() {
    if (m_slip.isNull())
        return;
    const QVariantMap typed = m_slip->typed();
    if (typed.isEmpty())
        m_left.remove(m_key);
    else
        m_left[m_key] = typed;
}

void SlipEdge::finish() {
    m_left.remove(m_key);
    m_key.clear();
    close();
}

void SlipEdge::clear() {
    m_left.remove(m_key);
    drop();
    emit freshAsked();
}

void SlipEdge::close() {
    if (!isOpen())
        return;
    const bool hadKeyboard = hasKeyboard();
    if (!m_key.isEmpty())
        keepTyped();
    m_key.clear();
    drop();
    hide();
    if (hadKeyboard && canHaveKeyboard(m_before))
        m_before->setFocus(Qt::OtherFocusReason);
    emit closed();
}

void SlipEdge::drop() {
    if (m_slip.isNull())
        return;
    m_slip->disconnect(this);
    m_column->removeWidget(m_slip);
    m_slip->hide();
    m_slip->deleteLater();
    m_slip.clear();
}

bool SlipEdge::hasKeyboard() const {
    const QWidget* focused = QApplication::focusWidget();
    return focused != nullptr && isAncestorOf(focused);
}

void SlipEdge::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        close();
        return;
    }
    // What the slip leaves alone stays with it: no key of the place below is meant.
    event->accept();
}

bool SlipEdge::focusNextPrevChild(bool next) {
    return moveFocusWithin(this, next);
}

void SlipEdge::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), tokens().card);
    painter.fillRect(QRect(0, 0, 1, height()), tokens().thread);
    painter.fillRect(QRect(0, 0, width(), 1), tokens().thread);
}

} // namespace holdfast::app
