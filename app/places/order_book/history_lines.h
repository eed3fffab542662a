#pragma once
// What happened to an order, newest first: a knot on the thread for each action, the words of the journal,
// and Undo. Taken-back lines stay, struck through. One stop for Tab; ↑↓ move, Enter takes back.

#include "app/places/order_book/order_view.h"
#include "app/widgets/painted_lines.h"

namespace holdfast::app {

class HistoryLines : public PaintedLines {
    Q_OBJECT

public:
    explicit HistoryLines(QWidget* parent = nullptr);

    void show(const OrderView& view);

signals:
    void undoAsked(holdfast::EntryId entry);

protected:
    int lineCount() const override { return static_cast<int>(m_lines.size()); }
    int heightOf(int line) const override { return at(line).height; }
    void paintOne(QPainter& painter, int line, const QRectF& box, bool isCurrent) override;
    QString spokenLine(int line) const override;
    bool isOnButton(int line, const QRectF& box, const QPointF& at) const override;
    void doWhatItOffers(int line) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Line {
        EntryId entry;
        QString when, title;
        bool isUndone = false;
        bool canUndo = false;
        int height = 0;
    };
    const Line& at(int line) const { return m_lines[static_cast<std::size_t>(line)]; }
    void layLines();

    std::vector<Line> m_lines;
    int m_wordsAt = 0; // behind the widest time
};

} // namespace holdfast::app
