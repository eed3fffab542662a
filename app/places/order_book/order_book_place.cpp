// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/order_book/order_book_place.h"

#include "app/desk/formats.h"
#include "app/desk/left_out_words.h"
#include "app/places/order_book/order_delegate.h"
#include "app/places/order_book/order_list.h"
#include "app/places/order_book/order_sheet.h"
#include "app/widgets/button.h"
#include "app/widgets/choice.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/field.h"
#include "app/widgets/filling_page.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"

#include <QApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QShortcut>
#include <QStackedWidget>

namespace holdfast::app {

namespace {

// In widths and heights of text, so that they follow its size.
int sheetWidth() {
    return lineHeight(Type::Body) * 23;
}
int leastListHeight() {
    return lineHeight(Type::Body) * 14;
}

} // namespace

OrderBookPlace::OrderBookPlace(ShopDesk& shopDesk, QWidget* parent)
    : Place(shopDesk, parent)
    , m_pages(shopDesk) {
    setObjectName(QStringLiteral("orderBook"));
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(kGutter - kFocusRoom, 0, kGutter - kFocusRoom, kCardGap);
    m_scroll = new VerticalScroll;
    m_scroll->setObjectName(QStringLiteral("bookScroll"));
    whole->addWidget(m_scroll);
    auto* parts = new FillingPage;
    m_parts = new QBoxLayout(QBoxLayout::LeftToRight, parts);
    m_parts->setContentsMargins(kFocusRoom, 0, kFocusRoom, 0);
    m_parts->setSpacing(kCardGap);
    m_scroll->column()->addWidget(parts, 1);
    m_listCard = makeList();
    m_parts->addWidget(m_listCard, 1);
    m_sheet = new OrderSheet(desk());
    m_parts->addWidget(m_sheet);
    connect(m_sheet, &OrderSheet::newOrderAsked, this, &OrderBookPlace::askNewOrder);
    layParts();

    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
        if (now != nullptr && isAncestorOf(now))
            m_keyboardIn = m_sheet->isAncestorOf(now) ? Part::Order
                           : now == m_list            ? Part::List
                                                      : Part::Search;
    });
    connect(&desk(), &ShopDesk::changed, this, &OrderBookPlace::refresh);
    connect(&desk(), &ShopDesk::minutePassed, this, &OrderBookPlace::refresh);
    connect(&desk(), &ShopDesk::replanned, this, &OrderBookPlace::refresh);
    makeKeys();
}

void OrderBookPlace::makeKeys() {
    const auto key = [this](Qt::Key letter, auto&& then) {
        auto* keys = new QShortcut(QKeySequence(Qt::CTRL | letter), this);
        connect(keys, &QShortcut::activated, this, then);
    };
    key(Qt::Key_P, [this] {
        m_sort = m_sort == db::OrderSort::Newest ? db::OrderSort::Promise : db::OrderSort::Newest;
        findAgain();
    });
    key(Qt::Key_B, [this] {
        setFilter(filter() == BookFilter::CameBack ? BookFilter::Open : BookFilter::CameBack);
        findAgain();
    });
    key(Qt::Key_L, [this] { showUnderAll(); });
    key(Qt::Key_N, [this] { askNewOrder(); });
}

