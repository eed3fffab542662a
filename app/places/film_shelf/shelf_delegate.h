// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Paints one board of the shelf with its roll, its tail and its words.

#include <QStyledItemDelegate>

namespace holdfast::app {

struct ShelfAxis;
struct ShelfRow;
class ShelfView;

class ShelfDelegate : public QStyledItemDelegate {
public:
    explicit ShelfDelegate(ShelfView& view);

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;

private:
    const ShelfView& m_view;
};

} // namespace holdfast::app
