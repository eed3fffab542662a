// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/rack_list.h"

#include "app/places/press_walk/text_lines.h"
#include "app/theme/drawings.h"
#include "app/theme/focus_ring.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QStyledItemDelegate>

namespace holdfast::app {

namespace {

constexpr int kLastRackNumber = 9;
constexpr int kRackRow = 62; // with one line of words
constexpr qreal kRackWordsAt = 58;
constexpr qreal kRackKey = 27;
constexpr qreal kRackRight = 12;

class RackDelegate : public QStyledItemDelegate {
public:
    RackDelegate(const RackModel& model, QAbstractItemView& view)
        : QStyledItemDelegate(&view)
        , m_model(model)
        , m_view(view) {}

    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const override {
        const qsizetype lines = linesOf(index.row(), m_view.viewport()->width()).size();
        return {100,
                kRackRow + static_cast<int>(std::max<qsizetype>(0, lines - 1)) * lineHeight(Type::Small)};
    }

    // The count comes after the number, so that the words below it have the whole width; they are broken
    // into lines before they are cut.
    QStringList linesOf(int row, int width) const {
        const qreal room = width - kRackWordsAt - (row < kLastRackNumber ? kRackKey : 0) - kRackRight;
        return brokenLines(m_model.row(row).words, Type::SmallStrong, std::max<qreal>(room, 60));
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const Tokens& dyes = tokens();
        const RackRow& row = m_model.row(index.row());
        const QRectF box(option.rect);
        const bool isPressing = row.state == RackRow::State::Soon || row.state == RackRow::State::Due ||
                                row.state == RackRow::State::Askew;
        painter->save();
        painter->fillRect(box, isPressing ? dyes.weldTint : dyes.card);
        if (index.row() > 0)
            painter->fillRect(QRectF(box.left(), box.top(), box.width(), 1), dyes.thread);
        paintGarment(*painter, QRectF(box.left() + 10, box.top() + 12, 38, 38), row.outline, row.cloth);

        // The count never gives way; the name does.
        const qreal left = box.left() + kRackWordsAt;
        qreal right = box.right() - kRackRight;
        if (!row.digits.isEmpty()) {
            const QRectF count(left, box.top() + 6, right - left, lineHeight(Type::Number));
            paintLine(*painter, count, row.digits, Type::Number,
                      row.state == RackRow::State::Due ? dyes.weld : dyes.ink, Qt::AlignRight);
            right -= widthOf(row.digits, Type::Number) + 8;
        }
        const qreal behind =
            paintRun(*painter, {left, box.top() + 26}, row.number, Type::BodyStrong, dyes.ink) + 5;
        paintRun(*painter, {behind, box.top() + 26},
                 QFontMetricsF(fontOf(Type::Body)).elidedText(row.name, Qt::ElideRight, right - behind),
                 Type::Body, dyes.ink);

        qreal x = left;
        qreal y = box.top() + 34;
        if (index.row() < kLastRackNumber) {
            paintKeyCap(*painter, QRectF(x, y, 20, 20), QString::number(index.row() + 1), dyes.ink2);
            x += kRackKey;
        }
        for (const QString& line : linesOf(index.row(), option.rect.width())) {
            paintLine(*painter, QRectF(x, y + 1, box.right() - kRackRight - x, lineHeight(Type::Small)), line,
                      isPressing ? Type::SmallStrong : Type::Small, isPressing ? dyes.weld : dyes.ink2);
            y += lineHeight(Type::Small);
        }
        if ((option.state & QStyle::State_Selected) && (option.state & QStyle::State_HasFocus))
            paintOutline(*painter, box.adjusted(3, 3, -3, -3), kButtonRadius, dyes.indigo, 3);
        painter->restore();
    }

private:
    const RackModel& m_model;
    const QAbstractItemView& m_view;
};

} // namespace

void RackModel::show(std::vector<RackRow> rows) {
    const bool sameGarments = rows.size() == m_rows.size() &&
                              std::ranges::equal(rows, m_rows, {}, &RackRow::garment, &RackRow::garment);
    if (!sameGarments) {
        beginResetModel();
        m_rows = std::move(rows);
        endResetModel();
        return;
    }
    for (std::size_t at = 0; at < rows.size(); ++at) {
        if (rows[at] == m_rows[at])
            continue;
        m_rows[at] = std::move(rows[at]);
        const QModelIndex changed = index(static_cast<int>(at));
        emit dataChanged(changed, changed);
    }
}

int RackModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

QVariant RackModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const RackRow& shown = row(index.row());
    if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole)
        return tr("%1 %2, %3, %4").arg(shown.number, shown.name, shown.words, shown.digits);
    return {};
}

RackList::RackList(QWidget* parent)
    : QListView(parent) {
    setObjectName(QStringLiteral("coolingRack"));
    setAccessibleName(tr("Cooling rack"));
    setModel(&m_model);
    setItemDelegate(new RackDelegate(m_model, *this));
    setFrameShape(QFrame::NoFrame);
    setEditTriggers(NoEditTriggers);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(ScrollPerPixel);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    giveNoFocusRing(this);
    connect(&m_model, &QAbstractItemModel::modelReset, this, &RackList::follow);
    connect(&m_model, &QAbstractItemModel::dataChanged, this, &RackList::follow);
    const auto takeUp = [this](const QModelIndex& index) { emit takenUp(m_model.row(index.row()).garment); };
    connect(this, &QListView::activated, this, takeUp);
    connect(this, &QListView::clicked, this, [this, takeUp](const QModelIndex& index) {
        // Where a single click activates, the other signal has said it.
        if (!style()->styleHint(QStyle::SH_ItemView_ActivateItemOnSingleClick, nullptr, this))
            takeUp(index);
    });
}

int RackList::heightOfRows(int count) const {
    int height = 0;
    for (int row = 0; row < std::min(count, m_model.rowCount()); ++row)
        height += sizeHintForRow(row);
    return std::max(height, kRackRow);
}

QSize RackList::sizeHint() const {
    return {240, heightOfRows(m_mostRows)};
}

QSize RackList::minimumSizeHint() const {
    return {200, heightOfRows(std::min(2, m_mostRows))};
}

void RackList::setMostRows(int rows) {
    if (m_mostRows == rows)
        return;
    m_mostRows = rows;
    updateGeometry();
}

// In another width the words take other lines.
void RackList::resizeEvent(QResizeEvent* event) {
    QListView::resizeEvent(event);
    follow();
}

void RackList::follow() {
    const int height = heightOfRows(m_model.rowCount());
    if (height == m_height)
        return;
    m_height = height;
    scheduleDelayedItemsLayout();
    updateGeometry();
}

} // namespace holdfast::app
