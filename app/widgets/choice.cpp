// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/choice.h"

#include "app/theme/measures.h"
#include "app/widgets/choice_tile.h"
#include "app/widgets/flow_layout.h"

#include <QGridLayout>

#include <algorithm>
#include <cstdlib>

namespace holdfast::app {

Choice::Choice(const QString& accessibleName, Shape shape, QWidget* parent)
    : QWidget(parent)
    , m_shape(shape) {
    setAccessibleName(accessibleName);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    if (shape == Shape::Segment) {
        new FlowLayout(this, kSpace8);
        policy.setVerticalPolicy(QSizePolicy::Minimum); // as high as its lines
        policy.setHeightForWidth(true);
    } else {
        m_grid = new QGridLayout(this);
        m_grid->setContentsMargins(0, 0, 0, 0);
        m_grid->setSpacing(shape == Shape::Line ? 0 : kSpace8);
    }
    setSizePolicy(policy);
}

void Choice::setColumns(int columns) {
    m_columns = columns;
    layTiles();
}

void Choice::keepInOneLine(bool isKept) {
    QSizePolicy policy = sizePolicy();
    policy.setHorizontalPolicy(isKept ? QSizePolicy::Minimum : QSizePolicy::Preferred);
    setSizePolicy(policy);
}

int Choice::columnCount() const {
    return m_columns > 0 ? m_columns : std::max(1, static_cast<int>(m_items.size()));
}

void Choice::setItems(const QVector<ChoiceItem>& items) {
    m_items = items;
    const int count = static_cast<int>(items.size());
    const bool isSameCount = count == m_tiles.size();
    while (m_tiles.size() > count) {
        ChoiceTile* last = m_tiles.takeLast();
        last->hide();
        last->deleteLater(); // it may be the one whose click brought us here
    }
    while (m_tiles.size() < count) {
        m_tiles.append(new ChoiceTile(this, m_shape, static_cast<int>(m_tiles.size())));
    }
    for (int at = 0; at < count; ++at) {
        m_tiles[at]->setItem(items[at]);
        m_tiles[at]->setObjectName(QStringLiteral("%1-%2").arg(objectName()).arg(at));
    }
    if (m_chosen >= count) {
        m_chosen = -1;
    }
    if (!isSameCount) {
        layTiles();
        // At once: a tile that is hidden takes no room, and whoever asks now how wide they are was given
        // less.
        for (ChoiceTile* tile : m_tiles) {
            tile->show();
        }
    }
    markTiles();
}

void Choice::layTiles() {
    while (QLayoutItem* item = layout()->takeAt(0)) {
        delete item;
    }
    if (m_grid != nullptr) {
        layInColumns();
        return;
    }
    for (ChoiceTile* tile : m_tiles) {
        layout()->addWidget(tile);
    }
}

void Choice::layInColumns() {
    for (int column = 0; column < m_grid->columnCount(); ++column) {
        m_grid->setColumnStretch(column, 0);
        m_grid->setColumnMinimumWidth(column, 0);
    }
    const int columns = columnCount();
    for (int at = 0; at < m_tiles.size(); ++at) {
        m_grid->addWidget(m_tiles[at], at / columns, at % columns);
    }
    if (m_shape == Shape::Artwork) {
        m_grid->setColumnStretch(columns, 1);
        return;
    }
    // Equal columns, whatever their words.
    int widest = 0;
    for (const ChoiceTile* tile : m_tiles) {
        widest = std::max(widest, tile->sizeHint().width());
    }
    for (int column = 0; column < columns; ++column) {
        m_grid->setColumnStretch(column, 1);
        m_grid->setColumnMinimumWidth(column, m_shape == Shape::Swatch ? 0 : std::min(widest, 64));
    }
}

void Choice::markTiles() {
    ChoiceTile* stop = nullptr; // where Tab lands
    for (int at = 0; at < m_tiles.size(); ++at) {
        m_tiles[at]->mark(at == m_chosen);
        m_tiles[at]->setFocusPolicy(Qt::ClickFocus);
        if (m_items[at].isChoosable && (stop == nullptr || at == m_chosen)) {
            stop = m_tiles[at];
        }
    }
    if (stop != nullptr) {
        stop->setFocusPolicy(Qt::StrongFocus);
    }
    setFocusProxy(stop);
}

void Choice::setChosen(int at) {
    const bool hadFocus =
        std::any_of(m_tiles.begin(), m_tiles.end(), [](const ChoiceTile* tile) { return tile->hasFocus(); });
    m_chosen = at >= 0 && at < m_items.size() ? at : -1;
    markTiles();
    if (hadFocus) {
        takeFocus(Qt::OtherFocusReason);
    }
}

void Choice::takeFocus(Qt::FocusReason reason) {
    if (focusProxy() != nullptr) {
        focusProxy()->setFocus(reason);
    }
}

void Choice::choose(int at) {
    if (at < 0 || at >= m_items.size() || !m_items[at].isChoosable) {
        return;
    }
    m_chosen = at;
    markTiles();
    m_tiles[at]->setFocus(Qt::OtherFocusReason);
    emit chosen(at);
}

// In the nearest line that way, the one that is nearest across.
int Choice::nextInLine(int at, int key) const {
    const QPoint from = m_tiles[at]->geometry().center();
    int nearest = -1;
    int least = 0;
    for (int other = 0; other < m_tiles.size(); ++other) {
        const QPoint by = m_tiles[other]->geometry().center() - from;
        const int down = key == Qt::Key_Down ? by.y() : -by.y();
        const int far = down * width() + std::abs(by.x());
        if (down > 0 && m_items[other].isChoosable && (nearest < 0 || far < least)) {
            nearest = other;
            least = far;
        }
    }
    return nearest;
}

void Choice::moveFrom(int at, int key) {
    const int count = static_cast<int>(m_items.size());
    const int columns = columnCount();
    int step = 0;
    int next = at;
    if (m_grid == nullptr && (key == Qt::Key_Up || key == Qt::Key_Down)) {
        choose(nextInLine(at, key));
        return;
    }
    switch (key) {
    case Qt::Key_Left:
        step = -1;
        break;
    case Qt::Key_Right:
        step = 1;
        break;
    case Qt::Key_Up:
        step = -columns;
        break;
    case Qt::Key_Down:
        step = columns;
        break;
    case Qt::Key_Home:
        next = -1;
        step = 1;
        break;
    case Qt::Key_End:
        next = count;
        step = -1;
        break;
    default:
        return;
    }
    // Over what cannot be chosen, and no further than the ends.
    for (next += step; next >= 0 && next < count; next += step) {
        if (m_items[next].isChoosable) {
            choose(next);
            return;
        }
    }
}

} // namespace holdfast::app
