// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The line at the foot of the window: what was done last and its Undo, after an undo also its Redo. A refusal
// or a failure is shown here in madder with its reason until the next act; long work shows its progress here
// with a way to stop. At its right end are the finder and the list of keys. Where the room is short, what
// matters least is left out first; the words are never cut, and nothing lies over anything else.

#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QKeySequence>
#include <QWidget>

#include <array>

namespace holdfast::db {
class Shop;
}

namespace holdfast::app {

class Button;

class FootLine : public QWidget {
    Q_OBJECT

public:
    explicit FootLine(QWidget* parent = nullptr);

    // The last action of the journal, and what Undo would undo and Redo do again.
    void showLast(db::Shop& file);
    void showFailure(const QString& reason);
    void showWords(const QString& words);
    // What of something half done in the place Undo and Redo are about first; empty: the journal's.
    void setOwnSteps(const QString& undo, const QString& redo);

    // share 0 to 1. finishWork() takes it away.
    void showWork(const QString& words, double share);
    void finishWork();

    QString words() const;   // what is in it now
    QRect wordsRect() const; // where they are painted
    bool isFailure() const { return !m_failure.isEmpty(); }

    QSize sizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

    // How much of it is shown, from all to what is needed.
    enum class Manner {
        Whole,
        UntitledUndo, // Undo and Redo without what they are about
        UncappedUndo, // and without their keys
        NoKeysButton, // F1 is in the finder too
        UncappedFind,
        TwoRows, // the words above the buttons
    };
    static constexpr int kManners = 6;
    Manner manner() const { return m_manner; }

signals:
    void undoAsked();
    void redoAsked();
    void findAsked();
    void keysAsked();
    void stopAsked();
    void heightChanged();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    Button* makeButton(const QString& text, const char* icon, const char* name);
    std::array<Button*, 3> behindWords() const { return {m_redo, m_undo, m_stop}; }
    std::array<Button*, 2> atTheEnd() const { return {m_keys, m_find}; }
    Button* alwaysThere(const QString& words, const char* icon, const char* name, const QKeySequence& keys);
    void nameUndo();
    void nameRedo();
    void arrange();
    void dressButtons(Manner manner);
    int widthOfButtons(Manner manner) const;
    void fit();
    Manner mannerFor(int width) const;
    Type wordsType() const;
    int wordsWidth(int width, Manner manner) const;
    QRectF wordsBox(int width, Manner manner) const; // as they are laid, from 0, 0

    QString m_last;
    QString m_failure;
    QString m_said;
    QString m_work;
    double m_share = 0;
    QString m_undoWords; // with what it is about, where there is room
    QString m_redoWords;
    QString m_undoTitle; // of what of the journal Undo would undo; empty: nothing
    QString m_redoTitle;
    bool m_undoesLast = false; // what is said last
    bool m_redoesLast = false;
    QString m_ownUndo;
    QString m_ownRedo;
    Manner m_manner = Manner::Whole;
    std::array<int, kManners> m_buttonsWide{}; // of all that are shown, by manner
    Button* m_redo = nullptr;
    Button* m_undo = nullptr;
    Button* m_stop = nullptr;
    Button* m_find = nullptr;
    Button* m_keys = nullptr;
};

} // namespace holdfast::app
