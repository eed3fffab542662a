// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/deposit_row.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/amount_pad.h"
#include "app/places/fair_table/table_measures.h"
#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>

namespace holdfast::app {

namespace {

// A plain letter, as typed without Ctrl or Alt.
bool isLetter(const QKeyEvent& key) {
    return !(key.modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier)) &&
           !key.text().isEmpty() && key.text().front().isLetter();
}

} // namespace

DepositRow::DepositRow(FairTableModel& model, QWidget* parent)
    : QWidget(parent)
    , m_model(model)
    , m_amount(new Field)
    , m_asked(new Button({}, Button::Kind::Quiet))
    , m_cash(new Button(tr("Cash"), Button::Kind::Quiet))
    , m_card(new Button(tr("Card"), Button::Kind::Quiet))
    , m_how(new Button({}, Button::Kind::Quiet)) {
    m_amount->setObjectName(QStringLiteral("paidNow"));
    m_amount->setRightAligned(true);
    m_amount->setKey(Qt::Key_E);
    m_amount->editor()->setMaxLength(40);
    m_amount->editor()->installEventFilter(this);
    m_amount->setFixedHeight(kStallTarget);
    m_asked->setObjectName(QStringLiteral("depositAsked"));
    m_asked->setKey(Qt::Key_R);
    m_cash->setObjectName(QStringLiteral("paidInCash"));
    m_cash->setToolTip(tr("C in the amount"));
    m_card->setObjectName(QStringLiteral("paidByCard"));
    m_card->setToolTip(tr("K in the amount"));
    m_how->setObjectName(QStringLiteral("paidHow"));
    m_how->setToolTip(tr("Choose again how it was paid"));

    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(kSpace8);
    row->addWidget(m_amount, 1);
    for (Button* button : {m_asked, m_cash, m_card, m_how}) {
        button->setTargetHeight(kStallTarget);
        row->addWidget(button);
    }
    connectAll();
}

void DepositRow::connectAll() {
    connect(m_amount, &Field::edited, this, [this](const QString& text) {
        m_model.edit(Step::Deposit, [&](TableDraft& draft) {
            draft.paidNow = text.toStdString();
            if (text.trimmed().isEmpty())
                draft.paidHow.reset();
        });
    });
    connect(m_amount, &Field::finished, this, [this] { m_model.endStep(); });
    connect(m_asked, &QAbstractButton::clicked, this, &DepositRow::payAsAsked);
    connect(m_cash, &QAbstractButton::clicked, this, [this] { choose(PaidHow::Cash); });
    connect(m_card, &QAbstractButton::clicked, this, [this] { choose(PaidHow::Card); });
    connect(m_how, &QAbstractButton::clicked, this, [this] { choose(std::nullopt); });
}

void DepositRow::payAsAsked() {
    pay(m_model.sums().depositAsked);
}

void DepositRow::payAll() {
    pay(m_model.sums().owed);
}

// The keyboard is left in the amount, where the next key says how it was paid.
void DepositRow::pay(Money amount) {
    const Currency& currency = m_model.shop().facts.settings.currency;
    m_amount->editor()->setFocus(Qt::OtherFocusReason); // before the button that was pressed goes away
    m_model.edit(Step::Choice, [&](TableDraft& draft) { draft.paidNow = plainAmount(amount, currency); });
    m_amount->editor()->end(false);
}

void DepositRow::choose(std::optional<PaidHow> how) {
    m_amount->editor()->setFocus(Qt::OtherFocusReason);
    m_model.edit(Step::Choice, [&](TableDraft& draft) { draft.paidHow = how; });
}

void DepositRow::refresh() {
    const TableDraft& draft = m_model.draft();
    if (m_amount->text().toStdString() != draft.paidNow)
        m_amount->setText(words(draft.paidNow));
    // An amount takes the room of the key's cap.
    m_amount->showKey(draft.paidNow.empty() ? QKeySequence(Qt::Key_E) : QKeySequence());
    refreshHow();
}

void DepositRow::refreshHow() {
    const TableDraft& draft = m_model.draft();
    const TableSums& sums = m_model.sums();
    const Currency& currency = m_model.shop().facts.settings.currency;
    const bool isPaid = sums.deposit.minor > 0;
    const QString whole = tr("Paid now %1").arg(words(currency.sign));
    const bool isAsked = draft.paidNow.empty() && sums.depositAsked.minor > 0;
    // What else is in the line needs the room.
    m_amount->setLabel(isAsked || (isPaid && !draft.paidHow) ? tr("Paid %1").arg(words(currency.sign))
                                                             : whole);
    m_amount->editor()->setAccessibleName(whole);
    m_asked->setText(tr("Take %1").arg(money(sums.depositAsked, currency)));
    m_asked->setToolTip(tr("The shop asks for %1 % first").arg(m_model.shop().facts.settings.depositPercent));
    m_asked->setVisible(isAsked);
    // The keys are keys only in the amount.
    const bool isInAmount = m_amount->editor()->hasFocus();
    m_cash->showKeyText(isInAmount ? QStringLiteral("C") : QString());
    m_card->showKeyText(isInAmount ? QStringLiteral("K") : QString());
    m_cash->setVisible(isPaid && !draft.paidHow);
    m_card->setVisible(isPaid && !draft.paidHow);
    m_how->setText(draft.paidHow == PaidHow::Card ? tr("by card") : tr("in cash"));
    m_how->setVisible(isPaid && draft.paidHow.has_value());
}

bool DepositRow::eventFilter(QObject* watched, QEvent* event) {
    switch (event->type()) {
    case QEvent::FocusOut:
        closePad();
        refreshHow();
        break;
    case QEvent::FocusIn:
        refreshHow();
        break;
    case QEvent::MouseButtonRelease:
        openPad();
        break;
    case QEvent::KeyPress:
        if (m_pad && event->spontaneous())
            closePad(); // there is a keyboard
        return takeLetter(*static_cast<QKeyEvent*>(event));
    default:
        break;
    }
    return QWidget::eventFilter(watched, event);
}

void DepositRow::openPad() {
    if (!m_pad)
        m_pad = new AmountPad(m_amount->editor(), window());
    m_pad->openAbove(*this, m_model.shop().facts.settings.currency.exponent > 0);
}

void DepositRow::closePad() {
    if (m_pad)
        m_pad->hide();
}

// No letter is part of an amount. Once one is typed, two of them say how it was paid.
bool DepositRow::takeLetter(const QKeyEvent& key) {
    if (!isLetter(key))
        return false;
    if (m_model.sums().deposit.minor > 0 && (key.key() == Qt::Key_C || key.key() == Qt::Key_K))
        choose(key.key() == Qt::Key_C ? PaidHow::Cash : PaidHow::Card);
    return true;
}

void DepositRow::takeFocus() {
    m_amount->setFocus(Qt::ShortcutFocusReason);
    m_amount->selectAll();
}

void DepositRow::setError(const QString& words) {
    if (m_amount->error() != words)
        m_amount->setError(words);
}

} // namespace holdfast::app
