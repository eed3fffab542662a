// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/key_hint.h"

#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QPainter>
#include <QShortcut>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kBesideCap = 9;
constexpr int kDeskTarget = 32;

Type typeOf(KeyHint::Order order) {
    return order == KeyHint::Order::WordsThenKey ? Type::BodyStrong : Type::Small;
}

} // namespace

KeyHint::KeyHint(const QString& words, const QKeySequence& keys, Order order, QWidget* parent)
    : QAbstractButton(parent)
    , m_keys(keys)
    , m_order(order)
    , m_height(kDeskTarget) {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setFocusPolicy(Qt::NoFocus);
    setAttribute(Qt::WA_TransparentForMouseEvents);
    setWords(words);
}

void KeyHint::setWords(const QString& words) {
    m_words = words;
    setAccessibleName(words);
    setAccessibleDescription(keyCapText(m_keys));
    updateGeometry();
    update();
}

void KeyHint::jumpTo(QWidget* section) {
    actOnClick([this, section] {
        section->setFocus(Qt::ShortcutFocusReason);
        emit jumped();
    });
    listen(new QShortcut(m_keys, this));
}

void KeyHint::actWithin(QWidget* place, const std::function<void()>& act) {
    actOnClick(act);
    auto* shortcut = new QShortcut(m_keys, place);
    shortcut->setContext(Qt::WidgetWithChildrenShortcut);
    listen(shortcut);
}

void KeyHint::actOnClick(const std::function<void()>& act) {
    disconnect(this, &QAbstractButton::clicked, nullptr, nullptr);
    connect(this, &QAbstractButton::clicked, this, act);
    setAttribute(Qt::WA_TransparentForMouseEvents, false);
    setCursor(Qt::PointingHandCursor);
    updateGeometry();
}

void KeyHint::listen(QShortcut* shortcut) {
    delete m_shortcut;
    m_shortcut = shortcut;
    connect(m_shortcut, &QShortcut::activated, this, [this] { click(); });
}

void KeyHint::setTargetHeight(int height) {
    m_height = height;
    updateGeometry();
}

void KeyHint::enterEvent(QEnterEvent* event) {
    QAbstractButton::enterEvent(event);
    update();
}

void KeyHint::leaveEvent(QEvent* event) {
    QAbstractButton::leaveEvent(event);
    update();
}

// A section's name keeps in line with what is below it; a line of help has a ground of its own under the
// hand.
int KeyHint::padding() const {
    return isButton() && m_order == Order::KeyThenWords ? kSpace4 : 0;
}

QSize KeyHint::sizeHint() const {
    qreal wide = widthOf(m_words, typeOf(m_order)) + 2 * padding();
    if (!m_keys.isEmpty())
        wide += kBesideCap + keyCapSize(keyCapText(m_keys)).width();
    const int words = std::max(kKeyCap, lineHeight(Type::Body));
    return {static_cast<int>(std::ceil(wide)), isButton() ? std::max(m_height, words) : words};
}

void KeyHint::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    const QRectF box(rect());
    const Type type = typeOf(m_order);
    const QString key = keyCapText(m_keys);
    const QSizeF cap = m_keys.isEmpty() ? QSizeF(0, 0) : keyCapSize(key);
    const bool isName = m_order == Order::WordsThenKey;
    const bool isUnderHand = isButton() && isEnabled() && (underMouse() || isDown());
    if (isUnderHand && !isName)
        paintBox(painter, box, kKeyRadius, isDown() ? dyes.woad : dyes.sunk, {});
    const qreal words = std::ceil(widthOf(m_words, type));
    const qreal capLeft = padding() + (isName ? words + kBesideCap : 0);
    const qreal wordsLeft = padding() + (isName || cap.isEmpty() ? 0 : cap.width() + kBesideCap);
    if (!cap.isEmpty())
        paintKeyCap(painter, QRectF(QPointF(capLeft, box.center().y() - cap.height() / 2), cap), key,
                    isUnderHand ? dyes.indigo : dyes.ink);
    QColor ink = isName ? dyes.ink : dyes.ink2;
    if (isUnderHand)
        ink = isDown() ? dyes.indigoDeep : dyes.indigo;
    paintLine(painter, QRectF(wordsLeft, 0, words, box.height()), m_words, type, ink);
}

} // namespace holdfast::app
