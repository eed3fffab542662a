// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/sewn_tabs.h"

#include "app/theme/drawings.h"
#include "app/theme/focus_ring.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"
#include "app/widgets/card.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <QStringListModel>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kLift = 5; // how much higher the current tab is
constexpr int kTabGap = 7;
constexpr int kTabPadding = 13;
constexpr int kTabRight = 17; // clear of the seam
constexpr int kDisk = 24;
constexpr int kEnd = 26; // where a chevron says that there are more

// A tab's outline, open at the bottom.
QPainterPath tabPath(const QRectF& box, qreal radius) {
    QPainterPath path(box.bottomLeft());
    path.lineTo(box.left(), box.top() + radius);
    path.quadTo(box.topLeft(), QPointF(box.left() + radius, box.top()));
    path.lineTo(box.right() - radius, box.top());
    path.quadTo(box.topRight(), QPointF(box.right(), box.top() + radius));
    path.lineTo(box.bottomRight());
    return path;
}

bool hasSign(const SewnTab& tab) {
    return tab.shade.isValid() || !tab.iconName.isEmpty();
}

int widthOfTab(const SewnTab& tab) {
    const qreal words = std::max(widthOf(tab.text, Type::BodyStrong), widthOf(tab.second, Type::Small));
    return static_cast<int>(std::ceil(words)) + kTabPadding + kTabRight + (hasSign(tab) ? kDisk + 9 : 0);
}

} // namespace

SewnTabs::SewnTabs(const QString& accessibleName, QWidget* parent)
    : QWidget(parent)
    , m_name(accessibleName) {
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    giveNoFocusRing(this); // it is painted about the tab
    say();
}

void SewnTabs::setTabs(const QVector<SewnTab>& tabs) {
    m_tabs = tabs;
    const int last = static_cast<int>(tabs.size()) - 1;
    m_current = std::clamp(m_current, std::min(0, last), last);
    say();
    showCurrent();
    openCard();
    updateGeometry();
    update();
}

void SewnTabs::setCurrent(int at) {
    m_current = std::clamp(at, -1, static_cast<int>(m_tabs.size()) - 1);
    say();
    showCurrent();
    openCard();
    update();
}

void SewnTabs::sewOnto(Card* card) {
    m_card = card;
    openCard();
}

void SewnTabs::openCard() {
    if (m_card.isNull()) {
        return;
    }
    const QRect seen(goesOnLeft() ? kEnd : 0, 0,
                     width() - (goesOnLeft() ? kEnd : 0) - (goesOnRight() ? kEnd : 0), height());
    const QRect tab = tabRect(m_current).intersected(seen);
    m_card->openTop(tab.left() + 1, tab.isEmpty() ? 0 : tab.right());
}

void SewnTabs::say() {
    const bool has = m_current >= 0 && m_current < m_tabs.size();
    setAccessibleName(has ? m_name + QStringLiteral(", ") + m_tabs[m_current].text : m_name);
    setAccessibleDescription(has ? m_tabs[m_current].second : QString());
    sayCurrentPart();
}

QStringList SewnTabs::wordsOf(int tab) const {
    QStringList words{m_tabs[tab].text};
    if (!m_tabs[tab].second.isEmpty())
        words.append(m_tabs[tab].second);
    return words;
}

int SewnTabs::tabHeight() const {
    const bool hasSecond =
        std::any_of(m_tabs.begin(), m_tabs.end(), [](const SewnTab& tab) { return !tab.second.isEmpty(); });
    return hasSecond ? 52 : kTarget;
}

int SewnTabs::wholeWidth() const {
    int wide = kSpace8 * 2;
    for (const SewnTab& tab : m_tabs) {
        wide += widthOfTab(tab) + kTabGap;
    }
    return wide;
}

QSize SewnTabs::sizeHint() const {
    return {wholeWidth(), tabHeight() + kLift};
}

QSize SewnTabs::minimumSizeHint() const {
    int widest = 0;
    for (const SewnTab& tab : m_tabs) {
        widest = std::max(widest, widthOfTab(tab));
    }
    return {std::min(wholeWidth(), widest + 2 * (kEnd + kTabGap)), tabHeight() + kLift};
}

void SewnTabs::moveAlong(int shift) {
    shift = std::clamp(shift, 0, std::max(0, wholeWidth() - width()));
    if (shift == m_shift) {
        return;
    }
    m_shift = shift;
    openCard();
    update();
}

void SewnTabs::showCurrent() {
    moveAlong(m_shift);
    const QRect tab = tabRect(m_current);
    if (tab.isEmpty()) {
        return;
    }
    if (tab.left() < kEnd + kTabGap) {
        moveAlong(m_shift + tab.left() - kEnd - kTabGap);
    } else if (tab.right() > width() - kEnd - kTabGap) {
        moveAlong(m_shift + tab.right() - width() + kEnd + kTabGap);
    }
}

QRect SewnTabs::tabRect(int at) const {
    if (at < 0 || at >= m_tabs.size()) {
        return {};
    }
    int left = kSpace8 - m_shift;
    for (int before = 0; before < at; ++before) {
        left += widthOfTab(m_tabs[before]) + kTabGap;
    }
    const int lift = at == m_current ? 0 : kLift;
    return {left, lift, widthOfTab(m_tabs[at]), height() - lift};
}

bool SewnTabs::isWhole(int at) const {
    const QRect tab = tabRect(at);
    return at == m_current ||
           (tab.left() >= (goesOnLeft() ? kEnd : 0) && tab.right() < width() - (goesOnRight() ? kEnd : 0));
}

