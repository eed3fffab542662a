// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The day that can be promised, large, with the path to it in words along a running stitch: all of it is
// still to be done. Green only where nothing stands in its way; where something does, it says that no day can
// be given yet and what is needed first, or what the day waits for.

#include "app/theme/tokens.h"
#include "app/theme/type.h"
#include "core/orders/promise.h"

#include <QString>
#include <QWidget>

#include <optional>

namespace holdfast::app {

// What is in the block.
struct PromiseShown {
    std::optional<Promise> promise;
    LocalDate today{};
    QString answer;        // to the day that the customer asks for; empty: none is
    QString stillOpen;     // what of the blanks is not chosen yet, in words
    QString lack;          // why there is no promise yet
    QString leavesDayOpen; // why its day cannot be given; empty: it can
    QString dayWaitsFor;   // what its day waits for; empty: nothing
};

class PromiseBlock : public QWidget {
    Q_OBJECT

public:
    explicit PromiseBlock(QWidget* parent = nullptr);

    void show(const PromiseShown& shown);
    // On low windows day and hour share a line; then the path to the day is in words; on the lowest windows
    // it is left to the tool tip, and the block is only as high as its words.
    enum class Room { Whole, Low, Lower, Lowest };
    void setRoom(Room room);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Stop {
        QString what;
        QString when;
        bool isReady = false;
        bool isCut = false;
    };
    void readPath(const Promise& promise);
    QStringList toldWords() const;
    QString wordsBelow() const;                      // below the day, or below that there is none
    QString lineBelow(double wide, Type type) const; // of those, what has room in one line
    int heightOfWords() const;
    int pathTop() const; // the middle of its stitch
    void paintOpen(QPainter& painter) const;
    void paintDay(QPainter& painter) const;
    void paintPath(QPainter& painter, double top) const;
    void paintPathWords(QPainter& painter, const QRectF& room) const;

    PromiseShown m_shown;
    QString m_day; // empty: none can be given
    QString m_hour;
    std::vector<Stop> m_stops;
    Room m_room = Room::Whole;
};

} // namespace holdfast::app
