// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A state in an icon and a word, on the tint of its tone.

#include "app/theme/tokens.h"

#include <QWidget>

namespace holdfast::app {

class Chip : public QWidget {
    Q_OBJECT

public:
    Chip(const QString& iconName, const QString& words, Tone tone, QWidget* parent = nullptr);

    void set(const QString& iconName, const QString& words, Tone tone);
    QString words() const { return m_words; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString m_iconName;
    QString m_words;
    Tone m_tone;
};

} // namespace holdfast::app
