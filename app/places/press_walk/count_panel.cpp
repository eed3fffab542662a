// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/count_panel.h"

#include "app/desk/formats.h"
#include "app/places/press_walk/text_lines.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"
#include "app/widgets/button.h"

#include <QAccessible>
#include <QFontMetricsF>
#include <QPainter>

#include <cmath>

namespace holdfast::app {

namespace {

// Before scaling.
constexpr qreal kPanelWidth = 598;
constexpr qreal kPanelLeastWidth = 300;
constexpr qreal kPanelHeight = 182;
constexpr qreal kPadding = 24;
constexpr qreal kWordsTop = 10;
constexpr qreal kCountBaseline = 140;
constexpr qreal kCountShare = 0.64; // of the width, at most
constexpr qreal kOverShare = 0.5;   // once it is over: what is to be done now is the larger
constexpr qreal kSmallCountShare = 0.36;
constexpr qreal kUnitGap = 14;
constexpr qreal kCountGap = 16; // between words and count
constexpr qreal kLeastWords = 110;
constexpr qreal kStitchAt = 28; // from the foot
constexpr qreal kStitchHigh = 13;
constexpr qreal kStitchClear = 6; // between words and stitches
constexpr int kMostSingleStitches = 12;
constexpr int kEqualStitches = 24;
constexpr int kLongestSecondsOnly = 99; // two digits keep the size that reads from two metres

QColor groundOf(PanelWords::Mood mood) {
    switch (mood) {
    case PanelWords::Mood::Counting:
        return tokens().woad;
    case PanelWords::Mood::Now:
        return tokens().weldTint;
    case PanelWords::Mood::ByHand:
    case PanelWords::Mood::Quiet:
        break;
    }
    return tokens().card;
}

QColor lineOf(PanelWords::Mood mood) {
    switch (mood) {
    case PanelWords::Mood::Counting:
        return tokens().indigo;
    case PanelWords::Mood::Now:
        return tokens().weld;
    case PanelWords::Mood::ByHand:
        return tokens().edge;
    case PanelWords::Mood::Quiet:
        break;
    }
    return tokens().thread;
}

} // namespace

CountPanel::CountPanel(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("countPanel"));
    setScale(1);
    m_restart = new Button(tr("Count again"), QStringLiteral("stopwatch"), Button::Kind::Plain, this);
    m_restart->setObjectName(QStringLiteral("countAgain"));
    m_restart->setTargetHeight(kPressTarget);
    m_restart->showKey(Qt::Key_C);
    m_restart->hide();
}

void CountPanel::show(const PanelWords& words) {
    m_shown = words;
    m_restart->setVisible(words.offersRestart);
    placeRestart();
    say();
    update();
}

// Spoken to a screen reader when the words change, not at each second.
void CountPanel::say() {
    const QString spoken =
        QStringList{m_shown.step, m_shown.word, m_shown.detail, m_shown.note}.join(QStringLiteral(". "));
    if (spoken == m_said)
        return;
    m_said = spoken;
    setAccessibleName(spoken);
    QAccessibleEvent event(this, QAccessible::NameChanged);
    QAccessible::updateAccessibility(&event);
}

QString CountPanel::digits() const {
    if (!m_shown.count || m_shown.count->isAskew)
        return {};
    if (m_shown.count->isOver())
        return QLatin1Char('+') + countdown(m_shown.count->secondsOver());
    const Seconds left = m_shown.count->secondsLeft();
    return left.count() <= kLongestSecondsOnly ? QString::number(left.count()) : countdown(left);
}

void CountPanel::setScale(qreal scale) {
    m_scale = scale;
    setFixedHeight(static_cast<int>(std::lround(kPanelHeight * scale)));
    updateGeometry();
    update();
}

QSize CountPanel::sizeHint() const {
    return (QSizeF(kPanelWidth, kPanelHeight) * m_scale).toSize();
}

QSize CountPanel::minimumSizeHint() const {
    return (QSizeF(kPanelLeastWidth, kPanelHeight) * m_scale).toSize();
}

void CountPanel::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    placeRestart();
}

void CountPanel::placeRestart() {
    const QSize size = m_restart->sizeHint();
    m_restart->setGeometry(width() - size.width() - kSpace20, height() - size.height() - kSpace20,
                           size.width(), size.height());
}

void CountPanel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintBox(painter, QRectF(rect()), kCardRadius, groundOf(m_shown.mood), lineOf(m_shown.mood),
             m_shown.mood == PanelWords::Mood::Quiet ? 1 : 2);
    painter.scale(m_scale, m_scale);
    paintCount(painter);
    paintWords(painter);
    if (hasStitches())
        paintStitches(painter);
}

