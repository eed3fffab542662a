// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/order_book/order_model.h"

#include "app/desk/formats.h"

namespace holdfast::app {

namespace {

bool isOpen(const db::OrderLine& line) {
    return !line.isUndone && !line.isUnread &&
           (line.state == OrderState::Quoted || line.state == OrderState::Confirmed);
}

} // namespace

void OrderModel::show(std::shared_ptr<const ReckonedShop> shop, Fetch fetch) {
    beginResetModel();
    m_shop = std::move(shop);
    m_fetch = std::move(fetch);
    m_lines = m_fetch();
    m_isWhole = std::ssize(m_lines) < kPage;
    endResetModel();
}

int OrderModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

bool OrderModel::canFetchMore(const QModelIndex& parent) const {
    return !parent.isValid() && !m_isWhole;
}

void OrderModel::fetchMore(const QModelIndex& parent) {
    if (!canFetchMore(parent))
        return;
    const std::vector<db::OrderLine> more = m_fetch();
    m_isWhole = std::ssize(more) < kPage;
    if (more.empty())
        return;
    const int first = static_cast<int>(m_lines.size());
    beginInsertRows({}, first, first + static_cast<int>(more.size()) - 1);
    m_lines.insert(m_lines.end(), more.begin(), more.end());
    endInsertRows();
}

QVariant OrderModel::data(const QModelIndex& index, int role) const {
    if (index.isValid() && role == kNumberAndName)
        return tr("%1 %2").arg(line(index.row()).number).arg(words(line(index.row()).customer));
    if (!index.isValid() || (role != Qt::DisplayRole && role != Qt::AccessibleTextRole))
        return {};
    const db::OrderLine& shown = line(index.row());
    return tr("%1, %2, %3, %4, %5, %6")
        .arg(QString::number(shown.number), words(shown.customer),
             tr("%n garment|%n garments", nullptr, howMany(shown.garments)), where(index.row()).words,
             promisedWords(index.row()), owedWords(index.row()));
}

QString OrderModel::promisedWords(int row) const {
    if (line(row).isUnread)
        return tr("unknown");
    return dayNear(dateOf(line(row).promised), m_shop->now.today());
}

Role OrderModel::promisedInk(int row) const {
    if (!isOpen(line(row)) || dateOf(line(row).promised) > m_shop->now.today())
        return &Tokens::ink;
    return dateOf(line(row).promised) < m_shop->now.today() ? &Tokens::madder : &Tokens::weld;
}

QString OrderModel::owedWords(int row) const {
    const db::OrderLine& shown = line(row);
    if (shown.isUnread)
        return tr("unknown");
    if (shown.isUndone || shown.state == OrderState::Cancelled)
        return tr("none");
    return shown.owed().minor > 0 ? moneyBare(shown.owed(), m_shop->facts.settings.currency) : tr("paid");
}

int OrderModel::rowOf(OrderId order) const {
    const auto found = std::ranges::find(m_lines, order, &db::OrderLine::id);
    return found == m_lines.end() ? -1 : static_cast<int>(found - m_lines.begin());
}

} // namespace holdfast::app
