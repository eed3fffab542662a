#include "app/places/press_walk/rack_list.h"

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

constexpr int kMostRowsShown = 4;
constexpr int kLastKey = 9;

class RackDelegate : public QStyledItemDelegate {
public:
    RackDelegate(const RackModel& model, QObject* parent)
        : QStyledItemDelegate(parent)
        , m_model(model) {}

    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const override {
        return {100, RackList::kRowHeight};
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
        qreal right = box.right() - 12;
        if (!row.digits.isEmpty()) {
            const qreal wide = widthOf(row.digits, Type::Number);
            paintLine(*painter, box.adjusted(0, 0, -12, 0), row.digits, Type::Number,
                      row.state == RackRow::State::Due ? dyes.weld : dyes.ink, Qt::AlignRight);
            right -= wide + 8;
        }
        const qreal left = box.left() + 58;
        const qreal behind =
            paintRun(*painter, {left, box.top() + 26}, row.number, Type::BodyStrong, dyes.ink) + 5;
        paintRun(*painter, {behind, box.top() + 26},
                 QFontMetricsF(fontOf(Type::Body)).elidedText(row.name, Qt::ElideRight, right - behind),
                 Type::Body, dyes.ink);

        qreal x = left;
        const QRectF line(left, box.top() + 33, right - left, 20);
        if (index.row() < kLastKey) {
            const QRectF cap(x, line.top(), 20, 20);
            paintKeyCap(*painter, cap, QString::number(index.row() + 1), dyes.ink2);
            x += 27;
        }
        const QColor ink = isPressing ? dyes.weld : dyes.ink2;
        paintLine(*painter, QRectF(x, line.top(), right - x, line.height()), row.words,
                  isPressing ? Type::SmallStrong : Type::Small, ink);
        if ((option.state & QStyle::State_Selected) && (option.state & QStyle::State_HasFocus))
            paintOutline(*painter, box.adjusted(3, 3, -3, -3), kButtonRadius, dyes.indigo, 3);
        painter->restore();
    }

private:
    const RackModel& m_model;
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
    setItemDelegate(new RackDelegate(m_model, this));
    setFrameShape(QFrame::NoFrame);
    setEditTriggers(NoEditTriggers);
    setUniformItemSizes(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(ScrollPerPixel);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    giveNoFocusRing(this);
    connect(&m_model, &QAbstractItemModel::modelReset, this, [this] { updateGeometry(); });
    const auto takeUp = [this](const QModelIndex& index) { emit takenUp(m_model.row(index.row()).garment); };
    connect(this, &QListView::activated, this, takeUp);
    connect(this, &QListView::clicked, this, [this, takeUp](const QModelIndex& index) {
        // Where a single click activates, the other signal has said it.
        if (!style()->styleHint(QStyle::SH_ItemView_ActivateItemOnSingleClick, nullptr, this))
            takeUp(index);
    });
}

QSize RackList::sizeHint() const {
    return {240, std::clamp(m_model.rowCount(), 1, kMostRowsShown) * kRowHeight};
}

QSize RackList::minimumSizeHint() const {
    return {200, std::clamp(m_model.rowCount(), 1, 2) * kRowHeight};
}

} // namespace holdfast::app
