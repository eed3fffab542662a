#pragma once
// The row above the mat: nest again, turn, pin, the gap, and whether it is mirrored. A line along its foot
// says how far a search is.

#include <QWidget>

namespace holdfast::app {

class Button;
class MirroredSign;
class Stepper;

class MatTools : public QWidget {
    Q_OBJECT

public:
    explicit MatTools(QWidget* parent = nullptr);

    void setGap(int millimetres);
    void setMirrored(bool isMirrored);
    // Why the chosen decal cannot be turned or pinned; empty: it can.
    void setTurn(const QString& cannot);
    void setPin(const QString& cannot, bool isPinned);
    void setNest(const QString& cannot);
    // Share of its time; none under way: -1.
    void setSearch(double share);
    bool showsSearch() const { return m_share >= 0; }

signals:
    void nestAsked();
    void keepAsked(); // the best so far
    void turnAsked();
    void pinAsked();
    void gapAsked(int millimetres);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Button* m_nest = nullptr;
    Button* m_keep = nullptr;
    Button* m_turn = nullptr;
    Button* m_pin = nullptr;
    Stepper* m_gap = nullptr;
    MirroredSign* m_sign = nullptr;
    double m_share = -1;
};

} // namespace holdfast::app
