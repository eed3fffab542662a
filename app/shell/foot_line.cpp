// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/foot_line.h"

#include "app/desk/formats.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/text_runs.h"
#include "app/theme/type.h"
#include "app/widgets/button.h"
#include "db/journal/shop.h"
#include "db/journal/undo_words.h"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <cmath>
#include <tuple>

namespace holdfast::app {

namespace {

constexpr int kLine = 32;
constexpr int kButtonHigh = 32;
constexpr int kSign = 16;
constexpr int kBar = 120;
constexpr int kGap = 8;
constexpr qreal kTitleRoom = 150;
constexpr int kTallest = 1000;
constexpr int kLeastWords = 280; // wide, where they need several lines

// In a button; its tip says the whole.
QString brief(const QString& title) {
    return fitted(title, Type::Small, kTitleRoom);
}

bool hasKeysButton(FootLine::Manner manner) {
    return manner < FootLine::Manner::NoKeysButton;
}

} // namespace

FootLine::FootLine(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("footLine"));
    m_redo = makeButton(tr("Redo"), "redo", "footRedo");
    m_redo->showKey(QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z));
    connect(m_redo, &QAbstractButton::clicked, this, &FootLine::redoAsked);
    m_undo = makeButton(tr("Undo"), "undo", "footUndo");
    m_undo->showKey(QKeySequence(QKeySequence::Undo));
    connect(m_undo, &QAbstractButton::clicked, this, &FootLine::undoAsked);
    m_stop = makeButton(tr("Stop"), "close", "footStop");
    connect(m_stop, &QAbstractButton::clicked, this, &FootLine::stopAsked);
    m_find = alwaysThere(tr("Find"), "search", "footFind", QKeySequence(Qt::CTRL | Qt::Key_K));
    connect(m_find, &QAbstractButton::clicked, this, &FootLine::findAsked);
    m_keys = alwaysThere(tr("Keys"), "", "footKeys", QKeySequence(Qt::Key_F1));
    connect(m_keys, &QAbstractButton::clicked, this, &FootLine::keysAsked);
    fit();
}

// The key is the window's; its cap is shown here.
Button* FootLine::alwaysThere(const QString& words, const char* icon, const char* name,
                              const QKeySequence& keys) {
    Button* button = makeButton(words, icon, name);
    button->showKey(keys);
    button->show();
    return button;
}

Button* FootLine::makeButton(const QString& text, const char* icon, const char* name) {
    auto* button = new Button(text, QString::fromLatin1(icon), Button::Kind::Quiet, this);
    button->setObjectName(QString::fromLatin1(name));
    button->setTargetHeight(kButtonHigh);
    button->hide();
    return button;
}

void FootLine::showLast(db::Shop& file) {
    m_failure.clear();
    m_said.clear();
    m_last.clear();
    const auto found = file.read([&](db::Connection&) {
        return std::tuple{file.recent(1), file.lastUndoable(), file.lastRedoable()};
    });
    if (!found.ok()) {
        showFailure(app::words(found.error().message));
        return;
    }
    const auto& [last, undoable, redoable] = *found;
    if (!last.empty())
        m_last = app::words(last.front().title);
    m_undoTitle = undoable ? app::words(undoable->title) : QString();
    m_redoTitle = redoable ? app::words(db::withoutUndo(redoable->title)) : QString();
    // After an undo, Undo is about an older action than the one shown here.
    m_undoesLast = undoable && undoable->id == last.front().id;
    m_redoesLast = redoable && redoable->id == last.front().id;
    nameUndo();
    nameRedo();
    fit();
}

void FootLine::setOwnSteps(const QString& undo, const QString& redo) {
    if (m_ownUndo == undo && m_ownRedo == redo)
        return;
    m_ownUndo = undo;
    m_ownRedo = redo;
    nameUndo();
    nameRedo();
    fit();
}