int SewnTabs::tabAt(QPoint point) const {
    for (int at = 0; at < m_tabs.size(); ++at) {
        if (isWhole(at) && tabRect(at).contains(point)) {
            return at;
        }
    }
    return -1;
}

void SewnTabs::choose(int at) {
    if (at < 0 || at >= m_tabs.size() || at == m_current) {
        return;
    }
    setCurrent(at);
    emit chosen(at);
}

void SewnTabs::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    for (int at = 0; at < m_tabs.size(); ++at) {
        if (!isWhole(at)) {
            continue;
        }
        const SewnTab& tab = m_tabs[at];
        const bool isCurrent = at == m_current;
        const QRectF box(tabRect(at));
        const QPainterPath outline = tabPath(box.adjusted(0.5, 0.5, -0.5, 0), kCardRadius);
        painter.setPen(QPen(dyes.thread, 1));
        painter.setBrush(isCurrent         ? dyes.card
                         : at == m_hovered ? blended(dyes.sunk, dyes.card, 0.45)
                                           : dyes.sunk);
        painter.drawPath(outline);
        if (isCurrent) {
            const bool isFocused = hasFocus();
            QPen seam(dyes.indigo, isFocused ? kFocusWidth : 1.2);
            if (!isFocused) {
                seam.setCapStyle(Qt::FlatCap);
                seam.setDashPattern({4 / 1.2, 2.6 / 1.2});
            }
            painter.setPen(seam);
            painter.setBrush(Qt::NoBrush);
            painter.drawPath(tabPath(box.adjusted(4.5, 4.5, -4.5, 0), 6));
        }
        qreal left = box.left() + kTabPadding;
        // The current tab's words are as high above the card as the others', raised by half the lift.
        const qreal middle = box.top() + tabHeight() / 2.0 + (isCurrent ? kLift / 2.0 : 0);
        if (tab.shade.isValid()) {
            paintSwatch(painter, QRectF(left, middle - kDisk / 2.0, kDisk, kDisk), tab.shade, kDisk / 2.0);
        } else if (!tab.iconName.isEmpty()) {
            paintIcon(painter, QRectF(left, middle - kDisk / 2.0, kDisk, kDisk), tab.iconName, dyes.ink);
        }
        left += hasSign(tab) ? kDisk + 9 : 0;
        const QRectF words(left, middle - 10, box.right() - left, 20);
        if (tab.second.isEmpty()) {
            paintLine(painter, words, tab.text, Type::BodyStrong, dyes.ink);
        } else {
            paintLine(painter, words.translated(0, -9), tab.text, Type::BodyStrong, dyes.ink);
            paintLine(painter, words.translated(0, 10), tab.second, Type::Small, dyes.ink2);
        }
    }
    paintEnds(painter);
}

void SewnTabs::paintEnds(QPainter& painter) const {
    const Tokens& dyes = tokens();
    const auto end = [&](const QRectF& box, bool isLeft) {
        painter.fillRect(box, dyes.ground);
        painter.save();
        painter.translate(box.center());
        painter.rotate(isLeft ? 180 : 0);
        paintIcon(painter, QRectF(-kIcon / 2.0, -kIcon / 2.0, kIcon, kIcon), QStringLiteral("chevron"),
                  dyes.ink);
        painter.restore();
    };
    if (goesOnLeft()) {
        end(QRectF(0, 0, kEnd, height()), true);
    }
    if (goesOnRight()) {
        end(QRectF(width() - kEnd, 0, kEnd, height()), false);
    }
}

void SewnTabs::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    showCurrent();
    openCard();
}

void SewnTabs::mousePressEvent(QMouseEvent* event) {
    const int x = event->position().toPoint().x();
    if (goesOnLeft() && x < kEnd) {
        moveAlong(m_shift - width() / 2);
    } else if (goesOnRight() && x >= width() - kEnd) {
        moveAlong(m_shift + width() / 2);
    } else {
        choose(tabAt(event->position().toPoint()));
    }
}

void SewnTabs::wheelEvent(QWheelEvent* event) {
    const QPoint turned = event->angleDelta();
    moveAlong(m_shift - (turned.x() != 0 ? turned.x() : turned.y()) / 2);
    event->accept();
}

void SewnTabs::mouseMoveEvent(QMouseEvent* event) {
    const int under = tabAt(event->position().toPoint());
    if (under != m_hovered) {
        m_hovered = under;
        setCursor(under >= 0 ? Qt::PointingHandCursor : Qt::ArrowCursor);
        update();
    }
}

void SewnTabs::leaveEvent(QEvent* event) {
    QWidget::leaveEvent(event);
    m_hovered = -1;
    update();
}

// Letters typed here look for a tab; they are nobody's shortcut.
bool SewnTabs::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && isTyped(*static_cast<QKeyEvent*>(event))) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

void SewnTabs::find(const QString& typed) {
    QStringList names;
    for (const SewnTab& tab : m_tabs)
        names.append(tab.text);
    const int found = m_typeAhead.rowAfter(typed, QStringListModel(names), m_current);
    if (found >= 0)
        choose(found);
}

void SewnTabs::keyPressEvent(QKeyEvent* event) {
    if (isTyped(*event)) {
        find(event->text());
        return;
    }
    const int last = static_cast<int>(m_tabs.size()) - 1;
    switch (event->key()) {
    case Qt::Key_Left:
        choose(m_current - 1);
        return;
    case Qt::Key_Right:
        choose(m_current + 1);
        return;
    case Qt::Key_Home:
        choose(0);
        return;
    case Qt::Key_End:
        choose(last);
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Down:
        emit left();
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

} // namespace holdfast::app
