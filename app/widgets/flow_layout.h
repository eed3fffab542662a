// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Widgets side by side, each as wide as it asks to be, onward in the next line where there is no more
// room: as words on a page. Before that, one of the size policy Maximum becomes as narrow as it can be.

#include <QLayout>

#include <vector>

namespace holdfast::app {

class FlowLayout : public QLayout {
    Q_OBJECT

public:
    explicit FlowLayout(QWidget* parent, int spacing);
    ~FlowLayout() override;

    void addItem(QLayoutItem* item) override;
    int count() const override { return static_cast<int>(m_items.size()); }
    QLayoutItem* itemAt(int at) const override;
    QLayoutItem* takeAt(int at) override;

    QSize sizeHint() const override;    // all in one line
    int shortestLine() const;           // all in one line, where what gives way is as narrow as it can be
    QSize minimumSize() const override; // the widest one alone
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    Qt::Orientations expandingDirections() const override { return {}; }
    void setGeometry(const QRect& box) override;

private:
    // Where each is in a room of this width; none is outside it unless it is wider itself.
    std::vector<QRect> placesIn(int width) const;

    std::vector<QLayoutItem*> m_items;
};

} // namespace holdfast::app
