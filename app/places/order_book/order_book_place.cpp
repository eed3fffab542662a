#include "app/places/order_book/order_book_place.h"

#include "app/desk/formats.h"
#include "app/places/order_book/order_delegate.h"
#include "app/places/order_book/order_sheet.h"
#include "app/theme/focus_ring.h"
#include "app/widgets/button.h"
#include "app/widgets/choice.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "db/tables/claims.h"

#include <QListView>
#include <QShortcut>
#include <QStackedWidget>

namespace holdfast::app {

namespace {

constexpr int kSheetWidth = 460;

void sortOnce(std::vector<OrderId>& orders) {
    std::ranges::sort(orders);
    orders.erase(std::unique(orders.begin(), orders.end()), orders.end());
}

} // namespace

OrderBookPlace::OrderBookPlace(ShopDesk& shopDesk, QWidget* parent)
    : Place(shopDesk, parent) {
    setObjectName(QStringLiteral("orderBook"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(kGutter, 0, kGutter, kCardGap);
    row->setSpacing(kCardGap);
    row->addWidget(makeList(), 1);
    m_sheet = new OrderSheet(desk());
    m_sheet->setFixedWidth(kSheetWidth);
    row->addWidget(m_sheet);
    connect(m_sheet, &OrderSheet::newOrderAsked, this, &OrderBookPlace::askNewOrder);

    connect(&desk(), &ShopDesk::changed, this, &OrderBookPlace::refresh);
    connect(&desk(), &ShopDesk::minutePassed, this, &OrderBookPlace::refresh);
    connect(&desk(), &ShopDesk::replanned, this, &OrderBookPlace::refresh);
    auto* byPromise = new QShortcut(QKeySequence(Qt::CTRL | Qt::Key_P), this);
    connect(byPromise, &QShortcut::activated, this, [this] {
        m_sort = m_sort == db::OrderSort::Newest ? db::OrderSort::Promise : db::OrderSort::Newest;
        findAgain();
    });
    auto* claims = new QShortcut(QKeySequence(Qt::CTRL | Qt::Key_B), this);
    connect(claims, &QShortcut::activated, this, [this] {
        m_filter->setChosen(m_filter->chosenAt() == Claims ? Open : Claims);
        findAgain();
    });
    auto* newOrder = new QShortcut(QKeySequence(Qt::CTRL | Qt::Key_N), this);
    connect(newOrder, &QShortcut::activated, this, &OrderBookPlace::askNewOrder);
}

QWidget* OrderBookPlace::makeList() {
    auto* card = new Card;
    auto* bar = new QHBoxLayout;
    bar->setContentsMargins(kSpace12, kSpace8, kSpace12, kSpace8);
    bar->setSpacing(kSpace12);
    m_search = new Field;
    m_search->setObjectName(QStringLiteral("orderSearch"));
    m_search->setIconName(QStringLiteral("search"));
    m_search->setPlaceholder(tr("Name, number, decal"));
    m_search->setKey(QKeySequence(Qt::CTRL | Qt::Key_F));
    m_search->setAccessibleName(tr("Search orders"));
    m_search->editor()->installEventFilter(this);
    connect(m_search, &Field::edited, this, &OrderBookPlace::findAgain);
    connect(m_search, &Field::accepted, this, [this] { m_list->setFocus(Qt::OtherFocusReason); });
    bar->addWidget(m_search, 1);
    m_filter = new Choice(tr("Which orders"), Choice::Shape::Segment);
    m_filter->setObjectName(QStringLiteral("orderFilter"));
    m_filter->setItems({{tr("Open")}, {tr("Held")}, {tr("Owing")}, {tr("Claims")}, {tr("All")}});
    m_filter->setChosen(Open);
    m_filter->keepInOneLine();
    connect(m_filter, &Choice::chosen, this, &OrderBookPlace::findAgain);
    bar->addWidget(m_filter);
    card->content()->addLayout(bar);

    m_heads = new OrderHeads;
    connect(m_heads, &OrderHeads::sortAsked, this, [this](db::OrderSort sort) {
        m_sort = sort;
        findAgain();
    });
    card->content()->addWidget(m_heads);

    m_model = new OrderModel(this);
    m_list = new QListView;
    m_list->setObjectName(QStringLiteral("orderList"));
    m_list->setAccessibleName(tr("Orders"));
    m_list->setModel(m_model);
    m_list->setItemDelegate(new OrderDelegate(*m_model, m_list));
    m_list->setUniformItemSizes(true);
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setTabKeyNavigation(false);
    m_list->viewport()->installEventFilter(this);
    giveNoFocusRing(m_list);
    connect(m_list->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& now) { chooseRow(now.row()); });

    m_listPages = new QStackedWidget;
    m_listPages->addWidget(m_list);
    m_nothing = new EmptyState(QStringLiteral("order-book"), {}, {});
    connect(m_nothing, &EmptyState::acted, this, [this] {
        if (m_search->text().isEmpty() && !showsAPart()) {
            askNewOrder();
            return;
        }
        if (m_search->text().isEmpty())
            m_filter->setChosen(All);
        m_search->setText({});
        findAgain();
        m_search->setFocus(Qt::OtherFocusReason);
    });
    m_listPages->addWidget(m_nothing);
    card->content()->addWidget(m_listPages, 1);
    return card;
}

QString OrderBookPlace::subtitle() const {
    return longDay(desk().now().today());
}

QWidget* OrderBookPlace::headerTools() {
    if (!m_tools) {
        m_tools = new QWidget;
        auto* row = new QHBoxLayout(m_tools);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(kSpace16);
        m_owedOnOpen = new Label({}, Type::Body, &Tokens::ink2);
        m_owedOnOpen->setTextFormat(Qt::RichText);
        row->addWidget(m_owedOnOpen);
        auto* newOrder = new Button(tr("New order"), QStringLiteral("plus"), Button::Kind::Primary);
        newOrder->setObjectName(QStringLiteral("newOrder"));
        newOrder->showKey(QKeySequence(Qt::CTRL | Qt::Key_N));
        connect(newOrder, &Button::clicked, this, &OrderBookPlace::askNewOrder);
        row->addWidget(newOrder);
        countFilters();
    }
    return m_tools;
}

void OrderBookPlace::opened() {
    if (m_isStale)
        refresh();
    m_search->setFocus(Qt::OtherFocusReason);
}

void OrderBookPlace::turnTo(const Matter& matter) {
    if (matter.order)
        choose(*matter.order);
}

void OrderBookPlace::askNewOrder() {
    emit desk().placeAsked(PlaceName::FairTable, Matter{});
}

// Down from the search goes into the list, as a person expects.
bool OrderBookPlace::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_list->viewport() && event->type() == QEvent::Resize)
        m_heads->setBarWidth(m_list->width() - m_list->viewport()->width());
    if (watched == m_search->editor() && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Down) {
            m_list->setFocus(Qt::OtherFocusReason);
            return true;
        }
        if (key == Qt::Key_Escape && !m_search->text().isEmpty()) {
            m_search->setText({});
            findAgain();
            return true;
        }
    }
    return Place::eventFilter(watched, event);
}

