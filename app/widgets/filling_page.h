// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A page that takes the room there is, however its words break into lines, and is no lower than what is in it
// needs at its width. For what lies in a VerticalScroll and would otherwise ask for its favourite height.

#include <QWidget>

namespace holdfast::app {

class FillingPage : public QWidget {
    Q_OBJECT

public:
    using QWidget::QWidget;

    bool hasHeightForWidth() const override { return false; }
    QSize minimumSizeHint() const override;

protected:
    void resizeEvent(QResizeEvent* event) override;
};

} // namespace holdfast::app
