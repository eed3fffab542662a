// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How far a day's work is: words, and a bead for each piece, filled when done. More pieces than fit become
// one bar.

#include <QWidget>

namespace holdfast::app {

class ProgressBeads : public QWidget {
    Q_OBJECT

public:
    explicit ProgressBeads(QWidget* parent = nullptr);

    // The words say the same in full, "9 of 18 pressed".
    void set(int done, int total, const QString& words);

    QSize sizeHint() const override;
    // The words alone: the beads are left out where they have no room.
    QSize minimumSizeHint() const override { return {wordsWidth(), sizeHint().height()}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    int wordsWidth() const;

    int m_done = 0;
    int m_total = 0;
    QString m_words;
};

} // namespace holdfast::app