QWidget* OrderBookPlace::makeList() {
    auto* card = new Card;
    m_bar = new QBoxLayout(QBoxLayout::LeftToRight);
    m_bar->setContentsMargins(kSpace12, kSpace8, kSpace12, kSpace8);
    m_bar->setSpacing(kSpace12);
    m_search = new Field;
    m_search->setObjectName(QStringLiteral("orderSearch"));
    m_search->setIconName(QStringLiteral("search"));
    m_search->setPlaceholder(tr("Name, number, phone, decal"));
    m_search->setKey(QKeySequence(Qt::CTRL | Qt::Key_F));
    m_search->setAccessibleName(tr("Search orders"));
    m_search->editor()->installEventFilter(this);
    connect(m_search, &Field::edited, this, &OrderBookPlace::findAgain);
    connect(m_search, &Field::accepted, this, &OrderBookPlace::goIntoOrder);
    m_bar->addWidget(m_search, 1);
    m_filter = new Choice(tr("Which orders"), Choice::Shape::Segment);
    m_filter->setObjectName(QStringLiteral("orderFilter"));
    m_filter->setItems({{tr("Open")}, {tr("Held")}, {tr("Owing")}, {tr("Came back")}, {tr("All")}});
    setFilter(BookFilter::Open);
    m_filter->keepInOneLine();
    connect(m_filter, &Choice::chosen, this, &OrderBookPlace::findAgain);
    m_bar->addWidget(m_filter);
    card->content()->addLayout(m_bar);

    m_heads = new OrderHeads;
    connect(m_heads, &OrderHeads::sortAsked, this, [this](db::OrderSort sort) {
        m_sort = sort;
        findAgain();
    });
    card->content()->addWidget(m_heads);
    card->content()->addWidget(makeLines(), 1);

    m_moreUnderAll = new Button({}, Button::Kind::Quiet);
    m_moreUnderAll->setObjectName(QStringLiteral("moreUnderAll"));
    m_moreUnderAll->setLeftAligned(true);
    m_moreUnderAll->showKey(QKeySequence(Qt::CTRL | Qt::Key_L));
    m_moreUnderAll->hide();
    connect(m_moreUnderAll, &Button::clicked, this, &OrderBookPlace::showUnderAll);
    card->content()->addWidget(m_moreUnderAll);
    return card;
}

QWidget* OrderBookPlace::makeLines() {
    m_model = new OrderModel(this);
    m_list = new OrderList(*m_model);
    m_list->viewport()->installEventFilter(this);
    connect(m_list->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& now) { chooseRow(now.row()); });
    connect(m_list, &OrderList::entered, this, [this] { m_sheet->takeKeyboard(); });

    m_listPages = new QStackedWidget;
    m_listPages->addWidget(m_list);
    m_nothing = new EmptyState(QStringLiteral("order-book"), {}, {});
    connect(m_nothing, &EmptyState::acted, this, [this] {
        if (m_hiddenUnderAll > 0)
            showUnderAll();
        else if (!m_search->text().isEmpty())
            clearSearch();
        else if (filter() != BookFilter::Open && filter() != BookFilter::All)
            showUnderAll();
        else
            askNewOrder();
    });
    m_listPages->addWidget(m_nothing);
    return m_listPages;
}

QString OrderBookPlace::subtitle() const {
    const QString day = longDay(desk().now().today());
    const auto leftOut = desk().shop()->facts.unread.size();
    return leftOut == 0 ? day : tr("%1, without %2").arg(day, leftOutWords(leftOut));
}

QWidget* OrderBookPlace::headerTools() {
    if (!m_tools) {
        makeTools();
        countFilters();
    }
    return m_tools;
}

void OrderBookPlace::makeTools() {
    m_tools = new QWidget;
    auto* row = new FlowLayout(m_tools, kSpace16);
    m_owedOnOpen = new Label({}, Type::Body, &Tokens::ink2);
    m_owedOnOpen->setTextFormat(Qt::RichText);
    row->addWidget(m_owedOnOpen);
    auto* newOrder = new Button(tr("New order"), QStringLiteral("plus"), Button::Kind::Primary);
    newOrder->setObjectName(QStringLiteral("newOrder"));
    newOrder->showKey(QKeySequence(Qt::CTRL | Qt::Key_N));
    connect(newOrder, &Button::clicked, this, &OrderBookPlace::askNewOrder);
    row->addWidget(newOrder);
}

void OrderBookPlace::opened() {
    if (m_isStale)
        refresh();
    m_search->setFocus(Qt::OtherFocusReason);
}

