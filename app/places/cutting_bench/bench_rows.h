// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Lines of the panel: words that wrap, a quieter second line, and one act at the right, or a switch.

#include "app/theme/tokens.h"

#include <QVector>
#include <QWidget>

class QVBoxLayout;

namespace holdfast::app {

class Label;

struct BenchRow {
    QString text;
    QString second = {};  // below, in full
    QString act = {};     // words of the act; empty: none
    QString actName = {}; // as it is read aloud
    bool isSwitch = false;
    bool isOn = false;

    bool operator==(const BenchRow&) const = default;
};

// Hidden while it has no rows. The first are shown, and more when they are asked for below.
class BenchRows : public QWidget {
    Q_OBJECT

public:
    BenchRows(const QString& title, const QString& name, QWidget* parent = nullptr);

    void setRows(const QVector<BenchRow>& rows);
    const QVector<BenchRow>& rows() const { return m_rows; }
    // For all rows at once, in the line of the title; empty words take it away.
    void setActOnAll(const QString& words);

signals:
    void acted(int row);
    void turned(int row, bool isOn);
    void actedOnAll();

private:
    QWidget* makeRow(int at);
    void showRows();
    void showMore();

    QString m_name;
    QVector<BenchRow> m_rows;
    QVBoxLayout* m_column = nullptr;
    Label* m_title = nullptr;
    QWidget* m_actOnAll = nullptr;
    QVBoxLayout* m_lines = nullptr;
    int m_most; // rows that are shown
};

} // namespace holdfast::app
