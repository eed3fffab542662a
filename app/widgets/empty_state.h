// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What stands in a place before anything does: one sentence on what will stand here, and the one action that
// starts it, with its key. It stands on a card in the room of what it waits for, and has the keyboard when
// the place opens.

#include <QKeySequence>
#include <QWidget>

namespace holdfast::app {

class Button;

class EmptyState : public QWidget {
    Q_OBJECT

public:
    EmptyState(const QString& iconName, const QString& sentence, const QString& action,
               QWidget* parent = nullptr);

    void setSentence(const QString& sentence);
    void setAction(const QString& words);   // empty words take the button away
    void setKey(const QKeySequence& keys);  // its cap, and the key that acts while this is seen
    void showKey(const QKeySequence& keys); // the cap alone, where the place or the window has the key
    Button* button() const { return m_button; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    void acted();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    // Where the sentence stands: lines of about the same length, so that no word stands alone below.
    QRect sentenceBox() const;
    void arrange();

    QString m_iconName;
    QString m_sentence;
    Button* m_button = nullptr;
};

} // namespace holdfast::app
