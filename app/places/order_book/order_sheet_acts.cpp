// SPDX-License-Identifier: GPL-3.0-or-later
// What can be done with the order shown: its buttons with their keys, and which of them can be pressed.
#include "app/desk/formats.h"
#include "app/papers/paper_making.h"
#include "app/places/order_book/claim_lines.h"
#include "app/places/order_book/garment_lines.h"
#include "app/places/order_book/order_sheet.h"
#include "app/widgets/button.h"
#include "app/widgets/flow_layout.h"
#include "core/orders/invoicing.h"
#include "core/shop/order_message.h"
#include "db/actions/order_actions.h"
#include "db/actions/put_back.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QShortcut>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kDeskTarget = 32;

bool hasUnconfirmed(const OrderView& view) {
    for (const Garment* garment : view.garments())
        for (const Decal& decal : garment->decals)
            if (!decal.isConfirmed())
                return true;
    return false;
}

} // namespace

QWidget* OrderSheet::makeActs() {
    auto* acts = new QWidget;
    auto* grid = new QGridLayout(acts);
    grid->setContentsMargins(kCardPadding, kSpace8, kCardPadding, kSpace8);
    grid->setSpacing(kSpace8);
    m_change = addAct(*grid, 0, 0, tr("Change order"), "fair-table", Qt::Key_O, "changeOrder");
    connect(m_change, &Button::clicked, this, [this] { layOnTable(false); });
    // In the same place, where the order is closed; its key is there for an open one, too.
    m_again = addAct(*grid, 0, 0, tr("Order again"), "redo", Qt::Key_unknown, "orderAgain");
    m_again->showKey(Qt::Key_A);
    connect(m_again, &Button::clicked, this, [this] { layOnTable(true); });
    connect(new QShortcut(Qt::Key_A, this), &QShortcut::activated, this, [this] { layOnTable(true); });
    m_move = addAct(*grid, 1, 0, tr("Move promise"), "clock", Qt::Key_M, "movePromise");
    connect(m_move, &Button::clicked, this, [this] { ask(SlipName::MovePromise); });
    m_confirm = addAct(*grid, 1, 1, tr("Confirm wording"), "tick", Qt::Key_W, "confirmWording");
    connect(m_confirm, &Button::clicked, this, &OrderSheet::confirm);
    m_person = addAct(*grid, 2, 0, tr("Show customer"), "person", Qt::Key_U, "editCustomer");
    connect(m_person, &Button::clicked, this, [this] { ask(SlipName::Customer); });
    m_cancel = addAct(*grid, 2, 1, tr("Cancel order"), "close", Qt::Key_X, "cancelOrder");
    connect(m_cancel, &Button::clicked, this, [this] { ask(SlipName::CancelOrder); });
    m_putBack = addAct(*grid, 2, 1, tr("Put order back"), "redo", Qt::Key_R, "putBack");
    connect(m_putBack, &Button::clicked, this,
            [this] { m_desk.done(db::putBackOrder(m_desk.file(), m_view->id)); });
    // In the same place once there is nothing to confirm; its key is there always.
    m_message = addAct(*grid, 1, 1, tr("Copy message"), "tag", Qt::Key_unknown, "copyMessage");
    m_message->showKey(Qt::Key_Y);
    m_message->setToolTip(tr("What to tell the customer, to be pasted into what you send"));
    connect(m_message, &Button::clicked, this, &OrderSheet::copyMessage);
    connect(new QShortcut(Qt::Key_Y, this), &QShortcut::activated, this, &OrderSheet::copyMessage);
    m_cameBack = addAct(*grid, 3, 1, tr("Mark came back"), "turn", Qt::Key_B, "cameBack");
    connect(m_cameBack, &Button::clicked, this, [this] { ask(SlipName::CameBack); });
    m_writeNote = addAct(*grid, 0, 1, tr("Add a note"), "tag", Qt::Key_E, "orderNote");
    connect(m_writeNote, &Button::clicked, this, [this] { ask(SlipName::OrderNote); });
    auto* papers = new FlowLayout(nullptr, kSpace8);
    addPapers(*papers);
    addMoneyPapers(*papers);
    grid->addLayout(papers, 4, 0, 1, 2);
    return acts;
}

