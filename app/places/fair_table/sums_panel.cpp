// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/sums_panel.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/customer_row.h"
#include "app/places/fair_table/day_row.h"
#include "app/places/fair_table/deposit_row.h"
#include "app/places/fair_table/note_row.h"
#include "app/places/fair_table/order_lines.h"
#include "app/places/fair_table/promise_block.h"
#include "app/places/fair_table/table_measures.h"
#include "app/places/fair_table/taken_block.h"
#include "app/theme/measures.h"
#include "app/theme/type.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"

#include <QHBoxLayout>
#include <QShortcut>
#include <QTimer>
#include <QVBoxLayout>

namespace holdfast::app {

namespace {

constexpr int kBillLeft = 14;
constexpr int kTake = 72;
constexpr int kLowTake = 60;
constexpr int kLowerTake = 52;
constexpr int kLowHeight = 690; // of the panel; lower windows get the short promise
constexpr int kLowerHeight = 560;
constexpr int kLowestHeight = 440; // lower, and the promise says the day only
constexpr int kBillGap = 6;        // between lines of the bill
constexpr int kLowerBillGap = 2;
constexpr int kPinnedHeight = 360; // lower, and all but the last keys scrolls

// "£10.00 in cash", as the key that takes the order says it.
QString paidWords(Money paid, const std::optional<PaidHow>& how, const Currency& currency) {
    if (paid.minor <= 0)
        return {};
    const QString amount = money(paid, currency);
    if (!how)
        return SumsPanel::tr("%1 now").arg(amount);
    return how == PaidHow::Card ? SumsPanel::tr("%1 by card").arg(amount)
                                : SumsPanel::tr("%1 in cash").arg(amount);
}

} // namespace

SumsPanel::SumsPanel(FairTableModel& model, QWidget* parent)
    : QWidget(parent)
    , m_model(model) {
    build();
    connectAll();
}

QWidget* SumsPanel::buildTitle() {
    m_title = new Label(tr("New order"), Type::CardTitle);
    m_title->setObjectName(QStringLiteral("orderTitle"));
    m_toLines = new KeyHint({}, Qt::Key_L);
    m_toLines->setAccessibleName(tr("Garments of this order"));
    m_clear = new Button(tr("Clear order"), Button::Kind::Quiet);
    m_clear->setObjectName(QStringLiteral("clearOrder"));
    m_clear->setKey(Qt::Key_X);
    m_clear->setTargetHeight(kStallTarget);
    keepRoom(m_clear);
    m_toLines->setMinimumSize(kStallTarget, kStallTarget);
    auto* title = new QWidget;
    auto* row = new QHBoxLayout(title);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(kSpace4);
    row->addWidget(m_title);
    row->addWidget(m_toLines);
    row->addStretch();
    row->addWidget(m_clear);
    return title;
}

QWidget* SumsPanel::buildDraft() {
    m_lines = new OrderLines(m_model);
    m_toLines->jumpTo(m_lines);
    m_total = new Label({}, Type::Value);
    m_total->setObjectName(QStringLiteral("total"));
    m_floor = new Label({}, Type::Small, &Tokens::ink2);
    m_floor->setObjectName(QStringLiteral("costFloor"));
    m_floor->setMinimumHeight(lineHeight(Type::Small));
    m_promise = new PromiseBlock;
    m_promise->installEventFilter(this);
    m_sooner = new Button({}, QStringLiteral("clock"), Button::Kind::Quiet);
    m_sooner->setObjectName(QStringLiteral("sooner"));
    m_sooner->setLeftAligned(true);
    m_sooner->setTargetHeight(kStallTarget);
    m_payAll = new Button(tr("Take all"), Button::Kind::Quiet);
    m_payAll->setObjectName(QStringLiteral("payAll"));
    m_payAll->setKey(Qt::Key_B);
    m_payAll->setToolTip(tr("The whole bill is paid now"));
    m_payAll->setTargetHeight(kStallTarget);
    keepRoom(m_payAll);
    keepRoom(m_sooner);
    m_sooner->setKey(Qt::Key_J);
    m_day = new DayRow(m_model);
    m_day->hide();
    m_note = new NoteRow(m_model);
    m_note->hide();
    m_addNote = new Button(tr("Add a note"), Button::Kind::Quiet);
    m_addNote->setObjectName(QStringLiteral("addNote"));
    m_addNote->showKey(Qt::Key_I);
    m_addNote->setTargetHeight(kStallTarget);

    auto* amounts = new QVBoxLayout; // what it costs the shop is under the total
    amounts->setSpacing(0);
    amounts->addWidget(m_total, 0, Qt::AlignRight);
    amounts->addWidget(m_floor, 0, Qt::AlignRight);
    auto* totalRow = new QHBoxLayout;
    totalRow->setContentsMargins(kSpace8, 0, kSpace8, 0); // as the lines above
    totalRow->addWidget(new Label(tr("Total"), Type::Value));
    totalRow->addWidget(m_payAll);
    totalRow->addStretch();
    totalRow->addLayout(amounts);

    auto* draft = new QWidget;
    auto* column = new QVBoxLayout(draft);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(kSpace4);
    column->addWidget(m_lines, 1);
    column->addWidget(new ThreadLine);
    column->addLayout(totalRow);
    column->addWidget(m_promise);
    auto* offers = new QHBoxLayout; // a sooner day, or else a note
    offers->addWidget(m_sooner, 1);
    offers->addWidget(m_addNote);
    column->addLayout(offers);
    column->addWidget(m_day);
    column->addWidget(m_note);
    return draft;
}

// With the ticket of the order just taken, which is for the same customer.
QWidget* SumsPanel::buildPayment() {
    m_ticket = new Button(tr("Print the claim ticket"));
    m_ticket->setObjectName(QStringLiteral("printTicket"));
    m_ticket->setKey(Qt::Key_T);
    m_ticket->setTargetHeight(kStallTarget);
    m_customer = new CustomerRow(m_model);
    m_deposit = new DepositRow(m_model);
    m_error = new Label({}, Type::SmallStrong, &Tokens::madder);
    m_error->setObjectName(QStringLiteral("orderError"));
    m_error->wrapped();
    m_paymentLine = new ThreadLine;
    auto* payment = new QWidget;
    auto* column = new QVBoxLayout(payment);
    column->setContentsMargins(kBillLeft, 0, kBillLeft, kSpace4);
    column->setSpacing(kBillGap);
    column->addWidget(m_paymentLine);
    column->addWidget(m_ticket);
    column->addWidget(m_customer);
    column->addWidget(m_deposit);
    column->addWidget(m_error);
    return payment;
}

void SumsPanel::layPayment(bool isPinned) {
    if (m_isPinned == isPinned)
        return;
    m_isPinned = isPinned;
    const int side = isPinned ? kBillLeft : 0; // the column that scrolls has its own
    m_payment->layout()->setContentsMargins(side, 0, side, kSpace4);
    if (isPinned)
        m_card->content()->addWidget(m_payment);
    else
        m_scroll->column()->addWidget(m_payment);
    m_payment->show();
}

void SumsPanel::build() {
    m_kept = new Label({}, Type::Support, &Tokens::ink2);
    m_kept->setObjectName(QStringLiteral("keptWords"));
    m_kept->wrapped();
    m_taken = new TakenBlock;
    m_another = new Button(tr("Add a garment"));
    m_another->setObjectName(QStringLiteral("anotherGarment"));
    m_another->showKeyText(QStringLiteral("+"));
    m_another->setTargetHeight(kStallTarget);
    m_quotation = new Button(tr("Quote, no money"));
    m_quotation->setObjectName(QStringLiteral("quotation"));
    m_quotation->setKey(Qt::Key_K);
    m_quotation->setToolTip(tr("Saves it as a quotation while the customer thinks it over; nothing is paid"));
    m_quotation->setTargetHeight(kStallTarget);
    m_take = new Button(tr("Take order"), Button::Kind::Next);
    m_take->setObjectName(QStringLiteral("takeOrder"));
    m_take->showKey(Qt::Key_Return);
    m_take->setTargetHeight(kTake);

    m_scroll = new VerticalScroll;
    auto* column = m_scroll->column();
    column->setContentsMargins(kBillLeft, kSpace4, kBillLeft, kSpace4);
    column->setSpacing(kBillGap);
    column->addWidget(buildTitle());
    column->addWidget(m_kept);
    m_draft = buildDraft();
    column->addWidget(m_draft, 1);
    column->addWidget(m_taken, 1);
    m_card = new Card;
    m_card->content()->addWidget(m_scroll, 1);
    m_payment = buildPayment();
    m_isPinned = true;
    m_card->content()->addWidget(m_payment);

    m_lastKeys = new QHBoxLayout;
    m_lastKeys->setSpacing(kSpace8);
    m_lastKeys->addWidget(m_another, 1);
    m_lastKeys->addWidget(m_quotation, 1);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->setSpacing(kSpace12);
    whole->addWidget(m_card, 1);
    whole->addLayout(m_lastKeys);
    whole->addWidget(m_take);
}

void SumsPanel::connectAll() {
    connect(m_clear, &QAbstractButton::clicked, this, [this] {
        m_model.clear();
        emit keyboardFreed();
    });
    connect(m_sooner, &QAbstractButton::clicked, this, &SumsPanel::takeSooner);
    const auto openDay = [this] {
        m_day->open();
        refreshNote();
    };
    connect(new QShortcut(Qt::Key_U, this), &QShortcut::activated, this, openDay);
    connect(m_day, &DayRow::left, this, &SumsPanel::refreshNote);
    connect(m_payAll, &QAbstractButton::clicked, m_deposit, &DepositRow::payAll);
    const auto openNote = [this] {
        m_note->open();
        refreshNote();
    };
    connect(m_addNote, &QAbstractButton::clicked, this, openNote);
    connect(new QShortcut(Qt::Key_I, this), &QShortcut::activated, this, openNote);
    connect(m_note, &NoteRow::left, this, &SumsPanel::refreshNote);
    connect(m_ticket, &QAbstractButton::clicked, this, &SumsPanel::ticketAsked);
    connect(m_another, &QAbstractButton::clicked, this, &SumsPanel::addGarmentToOrder);
    connect(m_quotation, &QAbstractButton::clicked, this, [this] { emit takeAsked(true); });
    connect(m_take, &QAbstractButton::clicked, this, [this] { emit takeAsked(false); });
}

void SumsPanel::addGarmentToOrder() {
    m_model.endStep();
    m_model.edit(Step::Choice, [](TableDraft& draft) {
        if (draft.garments.back() == TableGarment{})
            draft.garmentAt = draft.garments.size() - 1;
        else
            addGarment(draft);
    });
}

void SumsPanel::refresh() {
    refreshTitle();
    const auto& taken = m_model.taken();
    m_draft->setVisible(!taken);
    m_taken->setVisible(taken.has_value());
    m_ticket->setVisible(taken.has_value());
    if (taken)
        m_taken->show(*taken, m_model.shop().facts.settings.currency, m_model.shop().now.today());
    else
        refreshSums();
    m_customer->refresh();
    m_deposit->refresh();
    const Currency& currency = m_model.shop().facts.settings.currency;
    const bool isOpened = m_model.opened() != nullptr;
    m_take->setText(!isOpened             ? tr("Take order")
                    : m_model.isChanged() ? tr("Save changes")
                                          : tr("Leave as it is"));
    m_take->setSecondText(paidWords(m_model.sums().deposit, m_model.draft().paidHow, currency));
    m_quotation->setVisible(!isOpened);
    refreshError();
}

// One line for all that is asked for or cannot be; the field it is about is marked.
void SumsPanel::refreshError() {
    const auto& amount = m_model.sums().depositError;
    const QString amountWords = amount                               ? words(amount->message)
                                : m_errorSection == Section::Deposit ? m_errorWords
                                                                     : QString();
    m_deposit->setError(amountWords);
    m_error->setText(m_errorWords.isEmpty() ? amountWords : m_errorWords);
    m_error->setVisible(height() >= kLowestHeight || !m_error->text().isEmpty());
}

void SumsPanel::refreshTitle() {
    const TableDraft& draft = m_model.draft();
    const OpenedOrder* opened = m_model.opened();
    m_title->setText(opened ? tr("Order %1").arg(opened->order.number) : tr("New order"));
    m_clear->setText(opened ? tr("Leave as it was") : tr("Clear order"));
    m_clear->setVisible(opened ? m_model.isChanged() : !draft.isUntouched());
    m_kept->setText(m_model.keptWords());
    m_kept->setVisible(!m_model.keptWords().isEmpty());
}

// On low windows there is its key alone, and room for it once it is typed.
void SumsPanel::refreshNote() {
    m_day->refresh();
    m_day->setVisible(m_day->isOpen());
    m_note->refresh();
    m_note->setVisible(m_note->isOpen());
    m_addNote->setVisible(!m_note->isOpen() && !m_model.sums().sooner && height() >= kLowerHeight);
}

void SumsPanel::refreshSums() {
    const TableSums& sums = m_model.sums();
    const ReckonedShop& shop = m_model.shop();
    const Currency& currency = shop.facts.settings.currency;
    m_lines->refresh();
    m_total->setText(money(sums.total, currency));
    m_floor->setText(sums.total.minor > 0 ? belowTotal(sums, currency) : QString());
    m_floor->setToolTip(
        tr("It costs the shop %1 and leaves %2")
            .arg(money(sums.floor, currency), money(sums.bill.sum.withoutTax() - sums.floor, currency)));
    const QString lack = sums.promiseLack.empty()
                             ? tr("The day that can be promised is shown here once a style is chosen.")
                             : words(sums.promiseLack);
    const QString before = m_promise->accessibleName();
    m_promise->show({sums.promise, shop.now.today(),
                     sums.wanted ? wantedWords(*sums.wanted, shop.now.today()) : QString(), besideTheDay(),
                     lack, firstSaid(m_model.messages(), &TableMessage::leavesDayOpen),
                     firstSaid(m_model.messages(), &TableMessage::dayWaitsFor)});
    if (m_promise->accessibleName() != before)
        bringPromiseIntoView();
    m_payAll->setVisible(sums.owed.minor > 0 && m_model.draft().paidNow.empty());
    m_sooner->setVisible(sums.sooner.has_value());
    refreshNote();
    if (sums.sooner)
        m_sooner->setText(soonerWords(*sums.sooner, shop.now.today()));
}

// On the lowest windows, where it may lie below the fold of what scrolls; once it is laid.
void SumsPanel::bringPromiseIntoView() {
    if (height() < kLowestHeight)
        QTimer::singleShot(0, m_promise, [this] { m_scroll->ensureWidgetVisible(m_promise, 0, 0); });
}

bool SumsPanel::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_promise && event->type() == QEvent::Resize)
        bringPromiseIntoView();
    return QWidget::eventFilter(watched, event);
}

