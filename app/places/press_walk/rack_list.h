// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The cooling rack: what cools, until when, and the key that takes it up. A garment that was put by in the
// middle of its work is here too.

#include "core/shop/reckoned_shop.h"

#include <QAbstractListModel>
#include <QListView>

#include <memory>
#include <vector>

namespace holdfast::app {

struct RackRow {
    enum class State { Cooling, Soon, Due, PutBy, Askew };

    GarmentId garment;
    State state = State::Cooling;
    QString number; // "415-a"
    QString name;   // "Tee, L"
    QString words;  // "Peel warm now"
    QString digits; // "4:05", "+0:12"
    QString outline;
    QColor cloth;

    bool operator==(const RackRow&) const = default;
};

class RackModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    // Rows of the same garments in the same order are changed in place, so that each second costs little.
    void show(std::vector<RackRow> rows);
    const RackRow& row(int at) const { return m_rows[static_cast<std::size_t>(at)]; }

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<RackRow> m_rows;
};

class RackList : public QListView {
    Q_OBJECT

public:
    explicit RackList(QWidget* parent = nullptr);

    RackModel& rack() { return m_model; }

    // As many as are shown without scrolling.
    void setMostRows(int rows);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    void takenUp(holdfast::GarmentId garment); // by the mouse or Enter

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    int heightOfRows(int count) const;
    void follow(); // rows that got taller or lower

    RackModel m_model;
    int m_height = 0;
    int m_mostRows = 0;
};

} // namespace holdfast::app
