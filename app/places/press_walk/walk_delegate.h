// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Paints the walk: heat runs on flax, the thread down the left, a knot for each garment.

#include "app/places/press_walk/walk_model.h"

#include <QStyledItemDelegate>

namespace holdfast::app {

class WalkDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    WalkDelegate(const WalkModel& model, QObject* parent = nullptr);

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    void paintChange(QPainter& painter, const QRectF& box, const WalkRun& run, bool isDone) const;
    void paintRunHead(QPainter& painter, const QRectF& box, const WalkRow& row) const;
    void paintGarmentRow(QPainter& painter, const QRectF& box, const QModelIndex& index, bool isSelected,
                         bool hasFocus) const;
    void paintThreadThrough(QPainter& painter, const QRectF& box, bool isDoneAbove, bool isDoneBelow) const;

    const WalkModel& m_model;
};

} // namespace holdfast::app
