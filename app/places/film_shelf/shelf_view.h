// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The shelf: a board for each roll, its tail as long as its days left on one linear axis from today, hatched
// where warmth took days. Painted by delegate, so that hundreds of rolls cost no widget each.

#include "app/places/film_shelf/shelf_model.h"
#include "app/widgets/type_ahead.h"

#include <QListView>

#include <vector>

namespace holdfast::app {

// The axis of days, in pixels of the list's viewport.
struct ShelfAxis {
    // A shelf this wide whose longest roll has this many days.
    ShelfAxis(qreal width, int longestDays);

    qreal nameLeft = 46;
    qreal nameRight = 0;
    qreal todayAt = 0;
    qreal right = 0; // where the axis ends
    int days = 0;    // that it shows; longer tails run out of it
    qreal at(int daysFromToday) const;

    struct Mark {
        qreal at;
        QString words; // "1 Dec"
    };
    // The first of each month, or of every few where months are narrow; none under "Today".
    std::vector<Mark> marks(LocalDate today) const;
};

class ShelfScale;

class ShelfView : public QListView {
    Q_OBJECT

public:
    explicit ShelfView(const ShelfModel& model, QWidget* parent = nullptr);

    const ShelfModel& shelf() const { return m_shelf; }
    ShelfAxis axis() const;
    // By a roll's number, or any word of its film.
    void keyboardSearch(const QString& typed) override;

signals:
    void turnedRight(); // the Right key: on to the work that waits for the roll

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    const ShelfModel& m_shelf;
    ShelfScale* m_scale = nullptr;
    TypeAhead m_typeAhead;
};

} // namespace holdfast::app