QString CountPanel::unit() const {
    const QString text = digits();
    if (text.isEmpty() || text.contains(u':'))
        return {};
    return m_shown.count->isOver() ? tr("s over") : tr("s");
}

Type CountPanel::unitType() const {
    return m_shown.count->isOver() ? Type::Number : Type::Next;
}

qreal CountPanel::unitWidth() const {
    return unit().isEmpty() ? 0 : widthOf(unit(), unitType()) + kUnitGap;
}

// As large as its share of the width lets it be.
QFont CountPanel::countFace() const {
    QFont face = fontOf(Type::Countdown);
    const qreal share = m_shown.asksOutcome       ? kSmallCountShare
                        : m_shown.count->isOver() ? kOverShare
                                                  : kCountShare;
    const qreal room = (whole().width() - 2 * kPadding) * share - unitWidth();
    const qreal wide = QFontMetricsF(face).horizontalAdvance(digits());
    if (wide > room)
        face.setPixelSize(static_cast<int>(face.pixelSize() * room / wide));
    return face;
}

qreal CountPanel::wordsRight() const {
    if (m_shown.offersRestart)
        return m_restart->x() / m_scale - kPadding;
    const qreal right = whole().width() - kPadding;
    if (digits().isEmpty())
        return right;
    return right - unitWidth() - QFontMetricsF(countFace()).horizontalAdvance(digits()) - kCountGap;
}

qreal CountPanel::stitchesTop() const {
    return kPanelHeight - kStitchAt;
}

QRectF CountPanel::wordsRoom() const {
    const qreal bottom = hasStitches() ? stitchesTop() - kStitchClear : kPanelHeight - kSpace8;
    return {kPadding, kWordsTop, std::max(kLeastWords, wordsRight() - kPadding), bottom - kWordsTop};
}

std::vector<PanelLine> CountPanel::lines() const {
    return panelLines({m_shown.step, m_shown.word, m_shown.detail, m_shown.note}, wordsRoom());
}

void CountPanel::paintCount(QPainter& painter) const {
    const QString text = digits();
    if (text.isEmpty())
        return;
    const bool isNow = m_shown.mood == PanelWords::Mood::Now;
    const QFont face = countFace();
    const qreal right = whole().width() - kPadding;
    painter.setPen(isNow ? tokens().weld : tokens().ink);
    painter.setFont(face);
    painter.drawText(
        QPointF(right - unitWidth() - QFontMetricsF(face).horizontalAdvance(text), kCountBaseline), text);
    if (!unit().isEmpty())
        paintRun(painter, {right - unitWidth() + kUnitGap, kCountBaseline}, unit(), unitType(),
                 isNow ? tokens().weld : tokens().ink2);
}

void CountPanel::paintWords(QPainter& painter) const {
    const Tokens& dyes = tokens();
    const bool isNow = m_shown.mood == PanelWords::Mood::Now;
    for (const PanelLine& line : lines()) {
        QColor ink = dyes.ink;
        if (line.part == PanelLine::Part::Word && isNow)
            ink = dyes.weld;
        else if (line.part == PanelLine::Part::Step)
            ink = dyes.ink2;
        else if (line.part == PanelLine::Part::Note)
            ink = m_shown.isAlert ? dyes.weld : dyes.ink2;
        paintLine(painter, line.box, line.text, line.type, ink);
    }
}

void CountPanel::paintStitches(QPainter& painter) const {
    const StepCount& count = *m_shown.count;
    const auto counted = static_cast<int>(count.counted.count());
    if (counted <= 0)
        return;
    const int stitches = counted <= kMostSingleStitches ? counted : kEqualStitches;
    const double elapsed =
        std::clamp(1.0 - static_cast<double>(count.left.count()) / (1000.0 * counted), 0.0, 1.0);
    const int done = static_cast<int>(elapsed * stitches + 1e-6);
    const qreal gap = stitches > kMostSingleStitches ? 5 : 8;
    const qreal wide = (whole().width() - 2 * kPadding - gap * (stitches - 1)) / stitches;
    const QColor thread = m_shown.mood == PanelWords::Mood::Now ? tokens().weld : tokens().indigo;
    for (int stitch = 0; stitch < stitches; ++stitch)
        paintStitch(painter, QRectF(kPadding + stitch * (wide + gap), stitchesTop(), wide, kStitchHigh),
                    thread, stitch < done);
}

} // namespace holdfast::app
