#pragma once
// The right edge of the window, where a slip stands over the place: one at a time, a thread border, Escape
// leaves. Tab goes round within it; when it closes, the keyboard goes back to where it was,
// or, where that is gone, to where work goes on in the place.

#include "app/slips/slip.h"

#include <QPointer>
#include <QWidget>

class QVBoxLayout;

namespace holdfast::app {

class Button;

inline constexpr int kSlipWidth = 390; // covers the right card of a place whole

class SlipEdge : public QWidget {
    Q_OBJECT

public:
    explicit SlipEdge(QWidget* parent = nullptr);

    // Takes the slip and deletes it when it is closed. A slip that stood here before is closed.
    void open(Slip* slip);
    void close();
    bool isOpen() const { return !m_slip.isNull(); }
    Slip* slip() const { return m_slip; }
    // Puts the keyboard where the slip begins.
    void takeKeyboard();
    // Whether the keyboard is in the slip.
    bool hasKeyboard() const;

signals:
    void closed();

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool focusNextPrevChild(bool next) override;

private:
    void drop();

    QVBoxLayout* m_column = nullptr;
    Button* m_leave = nullptr;
    QPointer<Slip> m_slip;
    QPointer<QWidget> m_before; // had the keyboard
};

} // namespace holdfast::app
