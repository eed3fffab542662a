// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/shelf_model.h"

#include "app/desk/formats.h"

#include <algorithm>

namespace holdfast::app {

namespace {

ShelfRow rowFor(const ReckonedShop& shop, const FilmRoll& roll) {
    const Film& film = shop.facts.films.at(roll.film);
    const auto daysLeft = shop.conditions.at(roll.id).daysLeft(shop.now.today());
    ShelfRow row;
    row.roll = roll.id;
    row.label = words(roll.label());
    row.length = metres(roll.left);
    row.filmName = words(film.name());
    row.shade = colourOf(film.rgb);
    row.metresLeft = roll.left.metres();
    if (daysLeft)
        row.daysLeft = static_cast<int>(daysLeft->count());
    if (const auto& range = shop.conditions.at(roll.id).useByRange) {
        row.daysLeftAtLeast = static_cast<int>((range->first - shop.now.today()).count());
        row.daysLeftAtMost = static_cast<int>((range->last - shop.now.today()).count());
    }
    row.daysLost = static_cast<int>(daysLostToWarmth(shop, roll).count());
    row.words = tailWords(shop, roll);
    return row;
}

bool isOf(const FilmRoll& roll, const ShelfChoice& choice) {
    return !choice.film || roll.film == *choice.film;
}

} // namespace

void ShelfModel::show(const std::shared_ptr<const ReckonedShop>& shop, const ShelfChoice& choice) {
    beginResetModel();
    m_rows.clear();
    m_today = shop->now.today();
    if (choice.isPutAway) {
        for (const FilmRoll& roll : shop->facts.rolls)
            if (roll.state == RollState::PutAway && isOf(roll, choice))
                m_rows.push_back(rowFor(*shop, roll));
    } else {
        for (const RollForecast& forecast : shop->allotment.useFirst)
            if (const FilmRoll& roll = shop->facts.rolls.at(forecast.roll); isOf(roll, choice))
                m_rows.push_back(rowFor(*shop, roll));
    }
    m_longestDays = 0;
    for (const ShelfRow& each : m_rows)
        m_longestDays = std::max(m_longestDays, each.daysLeft.value_or(0) + each.daysLost);
    endResetModel();
}

int ShelfModel::rowOf(RollId roll) const {
    const auto found = std::ranges::find(m_rows, roll, &ShelfRow::roll);
    return found == m_rows.end() ? -1 : static_cast<int>(found - m_rows.begin());
}

int ShelfModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

QVariant ShelfModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const ShelfRow& shown = row(index.row());
    if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole)
        return tr("%1, %2, %3. %4").arg(shown.label, shown.filmName, shown.length, shown.words.inOneLine());
    if (role == Qt::ToolTipRole)
        return shown.filmName;
    if (role == kNameRole)
        return tr("%1 %2").arg(shown.label, shown.filmName);
    return {};
}

} // namespace holdfast::app
