#include "app/places/order_book/order_sheet.h"

#include "app/desk/formats.h"
#include "app/papers/paper_making.h"
#include "app/places/order_book/care_sheet.h"
#include "app/places/order_book/claim_lines.h"
#include "app/places/order_book/garment_lines.h"
#include "app/places/order_book/history_lines.h"
#include "app/widgets/button.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/fact_block.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"
#include "db/actions/order_actions.h"

#include <QBoxLayout>
#include <QStackedWidget>

#include <algorithm>

namespace holdfast::app {

namespace {

// A band of flax behind the money.
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

QString stateWords(const Order& order, const Now& now) {
    switch (order.state) {
    case OrderState::Quoted:
        return OrderSheet::tr("Quoted, would be ready %1").arg(promise(order.promised, now.today()));
    case OrderState::Confirmed:
        return OrderSheet::tr("Ready %1").arg(promise(order.promised, now.today()));
    case OrderState::HandedOver:
        return order.handedOverAt
                   ? OrderSheet::tr("Handed over %1").arg(date(dateOf(now.toLocal(*order.handedOverAt))))
                   : OrderSheet::tr("Handed over");
    case OrderState::Cancelled:
        return OrderSheet::tr("Cancelled");
    }
    return {};
}

bool hasUnconfirmed(const OrderView& view) {
    for (const Garment* garment : view.garments())
        for (const Decal& decal : garment->decals)
            if (!decal.isConfirmed())
                return true;
    return view.order().state == OrderState::Quoted;
}

} // namespace

OrderSheet::OrderSheet(ShopDesk& desk, QWidget* parent)
    : Card(parent)
    , m_desk(desk) {
    setObjectName(QStringLiteral("orderSheet"));
    m_pages = new QStackedWidget;
    content()->addWidget(m_pages);
    m_empty = new EmptyState(QStringLiteral("order-book"),
                             tr("An order stands here whole once you choose one."), {});
    m_pages->addWidget(m_empty);
    m_pages->addWidget(makeOrderPage());
    m_care = new CareSheet(m_desk);
    m_pages->addWidget(m_care);

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
    column->addWidget(new ThreadLine);

    auto* scroll = new VerticalScroll;
    scroll->setObjectName(QStringLiteral("orderScroll"));
    m_garments = new GarmentLines;
    connect(m_garments, &GarmentLines::freeAsked, this,
            [this](FreeingAct act, const Matter& about) { m_desk.free(act, about); });
    scroll->column()->addWidget(m_garments);
    scroll->column()->addWidget(makeMoney());
    scroll->column()->addWidget(makeClaims());
    auto* heading = new QWidget;
    auto* headingRow = new QHBoxLayout(heading);
    headingRow->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace4);
    headingRow->addWidget(new Label(tr("What happened"), Type::CardTitle));
    headingRow->addStretch(1);
    headingRow->addWidget(new Label(tr("newest first"), Type::Small, &Tokens::ink2));
    scroll->column()->addWidget(heading);
    m_history = new HistoryLines;
    connect(m_history, &HistoryLines::undoAsked, this,
            [this](EntryId entry) { m_desk.done(m_desk.file().undo(entry)); });
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
    column->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace12);
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
    return header;
}

QWidget* OrderSheet::makeMoney() {
    auto* band = new MoneyBand;
    auto* row = new QHBoxLayout(band);
    row->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace12);
    row->setSpacing(kSpace12);
    m_total = new FactBlock(tr("Total"));
    m_paid = new FactBlock(tr("Paid"));
    m_owed = new FactBlock(tr("Owed"));
    m_owed->setValueType(Type::Number);
    row->addWidget(m_total, 0, Qt::AlignTop);
    row->addWidget(m_paid, 0, Qt::AlignTop);
    row->addWidget(m_owed, 0, Qt::AlignTop);
    row->addStretch(1);
    m_takeMoney = new Button(tr("Take money"));
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
        Matter about = matter();
        about.claim = claim;
        emit m_desk.slipAsked(SlipName::AnswerClaim, about);
    });
    column->addWidget(m_claims);
    return m_claimsPart;
}

QWidget* OrderSheet::makeActs() {
    auto* acts = new QWidget;
    auto* grid = new QGridLayout(acts);
    grid->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace12);
    grid->setSpacing(kSpace8);
    const auto add = [&](int row, int at, const QString& text, const char* icon, Qt::Key key,
                         const char* name, auto act) {
        auto* button = new Button(text, QString::fromLatin1(icon));
        button->setObjectName(QString::fromLatin1(name));
        button->setKey(QKeySequence(key));
        connect(button, &Button::clicked, this, act);
        grid->addWidget(button, row, at);
        return button;
    };
    m_move = add(0, 0, tr("Move promise"), "clock", Qt::Key_M, "movePromise",
                 [this] { ask(SlipName::MovePromise); });
    m_confirm =
        add(0, 1, tr("Confirm wording"), "tick", Qt::Key_W, "confirmWording", [this] { confirmWording(); });
    m_person =
        add(1, 0, tr("Customer"), "person", Qt::Key_U, "editCustomer", [this] { ask(SlipName::Customer); });
    m_cancel = add(1, 1, tr("Cancel order"), "close", Qt::Key_X, "cancelOrder",
                   [this] { ask(SlipName::CancelOrder); });
    m_cameBack =
        add(2, 0, tr("It came back"), "turn", Qt::Key_B, "cameBack", [this] { ask(SlipName::CameBack); });
    auto* papers = new QHBoxLayout;
    papers->setSpacing(kSpace8);
    const auto addPaper = [&](const QString& text, const QString& told, Qt::Key key, const char* name,
                              PaperName paper) {
        auto* button = new Button(text, Button::Kind::Quiet);
        button->setObjectName(QString::fromLatin1(name));
        button->setToolTip(told);
        button->setKey(QKeySequence(key));
        connect(button, &Button::clicked, this, [this, paper] { askPaper(paper); });
        papers->addWidget(button, 1);
        return button;
    };
    m_ticket = addPaper(tr("Ticket"), tr("Print the claim ticket"), Qt::Key_K, "printTicket",
                        PaperName::ClaimTicket);
    m_tags = addPaper(tr("Tags"), tr("Print a bag tag for each garment"), Qt::Key_G, "printTags",
                      PaperName::BagTags);
    m_cards = addPaper(tr("Care"), tr("Print a care card for each pressed garment"), Qt::Key_C,
                       "printCards", PaperName::CareCards);
    grid->addLayout(papers, 3, 0, 1, 2);
    return acts;
}

