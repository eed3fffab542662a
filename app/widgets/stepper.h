// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A whole number between − and +. One stop for Tab: arrows, + and − step, Page keys step by ten, Home and End
// go to the ends, digits type a number.

#include "app/theme/measures.h"

#include <QWidget>

namespace holdfast::app {

class Stepper : public QWidget {
    Q_OBJECT

public:
    explicit Stepper(const QString& accessibleName, QWidget* parent = nullptr);

    int value() const { return m_value; }
    void setValue(int value); // kept within the range; emits nothing
    void setRange(int lowest, int highest);
    void setStep(int step);
    void setSuffix(const QString& suffix); // " mm"
    void setValueWidth(int width);         // room between the two keys
    void setTargetHeight(int height);      // of the keys; kTarget unless set

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

signals:
    void stepped(int value); // by the person

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void timerEvent(QTimerEvent* event) override;

private:
    enum class Part { None, Less, More };
    QRect partRect(Part part) const;
    Part partAt(QPoint at) const;
    void step(int by);
    void tell(int value);
    void say();

    QString m_name;
    QString m_suffix;
    int m_value = 0;
    int m_lowest = 0;
    int m_highest = 99;
    int m_step = 1;
    int m_valueWidth = 38;
    int m_target = kTarget;
    int m_repeatTimer = 0;
    bool m_isTyping = false;
    Part m_hovered = Part::None;
    Part m_pressed = Part::None;
};

} // namespace holdfast::app
