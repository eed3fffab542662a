// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Every reading of a storage place, the newest first, to correct or to remove. What lies outside the film's
// limits says so. Painted by delegate over the readings themselves: a million of them cost no more than a
// few.

#include "core/facts/climate.h"
#include "core/facts/film.h"
#include "core/trade/dates.h"

#include <QAbstractListModel>
#include <QListView>

#include <memory>
#include <optional>

namespace holdfast::app {

class ReadingsModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    void show(std::shared_ptr<const ClimateSeries> readings, const StorageLimits& limits, const Now& now);

    const ClimateReading& reading(int row) const;
    QString when(int row) const;    // "25 Nov 2026 09:30"
    QString air(int row) const;     // "44 %, 19.5 °C"
    QString outside(int row) const; // "too damp, too hot"; empty: inside the limits
    // The nearest reading of that moment or before it; none: -1.
    int rowAt(Instant at) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;

private:
    std::shared_ptr<const ClimateSeries> m_readings;
    StorageLimits m_limits;
    Now m_now;
};

// Enter corrects the current one, Delete removes those chosen; with Shift a run of them is chosen.
class ReadingsList : public QListView {
    Q_OBJECT

public:
    explicit ReadingsList(ReadingsModel& readings, QWidget* parent = nullptr);

    struct Run {
        Instant first;
        Instant last;
        int count = 0;
    };
    std::optional<Run> chosen() const; // none where there is no reading

    QSize minimumSizeHint() const override;

signals:
    void correctionAsked();
    void removalAsked();
    void choiceChanged();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void selectionChanged(const QItemSelection& selected, const QItemSelection& deselected) override;

private:
    ReadingsModel& m_readings;
};

} // namespace holdfast::app