void OrderSheet::show(std::optional<OrderId> order) {
    const bool isSame = order && m_view && m_view->id == *order;
    m_view = order ? viewOrder(m_desk, *order) : std::nullopt;
    if (!m_view) {
        m_pages->setCurrentIndex(0);
        return;
    }
    fill(*m_view);
    m_care->show(*m_view);
    if (!isSame || m_pages->currentIndex() == 0)
        m_pages->setCurrentIndex(1);
}

std::optional<OrderId> OrderSheet::order() const {
    return m_view ? std::optional{m_view->id} : std::nullopt;
}

void OrderSheet::refresh() {
    if (m_view)
        show(m_view->id);
}

void OrderSheet::showCare() {
    if (!m_view || m_handOver->isHidden() || !m_handOver->isEnabled())
        return;
    m_care->show(*m_view);
    m_pages->setCurrentWidget(m_care);
    m_care->begin();
}

void OrderSheet::showOrder() {
    m_pages->setCurrentIndex(m_view ? 1 : 0);
    if (m_view)
        m_garments->setFocus(Qt::OtherFocusReason);
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
    m_garments->show(view);

    const Currency& currency = facts.settings.currency;
    m_total->set(moneyBare(order.total, currency));
    m_paid->set(moneyBare(order.paid, currency));
    const bool owes = order.owed().minor > 0 && order.state != OrderState::Cancelled;
    m_owed->set(owes ? money(order.owed(), currency) : tr("nothing"));
    m_history->show(view);

    const bool isOver = order.state == OrderState::HandedOver;
    m_handOver->setVisible(order.state != OrderState::Cancelled);
    const std::size_t pressed = view.pressed().size();
    const std::size_t all = view.garments().size();
    const bool isPartOnly = pressed > 0 && pressed < all;
    m_handOver->setText(isOver       ? tr("Care text")
                        : isPartOnly ? tr("Hand over %1 of %2").arg(pressed).arg(all)
                                     : tr("Hand over"));
    const bool canHandOver = isOver || pressed > 0;
    m_handOver->setKind(canHandOver && !isOver && !isPartOnly ? Button::Kind::Primary : Button::Kind::Plain);
    m_handOver->setCannot(canHandOver ? QString() : tr("Nothing of this order is pressed yet."));
    m_takeMoney->setCannot(order.state == OrderState::Cancelled && order.paid.minor == 0
                               ? tr("The order is cancelled and nothing was paid.")
                               : QString());
    m_confirm->setCannot(!order.isOpen()        ? tr("The order is closed.")
                         : hasUnconfirmed(view) ? QString()
                                                : tr("Everything is confirmed."));
    const QString closed = order.isOpen() ? QString() : tr("The order is closed.");
    m_move->setCannot(closed);
    m_cancel->setCannot(closed);
    m_ticket->setCannot(order.state == OrderState::Cancelled ? tr("The order is cancelled.") : QString());
    m_tags->setCannot(garmentsHere(*view.shop, view.id).empty() ? tr("No garment of it is here.") : QString());
    m_cards->setCannot(pressedGarments(*view.shop, view.id).empty()
                           ? tr("Nothing of this order is pressed yet.")
                           : QString());
    m_claimsPart->setVisible(!view.claims.empty());
    m_claims->show(view);
    m_cameBack->setVisible(std::ranges::any_of(
        view.garments(), [](const Garment* garment) { return garment->handedOverAt.has_value(); }));
}

Matter OrderSheet::matter() const {
    Matter about;
    about.order = m_view->id;
    about.garment = m_garments->current();
    return about;
}

// Of the whole order: which of its garments has the keyboard does not matter.
void OrderSheet::askPaper(PaperName paper) {
    if (!m_view)
        return;
    Matter whole;
    whole.order = m_view->id;
    emit m_desk.paperAsked(paper, whole);
}

void OrderSheet::ask(SlipName slip) {
    if (m_view)
        emit m_desk.slipAsked(slip, matter());
}

// A quotation is confirmed whole; else the slip asks how the customer agreed to the first wording that waits.
void OrderSheet::confirmWording() {
    if (!m_view)
        return;
    if (m_view->order().state == OrderState::Quoted) {
        m_desk.done(db::confirmQuotation(m_desk.file(), m_view->id));
        return;
    }
    for (const Garment* garment : m_view->garments())
        for (const Decal& decal : garment->decals)
            if (!decal.isConfirmed()) {
                Matter about = matter();
                about.garment = garment->id;
                about.decal = decal.id;
                emit m_desk.slipAsked(SlipName::ConfirmWording, about);
                return;
            }
}

} // namespace holdfast::app
