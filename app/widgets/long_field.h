// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A field for text longer than a line, such as an address or the path of a file: it wraps, and shows two
// lines or as many as there are, so that its beginning and its end are seen. Enter and Tab go on as in a
// Field; there are no line breaks in it.

#include <QWidget>

class QPlainTextEdit;

namespace holdfast::app {

class LongField : public QWidget {
    Q_OBJECT

public:
    explicit LongField(const QString& accessibleName, QWidget* parent = nullptr);
    ~LongField() override;

    QString text() const;
    void setText(const QString& text); // emits nothing
    void setPlaceholder(const QString& placeholder);
    void selectAll();
    QPlainTextEdit* editor() const { return m_editor; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

signals:
    void edited(const QString& text); // at each change the person makes

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void arrange();
    void applyPalette();

    QPlainTextEdit* m_editor = nullptr;
    QWidget* m_frame = nullptr;
    int m_lines = 2;
    bool m_isQuiet = false;
};

} // namespace holdfast::app
