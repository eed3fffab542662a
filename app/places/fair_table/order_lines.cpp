// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/order_lines.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/table_measures.h"
#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

int lineHigh() {
    return std::max(kStallTarget, lineHeight(Type::Body) + kSpace12);
}

const QString& removeKey() {
    static const QString text = keyCapText(QKeySequence(Qt::Key_Delete));
    return text;
}

// "Heron, chest, 280 mm"; "Name “Juno”, 4 letters".
QString describe(const DecalDraft& decal) {
    if (const auto* wording = std::get_if<Wording>(&decal.content)) {
        qsizetype letters = 0;
        for (const char32_t letter : words(wording->text).toUcs4())
            letters += QChar::isSpace(letter) ? 0 : 1;
        const QString count = OrderLines::tr("%n letter|%n letters", nullptr, howMany(letters));
        return QStringLiteral("%1, %2").arg(decalWords(decal.content), count);
    }
    return QStringLiteral("%1, %2, %3")
        .arg(decalWords(decal.content), words(placementName(decal.placement)), millimetres(decal.width));
}

// "Tee, M, Moss · Juno 7": a team's garments are told apart by their words.
QString withWordings(const QString& name, const TableGarment& garment) {
    QStringList all;
    for (const TableDecal& decal : garment.decals)
        if (const auto* wording = std::get_if<Wording>(&decal.decal.content))
            all.append(words(wording->text));
    return all.isEmpty() ? name : QStringLiteral("%1 · %2").arg(name, all.join(u' '));
}

// "418-b Tee, M, Moss" of one that was taken.
QString labelled(const TableGarment& garment, const ShopFacts& facts) {
    const Garment* taken = garment.taken ? facts.garments.find(*garment.taken) : nullptr;
    const QString name = garmentWords(garment, facts);
    return taken ? QStringLiteral("%1 %2").arg(words(facts.labelOf(*taken)), name) : name;
}

} // namespace

std::vector<OrderLineShown> linesOf(const TableDraft& draft, const TableSums& sums, const ShopFacts& facts) {
    using Kind = OrderLineShown::Kind;
    const Currency& currency = facts.settings.currency;
    std::vector<OrderLineShown> lines;
    for (std::size_t at = 0; at < draft.garments.size(); ++at) {
        const TableGarment& garment = draft.garments[at];
        const GarmentSums& sum = sums.garments[at];
        const bool isChosen = garment.style.isSet();
        const QString name = isChosen ? labelled(garment, facts) : OrderLines::tr("Nothing chosen yet");
        if (at != draft.garmentAt) {
            const QString text = withWordings(
                garment.copies > 1 ? QStringLiteral("%1 × %2").arg(garment.copies).arg(name) : name, garment);
            lines.push_back({Kind::Garment, at, 0, text,
                             isChosen ? moneyBare(sum.price * garment.copies, currency) : QString()});
            continue;
        }
        const bool isEmpty = garment == TableGarment{} && draft.garments.size() == 1;
        lines.push_back(
            {Kind::Blank, at, 0, name, isChosen ? moneyBare(sum.parts[0], currency) : QString(), isEmpty});
        for (std::size_t decal = 0; decal < garment.decals.size(); ++decal)
            lines.push_back({Kind::Decal, at, decal, describe(garment.decals[decal].decal),
                             isChosen ? moneyBare(sum.parts[decal + 1], currency) : QString()});
        if (garment.copies > 1)
            lines.push_back(
                {Kind::Copies, at, 0,
                 OrderLines::tr("%1 of these at %2").arg(garment.copies).arg(moneyBare(sum.price, currency)),
                 moneyBare(sum.price * garment.copies, currency)});
    }
    for (std::size_t at = 0; at < sums.bill.lines.size(); ++at)
        lines.push_back({Kind::Bill, draft.garmentAt, at, words(lineName(sums.bill.lines[at])),
                         moneyBare(sums.bill.sum.lines[at], currency)});
    if (sums.tax.kind == TaxKind::Added)
        lines.push_back({Kind::Tax, draft.garmentAt, 0,
                         words(taxWords(sums.tax, facts.settings.prices.taxName)),
                         moneyBare(sums.bill.sum.tax, currency)});
    return lines;
}