bool OrderBookPlace::showsAPart() const {
    return m_filter->chosenAt() != Open && m_filter->chosenAt() != All;
}

std::vector<OrderId> OrderBookPlace::heldOrders() {
    std::vector<OrderId> held;
    const auto& shop = desk().shop();
    for (const auto& [id, assessment] : shop->assessments)
        if (assessment.isHeld())
            held.push_back(shop->facts.garments.at(id).order);
    sortOnce(held);
    return held;
}

std::vector<OrderId> OrderBookPlace::claimedOrders() {
    const auto claims = desk().file().read(db::openClaims);
    if (!desk().done(claims))
        return {};
    std::vector<OrderId> claimed;
    for (const db::OpenClaim& claim : *claims)
        claimed.push_back(claim.order);
    sortOnce(claimed);
    return claimed;
}

std::vector<db::OrderLine> OrderBookPlace::fetch(int offset) {
    const std::string search = m_search->text().toStdString();
    const int chosen = m_filter->chosenAt();
    const bool isAmong = chosen == Held || chosen == Claims;
    if (isAmong && offset > 0)
        return {};
    const std::vector<OrderId> among = chosen == Held     ? heldOrders()
                                       : chosen == Claims ? claimedOrders()
                                                          : std::vector<OrderId>{};
    const db::OrderFilter filter = chosen == Open    ? db::OrderFilter::Open
                                   : chosen == Owing ? db::OrderFilter::Owing
                                                     : db::OrderFilter::All;
    auto lines = desk().file().read([&](db::Connection& connection) {
        return isAmong ? db::findAmong(connection, search, among, m_sort)
                       : db::findOrders(connection, search, filter, OrderModel::kPage, offset, m_sort);
    });
    desk().done(lines);
    return lines.ok() ? std::move(*lines) : std::vector<db::OrderLine>{};
}

void OrderBookPlace::findAgain() {
    const std::optional<OrderId> chosen = m_sheet->order();
    const QSignalBlocker quiet(m_list->selectionModel());
    m_heads->setSort(m_sort);
    m_model->show(desk().shop(), [this](int offset) { return fetch(offset); });

    const bool isEmpty = m_model->rowCount() == 0;
    m_listPages->setCurrentIndex(isEmpty ? 1 : 0);
    if (isEmpty) {
        const bool isSearching = !m_search->text().isEmpty();
        m_nothing->setSentence(isSearching ? tr("No order here matches “%1”.").arg(m_search->text().left(60))
                               : m_filter->chosenAt() == Held  ? tr("No order is held.")
                               : m_filter->chosenAt() == Owing ? tr("Nobody owes anything.")
                               : m_filter->chosenAt() == Claims
                                   ? tr("No claim waits for an answer.")
                                   : tr("Orders stand here once the first is taken."));
        m_nothing->setAction(isSearching    ? tr("Clear the search")
                             : showsAPart() ? tr("Show all orders")
                                            : tr("New order"));
        m_nothing->showKey(isSearching    ? QKeySequence(Qt::Key_Escape)
                           : showsAPart() ? QKeySequence()
                                          : QKeySequence(Qt::CTRL | Qt::Key_N));
        m_sheet->show(std::nullopt);
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
    const auto counts = desk().file().read(db::countAll);
    if (!desk().done(counts))
        return;
    m_filter->setItems({{tr("Open %1").arg(counts->open)},
                        {tr("Held %1").arg(heldOrders().size())},
                        {tr("Owing %1").arg(counts->owing)},
                        {tr("Claims %1").arg(claimedOrders().size())},
                        {tr("All")}});
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
        m_filter->setChosen(All);
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

} // namespace holdfast::app
