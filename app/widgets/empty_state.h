// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a place shows while it is empty: one sentence on what will be here, and the one action that
// starts it, with its key. It is on a card in the room of what it waits for, and has the keyboard when
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
    // Where the sentence is: lines of about the same length, so that no word is alone below.
    QRect sentenceBox() const;
    void arrange();

    QString m_iconName;
    QString m_sentence;
    Button* m_button = nullptr;
};

} // namespace holdfast::app
