// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/pick_list.h"

#include "app/theme/drawings.h"
#include "app/theme/measures.h"

#include <QAbstractItemView>
#include <QKeyEvent>
#include <QPainter>
#include <QSignalBlocker>
#include <QWheelEvent>

namespace holdfast::app {

namespace {

constexpr int kShortestShown = 6; // letters
constexpr int kWidestList = 560;
constexpr int kRowsShown = 12;

QIcon shadeIcon(const QColor& shade, qreal ratio) {
    QPixmap picture(QSize(kSmallIcon, kSmallIcon) * ratio);
    picture.setDevicePixelRatio(ratio);
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    paintSwatch(painter, QRectF(0, 0, kSmallIcon, kSmallIcon), shade);
    return QIcon(picture);
}

} // namespace

PickList::PickList(const QString& accessibleName, QWidget* parent)
    : QComboBox(parent) {
    setAccessibleName(accessibleName);
    setFocusPolicy(Qt::StrongFocus);
    setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    setMinimumContentsLength(kShortestShown);
    setMaxVisibleItems(kRowsShown);
    setIconSize({kSmallIcon, kSmallIcon});
    setMinimumHeight(kTarget);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    view()->installEventFilter(this);
}

// Space opens the list unless it is part of what is typed.
bool PickList::isForSearch(const QKeyEvent& key) const {
    return isTyped(key) && (key.key() != Qt::Key_Space || m_typeAhead.isGoingOn());
}

bool PickList::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && isTyped(*static_cast<QKeyEvent*>(event)))
        event->accept();
    return QComboBox::event(event);
}

bool PickList::eventFilter(QObject* watched, QEvent* event) {
    if (watched != view() || (event->type() != QEvent::KeyPress && event->type() != QEvent::ShortcutOverride))
        return QComboBox::eventFilter(watched, event);
    const auto& key = *static_cast<QKeyEvent*>(event);
    if (!isForSearch(key))
        return QComboBox::eventFilter(watched, event);
    if (event->type() == QEvent::ShortcutOverride) {
        event->accept();
        return true;
    }
    if (const int row = m_typeAhead.rowAfter(key.text(), *model(), view()->currentIndex().row()); row >= 0)
        view()->setCurrentIndex(model()->index(row, modelColumn(), rootModelIndex()));
    return true;
}

void PickList::keyPressEvent(QKeyEvent* event) {
    if (!isForSearch(*event)) {
        QComboBox::keyPressEvent(event);
        return;
    }
    const int row = m_typeAhead.rowAfter(event->text(), *model(), currentIndex());
    if (row < 0 || row == currentIndex())
        return;
    setCurrentIndex(row);
    emit activated(row);
}

void PickList::setItems(const QVector<PickItem>& items, int chosen) {
    const QSignalBlocker quiet(this);
    m_items = items;
    clear();
    for (const PickItem& item : items)
        addItem(item.text);
    for (int at = 0; at < items.size(); ++at)
        setItemData(at, items[at].text, Qt::ToolTipRole);
    paintShades();
    setCurrentIndex(chosen);
    // The list below may be wider than its closed end: a long name is read whole before it is chosen.
    view()->setMinimumWidth(std::min(kWidestList, view()->sizeHintForColumn(0) + kSpace32));
}

void PickList::paintShades() {
    for (int at = 0; at < m_items.size(); ++at)
        if (m_items[at].shade.isValid())
            setItemIcon(at, shadeIcon(m_items[at].shade, devicePixelRatioF()));
}

void PickList::wheelEvent(QWheelEvent* event) {
    if (hasFocus())
        QComboBox::wheelEvent(event);
    else
        event->ignore();
}

void PickList::changeEvent(QEvent* event) {
    QComboBox::changeEvent(event);
    if (event->type() == QEvent::PaletteChange)
        paintShades();
}

} // namespace holdfast::app
