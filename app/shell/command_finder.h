// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Ctrl+K: type a few letters and get to any order, roll, lot, place or action. The keyboard stays in the
// line; arrows choose, Enter goes there, Escape leaves.

#include "app/shell/finder_entries.h"

#include <QPointer>
#include <QWidget>

class QListView;

namespace holdfast::app {

class Field;
class FinderModel;
class Label;

class CommandFinder : public QWidget {
    Q_OBJECT

public:
    CommandFinder(ShopDesk& desk, QWidget* parent);

    void open(const QString& typed = {});
    void close(); // the keyboard goes back to where it was
    bool isOpen() const { return !isHidden(); }

    // Under the header, centred right of the rail; called when the window changes its size.
    void place(const QRect& room);

signals:
    void chosen(const holdfast::app::FinderTarget& target);

protected:
    void paintEvent(QPaintEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    bool focusNextPrevChild(bool next) override;

private:
    void search(const QString& typed);
    void move(int by);
    void choose();

    ShopDesk& m_desk;
    Field* m_line = nullptr;
    QListView* m_list = nullptr;
    FinderModel* m_model = nullptr;
    Label* m_nothing = nullptr;
    QPointer<QWidget> m_before; // had the keyboard
};

} // namespace holdfast::app
