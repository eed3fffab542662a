#include "app/widgets/empty_state.h"

#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/tokens.h"
#include "app/widgets/button.h"
#include "app/widgets/label.h"

#include <QBoxLayout>
#include <QPainter>

namespace holdfast::app {

namespace {

constexpr int kSign = 44;
constexpr int kWidest = 380;

} // namespace

EmptyState::EmptyState(const QString& iconName, const QString& sentence, const QString& action,
                       QWidget* parent)
    : QWidget(parent)
    , m_iconName(iconName)
    , m_sentence(new Label(sentence, Type::List, &Tokens::ink2, this))
    , m_button(new Button(action, Button::Kind::Primary, this)) {
    m_sentence->wrapped()->setAlignment(Qt::AlignHCenter);
    m_sentence->setMaximumWidth(kWidest);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(kCardPadding, kCardPadding, kCardPadding, kCardPadding);
    column->setSpacing(kSpace16);
    column->addStretch(2);
    column->addSpacing(kSign + kSpace8);
    auto* words = new QHBoxLayout;
    words->addStretch(1);
    words->addWidget(m_sentence, 20);
    words->addStretch(1);
    column->addLayout(words);
    column->addWidget(m_button, 0, Qt::AlignHCenter);
    column->addStretch(3);
    connect(m_button, &QAbstractButton::clicked, this, &EmptyState::acted);
    setAction(action);
}

void EmptyState::setSentence(const QString& sentence) {
    m_sentence->setText(sentence);
}

void EmptyState::setAction(const QString& words) {
    m_button->setText(words);
    m_button->setVisible(!words.isEmpty());
}

void EmptyState::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const QRectF sign((width() - kSign) / 2.0, m_sentence->y() - kSpace16 - kSign, kSign, kSign);
    paintIcon(painter, sign, m_iconName, tokens().ink3);
}

} // namespace holdfast::app
