// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The waiting work that is to be cut from a roll, alike decals of one order on a line, each with a tick; or
// all work that could be, to ask what becomes of it if it goes first.

#include "core/shop/reckoned_shop.h"

#include <QAbstractListModel>
#include <QListView>

#include <memory>
#include <set>
#include <vector>

namespace holdfast::app {

struct WorkLine {
    std::vector<DecalId> decals;
    std::vector<GarmentId> garments;
    QString number;       // "418-b", or "423" for several garments
    QString words;        // "12 × Tote, Heron"
    QString day;          // when it is promised
    QString length;       // cut alone
    bool isEarly = false; // promised for after the roll's use-by
};

class RollWorkModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    // Every line is ticked until the person takes its tick away, which lasts while the same roll is shown.
    void show(std::shared_ptr<const ReckonedShop> shop, RollId roll);
    void clear();

    // All waiting work of the film that the roll is wide enough for, whichever roll it is allotted to; ticked
    // is only what is promised for after the use-by, until the person ticks more.
    void setWhatIf(bool isWhatIf);
    bool isWhatIf() const { return m_isWhatIf; }

    const WorkLine& line(int at) const { return m_lines[static_cast<std::size_t>(at)]; }
    bool isTicked(int at) const;
    void setTicked(int at, bool isTicked);

    std::vector<DecalId> tickedDecals() const;
    // What the ticked decals take along the roll, in rows side by side.
    Millimetres tickedLength() const;
    // Why the ticked work cannot be cut from this roll; empty: it can.
    QString cannotCut() const;

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

signals:
    void ticksChanged();

private:
    std::vector<DecalId> waiting() const;
    void fill();

    std::shared_ptr<const ReckonedShop> m_shop;
    RollId m_roll;
    std::vector<WorkLine> m_lines;
    std::set<DecalId> m_unticked; // by a line's first decal
    std::set<DecalId> m_first;    // ticked to go first, by a line's first decal
    bool m_isWhatIf = false;
};

// Space or a click turns the tick; Left goes back to the shelf. A click does not take the keyboard, so that
// the arrows go on choosing rolls.
class RollWorkList : public QListView {
    Q_OBJECT

public:
    explicit RollWorkList(RollWorkModel& work, QWidget* parent = nullptr);

    // It fills the room there is and scrolls; else it is as long as its rows, and what it lies in scrolls.
    void setFills(bool fills);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    void turnedLeft();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;

private:
    void turn(const QModelIndex& index);

    RollWorkModel& m_work;
    bool m_fills = false;
};

} // namespace holdfast::app
