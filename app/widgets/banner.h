// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A sentence about a thing, on the tint of its tone: a bold lead, plain words after it, an icon before; and,
// where something can be done, the one action that does.

#include "app/theme/tokens.h"

#include <QKeySequence>
#include <QWidget>

class QTextLayout;

namespace holdfast::app {

class Button;

class Banner : public QWidget {
    Q_OBJECT

public:
    explicit Banner(QWidget* parent = nullptr);
    Banner(Tone tone, const QString& lead, const QString& text, QWidget* parent = nullptr);

    // The icon follows the tone unless named.
    void set(Tone tone, const QString& lead, const QString& text, const QString& iconName = {});
    void setAction(const QString& words, const QString& iconName = {}); // empty words take it away
    void setActionKey(const QKeySequence& key); // of the action there is; an empty one takes it away
    void setTargetHeight(int height);           // of the action; kTarget unless set

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

signals:
    void acted();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    qreal layText(QTextLayout& layout, qreal width) const; // returns its height
    qreal naturalWidth() const;                            // of all words on one line
    qreal wordsHeight(qreal width) const;
    qreal roomBeside(int width) const; // for words, left of the action
    bool hasActionBeside(int width) const;
    void arrange();

    Tone m_tone = Tone::Plain;
    QString m_lead;
    QString m_text;
    QString m_iconName;
    Button* m_action = nullptr;
    QKeySequence m_actionKey;
    int m_target;
};

} // namespace holdfast::app
