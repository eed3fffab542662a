// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A button: words, with or without an icon, a shade, a second text at the right, and its key on a cap.
// Space or Enter presses it. A button that cannot be pressed yet is dashed and says why.

#include "app/theme/measures.h"
#include "app/theme/type.h"

#include <QKeySequence>
#include <QPushButton>

class QShortcut;

namespace holdfast::app {

class Button : public QPushButton {
    Q_OBJECT

public:
    enum class Kind {
        Primary, // the one thing to do here: indigo
        Plain,   // outlined
        Quiet,   // words in indigo, no outline
        Next,    // the great key: 80 high, words at the left; smaller words when they do not fit
    };

    explicit Button(const QString& text, Kind kind = Kind::Plain, QWidget* parent = nullptr);
    Button(const QString& text, const QString& iconName, Kind kind = Kind::Plain, QWidget* parent = nullptr);

    void setKind(Kind kind);
    Kind kind() const { return m_kind; }
    void setIconName(const QString& iconName);
    void setSwatch(const QColor& shade);           // a shade before the words
    void setSecondText(const QString& secondText); // at the right, as "£10.00 now"
    void setOpensList(bool opensList);             // a chevron after the words
    void setTargetHeight(int height);              // kTarget, kPressTarget or kNextTarget
    void setLeftAligned(bool isLeftAligned);
    // Of Next alone: height, words and key by this factor, so that it reads from farther off.
    void setScale(qreal scale);

    // In a row that has little room: smaller words, and no cap before any word is cut.
    void mayShrink();

    // The cap, and the key that works wherever the window has focus (typing in a field keeps plain letters).
    void setKey(const QKeySequence& keys);
    // The cap alone, where the place handles the key itself.
    void showKey(const QKeySequence& keys);
    void showKeyText(const QString& text);

    // Says why it cannot be pressed and disables it; an empty reason enables it again. The reason is the tool
    // tip and the accessible description.
    QString keyText() const { return m_keyText; }
    void setCannot(const QString& reason);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;

private:
    struct Colours;
    Colours colours() const;
    int padding() const;
    // Of the words when there is room, or the largest that fit a button that was given less.
    Type typeOfWords(bool isLarge) const;
    bool showsKey(Type words) const;
    qreal contentWidth(Type words, bool isLarge, bool hasKey) const;
    qreal contentWidth(bool isLarge) const;
    bool showsLarge() const;
    qreal leastWidth() const;
    void paintWords(QPainter& painter, const QRectF& box, Type type, const QColor& ink) const;

    Kind m_kind;
    QString m_iconName;
    QColor m_swatch;
    QString m_secondText;
    QString m_keyText;
    bool m_opensList = false;
    bool m_mayShrink = false;
    bool m_isLeftAligned = false;
    qreal m_scale = 1;
    QShortcut* m_shortcut = nullptr;
};

} // namespace holdfast::app
