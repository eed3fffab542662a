#include "app/slips/form_slip.h"

#include "app/desk/formats.h"
#include "app/theme/measures.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/label.h"

#include <QBoxLayout>
#include <QKeyEvent>

namespace holdfast::app {

FormSlip::FormSlip(ShopDesk& desk, const QString& title, const QString& about, QWidget* parent)
    : Slip(parent)
    , m_desk(desk)
    , m_title(title)
    , m_about((new Label(QString(), Type::Support, &Tokens::ink2))->wrapped())
    , m_form(new Form)
    , m_banner(new Banner)
    , m_action(new Button(title, Button::Kind::Primary)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    auto* head = new QVBoxLayout;
    head->setContentsMargins(kSpace16, kSpace16, kSpace16, kSpace12);
    head->setSpacing(kSpace4);
    head->addWidget((new Label(title, Type::CardTitle))->wrapped());
    head->addWidget(m_about);
    column->addLayout(head);
    column->addWidget(new ThreadLine);
    column->addWidget(m_form, 1);
    column->addWidget(new ThreadLine);
    auto* foot = new QVBoxLayout;
    foot->setContentsMargins(kSpace16, kSpace12, kSpace16, kSpace8);
    foot->setSpacing(kSpace8);
    foot->addWidget(m_banner);
    foot->addWidget(m_action);
    column->addLayout(foot);

    setAbout(about);
    m_banner->hide();
    m_action->setObjectName(QStringLiteral("slipAction"));
    m_action->setKey(QKeySequence(Qt::CTRL | Qt::Key_Return));
    connect(m_action, &QAbstractButton::clicked, this, &FormSlip::submit);
    connect(m_form, &Form::edited, this, [this] { refuse({}); });
}

void FormSlip::setAbout(const QString& about) {
    m_about->setText(breakable(about));
    m_about->setVisible(!about.isEmpty());
}

void FormSlip::setAction(const QString& words) {
    m_action->setText(words);
}

void FormSlip::begin() {
    if (!m_beginAt.empty())
        m_form->focusOn(m_beginAt);
    else if (!m_form->focusFirstToFill())
        m_action->setFocus(Qt::OtherFocusReason);
}

void FormSlip::submit() {
    if (m_isFinished || !m_action->isEnabled())
        return;
    m_form->clearErrors();
    refuse({});
    act();
    if (!m_form->isSound())
        m_form->focusFirstError();
}

void FormSlip::say(const Error& error) {
    if (!m_form->showError(error))
        refuse(words(error.message));
}

void FormSlip::refuse(const QString& words) {
    m_refusal = words;
    m_banner->set(Tone::Held, QString(), words);
    m_banner->setVisible(!words.isEmpty());
}

void FormSlip::finish() {
    m_isFinished = true;
    emit finished();
}

void FormSlip::keyPressEvent(QKeyEvent* event) {
    const bool isEnter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    const auto modifiers = event->modifiers() & ~Qt::KeyboardModifiers(Qt::KeypadModifier);
    if (!isEnter || (modifiers != Qt::NoModifier && modifiers != Qt::ControlModifier)) {
        Slip::keyPressEvent(event);
        return;
    }
    if (modifiers == Qt::NoModifier) {
        const bool goesOn = m_isLong ? m_form->focusNext() : m_form->focusFirstToFill();
        if (goesOn)
            return;
    }
    submit();
}

} // namespace holdfast::app