void OrderSheet::addPapers(FlowLayout& papers) {
    const auto addPaper = [&](const QString& text, const QString& told, Qt::Key key, const char* name,
                              PaperName paper) {
        Button* button = makeSmall(text, told, key, name);
        connect(button, &Button::clicked, this, [this, paper] { askPaper(paper); });
        papers.addWidget(button);
        return button;
    };
    m_ticket = addPaper(tr("Ticket"), tr("Print the claim ticket"), Qt::Key_K, "printTicket",
                        PaperName::ClaimTicket);
    m_tags = addPaper(tr("Tags"), tr("Print a bag tag for each garment"), Qt::Key_G, "printTags",
                      PaperName::BagTags);
    m_cards = addPaper(tr("Care"), tr("Print a care card for each pressed garment"), Qt::Key_C, "printCards",
                       PaperName::CareCards);
    m_part = makeSmall(tr("Split, join"), tr("Make two orders of it, or one of two"), Qt::Key_J, "partOrder");
    connect(m_part, &Button::clicked, this, [this] { ask(SlipName::PartOrder); });
    papers.addWidget(m_part);
}

void OrderSheet::addMoneyPapers(FlowLayout& papers) {
    m_quotation =
        makeSmall(tr("Quotation"), tr("Print the quotation, with its last day"), Qt::Key_Q, "printQuotation");
    connect(m_quotation, &Button::clicked, this, [this] { askPaper(PaperName::Quotation); });
    m_receipt =
        makeSmall(tr("Receipt"), tr("Print the receipt for what was paid"), Qt::Key_V, "printReceipt");
    connect(m_receipt, &Button::clicked, this, [this] { askPaper(PaperName::Receipt); });
    m_invoice = makeSmall(tr("Invoice"), {}, Qt::Key_I, "invoice");
    connect(m_invoice, &Button::clicked, this, &OrderSheet::invoice);
    m_creditNote =
        makeSmall(tr("Credit note"), tr("Correct the invoice, whole or in part; print either again"),
                  Qt::Key_D, "creditNote");
    connect(m_creditNote, &Button::clicked, this, [this] { ask(SlipName::CreditNote); });
    for (Button* button : {m_quotation, m_receipt, m_invoice, m_creditNote})
        papers.addWidget(button);
}

Button* OrderSheet::makeSmall(const QString& text, const QString& told, Qt::Key key, const char* name) {
    auto* button = new Button(text, Button::Kind::Quiet);
    button->setTargetHeight(kDeskTarget);
    button->setObjectName(QString::fromLatin1(name));
    button->setToolTip(told);
    button->setKey(QKeySequence(key));
    return button;
}

Button* OrderSheet::addAct(QGridLayout& grid, int row, int at, const QString& text, const char* icon,
                           Qt::Key key, const char* name) {
    auto* button = new Button(text, QString::fromLatin1(icon));
    button->setObjectName(QString::fromLatin1(name));
    if (key != Qt::Key_unknown)
        button->setKey(QKeySequence(key));
    button->setTargetHeight(kDeskTarget);
    grid.addWidget(button, row, at);
    return button;
}

