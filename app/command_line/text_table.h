// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A table for people, aligned in columns: words to the left, numbers to the right.

#include <QString>
#include <QStringList>

#include <vector>

namespace holdfast::app {

class TextTable {
public:
    enum class Side { Left, Right };
    struct Column {
        QString head;
        Side side = Side::Left;
    };

    explicit TextTable(std::vector<Column> columns);

    // REQUIRES: as many cells as columns.
    void add(const QStringList& cells);
    // A line below the row added last, set in by four; not aligned with anything.
    void addNote(const QString& note);
    bool isEmpty() const { return m_rows.empty(); }

    // Heads, a line of dashes, rows; two spaces between columns, `indent` before each line; no space at line
    // ends. Ends in a new line.
    QString text(int indent = 0) const;

private:
    std::vector<Column> m_columns;
    struct Row {
        QStringList cells;
        QStringList notes;
    };
    std::vector<Row> m_rows;
};

// How many columns of a terminal the text takes: marks that combine take none.
int columnsOf(const QString& text);

} // namespace holdfast::app