void SumsPanel::takeFocus(Section section) {
    if (section == Section::Deposit)
        m_deposit->takeFocus();
    else
        m_customer->takeFocus(section);
}

void SumsPanel::setError(Section section, const QString& words) {
    m_errorSection = section;
    m_errorWords = words;
    m_customer->setError(section, words);
    refreshError();
}

void SumsPanel::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const bool isLow = height() < kLowHeight;
    const bool isLower = height() < kLowerHeight;
    const bool isLowest = height() < kLowestHeight;
    using Room = PromiseBlock::Room;
    m_promise->setRoom(isLowest ? Room::Lowest : isLower ? Room::Lower : isLow ? Room::Low : Room::Whole);
    m_lines->setFewest(isLower ? 1 : 2);
    m_taken->setLow(isLower);
    keepRoom(m_sooner, !isLower);
    refreshNote();
    m_paymentLine->setVisible(isLower);
    refreshError();
    m_error->setMinimumHeight((isLow ? 1 : 2) * lineHeight(Type::SmallStrong));
    m_take->setTargetHeight(isLower ? kLowerTake : isLow ? kLowTake : kTake);
    layout()->setSpacing(isLower ? kSpace8 : kSpace12);
    m_scroll->column()->setSpacing(isLower ? kLowerBillGap : kBillGap);
    m_draft->layout()->setSpacing(isLower ? kLowerBillGap : kSpace4);
    m_payment->layout()->setSpacing(isLower ? kSpace4 : kBillGap);
    layPayment(height() >= kPinnedHeight);
    // Large letters: below each other.
    const int abreast =
        m_another->minimumSizeHint().width() + m_quotation->minimumSizeHint().width() + kSpace8;
    m_lastKeys->setDirection(abreast > width() ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
}

} // namespace holdfast::app
