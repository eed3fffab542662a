// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/order_book/order_sheet.h"

#include "app/desk/bill_words.h"
#include "app/desk/formats.h"
#include "app/papers/paper_making.h"
#include "app/places/order_book/care_sheet.h"
#include "app/places/order_book/claim_lines.h"
#include "app/places/order_book/garment_lines.h"
#include "app/places/order_book/history_lines.h"
#include "app/places/order_book/undone_sheet.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/fact_block.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"
#include "core/orders/invoicing.h"
#include "core/orders/order_odds.h"
#include "core/shop/shared_press.h"
#include "db/actions/order_actions.h"
#include "db/actions/put_back.h"

#include <QApplication>
#include <QBoxLayout>
#include <QStackedWidget>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kLeastLines = 26; // of its height

// A band of flax under the money.
class MoneyBand : public QWidget {
public:
    using QWidget::QWidget;

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.fillRect(rect(), tokens().sunk);
        painter.fillRect(QRect(0, 0, width(), 1), tokens().thread);
        painter.fillRect(QRect(0, height() - 1, width(), 1), tokens().thread);
    }
};

// Past its day it is still there to be confirmed.
QString quotedWords(const Order& order, const Now& now) {
    const QString ready =
        OrderSheet::tr("Quoted, would be ready %1").arg(promise(order.promised, now.today()));
    if (!order.validUntil)
        return ready;
    const QString last = date(*order.validUntil);
    return order.isPastItsDay(now.today())
               ? OrderSheet::tr("Quoted, was valid until %1: it can still be confirmed").arg(last)
               : OrderSheet::tr("%1; valid until %2").arg(ready, last);
}

QString stateWords(const Order& order, const Now& now) {
    switch (order.state) {
    case OrderState::Quoted:
        return quotedWords(order, now);
    case OrderState::Confirmed:
        return OrderSheet::tr("Promised for %1").arg(promise(order.promised, now.today()));
    case OrderState::HandedOver:
        return order.handedOverAt
                   ? OrderSheet::tr("Handed over %1").arg(date(dateOf(now.toLocal(*order.handedOverAt))))
                   : OrderSheet::tr("Handed over");
    case OrderState::Cancelled:
        return OrderSheet::tr("Cancelled");
    }
    return {};
}

QString oddsOf(const OrderView& view) {
    const ShopFacts& facts = view.shop->facts;
    const auto garments = facts.garmentsOf(view.order().id);
    const auto handedOver = std::ranges::count_if(
        garments, [](const Garment* garment) { return garment->handedOverAt.has_value(); });
    QStringList sentences;
    for (const Sentence& sentence : orderOdds(view.order(), static_cast<std::size_t>(handedOver),
                                              facts.settings.currency, sharedPresses(facts, view.order().id)))
        sentences.append(words(sentence));
    if (const Sentence due = invoiceRemark(view.order(), view.invoices, facts.settings.currency);
        !due.empty())
        sentences.append(words(due));
    return sentences.join(QLatin1Char(' '));
}

} // namespace

OrderSheet::OrderSheet(ShopDesk& desk, QWidget* parent)
    : Card(parent)
    , m_desk(desk) {
    setObjectName(QStringLiteral("orderSheet"));
    m_pages = new QStackedWidget;
    content()->addWidget(m_pages);
    m_empty = new EmptyState(QStringLiteral("order-book"), tr("Choose an order to see all of it."), {});
    m_pages->addWidget(m_empty);
    m_pages->addWidget(makeOrderPage());
    m_care = new CareSheet(m_desk);
    m_pages->addWidget(m_care);
    m_undone = new UndoneSheet(m_desk);
    m_pages->addWidget(m_undone);

    connect(m_empty, &EmptyState::acted, this, &OrderSheet::newOrderAsked);
    connect(m_care, &CareSheet::left, this, &OrderSheet::showOrder);
    connect(m_care, &CareSheet::moneyAsked, this, [this] { ask(SlipName::TakeMoney); });
    connect(m_care, &CareSheet::handedOver, this, [this] {
        refresh();
        m_care->begin();
    });
}