void OrderBookPlace::takeKeyboard() {
    if (m_keyboardIn == Part::Order && m_sheet->order())
        m_sheet->takeKeyboard();
    else if (m_keyboardIn == Part::List && m_model->rowCount() > 0)
        m_list->setFocus(Qt::OtherFocusReason);
    else
        m_search->setFocus(Qt::OtherFocusReason);
}

void OrderBookPlace::turnTo(const SlipTarget& matter) {
    if (matter.order)
        choose(*matter.order);
}

// The ticket of an order leads to handing over, where any of it is pressed; a bag tag to its garment.
bool OrderBookPlace::takeScan(const SlipTarget& matter) {
    if (!matter.order)
        return false;
    choose(*matter.order);
    if (matter.garment)
        m_sheet->turnToGarment(*matter.garment);
    else
        m_sheet->turnToHandingOver();
    return true;
}

QVector<PlaceKey> OrderBookPlace::moreKeys() const {
    return {{QStringLiteral("A"), tr("the same garments again, as a new order")},
            {tr("Ctrl+P"), tr("sort by promise, or the newest first")},
            {tr("Ctrl+B"), tr("orders that came back, or the open ones")},
            {tr("Ctrl+L"), tr("show under All")},
            {tr("Enter"), tr("in the search and the list: into the order")},
            {tr("letters, digits"), tr("in the list: to a customer, to a number")}};
}

void OrderBookPlace::askNewOrder() {
    emit desk().placeAsked(PlaceName::FairTable, SlipTarget{});
}

BookFilter OrderBookPlace::filter() const {
    return static_cast<BookFilter>(std::max(0, m_filter->chosenAt()));
}

void OrderBookPlace::setFilter(BookFilter filter) {
    m_filter->setChosen(static_cast<int>(filter));
}

// ── keys ──────────────────────────────────────────────────────────────────────────────────────────────

// Down from the search goes into the list, as a person expects.
bool OrderBookPlace::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_list->viewport() && event->type() == QEvent::Resize)
        m_heads->setBarWidth(m_list->width() - m_list->viewport()->width());
    if (watched == m_search->editor() && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Down && m_model->rowCount() > 0) {
            m_list->setFocus(Qt::OtherFocusReason);
            return true;
        }
        if (key == Qt::Key_Escape && !m_search->text().isEmpty()) {
            clearSearch();
            return true;
        }
    }
    return Place::eventFilter(watched, event);
}

// Enter in the search: into the order where one is left, else into the list, else to what All has.
void OrderBookPlace::goIntoOrder() {
    if (m_model->rowCount() == 1)
        m_sheet->takeKeyboard();
    else if (m_model->rowCount() > 1)
        m_list->setFocus(Qt::OtherFocusReason);
    else if (m_hiddenUnderAll > 0)
        showUnderAll();
}

void OrderBookPlace::clearSearch() {
    m_search->setText({});
    findAgain();
    m_search->setFocus(Qt::OtherFocusReason);
}

void OrderBookPlace::showUnderAll() {
    setFilter(BookFilter::All);
    findAgain();
    if (m_model->rowCount() > 0)
        m_list->setFocus(Qt::OtherFocusReason);
}

// ── what is shown ─────────────────────────────────────────────────────────────────────────────────────

void OrderBookPlace::findAgain() {
    const std::optional<OrderId> chosen = m_sheet->order();
    const QSignalBlocker quiet(m_list->selectionModel());
    m_heads->setSort(m_sort);
    m_pages.look(m_search->text(), filter(), m_sort);
    m_model->show(desk().shop(), [this] { return m_pages.next(OrderModel::kPage); });

    const bool isSearching = !m_search->text().trimmed().isEmpty();
    countUnderAll(isSearching);
    const bool isEmpty = m_model->rowCount() == 0;
    m_listPages->setCurrentIndex(isEmpty ? 1 : 0);
    if (isEmpty)
        showNothing(isSearching);
    // What was just handed over, cancelled or undone leaves the list, and stays in view at its side.
    if (isEmpty || (m_isStale && chosen && m_model->rowOf(*chosen) < 0)) {
        m_list->setCurrentIndex({});
        m_sheet->show(m_isStale ? chosen : std::nullopt);
        return;
    }
    const int row = chosen ? std::max(0, m_model->rowOf(*chosen)) : 0;
    m_list->setCurrentIndex(m_model->index(row));
    if (m_sheet->order() != m_model->line(row).id || m_isStale)
        chooseRow(row);
}

