// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/empty_state.h"

#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/text_runs.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"
#include "app/widgets/button.h"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kSign = 44;
constexpr int kWidest = 380;
constexpr int kNarrowest = 160;
constexpr int kStep = 8;

int heightOf(const QString& sentence, int width) {
    const QFontMetricsF metrics(fontOf(Type::List));
    const QRectF laid = metrics.boundingRect(QRectF(0, 0, width, 1000), Qt::TextWordWrap, sentence);
    return static_cast<int>(std::ceil(laid.height()));
}

} // namespace

EmptyState::EmptyState(const QString& iconName, const QString& sentence, const QString& action,
                       QWidget* parent)
    : QWidget(parent)
    , m_iconName(iconName)
    , m_button(new Button(action, Button::Kind::Primary, this)) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setFocusProxy(m_button);
    connect(m_button, &QAbstractButton::clicked, this, &EmptyState::acted);
    setSentence(sentence);
    setAction(action);
}

void EmptyState::setSentence(const QString& sentence) {
    m_sentence = sentence;
    setAccessibleName(sentence);
    arrange();
}

void EmptyState::setAction(const QString& words) {
    m_button->setText(words);
    m_button->setVisible(!words.isEmpty());
    arrange();
}

void EmptyState::setKey(const QKeySequence& keys) {
    m_button->setKey(keys);
    arrange();
}

void EmptyState::showKey(const QKeySequence& keys) {
    m_button->showKey(keys);
    arrange();
}

QRect EmptyState::sentenceBox() const {
    const int widest = std::clamp(width() - 2 * kCardPadding, kNarrowest, kWidest);
    const int high = heightOf(m_sentence, widest);
    int narrow = widest;
    while (narrow - kStep >= kNarrowest && heightOf(m_sentence, narrow - kStep) <= high) {
        narrow -= kStep;
    }
    const int action = m_button->isHidden() ? 0 : kSpace20 + m_button->height();
    const int whole = kSign + kSpace12 + high + action;
    // A little above the middle, where the eye looks for it.
    const int top = std::max(kSpace8, (height() - whole) * 2 / 5);
    return {(width() - narrow) / 2, top + kSign + kSpace12, narrow, high};
}

void EmptyState::arrange() {
    const QRect words = sentenceBox();
    const QSize size = m_button->sizeHint();
    m_button->setGeometry((width() - size.width()) / 2, words.bottom() + 1 + kSpace20, size.width(),
                          size.height());
    updateGeometry();
    update();
}

QSize EmptyState::sizeHint() const {
    return {kWidest + 2 * kCardPadding, kSign + heightOf(m_sentence, kWidest) + kTarget + 5 * kSpace20};
}

QSize EmptyState::minimumSizeHint() const {
    const int wide = std::max(kNarrowest, m_button->isHidden() ? 0 : m_button->sizeHint().width());
    const int action = m_button->isHidden() ? 0 : kSpace20 + kTarget;
    const int widest = std::clamp(width() - 2 * kCardPadding, kNarrowest, kWidest);
    return {wide + 2 * kSpace8, kSign + kSpace12 + heightOf(m_sentence, widest) + action + 2 * kSpace8};
}

void EmptyState::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

void EmptyState::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    const QRect words = sentenceBox();
    paintIcon(painter, QRectF((width() - kSign) / 2.0, words.top() - kSpace12 - kSign, kSign, kSign),
              m_iconName, dyes.ink3);
    painter.setFont(fontOf(Type::List));
    painter.setPen(dyes.ink2);
    painter.drawText(QRectF(words), Qt::TextWordWrap | Qt::AlignHCenter, withRunsApart(m_sentence));
}

} // namespace holdfast::app
