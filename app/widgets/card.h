// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A card: rounded, one thread of border, no shadow. What is put in content() may reach the edges: the corners
// are kept round above it.

#include "app/theme/measures.h"
#include "app/theme/tokens.h"

#include <QWidget>

class QHBoxLayout;
class QVBoxLayout;

namespace holdfast::app {

class CardCorners;
class CardTitle;

class Card : public QWidget {
    Q_OBJECT

public:
    explicit Card(QWidget* parent = nullptr);
    explicit Card(const QString& title, QWidget* parent = nullptr);

    // The title row, with a thread line below. An empty title takes the row away.
    void setTitle(const QString& title, const QString& iconName = {});
    void setTitleInk(Role ink);          // the icon's ink: madder on Held
    void setNote(const QString& note);   // quiet words after the title
    void setCount(const QString& count); // at the right end
    void setTitleHeight(int height);
    void showTitle(bool isShown);     // where the room is short     // kCardTitleHeight unless set; 48 with a
                                      // button in the row
    void addToTitle(QWidget* widget); // at the right end, before the count

    // Leaves the top border open between two x, under the tab that belongs to it. See SewnTabs::sewOnto.
    void openTop(int from, int to);

    // Where the card's own things go; no margins, no spacing unless set.
    QVBoxLayout* content() const { return m_content; }
    // The usual padding around the content.
    void pad(int horizontal = kCardPadding, int vertical = kSpace12, int spacing = kSpace8);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    bool event(QEvent* event) override;

private:
    CardTitle* m_title = nullptr;
    QVBoxLayout* m_content = nullptr;
    CardCorners* m_corners = nullptr;
};

} // namespace holdfast::app
