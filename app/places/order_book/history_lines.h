// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What happened to an order, newest first: a knot on the thread for each action, the words of the journal,
// and Undo where nothing later is built on it. What was undone stays, struck through, and can be put back.
// One stop for Tab; ↑↓ move, Enter undoes or puts back.

#include "app/places/order_book/order_view.h"
#include "app/widgets/painted_lines.h"

namespace holdfast::app {

class HistoryLines : public PaintedLines {
    Q_OBJECT

public:
    explicit HistoryLines(QWidget* parent = nullptr);

    void show(const OrderHistory& history, const Now& now);

signals:
    void undoAsked(holdfast::EntryId entry);
    void putBackAsked(holdfast::EntryId undo); // what undid it

protected:
    int lineCount() const override { return static_cast<int>(m_lines.size()); }
    int heightOf(int line) const override { return at(line).height; }
    void paintOne(QPainter& painter, int line, const QRectF& box, bool isCurrent) override;
    QString spokenLine(int line) const override;
    bool isOnButton(int line, const QRectF& box, const QPointF& at) const override;
    void doWhatItOffers(int line) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    enum class Offer { Nothing, Undo, PutBack };
    struct Line {
        EntryId entry; // to be undone: itself, or what undid it
        QString when, title;
        bool isUndone = false;
        Offer offer = Offer::Nothing;
        int height = 0;
    };
    static QString offerWords(Offer offer);
    const Line& at(int line) const { return m_lines[static_cast<std::size_t>(line)]; }
    void layLines();

    std::vector<Line> m_lines;
    int m_wordsAt = 0; // after the widest time
};

} // namespace holdfast::app
