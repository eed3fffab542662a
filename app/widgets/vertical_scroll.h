// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A column that scrolls up and down only, without a frame; the child that gets the keyboard is brought into
// view.
// Its focus ring is cut at the sides of the column: give the column margins of kFocusRoom where children take
// focus.

#include <QScrollArea>

class QVBoxLayout;

namespace holdfast::app {

// Brings what got the keyboard into view: the whole of it, or of what fills most of the room the row that the
// keyboard is on, by the current index of a list or the cursor rectangle of any other widget.
void showIn(QScrollArea& area, QWidget& focused);

class VerticalScroll : public QScrollArea {
    Q_OBJECT

public:
    explicit VerticalScroll(QWidget* parent = nullptr);

    // The column's own layout; no margins, no spacing unless set. Ends in no stretch.
    QVBoxLayout* column() const { return m_column; }

    QSize minimumSizeHint() const override;

private:
    QVBoxLayout* m_column = nullptr;
};

} // namespace holdfast::app