QWidget* OrderSheet::makeOrderPage() {
    auto* page = new QWidget;
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(makeHeader());
    // Above all that scrolls: what is owed is always in view.
    column->addWidget(makeMoney());

    auto* scroll = new VerticalScroll;
    scroll->setObjectName(QStringLiteral("orderScroll"));
    m_garments = new GarmentLines;
    connect(m_garments, &GarmentLines::freeAsked, this,
            [this](FreeingAct act, const SlipTarget& about) { m_desk.free(act, about); });
    scroll->column()->addWidget(m_garments);
    scroll->column()->addWidget(makeClaims());
    auto* heading = new QWidget;
    auto* headingRow = new QHBoxLayout(heading);
    headingRow->setContentsMargins(kCardPadding, kSpace8, kCardPadding, kSpace4);
    headingRow->addWidget(new Label(tr("What happened"), Type::CardTitle));
    headingRow->addStretch(1);
    headingRow->addWidget(new Label(tr("newest first"), Type::Small, &Tokens::ink2));
    scroll->column()->addWidget(heading);
    m_history = new HistoryLines;
    connect(m_history, &HistoryLines::undoAsked, this,
            [this](EntryId entry) { m_desk.done(m_desk.file().undo(entry)); });
    connect(m_history, &HistoryLines::putBackAsked, this,
            [this](EntryId undo) { m_desk.done(db::redo(m_desk.file(), undo)); });
    scroll->column()->addWidget(m_history);
    scroll->column()->addStretch(1);
    column->addWidget(scroll, 1);
    column->addWidget(new ThreadLine);
    column->addWidget(makeActs());
    return page;
}

QWidget* OrderSheet::makeHeader() {
    auto* header = new QWidget;
    auto* column = new QVBoxLayout(header);
    column->setContentsMargins(kCardPadding, kSpace8, kCardPadding, kSpace8);
    column->setSpacing(2);
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpace12);
    m_number = new Label({}, Type::Number);
    m_customer = new Label({}, Type::CardTitle);
    m_customer->wrapped();
    row->addWidget(m_number, 0, Qt::AlignTop);
    row->addWidget(m_customer, 1, Qt::AlignVCenter);
    m_handOver = new Button(tr("Hand over"), QStringLiteral("ready"));
    m_handOver->setObjectName(QStringLiteral("handOver"));
    m_handOver->setKey(QKeySequence(Qt::Key_H));
    connect(m_handOver, &Button::clicked, this, &OrderSheet::showCare);
    row->addWidget(m_handOver, 0, Qt::AlignTop);
    column->addLayout(row);
    m_promise = new Label({}, Type::Support);
    m_promise->wrapped();
    column->addWidget(m_promise);
    m_note = new Label({}, Type::Small, &Tokens::ink2);
    m_note->wrapped();
    column->addWidget(m_note);
    m_bill = (new Label({}, Type::Small, &Tokens::ink2))->wrapped();
    m_bill->setObjectName(QStringLiteral("bill"));
    column->addWidget(m_bill);
    m_odds = new Banner;
    m_odds->setObjectName(QStringLiteral("orderOdds"));
    column->addWidget(m_odds);
    return header;
}

QWidget* OrderSheet::makeMoney() {
    auto* band = new MoneyBand;
    auto* row = new QHBoxLayout(band);
    row->setContentsMargins(kCardPadding, kSpace8, kCardPadding, kSpace8);
    row->setSpacing(kSpace12);
    m_total = new FactBlock(tr("Total"));
    m_paid = new FactBlock(tr("Paid"));
    m_owed = new FactBlock(tr("Owed"));
    m_owed->setValueType(Type::Number);
    row->addWidget(m_total, 0, Qt::AlignTop);
    row->addWidget(m_paid, 0, Qt::AlignTop);
    row->addWidget(m_owed, 0, Qt::AlignTop);
    row->addStretch(1);
    m_takeMoney = new Button(tr("Money"));
    m_takeMoney->setObjectName(QStringLiteral("takeMoney"));
    m_takeMoney->setKey(QKeySequence(Qt::Key_T));
    connect(m_takeMoney, &Button::clicked, this, [this] { ask(SlipName::TakeMoney); });
    row->addWidget(m_takeMoney, 0, Qt::AlignVCenter);
    return band;
}

QWidget* OrderSheet::makeClaims() {
    m_claimsPart = new QWidget;
    auto* column = new QVBoxLayout(m_claimsPart);
    column->setContentsMargins(0, kSpace12, 0, 0);
    column->setSpacing(0);
    auto* heading = new Label(tr("What came back"), Type::CardTitle);
    heading->setContentsMargins(kCardPadding, 0, kCardPadding, kSpace4);
    column->addWidget(heading);
    m_claims = new ClaimLines;
    connect(m_claims, &ClaimLines::answerAsked, this, [this](ClaimId claim) {
        SlipTarget about = matter();
        about.claim = claim;
        emit m_desk.slipAsked(SlipName::AnswerClaim, about);
    });
    column->addWidget(m_claims);
    return m_claimsPart;
}