void OrderLinesModel::show(std::vector<OrderLineShown> lines) {
    if (lines == m_lines)
        return;
    beginResetModel();
    m_lines = std::move(lines);
    endResetModel();
}

int OrderLinesModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

Qt::ItemFlags OrderLinesModel::flags(const QModelIndex& index) const {
    // The sum of copies is only shown, and so is the tax.
    const bool isTold = index.isValid() && (line(index.row()).kind == OrderLineShown::Kind::Copies ||
                                            line(index.row()).kind == OrderLineShown::Kind::Tax);
    return isTold ? Qt::NoItemFlags : QAbstractListModel::flags(index);
}

QVariant OrderLinesModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid())
        return {};
    const OrderLineShown& it = line(index.row());
    if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole)
        return it.amount.isEmpty() ? it.text : QStringLiteral("%1, %2").arg(it.text, it.amount);
    return role == Qt::ToolTipRole ? QVariant(it.text) : QVariant();
}

QRect OrderLineDelegate::removeRect(const QRect& row) {
    const int wide = static_cast<int>(std::ceil(keyCapSize(removeKey()).width())) + 2 * kSpace8;
    return {row.left(), row.top(), std::max(wide, kStallTarget), row.height()};
}

void OrderLineDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                              const QModelIndex& index) const {
    const OrderLineShown& line = static_cast<const OrderLinesModel&>(*index.model()).line(index.row());
    const Tokens& dyes = tokens();
    const bool isAtHand = option.state & QStyle::State_Selected;
    painter->save();
    const QRectF row(option.rect);
    if (isAtHand)
        painter->fillRect(row, dyes.woad);
    painter->fillRect(QRectF(row.left() + kSpace8, row.bottom() - 1, row.width() - kSpace16, 1), dyes.thread);
    QRectF inner = row.adjusted(kSpace8, 0, -kSpace8, 0);
    if (isAtHand && !line.isEmpty) {
        const QSizeF cap = keyCapSize(removeKey());
        paintKeyCap(*painter, QRectF(QPointF(inner.left(), row.center().y() - cap.height() / 2), cap),
                    removeKey(), dyes.ink);
        inner.setLeft(removeRect(option.rect).right());
    }
    const double amountWide = widthOf(line.amount, Type::BodyStrong);
    paintLine(*painter, inner, line.amount, Type::BodyStrong, dyes.ink, Qt::AlignRight);
    const bool isQuiet = line.kind != OrderLineShown::Kind::Blank && line.kind != OrderLineShown::Kind::Decal;
    paintLine(*painter, inner, fitted(line.text, Type::Body, inner.width() - amountWide - kSpace8),
              Type::Body, isQuiet ? dyes.ink2 : dyes.ink);
    painter->restore();
}

QSize OrderLineDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const {
    return {120, lineHigh()};
}

OrderLines::OrderLines(FairTableModel& model, QWidget* parent)
    : QListView(parent)
    , m_table(model)
    , m_lines(new OrderLinesModel(this)) {
    setObjectName(QStringLiteral("orderLines"));
    setAccessibleName(tr("Garments of this order"));
    setModel(m_lines);
    setItemDelegate(new OrderLineDelegate(this));
    setUniformItemSizes(true);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    giveFocusRing(this);
}

void OrderLines::refresh() {
    const TableDraft& draft = m_table.draft();
    auto lines = linesOf(draft, m_table.sums(), m_table.shop().facts);
    if (!hasFocus() || (m_billAt && *m_billAt >= m_table.sums().bill.lines.size()))
        m_billAt.reset();
    const auto current = std::ranges::find_if(lines, [&](const OrderLineShown& line) {
        using Kind = OrderLineShown::Kind;
        if (m_billAt)
            return line.kind == Kind::Bill && line.decal == *m_billAt;
        return line.garment == draft.garmentAt &&
               (draft.decalAt ? line.kind == Kind::Decal && line.decal == *draft.decalAt
                              : line.kind == Kind::Blank);
    });
    const auto row = static_cast<int>(current - lines.begin());
    m_isRefreshing = true;
    m_lines->show(std::move(lines));
    setCurrentIndex(m_lines->index(row, 0));
    m_isRefreshing = false;
    updateGeometry();
}

void OrderLines::setFewest(int lines) {
    m_fewest = lines;
    updateGeometry();
}

// It takes what room there is, and asks for little.
QSize OrderLines::sizeHint() const {
    return minimumSizeHint();
}