void OrderSheet::fillActs(const OrderView& view) {
    const Order& order = view.order();
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
    m_handOver->setCannot(canHandOver ? QString() : tr("No garment of this order is pressed yet."));
    const bool isCancelled = order.state == OrderState::Cancelled;
    m_takeMoney->setCannot(isCancelled && order.paid.minor == 0
                               ? tr("The order is cancelled and nothing was paid.")
                           : order.state == OrderState::Quoted && order.paid.minor == 0
                               ? tr("A quotation takes no money. Confirm the order first.")
                               : QString());
    const bool isQuoted = order.state == OrderState::Quoted;
    const bool isToConfirm = order.isOpen() && (isQuoted || hasUnconfirmed(view));
    m_confirm->setVisible(isToConfirm);
    m_message->setVisible(!isToConfirm);
    m_confirm->setText(isQuoted ? tr("Confirm order") : tr("Confirm wording"));
    const QString closed = order.isOpen() ? QString() : tr("The order is closed.");
    m_move->setCannot(closed);
    m_change->setVisible(order.isOpen());
    m_again->setVisible(!order.isOpen());
    m_part->setCannot(closed);
    m_message->setCannot(closed);
    m_cancel->setCannot(closed);
    m_writeNote->setText(order.note.empty() ? tr("Add a note") : tr("Change note"));
    m_cancel->setVisible(!isCancelled);
    m_putBack->setVisible(isCancelled);
    m_ticket->setCannot(isCancelled ? tr("The order is cancelled.") : QString());
    m_tags->setCannot(garmentsHere(*view.shop, view.id).empty() ? tr("None of its garments is here.")
                                                                : QString());
    m_cards->setCannot(pressedGarments(*view.shop, view.id).empty()
                           ? tr("No garment of this order is pressed yet.")
                           : QString());
    m_cameBack->setVisible(std::ranges::any_of(
        view.garments(), [](const Garment* garment) { return garment->handedOverAt.has_value(); }));
    fillMoneyPapers(view);
}

void OrderSheet::fillMoneyPapers(const OrderView& view) {
    const Order& order = view.order();
    const bool isQuoted = order.state == OrderState::Quoted;
    m_quotation->setVisible(isQuoted);
    m_receipt->setVisible(!isQuoted);
    m_receipt->setCannot(order.paid > Money{} ? QString() : tr("Nothing is paid yet."));
    const bool hasOne = invoiceInForce(view.invoices) != nullptr;
    m_invoice->setToolTip(hasOne ? tr("Print the invoice") : tr("Make an invoice and print it"));
    m_invoice->setCannot(hasOne                                 ? QString()
                         : isQuoted                             ? tr("A quotation has no invoice.")
                         : order.state == OrderState::Cancelled ? tr("The order is cancelled.")
                         : order.total <= Money{}               ? tr("The order comes to nothing.")
                                                                : QString());
    m_creditNote->setVisible(!view.invoices.empty());
}

// Printed where there is one, else made.
void OrderSheet::invoice() {
    if (m_view && invoiceInForce(m_view->invoices))
        askPaper(PaperName::Invoice);
    else
        ask(SlipName::Invoice);
}

// To be changed, or to be ordered once more.
void OrderSheet::layOnTable(bool isAgain) {
    if (!m_view)
        return;
    SlipTarget about;
    about.order = m_view->id;
    about.isAgain = isAgain;
    emit m_desk.placeAsked(PlaceName::FairTable, about);
}

void OrderSheet::copyMessage() {
    if (!m_view || !m_view->order().isOpen())
        return;
    const QString message = words(orderMessage(*m_view->shop, m_view->id));
    QGuiApplication::clipboard()->setText(message);
    m_desk.say(tr("Copied: %1").arg(message));
}

SlipTarget OrderSheet::matter() const {
    SlipTarget about;
    about.order = m_view->id;
    about.garment = m_garments->current();
    return about;
}

// Of the whole order: which of its garments has the keyboard does not matter.
void OrderSheet::askPaper(PaperName paper) {
    if (!m_view)
        return;
    SlipTarget whole;
    whole.order = m_view->id;
    emit m_desk.paperAsked(paper, whole);
}

void OrderSheet::ask(SlipName slip) {
    if (m_view)
        emit m_desk.slipAsked(slip, matter());
}

// A quotation is confirmed whole; else the slip asks how the customer agreed to the first wording that waits.
void OrderSheet::confirm() {
    if (!m_view)
        return;
    if (m_view->order().state == OrderState::Quoted) {
        m_desk.done(db::confirmQuotation(m_desk.file(), m_view->id));
        return;
    }
    for (const Garment* garment : m_view->garments())
        for (const Decal& decal : garment->decals)
            if (!decal.isConfirmed()) {
                SlipTarget about = matter();
                about.garment = garment->id;
                about.decal = decal.id;
                emit m_desk.slipAsked(SlipName::ConfirmWording, about);
                return;
            }
}

} // namespace holdfast::app
