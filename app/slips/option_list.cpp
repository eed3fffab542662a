// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/option_list.h"

#include "app/slips/form.h"
#include "app/theme/drawings.h"
#include "app/theme/focus_ring.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/text_runs.h"
#include "app/theme/type.h"

#include <QFontMetricsF>
#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>

#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kAside = 12; // from the row's edge to its words
constexpr int kAbove = 9;  // from the row's edge to its first line
constexpr int kShade = 22;
constexpr int kTick = 18;
constexpr int kFewestRows = 3;
constexpr int kPlainRow = 62;

struct RowBoxes {
    QRectF shade;
    QRectF text;
    QRectF icon;
    QRectF second;
    qreal height = 0;
};

qreal wrappedHeight(const QString& text, Type type, qreal width) {
    if (text.isEmpty())
        return 0;
    const QFontMetricsF metrics(fontOf(type));
    const qreal high = metrics.boundingRect(QRectF(0, 0, width, 4000), Qt::TextWordWrap, text).height();
    return std::max<qreal>(1, std::round(high / metrics.lineSpacing())) * lineHeight(type);
}

RowBoxes boxesOf(const Option& option, qreal width) {
    RowBoxes boxes;
    qreal left = kAside;
    if (option.shade.isValid()) {
        boxes.shade = QRectF(left, kAbove, kShade, kShade);
        left += kShade + 10;
    }
    const qreal words = std::max<qreal>(width - left - kAside - kTick - 4, 60);
    boxes.text = QRectF(left, kAbove, words, wrappedHeight(option.text, Type::BodyStrong, words));
    qreal below = boxes.text.bottom();
    if (!option.second.isEmpty()) {
        const qreal in = option.iconName.isEmpty() ? 0 : kSmallIcon + 6;
        below += 2;
        boxes.icon = QRectF(left, below + 1, kSmallIcon, kSmallIcon);
        boxes.second = QRectF(left + in, below, width - left - in - kAside,
                              wrappedHeight(option.second, Type::Small, width - left - in - kAside));
        below = boxes.second.bottom();
    }
    boxes.height = std::max(below, boxes.shade.bottom()) + kAbove;
    return boxes;
}

void paintWrapped(QPainter& painter, const QRectF& box, const QString& text, Type type, const QColor& ink) {
    painter.setFont(fontOf(type));
    painter.setPen(ink);
    painter.drawText(box, Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignVCenter, withRunsApart(text));
}

} // namespace

void OptionModel::setOptions(const QVector<Option>& options) {
    beginResetModel();
    m_options = options;
    endResetModel();
}

int OptionModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_options.size());
}

QVariant OptionModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= m_options.size())
        return {};
    const Option& option = m_options[index.row()];
    switch (role) {
    case Qt::DisplayRole:
    case Qt::AccessibleTextRole:
        return option.text;
    case Qt::AccessibleDescriptionRole:
        return option.second;
    default:
        return {};
    }
}

OptionDelegate::OptionDelegate(QListView* view)
    : QStyledItemDelegate(view)
    , m_view(view) {}

void OptionDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                           const QModelIndex& index) const {
    const Option& shown = static_cast<const OptionModel*>(index.model())->option(index.row());
    const Tokens& dyes = tokens();
    const RowBoxes boxes = boxesOf(shown, option.rect.width());
    const bool isChosen = m_view->currentIndex() == index;
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    if (isChosen)
        painter->fillRect(option.rect, dyes.woad);
    painter->fillRect(QRectF(option.rect.left(), option.rect.bottom(), option.rect.width(), 1), dyes.thread);
    painter->translate(option.rect.topLeft());
    if (shown.shade.isValid())
        paintSwatch(*painter, boxes.shade, shown.shade);
    paintWrapped(*painter, boxes.text, shown.text, Type::BodyStrong, dyes.ink);
    const QColor secondInk = shown.tone == Tone::Plain ? dyes.ink2 : toneInk(shown.tone);
    if (!shown.second.isEmpty()) {
        if (!shown.iconName.isEmpty())
            paintIcon(*painter, boxes.icon, shown.iconName, secondInk);
        paintWrapped(*painter, boxes.second, shown.second, Type::Small, secondInk);
    }
    if (isChosen) {
        const qreal right = option.rect.width() - kAside;
        paintIcon(*painter, QRectF(right - kTick, kAbove, kTick, kTick), QStringLiteral("tick"), dyes.indigo);
    }
    // The keyboard is at the first one where none is chosen yet.
    const bool isAt = isChosen || (!m_view->currentIndex().isValid() && index.row() == 0);
    if (isAt && m_view->hasFocus()) {
        const qreal in = kFocusRoom;
        paintFocusRing(*painter, QRectF(in, in, option.rect.width() - 2 * in, option.rect.height() - 2 * in),
                       4);
    }
    painter->restore();
}

QSize OptionDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const {
    const Option& shown = static_cast<const OptionModel*>(index.model())->option(index.row());
    const int width = m_view->viewport()->width();
    return {width, static_cast<int>(std::ceil(boxesOf(shown, width).height))};
}

OptionList::OptionList(const QString& accessibleName, QWidget* parent)
    : QListView(parent)
    , m_model(new OptionModel(this)) {
    setAccessibleName(accessibleName);
    setModel(m_model);
    setItemDelegate(new OptionDelegate(this));
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setResizeMode(QListView::Adjust);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    giveNoFocusRing(this);
}

void OptionList::setOptions(const QVector<Option>& options, int at) {
    m_isQuiet = true;
    QVector<Option> shown = options;
    for (Option& option : shown) {
        option.text = breakable(option.text);
        option.second = breakable(option.second);
    }
    m_model->setOptions(shown);
    m_isQuiet = false;
    setChosen(at);
    updateGeometry();
}

void OptionList::setChosen(int at) {
    m_isQuiet = true;
    setCurrentIndex(m_model->index(at));
    m_isQuiet = false;
    viewport()->update();
}

QString OptionList::chosenText() const {
    return currentIndex().data().toString();
}

void OptionList::choose(const QString& text) {
    for (int row = 0; row < m_model->rowCount(); ++row)
        if (m_model->index(row).data().toString() == text)
            setCurrentIndex(m_model->index(row));
}

void OptionList::keyboardSearch(const QString& typed) {
    if (const int row = m_typeAhead.rowAfter(typed, *m_model, currentIndex().row()); row >= 0)
        setCurrentIndex(m_model->index(row));
}

void OptionList::showAll() {
    m_showsAll = true;
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    updateGeometry();
}

QSize OptionList::sizeHint() const {
    int high = 0;
    for (int row = 0; row < m_model->rowCount() && (m_showsAll || row < kFewestRows); ++row)
        high += std::max(kPlainRow, sizeHintForRow(row));
    return {240, std::max(kPlainRow, high) + 2};
}

QSize OptionList::minimumSizeHint() const {
    return {200, sizeHint().height()};
}

bool OptionList::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && isTyped(*static_cast<QKeyEvent*>(event))) {
        event->accept();
        return true;
    }
    return QListView::event(event);
}

void OptionList::focusInEvent(QFocusEvent* event) {
    // A view would take its first row by itself; here that would be a choice nobody made.
    const QModelIndex before = currentIndex();
    m_isQuiet = true;
    QListView::focusInEvent(event);
    setCurrentIndex(before);
    m_isQuiet = false;
}

void OptionList::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QListView::currentChanged(current, previous);
    viewport()->update();
    if (!m_isQuiet && current.isValid())
        emit chosen(current.row());
}

void OptionList::resizeEvent(QResizeEvent* event) {
    QListView::resizeEvent(event);
    scheduleDelayedItemsLayout();
}

} // namespace holdfast::app
