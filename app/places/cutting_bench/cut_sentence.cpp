// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/cut_sentence.h"

#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QShortcut>

#include <algorithm>
#include <array>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr std::array kChoices{CutSentence::Choice::Frames, CutSentence::Choice::Parting};
constexpr int kBetweenLines = 10;
constexpr double kBeforeCap = 5;
constexpr double kReach = 4; // of a word, for the pointer

QKeySequence keyOf(CutSentence::Choice choice) {
    return choice == CutSentence::Choice::Frames ? Qt::Key_W : Qt::Key_E;
}

Type typeOf(bool canBeTurned) {
    return canBeTurned ? Type::BodyStrong : Type::Body;
}

double lineStep() {
    return std::max(lineHeight(Type::Body), kKeyCap) + kBetweenLines;
}

} // namespace

CutSentence::CutSentence(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("cutSentence"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    giveNoFocusRing(this); // it is painted about the words
    for (const Choice choice : kChoices) {
        auto* key = new QShortcut(keyOf(choice), this);
        connect(key, &QShortcut::activated, this, [this, choice] { emit turned(choice); });
    }
    say();
}

void CutSentence::set(const CutFileWish& wish, const QString& partedAt) {
    m_wish = wish;
    m_partedAt = partedAt;
    say();
    setMinimumHeight(heightForWidth(width()));
    updateGeometry();
    update();
}

QString CutSentence::wordsOf(Choice choice) const {
    if (choice == Choice::Frames)
        return m_wish.hasFrames ? tr("a frame round each decal") : tr("no frames");
    if (!m_wish.hasPartingCut)
        return tr("not parted");
    return m_partedAt.isEmpty() ? tr("parted at its end") : tr("parted at %1").arg(m_partedAt);
}

QString CutSentence::words() const {
    return tr("Cut mirrored, %1, %2.").arg(wordsOf(Choice::Frames), wordsOf(Choice::Parting));
}

void CutSentence::say() {
    setAccessibleName(words());
    setAccessibleDescription(tr("Space changes “%1”, key %2. Left and Right go to the other words.")
                                 .arg(wordsOf(m_at), keyCapText(keyOf(m_at))));
}

// ── where the words are ───────────────────────────────────────────────────────────────────────────────

std::vector<CutSentence::Run> CutSentence::runsIn(double width) const {
    std::vector<Run> runs;
    double x = kFocusRoom;
    double y = kFocusRoom;
    const double right = width - kFocusRoom;
    const double high = std::max(lineHeight(Type::Body), kKeyCap);
    const double space = widthOf(QStringLiteral(" "), Type::Body);
    const auto put = [&](const QString& text, std::optional<Choice> choice, bool isCap, double before) {
        const double wide = isCap ? keyCapSize(text).width() : widthOf(text, typeOf(choice.has_value()));
        // Marks and caps stay with the word before them.
        const bool mayBreak = !isCap && before > 0;
        if (mayBreak && x > kFocusRoom && x + before + wide > right) {
            x = kFocusRoom;
            y += lineStep();
        }
        if (x == kFocusRoom)
            before = 0;
        runs.push_back({text, choice, isCap, QRectF(x + before, y, wide, high)});
        x += before + wide;
    };
    const auto putWords = [&](const QString& text, std::optional<Choice> choice) {
        bool isFirst = true;
        for (const QString& word : text.split(u' ', Qt::SkipEmptyParts)) {
            const bool isJoined = isFirst && !word.front().isLetterOrNumber() && !choice;
            put(word, choice, false, isJoined ? 0 : space);
            isFirst = false;
        }
    };
    // The order of the words is the language's.
    QString rest = tr("Cut mirrored, %1, %2.");
    while (!rest.isEmpty()) {
        const qsizetype at = rest.indexOf(u'%');
        putWords(rest.left(at), std::nullopt);
        if (at < 0)
            break;
        const Choice choice = rest.at(at + 1) == u'1' ? Choice::Frames : Choice::Parting;
        putWords(wordsOf(choice), choice);
        put(keyCapText(keyOf(choice)), choice, true, kBeforeCap);
        rest = rest.mid(at + 2);
    }
    return runs;
}

// How many lines it takes is known once it has its width.
void CutSentence::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    setMinimumHeight(heightForWidth(width()));
}

