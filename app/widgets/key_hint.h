#pragma once
// Words and a key cap: a section's name with the letter that jumps to it ("Style G"), or a line of help ("W
// adds to the wash").

#include <QKeySequence>
#include <QWidget>

class QShortcut;

namespace holdfast::app {

class KeyHint : public QWidget {
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

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

signals:
    void jumped();

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString m_words;
    QKeySequence m_keys;
    Order m_order;
    QShortcut* m_shortcut = nullptr;
};

} // namespace holdfast::app