void OrderBookPlace::refresh() {
    if (!isVisible() && !m_isStale) {
        m_isStale = true;
        return;
    }
    m_isStale = true;
    findAgain();
    countFilters();
    m_isStale = false;
}

void OrderBookPlace::countFilters() {
    std::vector<OrderId> leftOut;
    for (const UnreadRow& row : desk().shop()->facts.unread)
        if (row.order)
            leftOut.push_back(*row.order);
    const auto counts =
        desk().file().read([&](db::Connection& connection) { return db::countAll(connection, leftOut); });
    if (!desk().done(counts))
        return;
    m_filter->setItems({{tr("Open %1").arg(counts->open)},
                        {tr("Held %1").arg(m_pages.held().size())},
                        {tr("Owing %1").arg(counts->owing)},
                        {tr("Came back %1").arg(m_pages.cameBack().size())},
                        {tr("All")}});
    layParts(); // their counts take room
    m_heads->setCurrencySign(words(desk().currency().sign));
    if (m_owedOnOpen)
        m_owedOnOpen->setText(tr("<b>%1</b> owed on open orders")
                                  .arg(money(counts->owedOnOpen, desk().currency()).toHtmlEscaped()));
}

void OrderBookPlace::choose(OrderId order) {
    if (m_isStale)
        refresh();
    // An order that the search or filter hides is looked for among all.
    if (m_model->rowOf(order) < 0) {
        m_search->setText({});
        setFilter(BookFilter::All);
        findAgain();
    }
    while (m_model->rowOf(order) < 0 && m_model->canFetchMore({}))
        m_model->fetchMore({});
    if (const int row = m_model->rowOf(order); row >= 0) {
        m_list->setCurrentIndex(m_model->index(row));
        m_list->scrollTo(m_model->index(row), QAbstractItemView::PositionAtCenter);
    }
    m_sheet->show(order);
}

void OrderBookPlace::chooseRow(int row) {
    m_sheet->show(row < 0 ? std::nullopt : std::optional{m_model->line(row).id});
}

// ── layout ────────────────────────────────────────────────────────────────────────────────────────────

// Where the window is too narrow for both, the order is below the list, and the place scrolls.
void OrderBookPlace::layParts() {
    const int room = width() - 2 * kGutter;
    // The filters go below the search where both have no room, and on in a second line where they have none.
    const int around = 2 * kSpace12 + 2; // and the card's border
    const int search = m_search->minimumSizeHint().width();
    const int filters = m_filter->sizeHint().width();
    const int abreast = around + search + kSpace12 + filters;
    const bool isBeside = room >= abreast + kCardGap + sheetWidth();
    m_bar->setDirection(abreast > room ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_filter->keepInOneLine(around + filters <= room);
    m_parts->setDirection(isBeside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    m_listCard->setMinimumHeight(isBeside ? 0 : leastListHeight());
    m_sheet->setMinimumWidth(isBeside ? sheetWidth() : 0);
    m_sheet->setMaximumWidth(isBeside ? sheetWidth() : QWIDGETSIZE_MAX);
    m_parts->setStretch(0, isBeside ? 1 : 2);
    m_parts->setStretch(1, isBeside ? 0 : 3);
    m_list->doItemsLayout();
}

void OrderBookPlace::resizeEvent(QResizeEvent* event) {
    Place::resizeEvent(event);
    layParts();
}

} // namespace holdfast::app
