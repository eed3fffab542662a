#include "app/places/order_book/order_list.h"

#include "app/desk/formats.h"
#include "app/places/order_book/order_delegate.h"
#include "app/theme/focus_ring.h"
#include "core/trade/folded.h"

#include <QApplication>
#include <QKeyEvent>

namespace holdfast::app {

namespace {

bool isTyping(const QKeyEvent& key) {
    return !(key.modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier)) &&
           !key.text().isEmpty() && key.text().front().isPrint();
}

} // namespace

OrderList::OrderList(OrderModel& model, QWidget* parent)
    : QListView(parent)
    , m_model(model) {
    setObjectName(QStringLiteral("orderList"));
    setAccessibleName(tr("Orders"));
    setModel(&model);
    setItemDelegate(new OrderDelegate(model, this));
    setUniformItemSizes(true);
    setFrameShape(QFrame::NoFrame);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTabKeyNavigation(false);
    giveNoFocusRing(this);
}

// Letters are for the list as long as it has the keyboard; no act of the order takes them.
bool OrderList::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && isTyping(*static_cast<QKeyEvent*>(event))) {
        event->accept();
        return true;
    }
    return QListView::event(event);
}

void OrderList::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        emit entered();
    else if (isTyping(*event))
        keyboardSearch(event->text());
    else
        QListView::keyPressEvent(event);
}

bool OrderList::isMeant(int row) const {
    const db::OrderLine& line = m_model.line(row);
    if (QString::number(line.number).startsWith(m_typed))
        return true;
    const QString name = u' ' + words(folded(line.customer));
    return name.contains(u' ' + words(folded(m_typed.toStdString())));
}

void OrderList::keyboardSearch(const QString& typed) {
    const bool goesOn =
        m_sinceTyped.isValid() && m_sinceTyped.elapsed() < QApplication::keyboardInputInterval();
    m_sinceTyped.start();
    m_typed = goesOn ? m_typed + typed : typed;
    const int rows = m_model.rowCount();
    // What goes on being typed may mean the order it is at; what begins means one further on.
    const int from = std::max(0, currentIndex().row()) + (goesOn ? 0 : 1);
    for (int step = 0; step < rows; ++step)
        if (const int row = (from + step) % rows; isMeant(row)) {
            setCurrentIndex(m_model.index(row));
            return;
        }
}

} // namespace holdfast::app
