// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A whole number between − and +. One stop for Tab: arrows, + and − step, Page keys step by ten, Home and End
// go to the ends, digits type a number. It is a spin box whose number is painted instead of edited, so that
// letters stay the place's shortcuts.

#include "app/theme/measures.h"

#include <QSpinBox>

namespace holdfast::app {

class Stepper : public QSpinBox {
    Q_OBJECT

public:
    explicit Stepper(const QString& accessibleName, QWidget* parent = nullptr);

    void setValue(int value); // kept within the range; emits nothing
    void setRange(int lowest, int highest);
    void setSuffix(const QString& suffix); // " mm"
    void setValueWidth(int width);         // room between the two keys
    void setTargetHeight(int height);      // of the keys; kTarget unless set

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }
    void stepBy(int steps) override;

signals:
    void stepped(int value); // by the person

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    bool stepOrGo(int key);
    void type(int digit);
    void say();

    QString m_name;
    int m_valueWidth = 38;
    int m_target = kTarget;
    bool m_isTyping = false;
};

} // namespace holdfast::app
