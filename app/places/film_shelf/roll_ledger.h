// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The moves of a roll's length, newest first: when, why, how much.

#include "core/trade/dates.h"
#include "db/tables/ledgers.h"

#include <QAbstractListModel>
#include <QListView>

#include <vector>

namespace holdfast::app {

class RollLedgerModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    void show(std::vector<db::LengthMove> moves, const Now& now);

    QString dayWords(int at) const;    // "12 Nov"
    QString reason(int at) const;      // "Cut 6 decals"
    QString lengthWords(int at) const; // "−0.9 m"

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;

private:
    const db::LengthMove& move(int at) const { return m_moves[static_cast<std::size_t>(at)]; }

    std::vector<db::LengthMove> m_moves;
    Now m_now;
};

class RollLedgerList : public QListView {
    Q_OBJECT

public:
    explicit RollLedgerList(RollLedgerModel& ledger, QWidget* parent = nullptr);

    QSize sizeHint() const override { return minimumSizeHint(); }
    QSize minimumSizeHint() const override;
};

} // namespace holdfast::app
