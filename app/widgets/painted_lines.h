// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A list that paints its lines itself, as high as all of them: one stop for Tab, ↑↓, Home and End move and
// bring the line into view where the list scrolls, Enter and a click on a line's own button do what the line
// offers. Where the lines are named, letters look for one by any word of its name.

#include "app/widgets/painted_parts.h"
#include "app/widgets/type_ahead.h"

#include <QPainter>
#include <QWidget>

namespace holdfast::app {

class PaintedLines : public QWidget, public PaintedParts {
    Q_OBJECT

public:
    // `name` is its object name, `accessibleName` what it is called when it is read aloud.
    PaintedLines(const QString& name, const QString& accessibleName, QWidget* parent);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

    Roles partRoles() const override { return {QAccessible::List, QAccessible::ListItem}; }
    int partCount() const override { return lineCount(); }
    QString partName(int line) const override { return spokenLine(line); }
    QRect partBox(int line) const override { return boxOf(line).toAlignedRect(); }
    int currentPart() const override { return currentLine(); }
    void moveToPart(int line) override;
    void pressPart(int line) override { doWhatItOffers(line); }

protected:
    virtual int lineCount() const = 0;
    virtual int heightOf(int line) const = 0;
    virtual void paintOne(QPainter& painter, int line, const QRectF& box, bool isCurrent) = 0;
    virtual QString spokenLine(int line) const = 0;
    virtual bool isOnButton(int line, const QRectF& box, const QPointF& at) const = 0;
    virtual void doWhatItOffers(int line) = 0;
    // What a letter finds the line by; empty for lines that leave letters to the place.
    virtual QString nameOf(int line) const {
        Q_UNUSED(line)
        return {};
    }

    bool event(QEvent* event) override;
    // After its lines became others, or higher.
    void linesChanged();
    // The line the keyboard is on; −1: there is none.
    int currentLine() const { return lineCount() == 0 ? -1 : m_current; }
    QRectF boxOf(int line) const;

    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;

    virtual void moveTo(int line);
    // The current line, where the list scrolls.
    void bringIntoView();

private:
    bool takesLetters() const;
    bool isForSearch(const QKeyEvent& key) const;

    int m_current = 0;
    TypeAhead m_typeAhead;
};

} // namespace holdfast::app