// The button and Ctrl+Z do the same, so the button names it.
void FootLine::nameUndo() {
    const QString title = m_ownUndo.isEmpty() ? m_undoTitle : m_ownUndo;
    m_undo->setVisible(!title.isEmpty() && m_work.isEmpty());
    if (!m_ownUndo.isEmpty() || !m_said.isEmpty())
        m_undoWords = tr("Undo: %1").arg(brief(title));
    else
        m_undoWords = m_undoesLast ? tr("Undo") : tr("Undo also: %1").arg(brief(title));
    m_undo->setAccessibleDescription(tr("Undoes: %1").arg(title));
    m_undo->setToolTip(tr("Undoes: %1").arg(title));
}

void FootLine::nameRedo() {
    const QString title = m_ownRedo.isEmpty() ? m_redoTitle : m_ownRedo;
    m_redo->setVisible(!title.isEmpty() && m_work.isEmpty());
    m_redoWords = m_ownRedo.isEmpty() && m_redoesLast ? tr("Redo") : tr("Redo: %1").arg(brief(title));
    m_redo->setAccessibleDescription(tr("Does again: %1").arg(title));
    m_redo->setToolTip(tr("Does again: %1").arg(title));
}

void FootLine::showFailure(const QString& reason) {
    m_failure = reason;
    fit();
}

void FootLine::showWords(const QString& words) {
    m_failure.clear();
    m_said = words;
    nameUndo(); // it is not about what is said here
    fit();
}

void FootLine::showWork(const QString& words, double share) {
    const bool isNew = m_work != words;
    m_work = words;
    m_share = share;
    if (isNew) {
        m_stop->show();
        m_undo->hide();
        m_redo->hide();
        fit();
    } else {
        update();
    }
}

void FootLine::finishWork() {
    m_work.clear();
    m_stop->hide();
    nameUndo();
    nameRedo();
    fit();
}

QString FootLine::words() const {
    if (!m_work.isEmpty())
        return m_work;
    if (!m_failure.isEmpty())
        return m_failure;
    return m_said.isEmpty() ? m_last : m_said;
}

// ── what there is room for ────────────────────────────────────────────────────────────────────────────

void FootLine::dressButtons(Manner manner) {
    const bool isTitled = manner == Manner::Whole;
    m_undo->setText(isTitled ? m_undoWords : tr("Undo"));
    m_redo->setText(isTitled ? m_redoWords : tr("Redo"));
    const bool isCapped = manner < Manner::UncappedUndo;
    m_undo->showKey(isCapped ? QKeySequence(QKeySequence::Undo) : QKeySequence());
    m_redo->showKey(isCapped ? QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z) : QKeySequence());
    m_find->showKey(manner < Manner::UncappedFind ? QKeySequence(Qt::CTRL | Qt::Key_K) : QKeySequence());
}

int FootLine::widthOfButtons(Manner manner) const {
    const auto wide = [](const Button* button) { return button->sizeHint().width() + kGap; };
    int all = wide(m_find) + (hasKeysButton(manner) ? wide(m_keys) : 0);
    for (const Button* button : behindWords())
        all += button->isHidden() ? 0 : wide(button);
    return all;
}

// Its buttons or their words are others than before.
void FootLine::fit() {
    for (int at = 0; at < kManners; ++at) {
        dressButtons(static_cast<Manner>(at));
        m_buttonsWide[static_cast<std::size_t>(at)] = widthOfButtons(static_cast<Manner>(at));
    }
    arrange();
}

// All of it where the words then fit into one line; else so little that they have room for several.
FootLine::Manner FootLine::mannerFor(int width) const {
    for (int at = 0; at < kManners - 1; ++at) {
        const auto manner = static_cast<Manner>(at);
        const int room = wordsWidth(width, manner);
        const bool isRoomy = manner != Manner::Whole && room >= kLeastWords;
        if (isRoomy || room >= std::ceil(widthOf(words(), wordsType())))
            return manner;
    }
    return Manner::TwoRows;
}

Type FootLine::wordsType() const {
    return m_failure.isEmpty() || !m_work.isEmpty() ? Type::Small : Type::SmallStrong;
}

int FootLine::wordsWidth(int width, Manner manner) const {
    int room = width - 2 * kGutter - kSpace4 - kSign - kGap;
    if (!m_work.isEmpty())
        room -= kBar + kGap;
    if (manner != Manner::TwoRows)
        room -= m_buttonsWide[static_cast<std::size_t>(manner)];
    return room;
}

