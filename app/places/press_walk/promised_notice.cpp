#include "app/places/press_walk/promised_notice.h"

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

constexpr int kEdge = 12;
constexpr int kUsualWidth = 260;
constexpr int kWordsAt = kEdge + kSmallIcon + kSpace8;

QString keyText() {
    return keyCapText(QKeySequence(Qt::Key_T));
}

qreal roomFor(int width) {
    return width - kWordsAt - kSpace8 - keyCapSize(keyText()).width() - kEdge;
}

} // namespace

PromisedNotice::PromisedNotice(QWidget* parent)
    : QAbstractButton(parent) {
    setObjectName(QStringLiteral("promisedAside"));
    setFocusPolicy(Qt::NoFocus);
    setCursor(Qt::PointingHandCursor);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    hide();
}

void PromisedNotice::show(const PromisedAside& aside) {
    m_aside = aside;
    setAccessibleName(aside.what);
    setAccessibleDescription(aside.frees);
    setVisible(!aside.isEmpty());
    updateGeometry();
    update();
}

int PromisedNotice::heightForWidth(int width) const {
    const qsizetype lines = brokenLines(m_aside.what, Type::SmallStrong, roomFor(width)).size() +
                            brokenLines(m_aside.frees, Type::Small, roomFor(width)).size();
    return kSpace8 + static_cast<int>(lines) * lineHeight(Type::Small) + kSpace8;
}

QSize PromisedNotice::sizeHint() const {
    return {kUsualWidth, heightForWidth(std::max(width(), kUsualWidth))};
}

void PromisedNotice::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    painter.fillRect(rect(), underMouse() ? dyes.sunk : dyes.weldTint);
    painter.fillRect(QRectF(0, height() - 1, width(), 1), dyes.thread);
    const int line = lineHeight(Type::Small);
    qreal y = kSpace8;
    paintIcon(painter, QRectF(kEdge, y + 1, kSmallIcon, kSmallIcon), QStringLiteral("caution"), dyes.weld);
    const QSizeF cap = keyCapSize(keyText());
    paintKeyCap(painter, QRectF(QPointF(width() - kEdge - cap.width(), y), cap), keyText(), dyes.ink);
    const auto paintLines = [&](const QString& text, Type type, const QColor& ink) {
        for (const QString& words : brokenLines(text, type, roomFor(width()))) {
            paintLine(painter, QRectF(kWordsAt, y, width() - kWordsAt, line), words, type, ink);
            y += line;
        }
    };
    paintLines(m_aside.what, Type::SmallStrong, dyes.weld);
    paintLines(m_aside.frees, Type::Small, dyes.ink);
}

} // namespace holdfast::app
