#pragma once
// A column that scrolls up and down only, without a frame; the child that gets the keyboard is brought into
// view.
// Its focus ring is cut at the sides of the column: give the column margins of kFocusRoom where children take
// focus.

#include <QScrollArea>

class QVBoxLayout;

namespace holdfast::app {

class VerticalScroll : public QScrollArea {
    Q_OBJECT

public:
    explicit VerticalScroll(QWidget* parent = nullptr);

    // The column's own layout; no margins, no spacing unless set. Ends in no stretch.
    QVBoxLayout* column() const { return m_column; }

    QSize minimumSizeHint() const override;

private:
    void showWhole(QWidget& child);

    QVBoxLayout* m_column = nullptr;
};

} // namespace holdfast::app
