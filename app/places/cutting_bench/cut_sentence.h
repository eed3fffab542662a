// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How it is cut, in one sentence: "Cut mirrored, a frame round each decal, parted at 188 mm." The words that
// can be had another way are turned by a click, by Space or by their key, which is on a cap after them. Left
// and Right go from one to the other.

#include "core/cutting/cut_file.h"

#include <QRectF>
#include <QString>
#include <QWidget>

#include <optional>
#include <vector>

namespace holdfast::app {

class CutSentence : public QWidget {
    Q_OBJECT

public:
    explicit CutSentence(QWidget* parent = nullptr);

    // `partedAt` is the length in words; empty where nothing lies there.
    void set(const CutFileWish& wish, const QString& partedAt);
    QString words() const;

    QSize sizeHint() const override { return {300, heightForWidth(300)}; }
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

    // Where the words are that can be turned: the frames, and the parting cut.
    enum class Choice { Frames, Parting };
    QRectF boxOf(Choice choice) const;

signals:
    void turned(holdfast::app::CutSentence::Choice choice);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    struct Run { // words on one line, or a key cap
        QString text;
        std::optional<Choice> choice;
        bool isCap = false;
        QRectF box;
    };
    std::vector<Run> runsIn(double width) const;
    QString wordsOf(Choice choice) const;
    std::optional<Choice> choiceAt(QPointF at) const;
    void say();

    CutFileWish m_wish;
    QString m_partedAt;
    Choice m_at = Choice::Frames; // where the keyboard is
    std::optional<Choice> m_hovered;
};

} // namespace holdfast::app
