// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Tabs along the top edge of a card; the one you are in is a sewn label. Left and Right move, what is typed
// finds a tab by any word of it, Enter and Down leave the tabs for the card; one stop for Tab. Put them
// straight above a card with no gap: the current tab is open to the card below. Where there are more than
// fit, whole tabs are shown and a chevron at the end says that they go on; the wheel moves them along.

#include "app/widgets/painted_parts.h"
#include "app/widgets/type_ahead.h"

#include <QColor>
#include <QPointer>
#include <QVector>
#include <QWidget>

namespace holdfast::app {

class Card;

struct SewnTab {
    QString text;
    QString second = {};
    QColor shade = {}; // a disk of film or cloth before the words
    QString iconName = {};
};

class SewnTabs : public QWidget, public PaintedParts {
    Q_OBJECT

public:
    explicit SewnTabs(const QString& accessibleName, QWidget* parent = nullptr);

    void setTabs(const QVector<SewnTab>& tabs); // keeps the current place when it is still there
    int currentAt() const { return m_current; }
    void setCurrent(int at);                                // emits nothing
    QRect currentTab() const { return tabRect(m_current); } // empty for none

    // The card below, whose left edge is this widget's left edge.
    void sewOnto(Card* card);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

    Roles partRoles() const override { return {QAccessible::PageTabList, QAccessible::PageTab}; }
    int partCount() const override { return static_cast<int>(m_tabs.size()); }
    QString partName(int tab) const override { return wordsOf(tab).join(QStringLiteral(", ")); }
    QRect partBox(int tab) const override { return tabRect(tab); }
    int currentPart() const override { return m_current; }
    void moveToPart(int tab) override { choose(tab); }
    void pressPart(int) override { emit left(); }

signals:
    void chosen(int at); // by the person
    void left();         // the card below is to have the keyboard

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    int wholeWidth() const;
    void moveAlong(int shift); // as far as there are tabs
    void showCurrent();
    bool goesOnLeft() const { return m_shift > 0; }
    bool goesOnRight() const { return wholeWidth() - m_shift > width(); }
    void paintEnds(QPainter& painter) const;
    QRect tabRect(int at) const;
    bool isWhole(int at) const; // in sight, or the current one
    int tabAt(QPoint at) const;
    int tabHeight() const;
    void choose(int at);
    void find(const QString& typed);
    void say();
    void openCard();
    QStringList wordsOf(int tab) const; // that are painted on it

    QString m_name;
    QVector<SewnTab> m_tabs;
    int m_current = -1;
    int m_hovered = -1;
    int m_shift = 0; // pixels of tabs that are out of sight at the left
    QPointer<Card> m_card;
    TypeAhead m_typeAhead;
};

} // namespace holdfast::app
