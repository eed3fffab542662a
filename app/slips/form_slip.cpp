// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/form_slip.h"

#include "app/desk/formats.h"
#include "app/slips/typed_values.h"
#include "app/theme/measures.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/label.h"

#include <QBoxLayout>
#include <QKeyEvent>

namespace holdfast::app {

namespace {

constexpr int kClearHeight = 32;

} // namespace

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
    m_asLeft = makeAsLeft();
    head->addWidget(m_asLeft);
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

    m_form->add(m_about);
    setAbout(about);
    m_banner->hide();
    m_action->setObjectName(QStringLiteral("slipAction"));
    m_action->setKey(QKeySequence(Qt::CTRL | Qt::Key_Return));
    connect(m_action, &QAbstractButton::clicked, this, &FormSlip::submit);
    connect(m_form, &Form::edited, this, [this] { refuse({}); });
}

QWidget* FormSlip::makeAsLeft() {
    auto* row = new QWidget;
    auto* layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget((new Label(tr("As you left it."), Type::SupportStrong))->wrapped(), 1);
    auto* clear = new Button(tr("Clear the form"), Button::Kind::Quiet);
    clear->setObjectName(QStringLiteral("clearForm"));
    clear->setTargetHeight(kClearHeight);
    connect(clear, &QAbstractButton::clicked, this, &Slip::freshAsked);
    layout->addWidget(clear);
    row->setObjectName(QStringLiteral("asLeft"));
    row->hide();
    return row;
}

QVariantMap FormSlip::typed() const {
    QVariantMap typed;
    if (m_isFinished)
        return typed;
    const QVariantMap now = typedIn(*m_form);
    for (auto each = now.begin(); each != now.end(); ++each)
        if (m_begunWith.value(each.key()) != *each)
            typed.insert(each.key(), *each);
    return typed;
}

void FormSlip::putBack(const QVariantMap& typed) {
    putBackInto(*m_form, typed);
    m_asLeft->show();
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
    else if (!m_form->focusFirstToFill() && !m_form->focusFirst())
        m_action->setFocus(Qt::OtherFocusReason);
    if (m_begunWith.isEmpty())
        m_begunWith = typedIn(*m_form);
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

void FormSlip::waitForWork() {
    m_isWaiting = true;
    m_action->setCannot(tr("It is being done; the foot of the window shows how far it is."));
}

void FormSlip::endWork(const QString& reason) {
    if (!m_isWaiting)
        return;
    m_isWaiting = false;
    m_action->setCannot({});
    if (reason.isEmpty())
        finish();
    else
        refuse(reason);
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
