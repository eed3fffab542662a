// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// While one long action writes to the shop in the background: the window is painted and clocks go on, but it
// hears nothing but Stop. Keys and clicks elsewhere are dropped, because what they would do could not be
// written.

#include <QObject>
#include <QWidget>

namespace holdfast::app {

class QuietWait : public QObject {
    Q_OBJECT

public:
    // `stop` is the one widget that can be pressed; Escape counts as well.
    explicit QuietWait(QWidget* stop);
    ~QuietWait() override;

    bool eventFilter(QObject* watched, QEvent* event) override;

signals:
    void stopAsked(); // by Escape

private:
    QWidget* m_stop;
};

} // namespace holdfast::app
