#pragma once
// One of many by name, with a shade before it where it has one: a list that opens below. Letters find, arrows
// move; the wheel turns it only while it has the keyboard, so that a form that scrolls changes nothing.

#include <QColor>
#include <QComboBox>
#include <QVector>

namespace holdfast::app {

struct PickItem {
    QString text;
    QColor shade = {}; // of cloth or film
};

class PickList : public QComboBox {
    Q_OBJECT

public:
    explicit PickList(const QString& accessibleName, QWidget* parent = nullptr);

    void setItems(const QVector<PickItem>& items, int chosen = -1); // emits nothing

protected:
    void wheelEvent(QWheelEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void paintShades();

    QVector<PickItem> m_items;
};

} // namespace holdfast::app
