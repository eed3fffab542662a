// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The row above the bench: nest again, turn, pin, and the gap. A line along its foot says how far a search
// is, or the writing of a file.

#include <QWidget>

namespace holdfast::app {

class Button;
class Stepper;

class BenchTools : public QWidget {
    Q_OBJECT

public:
    explicit BenchTools(QWidget* parent = nullptr);

    void setGap(int millimetres);
    // Why the chosen decal cannot be turned or pinned; empty: it can.
    void setTurn(const QString& cannot);
    void setPin(const QString& cannot, bool isPinned);
    void setNest(const QString& cannot);
    enum class Work { None, Search, Writing };
    // The share of it that is done, 0 to 1.
    void setWork(Work work, double share = 0);
    bool showsSearch() const { return m_work == Work::Search; }
    bool showsWriting() const { return m_work == Work::Writing; }

signals:
    void nestAsked();
    void endAsked(); // the work under way is to end: a search with the best so far
    void turnAsked();
    void pinAsked();
    void gapAsked(int millimetres);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Button* m_nest = nullptr;
    Button* m_end = nullptr;
    Button* m_turn = nullptr;
    Button* m_pin = nullptr;
    Stepper* m_gap = nullptr;
    Work m_work = Work::None;
    double m_share = 0;
};

} // namespace holdfast::app
