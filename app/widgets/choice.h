// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One of several, as tiles: the chosen one is woad, ringed, with a tick in its corner, so that it differs
// from a button in both lights and without colour; one that is out of stock is dashed. One stop for Tab;
// arrow keys move and choose at once, Home and End too, digits choose by place.

#include "app/theme/tokens.h"

#include <QVector>
#include <QWidget>

class QGridLayout;

namespace holdfast::app {

// A small sign in a tile's second line, as a drop and "4 washed".
struct ChoiceMark {
    QString iconName;
    QString words;
    Role ink = &Tokens::ink2;
};

struct ChoiceItem {
    QString text;                   // also the accessible name
    QString second = {};            // the line below
    QVector<ChoiceMark> marks = {}; // instead of second
    QString outline = {};           // a garment drawn in `shade`, else in undyed cloth
    QString artwork = {};           // a decal drawn in ink, no text shown
    QString iconName = {};
    QColor shade = {}; // cloth or film
    bool isInStock = true;
    bool isChoosable = true;
};

class ChoiceTile;

class Choice : public QWidget {
    Q_OBJECT

public:
    enum class Shape {
        Picture, // drawing above the words, 90 high
        Stacked, // strong words above a second line, 62 high
        Swatch,  // shade at the left, words and marks next to it, 64 high
        Artwork, // a decal alone, 53 x 48
        Line,    // strong words above a second line, both at the left, no box: a plain list
        Segment, // words only, 40 high, as wide as the words, onward in the next line where the room ends
    };

    explicit Choice(const QString& accessibleName, Shape shape, QWidget* parent = nullptr);

    // Tiles in a row; 0 puts all in one row. Tiles share the width, but Artwork keeps its own. Segments flow.
    void setColumns(int columns);
    void keepInOneLine(bool isKept = true);          // segments next to a field, which gives its room to them
    void setItems(const QVector<ChoiceItem>& items); // keeps the chosen place when it is still there
    const QVector<ChoiceItem>& items() const { return m_items; }

    int chosenAt() const { return m_chosen; } // -1 for none
    void setChosen(int at);                   // emits nothing
    // Puts the keyboard on the chosen tile, or on the first.
    void takeFocus(Qt::FocusReason reason = Qt::ShortcutFocusReason);

signals:
    void chosen(int at); // by the person

private:
    friend class ChoiceTile;
    void choose(int at);
    void moveFrom(int at, int key);
    int nextInLine(int at, int key) const; // the segment above or below; -1 for none
    void layTiles();
    void layInColumns();
    void markTiles();
    int columnCount() const;

    Shape m_shape;
    int m_columns = 0;
    int m_chosen = -1;
    QVector<ChoiceItem> m_items;
    QVector<ChoiceTile*> m_tiles;
    QGridLayout* m_grid = nullptr; // none where they flow
};

} // namespace holdfast::app
