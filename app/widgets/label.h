// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Words in one type and one ink, which follow a change of light. Label never elides; ElidingLabel may, and
// only where the words are no reason, time or amount.

#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QLabel>

namespace holdfast::app {

class Label : public QLabel {
    Q_OBJECT

public:
    explicit Label(const QString& text = {}, Type type = Type::Body, Role ink = &Tokens::ink,
                   QWidget* parent = nullptr);

    void setText(const QString& text);
    void setType(Type type);
    void setInk(Role ink);
    // Breaks lines at the label's width.
    Label* wrapped();

protected:
    void changeEvent(QEvent* event) override;

private:
    void applyType();

    Type m_type;
    Role m_ink;
    bool m_isApplying = false;
};

class ElidingLabel : public QWidget {
    Q_OBJECT

public:
    explicit ElidingLabel(const QString& text = {}, Type type = Type::Body, Role ink = &Tokens::ink,
                          QWidget* parent = nullptr);

    QString text() const { return m_text; }
    void setText(const QString& text); // the whole text is the tool tip when it does not fit

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void explain();

    QString m_text;
    Type m_type;
    Role m_ink;
};

// A hairline of thread across the layout, between rows that belong together.
class ThreadLine : public QWidget {
    Q_OBJECT

public:
    explicit ThreadLine(QWidget* parent = nullptr, Qt::Orientation orientation = Qt::Horizontal);

protected:
    void paintEvent(QPaintEvent* event) override;
};

} // namespace holdfast::app
