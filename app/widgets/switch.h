// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// On or off, at once. Words, if any, are before it; a long name is cut at its end. Space or Enter turns it.

#include <QCheckBox>

namespace holdfast::app {

class Switch : public QCheckBox {
    Q_OBJECT

public:
    // The name is read aloud; pass words to show them too.
    explicit Switch(const QString& accessibleName, QWidget* parent = nullptr);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool hitButton(const QPoint& at) const override;
};

} // namespace holdfast::app