int CutSentence::heightForWidth(int width) const {
    const std::vector<Run> runs = runsIn(width);
    return static_cast<int>(std::ceil(runs.back().box.bottom())) + kFocusRoom;
}

QSize CutSentence::minimumSizeHint() const {
    double widest = 0;
    for (const Run& run : runsIn(1e6))
        widest = std::max(widest, run.box.width());
    return {static_cast<int>(std::ceil(widest)) + 2 * kFocusRoom, heightForWidth(std::max(width(), 120))};
}

QRectF CutSentence::boxOf(Choice choice) const {
    for (const Run& run : runsIn(width()))
        if (run.choice == choice)
            return run.box;
    return {};
}

std::optional<CutSentence::Choice> CutSentence::choiceAt(QPointF at) const {
    for (const Run& run : runsIn(width()))
        if (run.choice &&
            run.box.adjusted(-kReach, -kBetweenLines / 2.0, kReach, kBetweenLines / 2.0).contains(at))
            return run.choice;
    return std::nullopt;
}

// ── drawing ───────────────────────────────────────────────────────────────────────────────────────────

void CutSentence::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    std::vector<QRectF> framed; // the words with the keyboard, line by line
    for (const Run& run : runsIn(width())) {
        const QColor turning = run.choice == m_hovered ? dyes.indigoDeep : dyes.indigo;
        const QColor ink = run.choice ? turning : dyes.ink;
        if (run.isCap) {
            const QSizeF cap = keyCapSize(run.text);
            paintKeyCap(painter,
                        QRectF(QPointF(run.box.left(), run.box.center().y() - cap.height() / 2), cap),
                        run.text, ink);
        } else {
            paintLine(painter, run.box, run.text, typeOf(run.choice.has_value()), ink);
        }
        if (!run.choice || !hasFocus() || run.choice != m_at)
            continue;
        if (!framed.empty() && framed.back().top() == run.box.top())
            framed.back() = framed.back().united(run.box);
        else
            framed.push_back(run.box);
    }
    for (const QRectF& box : framed)
        paintFocusRing(painter, box.adjusted(0, 1, 0, -1), kKeyRadius);
}

// ── pointer and keyboard ──────────────────────────────────────────────────────────────────────────────

void CutSentence::mousePressEvent(QMouseEvent* event) {
    const auto choice = choiceAt(event->position());
    if (event->button() != Qt::LeftButton || !choice)
        return;
    m_at = *choice;
    emit turned(*choice);
}

void CutSentence::mouseMoveEvent(QMouseEvent* event) {
    const auto under = choiceAt(event->position());
    setCursor(under ? Qt::PointingHandCursor : Qt::ArrowCursor);
    if (under == m_hovered)
        return;
    m_hovered = under;
    update();
}

void CutSentence::leaveEvent(QEvent* event) {
    QWidget::leaveEvent(event);
    m_hovered.reset();
    update();
}

void CutSentence::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Left:
    case Qt::Key_Up:
    case Qt::Key_Home:
        m_at = Choice::Frames;
        break;
    case Qt::Key_Right:
    case Qt::Key_Down:
    case Qt::Key_End:
        m_at = Choice::Parting;
        break;
    case Qt::Key_Space:
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (!event->isAutoRepeat())
            emit turned(m_at);
        return;
    default:
        QWidget::keyPressEvent(event);
        return;
    }
    say();
    update();
}

void CutSentence::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    update();
}

void CutSentence::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    update();
}

} // namespace holdfast::app
