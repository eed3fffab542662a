// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What Press walk shows at the right of the header: how far the day is, when it ends, and the clock; in a
// narrow window in as many lines as they need.

#include "core/shop/walk.h"

#include <QString>
#include <QWidget>

namespace holdfast::app {

class Label;
class ProgressBeads;

class WalkTools : public QWidget {
    Q_OBJECT

public:
    explicit WalkTools(QWidget* parent = nullptr);

    void show(const Walk& walk, const Now& now);
    void setClock(const QString& time);

signals:
    void daySheetAsked();

private:
    ProgressBeads* m_beads = nullptr;
    Label* m_ends = nullptr; // "ends about 11:28"; hidden when all is pressed
    Label* m_clock = nullptr;
};

} // namespace holdfast::app
