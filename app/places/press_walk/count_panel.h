#pragma once
// The panel that is read from two metres: what is to be done now, and the seconds. Woad while heat counts,
// weld when it is time to act, paper for work by hand. One stitch a second to twelve, then 24 equal stitches.

#include "app/places/press_walk/step_counts.h"

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
};

class CountPanel : public QWidget {
    Q_OBJECT

public:
    static constexpr int kHeight = 182;

    explicit CountPanel(QWidget* parent = nullptr);

    void show(const PanelWords& words);
    const PanelWords& shown() const { return m_shown; }
    // The digits as painted: "7", "1:18", "+3".
    QString digits() const;
    Button* restart() const { return m_restart; }

    QSize sizeHint() const override { return {598, kHeight}; }
    QSize minimumSizeHint() const override { return {420, kHeight}; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    qreal paintCount(QPainter& painter) const; // returns its left edge
    void paintWords(QPainter& painter, qreal right) const;
    void paintStitches(QPainter& painter) const;
    void say();

    PanelWords m_shown;
    Button* m_restart = nullptr;
    QString m_said;
};

} // namespace holdfast::app