QSize OrderLines::minimumSizeHint() const {
    return {200, m_fewest * lineHigh()};
}

void OrderLines::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QListView::currentChanged(current, previous);
    if (m_isRefreshing || !current.isValid())
        return;
    const OrderLineShown line = m_lines->line(current.row());
    m_billAt = line.kind == OrderLineShown::Kind::Bill ? std::optional{line.decal} : std::nullopt;
    if (m_billAt)
        return; // the garment at hand stays
    // The lines change below the view's hands: let it finish first.
    QMetaObject::invokeMethod(
        this,
        [this, line] {
            m_table.turn([&](TableDraft& draft) {
                if (line.garment >= draft.garments.size())
                    return;
                draft.garmentAt = line.garment;
                const auto& decals = draft.garment().decals;
                draft.isAdding = false;
                if (line.kind == OrderLineShown::Kind::Decal && line.decal < decals.size())
                    draft.decalAt = line.decal;
                else
                    draft.decalAt.reset();
            });
        },
        Qt::QueuedConnection);
}

bool OrderLines::event(QEvent* event) {
    // + and − are the list's own here, before "another garment" hears of them.
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->key() == Qt::Key_Plus || key->key() == Qt::Key_Minus || key->key() == Qt::Key_Delete) {
            event->accept();
            return true;
        }
    }
    return QListView::event(event);
}

void OrderLines::keyPressEvent(QKeyEvent* event) {
    const QModelIndex current = currentIndex();
    if (!current.isValid()) {
        event->ignore();
        return;
    }
    const OrderLineShown line = m_lines->line(current.row());
    const bool isLayering = event->modifiers() & Qt::ControlModifier;
    switch (event->key()) {
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        remove(line);
        return;
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        changeCopies(line, 1);
        return;
    case Qt::Key_Minus:
        changeCopies(line, -1);
        return;
    case Qt::Key_Up:
    case Qt::Key_Down:
        if (isLayering && line.kind == OrderLineShown::Kind::Decal) {
            const int by = event->key() == Qt::Key_Up ? -1 : 1;
            m_table.edit(Step::Choice, [&](TableDraft& draft) { raiseDecal(draft, line.decal, by); });
            return;
        }
        QListView::keyPressEvent(event);
        return;
    case Qt::Key_Home:
    case Qt::Key_End:
    case Qt::Key_PageUp:
    case Qt::Key_PageDown:
        QListView::keyPressEvent(event);
        return;
    default:
        event->ignore(); // Enter takes the order; letters jump
    }
}

void OrderLines::mousePressEvent(QMouseEvent* event) {
    const QModelIndex pressed = indexAt(event->pos());
    const bool isAtHand = pressed.isValid() && pressed == currentIndex();
    if (isAtHand && event->button() == Qt::LeftButton &&
        OrderLineDelegate::removeRect(visualRect(pressed)).contains(event->pos())) {
        const OrderLineShown line = m_lines->line(pressed.row()); // the lines change
        remove(line);
        return;
    }
    QListView::mousePressEvent(event);
}

// What was removed is said, so that what is at the foot of the window is of this order.
void OrderLines::remove(const OrderLineShown& line) {
    if (line.isEmpty)
        return;
    if (line.kind == OrderLineShown::Kind::Tax)
        return;
    m_table.desk().say(tr("Removed: %1. Ctrl+Z puts it back.").arg(line.text));
    if (line.kind == OrderLineShown::Kind::Bill) {
        const BillLine removed = m_table.sums().bill.lines.at(line.decal);
        m_table.edit(Step::Choice, [&](TableDraft& draft) { removeLine(draft, removed); });
        return;
    }
    m_table.edit(Step::Choice, [&](TableDraft& draft) {
        if (line.kind == OrderLineShown::Kind::Decal)
            removeDecal(draft, line.decal);
        else
            removeGarment(draft, line.garment);
    });
}

void OrderLines::changeCopies(const OrderLineShown& line, int by) {
    if (line.kind == OrderLineShown::Kind::Bill)
        return;
    m_table.edit(Step::Copies, [&](TableDraft& draft) {
        int& copies = draft.garments[line.garment].copies;
        copies = std::clamp(copies + by, 1, kMostCopies);
    });
}

} // namespace holdfast::app
