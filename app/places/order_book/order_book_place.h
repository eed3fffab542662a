#pragma once
// Order book: search as you type over every order, one order whole beside it, hand-over with the care text.

#include "app/desk/place.h"
#include "app/places/order_book/order_model.h"

class QListView;
class QStackedWidget;

namespace holdfast::app {

class Choice;
class EmptyState;
class Field;
class Label;
class OrderHeads;
class OrderSheet;

class OrderBookPlace : public Place {
    Q_OBJECT

public:
    explicit OrderBookPlace(ShopDesk& desk, QWidget* parent = nullptr);

    QString subtitle() const override;
    QWidget* headerTools() override;
    void opened() override;
    void turnTo(const Matter& matter) override;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    enum Filter { Open, Held, Owing, Claims, All };

    QWidget* makeList();
    void findAgain(); // the search, filter or order of lines changed
    void refresh();   // the shop changed
    void countFilters();
    void choose(OrderId order);
    void chooseRow(int row);
    void askNewOrder();
    bool showsAPart() const;              // the held, the owing or those with a claim alone
    std::vector<OrderId> claimedOrders(); // of whose claims one waits for an answer
    std::vector<OrderId> heldOrders();
    std::vector<db::OrderLine> fetch(int offset);

    OrderModel* m_model = nullptr;
    QListView* m_list = nullptr;
    QStackedWidget* m_listPages = nullptr;
    EmptyState* m_nothing = nullptr;
    Field* m_search = nullptr;
    Choice* m_filter = nullptr;
    OrderHeads* m_heads = nullptr;
    OrderSheet* m_sheet = nullptr;
    QWidget* m_tools = nullptr;
    Label* m_owedOnOpen = nullptr;
    db::OrderSort m_sort = db::OrderSort::Newest;
    bool m_isStale = true;
};

} // namespace holdfast::app
