// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/roll_ledger.h"

#include "app/desk/formats.h"
#include "app/places/film_shelf/shelf_words.h"
#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/text_runs.h"
#include "app/theme/type.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QStyledItemDelegate>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kAroundMove = 10; // above and below
constexpr int kFewestMoves = 3;
constexpr qreal kDayWidth = 58;
constexpr qreal kLengthWidth = 62;

int ledgerRow() {
    return lineHeight(Type::SupportStrong) + kAroundMove;
}

class LedgerDelegate : public QStyledItemDelegate {
public:
    LedgerDelegate(const RollLedgerModel& ledger, const QAbstractItemView& view)
        : m_ledger(ledger)
        , m_view(view) {}

    // A reason is never cut: it takes the lines it needs.
    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const override {
        const int width = m_view.viewport()->width();
        const QRectF room(0, 0, width - kDayWidth - kLengthWidth - 12, 10'000);
        const QRectF needed = QFontMetricsF(fontOf(Type::Small))
                                  .boundingRect(room, Qt::TextWordWrap, m_ledger.reason(index.row()));
        return {width, std::max(ledgerRow(), static_cast<int>(needed.height()) + 8)};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const Tokens& dyes = tokens();
        const QRectF row(option.rect);
        painter->save();
        if (m_view.currentIndex() == index && (option.state & QStyle::State_HasFocus))
            paintBox(*painter, row.adjusted(0, 1, 0, -1), kKeyRadius, dyes.woad, dyes.indigo, 2);
        const QRectF box = row.adjusted(4, 0, -4, 0);
        paintLine(*painter, box, m_ledger.dayWords(index.row()), Type::Small, dyes.ink2);
        paintLine(*painter, box, m_ledger.lengthWords(index.row()), Type::SupportStrong, dyes.ink,
                  Qt::AlignRight);
        painter->setFont(fontOf(Type::Small));
        painter->setPen(dyes.ink);
        painter->drawText(box.adjusted(kDayWidth, 0, -kLengthWidth, 0),
                          Qt::AlignVCenter | Qt::AlignLeft | Qt::TextWordWrap,
                          withRunsApart(m_ledger.reason(index.row())));
        painter->restore();
    }

private:
    const RollLedgerModel& m_ledger;
    const QAbstractItemView& m_view;
};

} // namespace

void RollLedgerModel::show(std::vector<db::LengthMove> moves, const Now& now) {
    beginResetModel();
    m_moves = std::move(moves);
    m_now = now;
    endResetModel();
}

QString RollLedgerModel::dayWords(int at) const {
    return dayInShort(dateOf(m_now.toLocal(move(at).at)), m_now.today());
}

QString RollLedgerModel::reason(int at) const {
    return words(move(at).reason);
}

QString RollLedgerModel::lengthWords(int at) const {
    const Millimetres length = move(at).length;
    return length.value < 0 ? QStringLiteral("−") + metres(-length) : QStringLiteral("+") + metres(length);
}

int RollLedgerModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_moves.size());
}

QVariant RollLedgerModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    if (role != Qt::DisplayRole && role != Qt::AccessibleTextRole)
        return {};
    return tr("%1, %2, %3").arg(dayWords(index.row()), reason(index.row()), lengthWords(index.row()));
}

RollLedgerList::RollLedgerList(RollLedgerModel& ledger, QWidget* parent)
    : QListView(parent) {
    setObjectName(QStringLiteral("rollLedger"));
    setAccessibleName(tr("Ledger of the roll"));
    setModel(&ledger);
    auto* delegate = new LedgerDelegate(ledger, *this);
    delegate->setParent(this);
    setItemDelegate(delegate);
    setFrameShape(QFrame::NoFrame);
    setEditTriggers(NoEditTriggers);
    setResizeMode(Adjust);
    setVerticalScrollMode(ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTabKeyNavigation(false);
    setFocusPolicy(Qt::TabFocus); // a click leaves the keyboard on the shelf
    giveNoFocusRing(this);
}

QSize RollLedgerList::minimumSizeHint() const {
    return {120, kFewestMoves * ledgerRow()};
}

} // namespace holdfast::app
