// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Order book: search as you type over every order, one order whole next to it, hand-over with the care text.

#include "app/desk/place.h"
#include "app/places/order_book/order_model.h"
#include "app/places/order_book/order_pages.h"

class QBoxLayout;
class QStackedWidget;

namespace holdfast::app {

class Choice;
class EmptyState;
class Field;
class Button;
class Label;
class OrderHeads;
class OrderList;
class OrderSheet;
class VerticalScroll;

class OrderBookPlace : public Place {
    Q_OBJECT

public:
    explicit OrderBookPlace(ShopDesk& desk, QWidget* parent = nullptr);

    QString subtitle() const override;
    QWidget* headerTools() override;
    void opened() override;
    void takeKeyboard() override;
    void turnTo(const SlipTarget& matter) override;
    bool takeScan(const SlipTarget& matter) override;
    QVector<PlaceKey> moreKeys() const override;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    enum class Part { Search, List, Order };

    QWidget* makeList();
    QWidget* makeLines();
    void makeKeys();
    void makeTools();
    void layParts();
    void findAgain(); // the search, filter or order of lines changed
    void refresh();   // the shop changed
    void countFilters();
    void choose(OrderId order);
    void chooseRow(int row);
    void askNewOrder();
    BookFilter filter() const;
    void setFilter(BookFilter filter);
    void showUnderAll();
    void goIntoOrder();
    void clearSearch();
    void countUnderAll(bool isSearching);
    void showNothing(bool isSearching);
    QString typedInShort() const;
    QString nothingWords() const;
    QString hiddenWords(const QString& typed) const;

    OrderPages m_pages;
    OrderModel* m_model = nullptr;
    OrderList* m_list = nullptr;
    Button* m_moreUnderAll = nullptr;
    QBoxLayout* m_parts = nullptr; // the list and the order: side by side, or below
    VerticalScroll* m_scroll = nullptr;
    QWidget* m_listCard = nullptr;
    QStackedWidget* m_listPages = nullptr;
    EmptyState* m_nothing = nullptr;
    QBoxLayout* m_bar = nullptr; // the search and the filters
    Field* m_search = nullptr;
    Choice* m_filter = nullptr;
    OrderHeads* m_heads = nullptr;
    OrderSheet* m_sheet = nullptr;
    QWidget* m_tools = nullptr;
    Label* m_owedOnOpen = nullptr;
    db::OrderSort m_sort = db::OrderSort::Newest;
    std::int64_t m_hiddenUnderAll = 0; // found among all orders, and not shown by the filter
    bool m_isHiddenHandedOver = false; // all of those
    Part m_keyboardIn = Part::Search;  // where it was last
    bool m_isStale = true;
};

} // namespace holdfast::app
