#pragma once
// What happened to an order, newest first: a knot on the thread for each action, the words of the journal,
// and Undo. Taken-back lines stay, struck through. One stop for Tab; ↑↓ move, Enter takes back.

#include "app/places/order_book/order_view.h"

#include <QWidget>

namespace holdfast::app {

class HistoryLines : public QWidget {
    Q_OBJECT

public:
    explicit HistoryLines(QWidget* parent = nullptr);

    void show(const OrderView& view);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

signals:
    void undoAsked(holdfast::EntryId entry);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;

private:
    struct Line {
        EntryId entry;
        QString when, title;
        bool isUndone = false;
        bool canUndo = false;
        int height = 0;
    };
    void layLines();
    int lineAt(QPoint at) const;
    void undoCurrent();
    void say();

    std::vector<Line> m_lines;
    int m_current = 0;
};

} // namespace holdfast::app
