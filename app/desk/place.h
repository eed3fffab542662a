#pragma once
// A place of the workshop: one screen. It shows the reckoned shop and says what the person did; it knows
// nothing of other places. The shell makes it when it is first opened and draws rail, header and foot.

#include "app/desk/shop_desk.h"

#include <QWidget>

namespace holdfast::app {

class Place : public QWidget {
    Q_OBJECT

public:
    explicit Place(ShopDesk& desk, QWidget* parent = nullptr)
        : QWidget(parent)
        , m_desk(desk) {}

    virtual QString subtitle() const = 0;                          // behind the title in the header
    virtual QWidget* headerTools() { return nullptr; }             // at the right of the header; made once
    virtual void opened() = 0;                                     // shown; put the keyboard where work starts
    virtual void turnTo(const Matter& matter) { Q_UNUSED(matter) }   // turn to this order, roll, lot …

signals:
    void subtitleChanged();

protected:
    ShopDesk& desk() const { return m_desk; }

private:
    ShopDesk& m_desk;
};

} // namespace holdfast::app
