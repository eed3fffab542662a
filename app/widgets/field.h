// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A line to type in, with its label inside at the left ("For  Bronagh T."), an optional unit after, its key
// on a cap, and the words that say what is wrong below it.

#include <QKeySequence>
#include <QWidget>

class QLineEdit;
class QShortcut;

namespace holdfast::app {

class Field : public QWidget {
    Q_OBJECT

public:
    explicit Field(const QString& label = {}, QWidget* parent = nullptr);
    ~Field() override;

    QString text() const;
    void setText(const QString& text); // emits nothing
    void setLabel(const QString& label);
    void setPlaceholder(const QString& placeholder);
    void setSuffix(const QString& suffix);
    void setIconName(const QString& iconName);
    void setRightAligned(bool isRightAligned);
    void setReadOnly(bool isReadOnly);

    // Words below the field and a madder edge; empty takes both away.
    void setError(const QString& words);
    QString error() const { return m_error; }

    // The cap, and the key that puts the cursor here from anywhere in the window.
    void setKey(const QKeySequence& keys);
    QString keyText() const { return m_keyText; }
    QString label() const { return m_label; }
    void showKey(const QKeySequence& keys);

    void selectAll();
    QLineEdit* editor() const { return m_editor; } // for completers, validators and tests

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    void edited(const QString& text); // at each change the person makes
    void finished();                  // Enter, or the cursor left
    void accepted();                  // Enter

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;

private:
    QRect frame() const;
    QRect errorBox(int width) const;
    void arrange();
    void updateFontWeight();
    void applyPalette();

    QString m_label;
    QString m_suffix;
    QString m_iconName;
    QString m_keyText;
    QString m_error;
    QLineEdit* m_editor = nullptr;
    QWidget* m_frame = nullptr;
    QShortcut* m_shortcut = nullptr;
};

} // namespace holdfast::app
