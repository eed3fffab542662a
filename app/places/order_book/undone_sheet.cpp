// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/order_book/undone_sheet.h"

#include "app/desk/bill_words.h"
#include "app/desk/formats.h"
#include "app/places/order_book/history_lines.h"
#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/fact_block.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"
#include "db/actions/put_back.h"

#include <QBoxLayout>

namespace holdfast::app {

UndoneSheet::UndoneSheet(ShopDesk& desk, QWidget* parent)
    : QWidget(parent)
    , m_desk(desk) {
    setObjectName(QStringLiteral("undoneSheet"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(makeHeader());
    column->addWidget(new ThreadLine);

    auto* scroll = new VerticalScroll;
    m_garments = (new Label({}, Type::Body))->wrapped();
    m_garments->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace12);
    scroll->column()->addWidget(m_garments);
    auto* heading = new Label(tr("What happened"), Type::CardTitle);
    heading->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace4);
    scroll->column()->addWidget(heading);
    m_history = new HistoryLines;
    m_history->setObjectName(QStringLiteral("undoneHistory"));
    connect(m_history, &HistoryLines::undoAsked, this,
            [this](EntryId entry) { m_desk.done(m_desk.file().undo(entry)); });
    connect(m_history, &HistoryLines::putBackAsked, this, [this] { putBack(); });
    scroll->column()->addWidget(m_history);
    scroll->column()->addStretch(1);
    column->addWidget(scroll, 1);
}

QWidget* UndoneSheet::makeHeader() {
    auto* header = new QWidget;
    auto* column = new QVBoxLayout(header);
    column->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace12);
    column->setSpacing(kSpace4);
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpace12);
    m_number = new Label({}, Type::Number);
    m_customer = new Label({}, Type::CardTitle);
    m_customer->wrapped();
    row->addWidget(m_number, 0, Qt::AlignTop);
    row->addWidget(m_customer, 1, Qt::AlignVCenter);
    m_putBack = new Button(tr("Put order back"), QStringLiteral("redo"), Button::Kind::Primary);
    m_putBack->setObjectName(QStringLiteral("putUndoneBack"));
    m_putBack->setKey(QKeySequence(Qt::Key_R));
    connect(m_putBack, &Button::clicked, this, &UndoneSheet::putBack);
    row->addWidget(m_putBack, 0, Qt::AlignTop);
    column->addLayout(row);
    m_state = (new Label({}, Type::Support))->wrapped();
    column->addWidget(m_state);
    m_note = (new Label({}, Type::Small, &Tokens::ink2))->wrapped();
    column->addWidget(m_note);
    auto* money = new QHBoxLayout;
    money->setSpacing(kSpace12);
    m_total = new FactBlock(tr("Total"));
    m_paid = new FactBlock(tr("Was paid"));
    money->addWidget(m_total);
    money->addWidget(m_paid);
    money->addStretch(1);
    column->addLayout(money);
    return header;
}

bool UndoneSheet::show(OrderId order) {
    const auto undone =
        m_desk.file().read([&](db::Connection& connection) { return db::undoneOrder(connection, order); });
    if (!undone.ok() || !undone->has_value())
        return false;
    m_order = order;
    fill(**undone);
    return true;
}

void UndoneSheet::fill(const db::UndoneOrder& order) {
    const Now now = m_desk.now();
    const Currency& currency = m_desk.currency();
    m_number->setText(QString::number(order.line.number));
    m_customer->setText(words(order.line.customer));
    QString state = tr("Undone, was promised for %1").arg(promise(order.line.promised, now.today()));
    if (!order.phone.empty())
        state += tr(" · %1").arg(words(order.phone));
    m_state->setText(state);
    m_note->setVisible(!order.note.empty());
    m_note->setText(words(order.note));
    m_total->set(moneyBare(order.line.total, currency));
    m_paid->set(moneyBare(order.line.paid, currency));

    QStringList lines;
    for (const db::UndoneGarment& garment : order.garments) {
        QStringList decals;
        for (const Sentence& decal : garment.decals)
            decals << words(decal);
        lines << tr("%1: %2, %3")
                     .arg(words(garment.blank), decals.join(tr(", ")), money(garment.price, currency));
    }
    std::vector<Money> prices;
    for (const db::UndoneGarment& garment : order.garments)
        prices.push_back(garment.price);
    const ShopSettings& settings = m_desk.shop()->facts.settings;
    for (const BillWords& each :
         billWords(order.lines, sumOf(prices, order.lines, order.tax), order.tax, settings))
        lines << QStringLiteral("%1 %2").arg(each.words, each.amount);
    m_garments->setText(lines.join(u'\n'));
    m_history->show(historyOf(m_desk, m_order), now);
}

void UndoneSheet::takeKeyboard() {
    m_putBack->setFocus(Qt::OtherFocusReason);
}

void UndoneSheet::putBack() {
    m_desk.done(db::putBackOrder(m_desk.file(), m_order));
}

} // namespace holdfast::app
