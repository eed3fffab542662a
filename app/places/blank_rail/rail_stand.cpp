// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/blank_rail/rail_stand.h"

#include "app/desk/formats.h"
#include "app/theme/drawings.h"
#include "app/theme/focus_ring.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"

#include <QFontMetricsF>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

namespace holdfast::app {

namespace {

constexpr int kNameTop = 92; // below the garment
constexpr int kBelowWords = 16;
constexpr qreal kRailAt = 20;
constexpr qreal kPostInset = 20;
constexpr qreal kSide = 40;
constexpr qreal kWidest = 112;
constexpr qreal kNarrowest = 96;
constexpr std::uint32_t kUndyed = 0xE3D8C3;

int standHeight() {
    return kNameTop + lineHeight(Type::SmallStrong) + lineHeight(Type::Small) + kBelowWords;
}

void paintHook(QPainter& painter, QPointF centre, const QColor& ink) {
    painter.setPen(QPen(ink, 2, Qt::SolidLine, Qt::RoundCap));
    painter.setBrush(Qt::NoBrush);
    QPainterPath hook;
    hook.moveTo(centre + QPointF(-5, -4));
    hook.cubicTo(centre + QPointF(-5, -12), centre + QPointF(6, -12), centre + QPointF(5, -4));
    hook.cubicTo(centre + QPointF(4, 1), centre + QPointF(0, 0), centre + QPointF(0, 7));
    painter.drawPath(hook);
}

} // namespace

RailStand::RailStand(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("railStand"));
    setFixedHeight(standHeight());
    setFocusPolicy(Qt::StrongFocus);
    giveNoFocusRing(this);
    setAccessibleName(tr("Blank styles"));
}

void RailStand::show(const std::vector<StyleRail>& rail, int current) {
    m_tabs.clear();
    for (const StyleRail& hung : rail)
        m_tabs.push_back({words(hung.style->name), words(hung.style->outline), hung.total.all(),
                          !hung.style->label.has_value(),
                          colourOf(hung.style->colours.empty() ? kUndyed : hung.style->colours.front().rgb)});
    m_current = current;
    if (current >= 0 && current < std::ssize(m_tabs))
        setAccessibleDescription(m_tabs[static_cast<std::size_t>(current)].name);
    update();
}

int RailStand::shownCount() const {
    return std::max(1, static_cast<int>((width() - 2 * kSide) / kNarrowest));
}

// Where there are more styles than hang side by side, those about the current one are shown.
int RailStand::firstShown() const {
    const int count = static_cast<int>(m_tabs.size());
    return std::clamp(m_current - shownCount() / 2, 0, std::max(0, count - shownCount()));
}

QRectF RailStand::tabRect(int at) const {
    const int shown = std::min(shownCount(), static_cast<int>(m_tabs.size()));
    const qreal wide = std::min(kWidest, (width() - 2 * kSide) / std::max(1, shown));
    return {kSide + (at - firstShown()) * wide, 3, wide, standHeight() - 3.0};
}

void RailStand::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    painter.fillRect(rect(), dyes.sunk);
    painter.fillRect(QRectF(0, height() - 1, width(), 1), dyes.thread);
    for (const qreal x : {kPostInset, width() - kPostInset - 8})
        painter.fillRect(QRectF(x, 8, 8, height() - 9), dyes.board);
    paintBox(painter, QRectF(10, kRailAt - 3, width() - 20, 6), 3, dyes.boardEdge, {});

    const int last = std::min(static_cast<int>(m_tabs.size()), firstShown() + shownCount());
    for (int at = firstShown(); at < last; ++at)
        paintTab(painter, at);
    if (firstShown() > 0)
        paintLine(painter, QRectF(4, 60, 30, 20), QStringLiteral("‹"), Type::Number, dyes.ink2,
                  Qt::AlignHCenter);
    if (last < std::ssize(m_tabs))
        paintLine(painter, QRectF(width() - 34, 60, 30, 20), QStringLiteral("›"), Type::Number, dyes.ink2,
                  Qt::AlignHCenter);
}

void RailStand::paintTab(QPainter& painter, int at) const {
    const Tokens& dyes = tokens();
    const Tab& tab = m_tabs[static_cast<std::size_t>(at)];
    const QRectF box = tabRect(at);
    const bool isCurrent = at == m_current;
    if (isCurrent) {
        QPainterPath label;
        label.addRoundedRect(box.adjusted(0, 0, 0, 12), 8, 8);
        painter.setClipRect(QRectF(rect()));
        painter.setPen(QPen(dyes.thread, 1));
        painter.setBrush(dyes.card);
        painter.drawPath(label);
        paintSewnLabel(painter, box.adjusted(0, 0, 0, 12), dyes.indigo, 8);
        painter.setClipping(false);
        if (hasFocus())
            paintFocusRing(painter, box.adjusted(6, 6, -6, -6), 6);
    }
    paintHook(painter, {box.center().x(), kRailAt - 1}, isCurrent ? dyes.indigo : dyes.ink2);
    paintGarment(painter, QRectF(box.center().x() - 32, 28, 64, 62), tab.outline, tab.cloth);

    const QString name =
        QFontMetricsF(fontOf(Type::SmallStrong)).elidedText(tab.name, Qt::ElideRight, box.width() - 8);
    const QRectF first(box.left(), kNameTop, box.width(), lineHeight(Type::SmallStrong));
    paintLine(painter, first, name, Type::SmallStrong, dyes.ink, Qt::AlignHCenter);
    // A label that nobody has read holds every garment of the style: that is said before the count.
    paintLine(painter, QRectF(box.left(), first.bottom() + 1, box.width(), lineHeight(Type::Small)),
              tab.isUnread ? tr("label unread") : QString::number(tab.units),
              tab.isUnread ? Type::SmallStrong : Type::Small, tab.isUnread ? dyes.madder : dyes.ink2,
              Qt::AlignHCenter);
}

void RailStand::mousePressEvent(QMouseEvent* event) {
    for (int at = 0; at < std::ssize(m_tabs); ++at)
        if (at >= firstShown() && at < firstShown() + shownCount() &&
            tabRect(at).contains(event->position())) {
            emit chosen(at);
            return;
        }
    // ‹ and › at the ends lead to the styles that do not hang in view.
    if (event->position().x() < kSide && firstShown() > 0)
        emit chosen(m_current - 1);
    else if (event->position().x() > width() - kSide && firstShown() + shownCount() < std::ssize(m_tabs))
        emit chosen(m_current + 1);
}

void RailStand::keyPressEvent(QKeyEvent* event) {
    const int step = event->key() == Qt::Key_Left ? -1 : event->key() == Qt::Key_Right ? 1 : 0;
    if (step == 0) {
        QWidget::keyPressEvent(event);
        return;
    }
    const int wanted = m_current + step;
    if (wanted >= 0 && wanted < std::ssize(m_tabs))
        emit chosen(wanted);
}

void RailStand::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    update();
}

void RailStand::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    update();
}

} // namespace holdfast::app
