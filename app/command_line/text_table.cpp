// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/text_table.h"

#include <algorithm>
#include <utility>

namespace holdfast::app {

namespace {

constexpr int kBetween = 2;
constexpr int kNoteIndent = 4;

QString padded(const QString& text, int width, TextTable::Side side) {
    const QString space(std::max(0, width - columnsOf(text)), QLatin1Char(' '));
    return side == TextTable::Side::Left ? text + space : space + text;
}

} // namespace

int columnsOf(const QString& text) {
    int columns = 0;
    for (const uint letter : text.toUcs4()) {
        const auto category = QChar::category(letter);
        if (category != QChar::Mark_NonSpacing && category != QChar::Mark_Enclosing &&
            category != QChar::Other_Format)
            ++columns;
    }
    return columns;
}

TextTable::TextTable(std::vector<Column> columns)
    : m_columns(std::move(columns)) {}

void TextTable::add(const QStringList& cells) {
    Q_ASSERT(cells.size() == static_cast<int>(m_columns.size()));
    m_rows.push_back({cells, {}});
}

void TextTable::addNote(const QString& note) {
    if (!m_rows.empty() && !note.isEmpty())
        m_rows.back().notes.append(note);
}

QString TextTable::text(int indent) const {
    std::vector<int> widths;
    QStringList heads;
    for (int at = 0; at < static_cast<int>(m_columns.size()); ++at) {
        const Column& column = m_columns[static_cast<std::size_t>(at)];
        int width = columnsOf(column.head);
        for (const Row& row : m_rows)
            width = std::max(width, columnsOf(row.cells[at]));
        widths.push_back(width);
        heads.append(column.head);
    }
    QString whole;
    const auto addLine = [&](const QStringList& cells) {
        QString line(indent, QLatin1Char(' '));
        for (int at = 0; at < cells.size(); ++at) {
            const auto column = static_cast<std::size_t>(at);
            line += padded(cells[at], widths[column], m_columns[column].side);
            line += QString(kBetween, QLatin1Char(' '));
        }
        while (line.endsWith(QLatin1Char(' ')))
            line.chop(1);
        whole += line + QLatin1Char('\n');
    };
    addLine(heads);
    QStringList dashes;
    for (const int width : widths)
        dashes.append(QString(width, QLatin1Char('-')));
    addLine(dashes);
    for (const Row& row : m_rows) {
        addLine(row.cells);
        for (const QString& note : row.notes)
            whole += QString(indent + kNoteIndent, QLatin1Char(' ')) + note + QLatin1Char('\n');
    }
    return whole;
}

} // namespace holdfast::app
