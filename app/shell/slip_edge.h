// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The right edge of the window, where a slip lies over the place: one at a time, a thread border, Escape
// leaves. Tab goes round within it; when it closes, the keyboard goes back to where it was, or, where that is
// gone, to where work goes on in the place. What was typed in a slip that was left is kept, as long as the
// shop is open, until that slip is done or cleared; left() and setLeft() carry it over to a window that goes
// on.

#include "app/slips/slip.h"

#include <QMap>
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

    // Takes the slip and deletes it when it is closed. A slip that was open before is closed. `key` is the
    // same for the same slip about the same thing (see slipKey); its title where none is given.
    void open(Slip* slip, const QString& key = {});
    void close();
    bool isOpen() const { return !m_slip.isNull(); }
    Slip* slip() const { return m_slip; }
    // Puts the keyboard where the slip begins.
    void takeKeyboard();
    // Whether the keyboard is in the slip.
    bool hasKeyboard() const;

    // What was typed in slips that were left, by slip.
    using Left = QMap<QString, QVariantMap>;
    const Left& left() const { return m_left; }
    void setLeft(const Left& left) { m_left = left; }

signals:
    void closed();
    void freshAsked(); // the slip again, with nothing typed

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool focusNextPrevChild(bool next) override;

private:
    void finish();
    void clear();
    void keepTyped();
    void drop();

    QVBoxLayout* m_column = nullptr;
    Button* m_leave = nullptr;
    QPointer<Slip> m_slip;
    QPointer<QWidget> m_before; // had the keyboard
    QString m_key;
    Left m_left;
};

} // namespace holdfast::app
