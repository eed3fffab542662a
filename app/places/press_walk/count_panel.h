// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The panel that is read from two metres: what is to be done now, and the seconds. Woad while heat counts,
// weld when it is time to act, paper for work by hand. One stitch a second to twelve, then 24 equal stitches.

#include "app/desk/step_counts.h"
#include "app/places/press_walk/count_layout.h"

#include <QWidget>

namespace holdfast::app {

class Button;

struct PanelWords {
    enum class Mood { ByHand, Counting, Now, Quiet };

    Mood mood = Mood::Quiet;
    QString step;         // "Step 6 of 11"
    QString word;         // "Press"
    QString detail;       // "150 °C · medium"
    QString note;         // said once, as why Next did nothing
    bool isAlert = false; // the note asks for hands now
    std::optional<StepCount> count;
    bool offersRestart = false; // the count cannot be known
    bool asksOutcome = false;   // too long under heat: the words need the room that the count has else
};

class CountPanel : public QWidget {
    Q_OBJECT

public:
    explicit CountPanel(QWidget* parent = nullptr);

    void show(const PanelWords& words);
    const PanelWords& shown() const { return m_shown; }
    // The digits as painted: "7", "1:18", "+3".
    QString digits() const;
    Button* restart() const { return m_restart; }
    // Everything in it by this much: larger in a large window, so that it reads from farther off.
    void setScale(qreal scale);
    qreal scale() const { return m_scale; }
    // Where the words are, and where the stitches begin below them; before scaling.
    std::vector<PanelLine> lines() const;
    qreal stitchesTop() const;

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    QSizeF whole() const { return QSizeF(size()) / m_scale; }
    bool hasStitches() const { return m_shown.count && !m_shown.count->isAskew && !m_shown.asksOutcome; }
    QFont countFace() const;
    QString unit() const;
    Type unitType() const;
    qreal unitWidth() const;
    qreal wordsRight() const;
    QRectF wordsRoom() const;
    void placeRestart();
    void paintCount(QPainter& painter) const;
    void paintWords(QPainter& painter) const;
    void paintStitches(QPainter& painter) const;
    void say();

    PanelWords m_shown;
    qreal m_scale = 1;
    Button* m_restart = nullptr;
    QString m_said;
};

} // namespace holdfast::app
