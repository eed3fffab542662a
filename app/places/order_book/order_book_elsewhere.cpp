// SPDX-License-Identifier: GPL-3.0-or-later
// What the order book says of orders that it does not list: how many the filter hides, and where they are.
#include "app/desk/formats.h"
#include "app/places/order_book/order_book_place.h"
#include "app/widgets/button.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/field.h"

namespace holdfast::app {

namespace {

constexpr qsizetype kMostTypedShown = 60; // letters of a search, where it is said what it did not find

} // namespace

// What the search finds among all orders, and the filter does not show.
void OrderBookPlace::countUnderAll(bool isSearching) {
    m_hiddenUnderAll = 0;
    m_isHiddenHandedOver = false;
    if (isSearching && filter() != BookFilter::All && !m_model->canFetchMore({})) {
        const auto underAll = m_pages.countUnderAll();
        m_hiddenUnderAll = underAll.orders - m_model->rowCount();
        m_isHiddenHandedOver = underAll.handedOver == m_hiddenUnderAll;
    }
    m_moreUnderAll->setVisible(m_hiddenUnderAll > 0 && m_model->rowCount() > 0);
    m_moreUnderAll->setText(
        tr("%n more is under All|%n more are under All", nullptr, howMany(m_hiddenUnderAll)));
}

// All of what was typed, or its beginning with a sign that there is more.
QString OrderBookPlace::typedInShort() const {
    const QString typed = m_search->text().simplified();
    return typed.size() <= kMostTypedShown ? typed : typed.left(kMostTypedShown - 1).trimmed() + u'…';
}

QString OrderBookPlace::nothingWords() const {
    const QString typed = typedInShort();
    if (m_hiddenUnderAll > 0)
        return hiddenWords(typed);
    if (!typed.isEmpty())
        return tr("No order matches “%1”.").arg(typed);
    switch (filter()) {
    case BookFilter::Held:
        return tr("No order is held.");
    case BookFilter::Owing:
        return tr("Nobody owes anything.");
    case BookFilter::CameBack:
        return tr("Nothing that came back waits for an answer.");
    case BookFilter::Open:
    case BookFilter::All:
        break;
    }
    return tr("Orders are listed here once the first is taken.");
}

// Where it is instead.
QString OrderBookPlace::hiddenWords(const QString& typed) const {
    const int hidden = howMany(m_hiddenUnderAll);
    if (filter() == BookFilter::Open && m_isHiddenHandedOver)
        return tr("No open order matches “%1”. One that was handed over does.|"
                  "No open order matches “%1”. %n that were handed over do.",
                  nullptr, hidden)
            .arg(typed);
    if (filter() == BookFilter::Open)
        return tr("No open order matches “%1”. One under All does.|"
                  "No open order matches “%1”. %n under All do.",
                  nullptr, hidden)
            .arg(typed);
    return tr("No order here matches “%1”. One under All does.|"
              "No order here matches “%1”. %n under All do.",
              nullptr, hidden)
        .arg(typed);
}

void OrderBookPlace::showNothing(bool isSearching) {
    const bool isPart = filter() != BookFilter::Open && filter() != BookFilter::All;
    m_nothing->setSentence(nothingWords());
    if (m_hiddenUnderAll > 0) {
        m_nothing->setAction(tr("Show them under All"));
        m_nothing->showKey(QKeySequence(Qt::CTRL | Qt::Key_L));
    } else if (isSearching) {
        m_nothing->setAction(tr("Clear the search"));
        m_nothing->showKey(QKeySequence(Qt::Key_Escape));
    } else {
        m_nothing->setAction(isPart ? tr("Show all orders") : tr("New order"));
        m_nothing->showKey(isPart ? QKeySequence(Qt::CTRL | Qt::Key_L) : QKeySequence(Qt::CTRL | Qt::Key_N));
    }
}

} // namespace holdfast::app
