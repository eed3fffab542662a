// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/painted_lines.h"

#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QScrollArea>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kUsualWidth = 360;

} // namespace

PaintedLines::PaintedLines(const QString& name, const QString& accessibleName, QWidget* parent)
    : QWidget(parent) {
    setObjectName(name);
    setAccessibleName(accessibleName);
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    giveNoFocusRing(this);
    setMouseTracking(true);
}

QSize PaintedLines::sizeHint() const {
    int height = 0;
    for (int line = 0; line < lineCount(); ++line)
        height += heightOf(line);
    return {kUsualWidth, height};
}

void PaintedLines::linesChanged() {
    moveTo(m_current);
    updateGeometry();
}

QRectF PaintedLines::boxOf(int line) const {
    int top = 0;
    for (int before = 0; before < line; ++before)
        top += heightOf(before);
    return QRectF(0, top, width(), heightOf(line));
}

void PaintedLines::moveTo(int line) {
    m_current = std::clamp(line, 0, std::max(0, lineCount() - 1));
    if (lineCount() > 0)
        setAccessibleDescription(spokenLine(m_current));
    sayCurrentPart();
    update();
}

void PaintedLines::moveToPart(int line) {
    moveTo(line);
    bringIntoView();
}

void PaintedLines::bringIntoView() {
    const QRect line = boxOf(m_current).toAlignedRect();
    for (QWidget* above = parentWidget(); above; above = above->parentWidget())
        if (auto* area = qobject_cast<QScrollArea*>(above)) {
            const QPoint middle = mapTo(area->widget(), line.center());
            area->ensureVisible(middle.x(), middle.y(), 0, line.height() / 2 + kSpace4);
        }
}

void PaintedLines::mouseMoveEvent(QMouseEvent* event) {
    bool isOverButton = false;
    for (int line = 0; line < lineCount() && !isOverButton; ++line) {
        const QRectF box = boxOf(line);
        isOverButton = box.contains(event->position()) && isOnButton(line, box, event->position());
    }
    setCursor(isOverButton ? Qt::PointingHandCursor : Qt::ArrowCursor);
    QWidget::mouseMoveEvent(event);
}

void PaintedLines::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    qreal top = 0;
    for (int line = 0; line < lineCount(); ++line) {
        const QRectF box(0, top, width(), heightOf(line));
        paintOne(painter, line, box, hasFocus() && line == m_current);
        top = box.bottom();
    }
}

void PaintedLines::mousePressEvent(QMouseEvent* event) {
    for (int line = 0; line < lineCount(); ++line) {
        const QRectF box = boxOf(line);
        if (!box.contains(event->position()))
            continue;
        moveTo(line);
        if (isOnButton(line, box, event->position()))
            doWhatItOffers(line);
        return;
    }
}

bool PaintedLines::takesLetters() const {
    for (int line = 0; line < lineCount(); ++line)
        if (!nameOf(line).isEmpty())
            return true;
    return false;
}

bool PaintedLines::isForSearch(const QKeyEvent& key) const {
    return isTyped(key) && takesLetters();
}

// What is typed looks for a line; it is nobody's shortcut while the list has the keyboard.
bool PaintedLines::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && isForSearch(*static_cast<QKeyEvent*>(event))) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

void PaintedLines::keyPressEvent(QKeyEvent* event) {
    if (isForSearch(*event)) {
        const int found = m_typeAhead.rowAfter(event->text(), lineCount(), m_current,
                                               [this](int line) { return nameOf(line); });
        if (found >= 0) {
            moveTo(found);
            bringIntoView();
        }
        return;
    }
    switch (event->key()) {
    case Qt::Key_Up:
        moveTo(m_current - 1);
        bringIntoView();
        return;
    case Qt::Key_Down:
        moveTo(m_current + 1);
        bringIntoView();
        return;
    case Qt::Key_Home:
        moveTo(0);
        bringIntoView();
        return;
    case Qt::Key_End:
        moveTo(lineCount() - 1);
        bringIntoView();
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (lineCount() > 0)
            doWhatItOffers(m_current);
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void PaintedLines::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    sayCurrentPart();
    update();
}

void PaintedLines::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    update();
}

} // namespace holdfast::app
