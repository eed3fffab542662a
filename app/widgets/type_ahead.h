// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is typed into a list that has the keyboard: finds the next row of which any word begins with it.

#include <QElapsedTimer>
#include <QString>

#include <functional>

class QAbstractItemModel;
class QKeyEvent;

namespace holdfast::app {

// A letter, a digit or a mark, with no Ctrl, Alt or Meta: it belongs to a list that has the keyboard, never
// to a shortcut.
bool isTyped(const QKeyEvent& key);

class TypeAhead {
public:
    // The row that `key` leads to, from the current one on; none: -1. Keys that follow each other closely
    // make one word, and the same letter again goes on to the next row.
    int rowAfter(const QString& key, const QAbstractItemModel& model, int current,
                 int role = Qt::DisplayRole);
    int rowAfter(const QString& key, int rows, int current, const std::function<QString(int)>& wordsOf);
    // Something was typed a moment ago: a space belongs to it.
    bool isGoingOn() const;

private:
    QString m_typed;
    QElapsedTimer m_sinceLast;
};

// A word of `text` begins with `typed`, whatever the case; of a number leading zeros do not count.
bool hasWordLike(const QString& text, const QString& typed);

} // namespace holdfast::app
