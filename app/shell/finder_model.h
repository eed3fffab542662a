// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The finder's list: entries as rows, and how a row is drawn.

#include "app/shell/finder_entries.h"

#include <QAbstractListModel>
#include <QStyledItemDelegate>

namespace holdfast::app {

class FinderModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    void setEntries(std::vector<FinderEntry> entries);
    const FinderEntry* entryAt(int row) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<FinderEntry> m_entries;
};

class FinderDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    using QStyledItemDelegate::QStyledItemDelegate;

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

} // namespace holdfast::app
