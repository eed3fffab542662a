// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/walk_notice.h"

#include "app/places/press_walk/text_lines.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QPainter>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kNoticeEdge = 12;
constexpr int kNoticeWidth = 260;
constexpr int kNoticeLeast = 44; // a finger's target
constexpr int kNoticeWordsAt = kNoticeEdge + kSmallIcon + kSpace8;

qreal roomFor(int width, const QString& key) {
    return width - kNoticeWordsAt - kSpace8 - keyCapSize(key).width() - kNoticeEdge;
}

} // namespace

WalkNotice::WalkNotice(const QKeySequence& key, QWidget* parent)
    : QAbstractButton(parent)
    , m_key(keyCapText(key)) {
    setFocusPolicy(Qt::NoFocus);
    setCursor(Qt::PointingHandCursor);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    hide();
}

void WalkNotice::show(const QString& what, const QString& more) {
    m_what = what;
    m_more = more;
    setAccessibleName(what);
    setAccessibleDescription(more);
    setVisible(!what.isEmpty());
    updateGeometry();
    update();
}

int WalkNotice::heightForWidth(int width) const {
    const qsizetype lines = brokenLines(m_what, Type::SmallStrong, roomFor(width, m_key)).size() +
                            brokenLines(m_more, Type::Small, roomFor(width, m_key)).size();
    return std::max(kNoticeLeast, kSpace8 + static_cast<int>(lines) * lineHeight(Type::Small) + kSpace8);
}

QSize WalkNotice::sizeHint() const {
    const int known = width() > kNoticeWordsAt * 2 ? width() : kNoticeWidth;
    return {kNoticeWidth, heightForWidth(known)};
}

void WalkNotice::resizeEvent(QResizeEvent* event) {
    QAbstractButton::resizeEvent(event);
    if (event->size().width() != event->oldSize().width())
        updateGeometry();
}

void WalkNotice::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    painter.fillRect(rect(), underMouse() ? dyes.sunk : dyes.weldTint);
    painter.fillRect(QRectF(0, height() - 1, width(), 1), dyes.thread);
    const int line = lineHeight(Type::Small);
    qreal y = kSpace8;
    paintIcon(painter, QRectF(kNoticeEdge, y + 1, kSmallIcon, kSmallIcon), QStringLiteral("caution"),
              dyes.weld);
    const QSizeF cap = keyCapSize(m_key);
    paintKeyCap(painter, QRectF(QPointF(width() - kNoticeEdge - cap.width(), y), cap), m_key, dyes.ink);
    const auto paintLines = [&](const QString& text, Type type, const QColor& ink) {
        for (const QString& words : brokenLines(text, type, roomFor(width(), m_key))) {
            paintLine(painter, QRectF(kNoticeWordsAt, y, width() - kNoticeWordsAt, line), words, type, ink);
            y += line;
        }
    };
    paintLines(m_what, Type::SmallStrong, dyes.weld);
    paintLines(m_more, Type::Small, dyes.ink);
}

} // namespace holdfast::app
