// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/finder_model.h"

#include "app/theme/drawings.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kRow = 44;
constexpr int kKindWidth = 64;

} // namespace

void FinderModel::setEntries(std::vector<FinderEntry> entries) {
    beginResetModel();
    m_entries = std::move(entries);
    endResetModel();
}

const FinderEntry* FinderModel::entryAt(int row) const {
    return row >= 0 && row < rowCount() ? &m_entries[static_cast<std::size_t>(row)] : nullptr;
}

int FinderModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_entries.size());
}

QVariant FinderModel::data(const QModelIndex& index, int role) const {
    const FinderEntry* entry = index.isValid() ? entryAt(index.row()) : nullptr;
    if (entry == nullptr)
        return {};
    if (role == Qt::DisplayRole)
        return entry->title;
    if (role == Qt::AccessibleTextRole)
        return QStringLiteral("%1, %2, %3").arg(finderKindWords(entry->kind), entry->title, entry->second);
    return {};
}

QSize FinderDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const {
    return {200, kRow};
}

void FinderDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                           const QModelIndex& index) const {
    const auto* model = qobject_cast<const FinderModel*>(index.model());
    const FinderEntry* entry = model != nullptr ? model->entryAt(index.row()) : nullptr;
    if (entry == nullptr)
        return;
    const Tokens& dyes = tokens();
    const QRectF row(option.rect);
    painter->save();
    if (option.state.testFlag(QStyle::State_Selected)) {
        paintBox(*painter, row.adjusted(kSpace8, 1, -kSpace8, -1), kButtonRadius, dyes.woad, dyes.indigo,
                 1.5);
    }
    qreal left = row.left() + kSpace20;
    const QRectF sign(left, row.center().y() - kIcon / 2.0, kIcon, kIcon);
    if (entry->shade.isValid())
        paintSwatch(*painter, sign, entry->shade);
    else
        paintIcon(*painter, sign, entry->iconName, dyes.ink2);
    left += kIcon + kSpace12;

    // From the right: its kind, its key.
    qreal right = row.right() - kSpace20;
    paintLine(*painter, {right - kKindWidth, row.top(), kKindWidth, row.height()},
              finderKindWords(entry->kind), Type::Small, dyes.ink3, Qt::AlignRight);
    right -= kKindWidth + kSpace8;
    if (!entry->keys.isEmpty()) {
        const QString keys = keyCapText(entry->keys);
        const QSizeF cap = keyCapSize(keys);
        paintKeyCap(*painter,
                    {right - cap.width(), row.center().y() - cap.height() / 2, cap.width(), cap.height()},
                    keys, dyes.ink);
        right -= cap.width() + kSpace12;
    }
    // A long name of a customer or a film may be cut short here; what is owed and when matters more.
    const QFontMetricsF strong(fontOf(Type::BodyStrong));
    const QString title = strong.elidedText(entry->title, Qt::ElideRight, right - left);
    paintLine(*painter, {left, row.top(), right - left, row.height()}, title, Type::BodyStrong, dyes.ink);
    left += std::ceil(strong.horizontalAdvance(title)) + kSpace12;
    if (right - left > 60) {
        const QFontMetricsF quiet(fontOf(Type::Support));
        paintLine(*painter, {left, row.top(), right - left, row.height()},
                  quiet.elidedText(entry->second, Qt::ElideRight, right - left), Type::Support, dyes.ink2);
    }
    painter->restore();
}

} // namespace holdfast::app
