// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The rail of places at the left: our mark, the places in their groups with a running stitch between, each
// with what waits there in words, and at the foot the air of the first storage place. On a low window the
// mark goes first, then the icons; the words stay.

#include "app/shell/places.h"

#include <QAbstractButton>
#include <QVector>
#include <QWidget>

namespace holdfast::app {

// One place on the rail. The one you are in is a sewn label.
class RailButton : public QAbstractButton {
    Q_OBJECT

public:
    explicit RailButton(const BuiltPlace& place, QWidget* parent);

    PlaceName place() const { return m_place.name; }
    // What waits there: "15 to press" below the name, and in full. Empty: nothing.
    void setWaiting(const QString& brief, const QString& inFull);

    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    const BuiltPlace& m_place;
    QString m_waiting;
};

// The last reading of a place: humidity and temperature. Pressing it asks for a new one.
class RailAir : public QAbstractButton {
    Q_OBJECT

public:
    explicit RailAir(QWidget* parent);

    // `isOld`: no reading within the shop's limit. Empty words hide it.
    void set(const QString& place, const QString& reading, bool isOld, const QString& inFull);

    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString m_reading;
    bool m_isOld = false;
};

class Rail : public QWidget {
    Q_OBJECT

public:
    explicit Rail(QWidget* parent = nullptr);

    void setCurrent(PlaceName place);
    // Counts and air from the reckoned shop.
    void show(ShopDesk& desk);

    QSize sizeHint() const override;

signals:
    void placeChosen(holdfast::app::PlaceName place);
    void airChosen(holdfast::PlaceId place);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    RailButton* button(PlaceName place) const;
    void arrange();
    void showAir(const ReckonedShop& shop);

    QVector<RailButton*> m_places;
    RailAir* m_air = nullptr;
    PlaceId m_airOf;
    bool m_hasMark = true;
    QVector<int> m_stitches; // y of each
};

} // namespace holdfast::app