QRect FootLine::wordsRect() const {
    const int left = kGutter + kSpace4 + kSign + kGap;
    const int top = (kLine - lineHeight(Type::Small)) / 2;
    return wordsBox(width(), m_manner).translated(left, top).toAlignedRect();
}

QRectF FootLine::wordsBox(int width, Manner manner) const {
    const QRectF room(0, 0, std::max(1, wordsWidth(width, manner)), kTallest);
    return QFontMetricsF(fontOf(wordsType())).boundingRect(room, Qt::TextWordWrap, words());
}

int FootLine::heightForWidth(int width) const {
    const Manner manner = mannerFor(width);
    const qreal spacing = QFontMetricsF(fontOf(wordsType())).lineSpacing();
    const int lines = std::max(1, static_cast<int>(std::lround(wordsBox(width, manner).height() / spacing)));
    return kLine + (lines - 1) * lineHeight(Type::Small) + (manner == Manner::TwoRows ? kLine : 0);
}

QSize FootLine::sizeHint() const {
    return {600, heightForWidth(width())};
}

void FootLine::arrange() {
    setAccessibleName(words());
    m_manner = mannerFor(width());
    dressButtons(m_manner);
    m_keys->setVisible(hasKeysButton(m_manner));
    if (heightForWidth(width()) != height()) {
        updateGeometry();
        emit heightChanged();
    }
    const bool isTwoRows = m_manner == Manner::TwoRows;
    const int top = isTwoRows ? height() - kLine + (kLine - kButtonHigh) / 2 : (kLine - kButtonHigh) / 2;
    int left = kGutter + kSpace4;
    if (!isTwoRows) {
        left += kSign + kGap + static_cast<int>(std::ceil(wordsBox(width(), m_manner).width())) + kGap;
        left += m_work.isEmpty() ? 0 : kBar + kGap;
    }
    for (Button* button : behindWords()) {
        if (button->isHidden())
            continue;
        button->setGeometry(left, top, button->sizeHint().width(), kButtonHigh);
        left += button->width() + kGap;
    }
    int right = width() - kGutter;
    for (Button* button : atTheEnd()) {
        if (button->isHidden())
            continue;
        const QSize size(button->sizeHint().width(), kButtonHigh);
        button->setGeometry(QRect(QPoint(right - size.width(), top), size));
        right -= size.width() + kGap;
    }
    update();
}

void FootLine::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

void FootLine::paintEvent(QPaintEvent*) {
    const QString text = words();
    if (text.isEmpty())
        return;
    QPainter painter(this);
    const Tokens& dyes = tokens();
    const bool isWorking = !m_work.isEmpty();
    const bool isRefused = !m_failure.isEmpty() && !isWorking;
    const QRectF sign(kGutter + kSpace4, (kLine - kSign) / 2.0, kSign, kSign);
    const QString icon = isWorking   ? QStringLiteral("stopwatch")
                         : isRefused ? QStringLiteral("hold")
                                     : QStringLiteral("needle");
    paintIcon(painter, sign, icon, isRefused ? dyes.madder : dyes.ink3);
    const qreal left = sign.right() + kGap;
    painter.setFont(fontOf(wordsType()));
    painter.setPen(isRefused ? dyes.madder : dyes.ink2);
    const QRectF room(left, (kLine - lineHeight(Type::Small)) / 2.0, wordsWidth(width(), m_manner), height());
    QRectF laid;
    painter.drawText(room, Qt::TextWordWrap, withRunsApart(text), &laid);
    if (isWorking) {
        const QRectF bar(std::ceil(laid.right()) + kGap, kLine / 2.0 - 4, kBar, 8);
        paintBox(painter, bar, 4, dyes.sunk, {});
        const qreal done = bar.width() * std::clamp(m_share, 0.0, 1.0);
        if (done >= 1)
            paintBox(painter, QRectF(bar.topLeft(), QSizeF(done, bar.height())), std::min(4.0, done / 2),
                     dyes.indigo, {});
    }
}

} // namespace holdfast::app