void OrderSheet::show(std::optional<OrderId> order) {
    const bool isSame = order == m_order;
    const bool hadKeyboard = isAncestorOf(QApplication::focusWidget());
    QWidget* const before = m_pages->currentWidget();
    m_view = order ? viewOrder(m_desk, *order) : std::nullopt;
    const bool isUndone = order && !m_view && m_undone->show(*order);
    m_order = m_view || isUndone ? order : std::nullopt;
    if (isUndone) {
        m_pages->setCurrentWidget(m_undone);
    } else if (!m_view) {
        m_empty->setSentence(
            order ? tr("This order cannot be read, so it is left out. “Show what is wrong in the "
                       "shop file” in the finder (Ctrl+K) says why, and what can be done.")
                  : tr("Choose an order to see all of it."));
        m_pages->setCurrentWidget(m_empty);
    } else {
        fill(*m_view);
        m_care->show(*m_view);
        if (!isSame || before == m_empty || before == m_undone)
            m_pages->setCurrentIndex(1);
    }
    // The page that had the keyboard is gone: work goes on in the one that came instead.
    if (hadKeyboard && m_pages->currentWidget() != before)
        takeKeyboard();
}

std::optional<OrderId> OrderSheet::order() const {
    return m_order;
}

void OrderSheet::refresh() {
    if (m_order)
        show(m_order);
}

void OrderSheet::turnToGarment(GarmentId garment) {
    showOrder();
    if (m_view)
        m_garments->turnTo(garment);
}

void OrderSheet::turnToHandingOver() {
    showOrder();
    showCare();
    takeKeyboard();
}

void OrderSheet::takeKeyboard() {
    if (m_pages->currentWidget() == m_undone)
        m_undone->takeKeyboard();
    else if (isCareShown())
        m_care->begin();
    else if (m_view)
        m_garments->setFocus(Qt::OtherFocusReason);
    else
        m_empty->button()->setFocus(Qt::OtherFocusReason);
}

QSize OrderSheet::minimumSizeHint() const {
    // Head, money and acts, and some lines of what scrolls between them.
    return Card::minimumSizeHint().expandedTo({0, lineHeight(Type::Body) * kLeastLines});
}

void OrderSheet::showCare() {
    if (!m_view || m_handOver->isHidden() || !m_handOver->isEnabled())
        return;
    m_care->show(*m_view);
    m_pages->setCurrentWidget(m_care);
    m_care->begin();
}

void OrderSheet::showOrder() {
    if (m_view)
        m_pages->setCurrentIndex(1);
    takeKeyboard();
}

bool OrderSheet::isCareShown() const {
    return m_pages->currentWidget() == m_care;
}

void OrderSheet::fill(const OrderView& view) {
    const Order& order = view.order();
    const ShopFacts& facts = view.shop->facts;
    const Customer& customer = facts.customers.at(order.customer);
    m_number->setText(QString::number(order.number));
    m_customer->setText(words(customer.name));
    QString promised = stateWords(order, view.shop->now);
    if (!customer.phone.empty())
        promised += tr(" · %1").arg(words(customer.phone));
    m_promise->setText(promised);
    m_note->setVisible(!order.note.empty());
    m_note->setText(words(order.note));
    const QString bill = billInLine(billWords(facts, order));
    m_bill->setVisible(!bill.isEmpty());
    m_bill->setText(bill);
    m_garments->show(view);
    const QString odds = oddsOf(view);
    m_odds->setVisible(!odds.isEmpty());
    m_odds->set(Tone::Caution, odds, {});

    const Currency& currency = facts.settings.currency;
    m_total->set(moneyBare(order.total, currency));
    m_paid->set(moneyBare(order.paid, currency));
    const bool owes = order.owed().minor > 0;
    m_owed->set(owes ? money(order.owed(), currency) : tr("nothing"));
    m_history->show(view.history, view.shop->now);
    m_claimsPart->setVisible(!view.claims.empty());
    m_claims->show(view);
    fillActs(view);
}

} // namespace holdfast::app
