// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/walk_model.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"

namespace holdfast::app {

void WalkModel::show(std::shared_ptr<const ReckonedShop> shop, const Walk& walk) {
    beginResetModel();
    m_shop = std::move(shop);
    m_walk = walk;
    m_rows.clear();
    for (std::size_t run = 0; run < m_walk.runs.size(); ++run) {
        if (m_walk.runs[run].change.count() > 0)
            m_rows.push_back({WalkRow::Kind::Change, run, 0});
        m_rows.push_back({WalkRow::Kind::Run, run, 0});
        for (std::size_t entry = 0; entry < m_walk.runs[run].entries.size(); ++entry)
            m_rows.push_back({WalkRow::Kind::Garment, run, entry});
    }
    endResetModel();
}

void WalkModel::setInHand(std::optional<GarmentId> garment) {
    if (m_inHand == garment)
        return;
    m_inHand = garment;
    if (!m_rows.empty())
        emit dataChanged(index(0), index(rowCount() - 1));
}

int WalkModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

QVariant WalkModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole || role == Qt::ToolTipRole)
        return spoken(row(index.row()));
    return {};
}

Qt::ItemFlags WalkModel::flags(const QModelIndex& index) const {
    if (!index.isValid())
        return Qt::NoItemFlags;
    // Runs and changes are read, not chosen.
    if (row(index.row()).kind != WalkRow::Kind::Garment)
        return Qt::ItemNeverHasChildren;
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
}

std::optional<GarmentId> WalkModel::garmentAt(const QModelIndex& index) const {
    if (!index.isValid() || row(index.row()).kind != WalkRow::Kind::Garment)
        return std::nullopt;
    return entryOf(row(index.row())).garment;
}

QModelIndex WalkModel::indexOf(GarmentId garment) const {
    for (std::size_t at = 0; at < m_rows.size(); ++at)
        if (m_rows[at].kind == WalkRow::Kind::Garment && entryOf(m_rows[at]).garment == garment)
            return index(static_cast<int>(at));
    return {};
}

QModelIndex WalkModel::indexOfNumber(const QString& beginning) const {
    for (std::size_t at = 0; at < m_rows.size(); ++at) {
        if (m_rows[at].kind != WalkRow::Kind::Garment)
            continue;
        const Garment& garment = m_shop->facts.garments.at(entryOf(m_rows[at]).garment);
        if (garmentNumber(m_shop->facts, garment).startsWith(beginning, Qt::CaseInsensitive))
            return index(static_cast<int>(at));
    }
    return {};
}

QString WalkModel::spoken(const WalkRow& row) const {
    const WalkRun& run = runOf(row);
    const Now& now = m_shop->now;
    switch (row.kind) {
    case WalkRow::Kind::Change:
        return run.changedFrom
                   ? tr("From %1 to %2, %3")
                         .arg(celsius(*run.changedFrom), celsius(run.temperature), timeSpan(run.change))
                   : tr("Heat up to %1, %2").arg(celsius(run.temperature), timeSpan(run.change));
    case WalkRow::Kind::Run:
        return tr("Run %1 at %2, %n garment, %3 to %4|Run %1 at %2, %n garments, %3 to %4", nullptr,
                  howMany(run.entries.size()))
            .arg(row.run + 1)
            .arg(celsius(run.temperature), clock(now.toLocal(run.begins)), clock(now.toLocal(run.ends)));
    case WalkRow::Kind::Garment:
        break;
    }
    const WalkEntry& entry = entryOf(row);
    const Garment& garment = m_shop->facts.garments.at(entry.garment);
    QString state;
    switch (entry.state) {
    case WalkState::Pressed:
        state = tr("pressed");
        break;
    case WalkState::OnPress:
        state = tr("on the press");
        break;
    case WalkState::Cooling:
        state = tr("cooling");
        break;
    case WalkState::Planned:
        state = tr("planned");
        break;
    }
    if (entry.late.count() > 0)
        state = tr("%1, late %2").arg(state, timeSpan(entry.late));
    if (entry.isAfterClosing)
        state = tr("%1, after closing").arg(state);
    return tr("%1 %2 %3, %4, %5")
        .arg(clock(now.toLocal(entry.begins)), garmentNumber(m_shop->facts, garment),
             garmentName(m_shop->facts, garment), decalWords(garment), state);
}

} // namespace holdfast::app
