// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One tile of a Choice. Its own business only: places use Choice.

#include "app/widgets/choice.h"

#include <QRadioButton>

namespace holdfast::app {

class ChoiceTile : public QRadioButton {
    Q_OBJECT

public:
    ChoiceTile(Choice* choice, Choice::Shape shape, int at);

    void setItem(const ChoiceItem& item);
    void mark(bool isChosen);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void nextCheckState() override;
    bool hitButton(const QPoint& at) const override { return rect().contains(at); }

private:
    qreal secondWidth() const;
    void paintPicture(QPainter& painter, const QRectF& box) const;
    void paintStacked(QPainter& painter, const QRectF& box) const;
    void paintListed(QPainter& painter, const QRectF& box) const;
    void paintFrame(QPainter& painter, const QRectF& box) const;
    void paintShade(QPainter& painter, const QRectF& box) const;
    void paintSecond(QPainter& painter, const QRectF& line) const;
    void paintTick(QPainter& painter, const QRectF& box) const;
    QColor wordsInk() const;
    QColor secondInk() const;

    Choice* m_choice;
    Choice::Shape m_shape;
    int m_at;
    ChoiceItem m_item;
};

} // namespace holdfast::app
