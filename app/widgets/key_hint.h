// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Words and a key cap: a section's name with the letter that jumps to it ("Style G"), or a line of help ("W
// adds to the wash"). What its key does, a click does too; the keyboard stays where it was unless the hint
// jumps. A hint that is given nothing to do is words only, and lets clicks through.

#include <QAbstractButton>
#include <QKeySequence>

#include <functional>

class QShortcut;

namespace holdfast::app {

class KeyHint : public QAbstractButton {
    Q_OBJECT

public:
    enum class Order { WordsThenKey, KeyThenWords };

    // WordsThenKey is a strong section name, KeyThenWords a line of help.
    KeyHint(const QString& words, const QKeySequence& keys, Order order = Order::WordsThenKey,
            QWidget* parent = nullptr);

    void setWords(const QString& words);
    QString words() const { return m_words; }
    const QKeySequence& keys() const { return m_keys; }
    // The key puts the focus on `section` from anywhere in the window.
    void jumpTo(QWidget* section);
    // The key does the act while the keyboard is within `place`.
    void actWithin(QWidget* place, const std::function<void()>& act);
    // A click does the act; the key is somebody else's to hear.
    void actOnClick(const std::function<void()>& act);
    void setTargetHeight(int height); // 32 where nothing else is said

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

signals:
    void jumped();

protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;

private:
    void listen(QShortcut* shortcut);
    bool isButton() const { return !testAttribute(Qt::WA_TransparentForMouseEvents); }
    int padding() const;

    QString m_words;
    QKeySequence m_keys;
    Order m_order;
    int m_height;
    QShortcut* m_shortcut = nullptr;
};

} // namespace holdfast::app
