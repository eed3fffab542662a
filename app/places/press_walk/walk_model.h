// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The walk as a list to be read from above: a row for each heat run, for each change of the platen, for each
// garment. Thin, over the core's Walk.

#include "core/shop/reckoned_shop.h"
#include "core/shop/walk.h"

#include <QAbstractListModel>

#include <memory>
#include <vector>

namespace holdfast::app {

struct WalkRow {
    enum class Kind { Change, Run, Garment };

    Kind kind = Kind::Garment;
    std::size_t run = 0;   // index into the walk's runs
    std::size_t entry = 0; // index into its entries
};

class WalkModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    void show(std::shared_ptr<const ReckonedShop> shop, const Walk& walk);
    // The garment in hand is drawn as the current one even where another is open too.
    void setInHand(std::optional<GarmentId> garment);

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

    const WalkRow& row(int at) const { return m_rows[static_cast<std::size_t>(at)]; }
    const WalkRun& runOf(const WalkRow& row) const { return m_walk.runs[row.run]; }
    // REQUIRES: a row of a garment.
    const WalkEntry& entryOf(const WalkRow& row) const { return runOf(row).entries[row.entry]; }
    std::optional<GarmentId> garmentAt(const QModelIndex& index) const;
    QModelIndex indexOf(GarmentId garment) const;
    // The first garment whose number begins so: "418", "418-b".
    QModelIndex indexOfNumber(const QString& beginning) const;
    bool isInHand(GarmentId garment) const { return m_inHand == garment; }
    bool hasManyPresses() const { return m_shop && m_shop->facts.presses.size() > 1; }
    const ReckonedShop& shop() const { return *m_shop; }

private:
    QString spoken(const WalkRow& row) const;

    std::shared_ptr<const ReckonedShop> m_shop;
    Walk m_walk;
    std::vector<WalkRow> m_rows;
    std::optional<GarmentId> m_inHand;
};

} // namespace holdfast::app
