// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The rolls on the shelf, first to use up first: thin, over what the shop reckoned.

#include "app/places/film_shelf/shelf_words.h"

#include <QAbstractListModel>
#include <QColor>

#include <memory>
#include <optional>
#include <vector>

namespace holdfast::app {

// Which rolls are looked at: those of every film or of one, or those that were put away.
struct ShelfChoice {
    std::optional<FilmId> film;
    bool isPutAway = false;

    bool operator==(const ShelfChoice&) const = default;
};

struct ShelfRow {
    RollId roll;
    QString label;    // "R-09"
    QString length;   // "3.4 m"
    QString filmName; // "Marram Soft, Dusk"
    QColor shade;
    double metresLeft = 0;
    std::optional<int> daysLeft;        // below zero: past; none: no limit given
    int daysLost = 0;                   // to warmth, after the days left
    std::optional<int> daysLeftAtMost;  // in a slow year; none: the days left are a fact
    std::optional<int> daysLeftAtLeast; // in a fast year
    TailWords words;
};

inline constexpr int kNameRole = Qt::UserRole; // number and film: what is typed is looked for in it

class ShelfModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    void show(const std::shared_ptr<const ReckonedShop>& shop, const ShelfChoice& choice);

    const ShelfRow& row(int at) const { return m_rows[static_cast<std::size_t>(at)]; }
    int rowOf(RollId roll) const; // −1 where it is not shown
    LocalDate today() const { return m_today; }
    int longestDays() const { return m_longestDays; } // of any row, with what was lost

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<ShelfRow> m_rows;
    LocalDate m_today{};
    int m_longestDays = 0;
};

} // namespace holdfast::app
