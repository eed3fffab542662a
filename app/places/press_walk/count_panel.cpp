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

namespace holdfast::app {

namespace {

constexpr qreal kPadding = 24;
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
    setFixedHeight(kHeight);
    m_restart = new Button(tr("Count again"), QStringLiteral("stopwatch"), Button::Kind::Plain, this);
    m_restart->setObjectName(QStringLiteral("countAgain"));
    m_restart->setTargetHeight(kPressTarget);
    m_restart->showKey(Qt::Key_C);
    m_restart->hide();
}

void CountPanel::show(const PanelWords& words) {
    m_shown = words;
    m_restart->setVisible(words.offersRestart);
    say();
    update();
}

// Told aloud when the words change, not at each second.
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

void CountPanel::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const QSize size = m_restart->sizeHint();
    m_restart->setGeometry(width() - size.width() - static_cast<int>(kPadding), kHeight - size.height() - 20,
                           size.width(), size.height());
}

void CountPanel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintBox(painter, QRectF(rect()), kCardRadius, groundOf(m_shown.mood), lineOf(m_shown.mood),
             m_shown.mood == PanelWords::Mood::Quiet ? 1 : 2);
    const qreal right = m_shown.offersRestart ? m_restart->x() - kPadding : paintCount(painter);
    paintWords(painter, right);
    if (m_shown.count && !m_shown.count->isAskew)
        paintStitches(painter);
}

qreal CountPanel::paintCount(QPainter& painter) const {
    const QString text = digits();
    if (text.isEmpty())
        return width() - kPadding;
    const QColor ink = m_shown.mood == PanelWords::Mood::Now ? tokens().weld : tokens().ink;
    const bool isPlainSeconds = !text.contains(u':');
    const bool isOver = m_shown.count->isOver();
    const QString unit = !isPlainSeconds ? QString() : isOver ? tr("s over") : tr("s");
    const qreal unitWidth = unit.isEmpty() ? 0 : widthOf(unit, Type::Next) + 14;

    QFont face = fontOf(Type::Countdown);
    const qreal room = (width() - 2 * kPadding) * 0.64 - unitWidth;
    const qreal wide = QFontMetricsF(face).horizontalAdvance(text);
    if (wide > room)
        face.setPixelSize(static_cast<int>(face.pixelSize() * room / wide));
    const QFontMetricsF metrics(face);
    const qreal baseline = 140;
    const qreal left = width() - kPadding - unitWidth - metrics.horizontalAdvance(text);
    painter.setPen(ink);
    painter.setFont(face);
    painter.drawText(QPointF(left, baseline), text);
    if (!unit.isEmpty())
        paintRun(painter, {width() - kPadding - unitWidth + 14, baseline}, unit, Type::Next,
                 m_shown.mood == PanelWords::Mood::Now ? tokens().weld : tokens().ink2);
    return left - 16;
}

void CountPanel::paintWords(QPainter& painter, qreal right) const {
    const Tokens& dyes = tokens();
    const qreal left = kPadding;
    const qreal room = std::max<qreal>(120, right - left);
    paintRun(painter, {left, 29}, m_shown.step, Type::ListStrong, dyes.ink2);

    // A long note takes its room from the word and what is below it: the stitches stay clear.
    const bool hasStitches = m_shown.count && !m_shown.count->isAskew;
    const QStringList note =
        brokenLines(m_shown.note, Type::BodyStrong, hasStitches ? room : width() - 2 * left);
    const bool isCrowded = hasStitches && note.size() > 1;

    // The largest of three sizes in which the word keeps clear of the count.
    const QColor ink = m_shown.mood == PanelWords::Mood::Now ? dyes.weld : dyes.ink;
    const Type type = !isCrowded && widthOf(m_shown.word, Type::Panel) <= room ? Type::Panel
                      : widthOf(m_shown.word, Type::Next) <= room              ? Type::Next
                                                                               : Type::Number;
    qreal y = 42;
    for (const QString& line : brokenLines(m_shown.word, type, room)) {
        paintLine(painter, QRectF(left, y, room, lineHeight(type)), line, type, ink);
        y += lineHeight(type);
    }
    y += 4;
    const bool isTight = isCrowded || y > 104 || widthOf(m_shown.detail, Type::Number) > room;
    const Type detailType = isTight ? Type::Value : Type::Number;
    for (const QString& line : brokenLines(m_shown.detail, detailType, room)) {
        paintLine(painter, QRectF(left, y, room, lineHeight(detailType)), line, detailType, dyes.ink);
        y += lineHeight(detailType);
    }
    for (const QString& line : note) {
        y += 2;
        paintLine(painter, QRectF(left, y, room, lineHeight(Type::BodyStrong)), line, Type::BodyStrong,
                  m_shown.isAlert ? dyes.weld : dyes.ink2);
        y += lineHeight(Type::BodyStrong);
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
    const qreal wide = (width() - 2 * kPadding - gap * (stitches - 1)) / stitches;
    const QColor thread = m_shown.mood == PanelWords::Mood::Now ? tokens().weld : tokens().indigo;
    for (int stitch = 0; stitch < stitches; ++stitch)
        paintStitch(painter, QRectF(kPadding + stitch * (wide + gap), kHeight - 28, wide, 13), thread,
                    stitch < done);
}

} // namespace holdfast::app
