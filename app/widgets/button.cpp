// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/button.h"

#include "app/theme/drawings.h"
#include "app/theme/focus_ring.h"
#include "app/theme/icons.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QKeyEvent>
#include <QPainter>
#include <QShortcut>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kNextPadding = 22;
constexpr int kGap = 10;
constexpr int kLargeKeyCap = 43;
constexpr int kMiddleKeyCap = 32;

qreal keyCapWidth(const QString& text, int height) {
    if (height == kKeyCap) {
        return keyCapSize(text).width();
    }
    const bool isLarge = height == kLargeKeyCap;
    return std::max<qreal>(height, std::ceil(widthOf(text, isLarge ? Type::Value : Type::BodyStrong)) +
                                       (isLarge ? 32 : 16));
}

// The least width in which the words fit into two lines.
qreal widthInTwoLines(const QString& text, Type type) {
    qreal least = widthOf(text, type);
    for (qsizetype space = text.indexOf(u' '); space >= 0; space = text.indexOf(u' ', space + 1))
        least =
            std::min(least, std::max(widthOf(text.left(space), type), widthOf(text.mid(space + 1), type)));
    return std::ceil(least);
}

} // namespace

struct Button::Colours {
    QColor ground; // invalid for none
    QColor edge;   // invalid for none
    QColor words;
    QColor sign; // icon
    bool isDashed = false;
};

Button::Button(const QString& text, Kind kind, QWidget* parent)
    : Button(text, QString(), kind, parent) {}

Button::Button(const QString& text, const QString& iconName, Kind kind, QWidget* parent)
    : QPushButton(text, parent)
    , m_kind(kind)
    , m_iconName(iconName) {
    setAutoDefault(false);
    // A click leaves the keyboard where it is: in the list or the line that is worked in.
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::PointingHandCursor);
    setKind(kind);
}

void Button::setKind(Kind kind) {
    m_kind = kind;
    setFont(fontOf(Type::BodyStrong));
    // Next takes the width it is given, and smaller words when that is little; the others never cut theirs.
    setSizePolicy(kind == Kind::Next ? QSizePolicy::Expanding : QSizePolicy::Minimum, QSizePolicy::Fixed);
    setTargetHeight(kind == Kind::Next ? kNextTarget : kTarget);
    giveFocusRing(this, nullptr, kind == Kind::Next ? kNextRadius : kButtonRadius);
}

void Button::setIconName(const QString& iconName) {
    m_iconName = iconName;
    updateGeometry();
    update();
}

void Button::setSwatch(const QColor& shade) {
    m_swatch = shade;
    updateGeometry();
    update();
}

void Button::setSecondText(const QString& secondText) {
    m_secondText = secondText;
    updateGeometry();
    update();
}

void Button::setOpensList(bool opensList) {
    m_opensList = opensList;
    updateGeometry();
    update();
}

void Button::setTargetHeight(int height) {
    setFixedHeight(height);
    updateGeometry();
}

void Button::setLeftAligned(bool isLeftAligned) {
    m_isLeftAligned = isLeftAligned;
    update();
}

void Button::mayShrink() {
    m_mayShrink = true;
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

void Button::setScale(qreal scale) {
    m_scale = scale;
    setTargetHeight(static_cast<int>(std::lround(kNextTarget * scale)));
    update();
}

void Button::setKey(const QKeySequence& keys) {
    showKey(keys);
    delete m_shortcut;
    m_shortcut = nullptr;
    if (!keys.isEmpty()) {
        m_shortcut = new QShortcut(keys, this);
        connect(m_shortcut, &QShortcut::activated, this, [this] { click(); });
    }
}

void Button::showKey(const QKeySequence& keys) {
    showKeyText(keyCapText(keys));
}

void Button::showKeyText(const QString& text) {
    m_keyText = text;
    updateGeometry();
    update();
}

void Button::setCannot(const QString& reason) {
    setEnabled(reason.isEmpty());
    setToolTip(reason);
    setAccessibleDescription(reason);
}

int Button::padding() const {
    if (m_kind == Kind::Next) {
        return kNextPadding;
    }
    if (m_kind == Kind::Quiet) {
        return kSpace8;
    }
    return height() >= kPressTarget ? kSpace16 : kSpace12;
}

Type Button::typeOfWords(bool isLarge) const {
    if (m_kind == Kind::Next)
        return isLarge ? Type::Next : Type::Number;
    const Type usual = height() >= kPressTarget ? Type::ListStrong : Type::BodyStrong;
    for (const Type type : {usual, Type::BodyStrong, Type::SupportStrong})
        if (contentWidth(type, false, true) + 2 * kSpace8 <= width())
            return type;
    return Type::SmallStrong;
}

// The key works without its cap, and the words do not go without room.
bool Button::showsKey(Type words) const {
    return !m_keyText.isEmpty() &&
           (m_kind == Kind::Next || contentWidth(words, false, true) + 2 * kSpace4 <= width());
}

qreal Button::contentWidth(bool isLarge) const {
    const bool isNext = m_kind == Kind::Next;
    const Type usual = height() >= kPressTarget ? Type::ListStrong : Type::BodyStrong;
    return contentWidth(isNext ? (isLarge ? Type::Next : Type::Number) : usual, isLarge, true);
}

qreal Button::contentWidth(Type words, bool isLarge, bool hasKey) const {
    const bool isNext = m_kind == Kind::Next;
    const int cap = !isNext ? kKeyCap : isLarge ? kLargeKeyCap : kMiddleKeyCap;
    qreal width = text().isEmpty() ? 0 : std::ceil(widthOf(text(), words));
    const auto add = [&width](qreal part) { width += width > 0 ? part + kGap : part; };
    if (!m_iconName.isEmpty()) {
        add(isLarge ? kSpace32 : kIcon);
    }
    if (m_swatch.isValid()) {
        add(kIcon);
    }
    if (!m_secondText.isEmpty()) {
        add(std::ceil(widthOf(m_secondText, isNext ? Type::ListStrong : Type::Body)));
    }
    if (m_opensList) {
        add(kSmallIcon);
    }
    if (hasKey && !m_keyText.isEmpty()) {
        add(keyCapWidth(m_keyText, cap));
    }
    return width;
}

bool Button::showsLarge() const {
    return m_kind == Kind::Next && contentWidth(true) + 2 * kNextPadding <= width() / m_scale;
}

QSize Button::sizeHint() const {
    const qreal wanted = m_scale * (contentWidth(m_kind == Kind::Next) + 2 * padding());
    return {std::max(static_cast<int>(std::ceil(wanted)), kTarget), height()};
}

// Next breaks its words into two lines before it asks for more room.
qreal Button::leastWidth() const {
    if (m_mayShrink)
        return contentWidth(Type::SmallStrong, false, false) + 2 * kSpace4;
    if (m_kind != Kind::Next)
        return contentWidth(false) + 2 * padding();
    const qreal inOneLine = text().isEmpty() ? 0 : std::ceil(widthOf(text(), Type::Number));
    return m_scale *
           (contentWidth(false) - inOneLine + widthInTwoLines(text(), Type::Number) + 2 * padding());
}

QSize Button::minimumSizeHint() const {
    const qreal least = leastWidth();
    return {std::max(static_cast<int>(std::ceil(least)), kTarget), height()};
}

Button::Colours Button::colours() const {
    const Tokens& dyes = tokens();
    const bool isUnderHand = isDown() || underMouse();
    if (!isEnabled()) {
        if (m_kind == Kind::Quiet) {
            return {{}, {}, dyes.ink3, dyes.ink3, false};
        }
        return {dyes.sunk, dyes.edge, dyes.ink3, dyes.ink3, true};
    }
    if (m_kind == Kind::Primary || m_kind == Kind::Next) {
        return {isUnderHand ? dyes.indigoDeep : dyes.indigo, {}, dyes.onIndigo, dyes.onIndigo, false};
    }
    if (m_kind == Kind::Quiet) {
        const QColor words = isUnderHand ? dyes.indigoDeep : dyes.indigo;
        return {isUnderHand ? dyes.woad : QColor(), {}, words, words, false};
    }
    return {isDown() ? dyes.woad : isUnderHand ? dyes.sunk : dyes.card, dyes.edge, dyes.ink, dyes.ink, false};
}

void Button::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Colours dyed = colours();
    const bool isNext = m_kind == Kind::Next;
    const bool isLarge = showsLarge();
    painter.scale(m_scale, m_scale);
    const QRectF box(QPointF(), QSizeF(size()) / m_scale);
    paintBox(painter, box, isNext ? kNextRadius : kButtonRadius, dyed.ground, dyed.edge, 1.2, dyed.isDashed);

    const Type words = typeOfWords(isLarge);
    const bool hasKey = showsKey(words);
    const int cap = !isNext ? kKeyCap : isLarge ? kLargeKeyCap : kMiddleKeyCap;
    const qreal sign = isLarge ? kSpace32 : kIcon;
    const bool isSpread = isNext || !m_secondText.isEmpty() || m_isLeftAligned;
    qreal left = padding();
    qreal right = box.right() - padding();
    if (!isSpread) {
        const qreal wanted = contentWidth(words, false, hasKey);
        left = std::max<qreal>(std::min<qreal>(left, kSpace4), std::round((box.width() - wanted) / 2));
        right = left + wanted;
    }
    const auto row = [&](qreal x, qreal width, qreal high) {
        return QRectF(x, box.center().y() - high / 2, width, high);
    };

    // From the right end inwards: the key, the chevron, the second text.
    if (hasKey) {
        const qreal width = keyCapWidth(m_keyText, cap);
        // Quiet buttons keep their cap in ink, like every cap on a card.
        const QColor ink = m_kind == Kind::Quiet && isEnabled() ? tokens().ink : dyed.words;
        paintKeyCap(painter, row(right - width, width, cap), m_keyText, ink);
        right -= width + kGap;
    }
    if (m_opensList) {
        paintIcon(painter, row(right - kSmallIcon, kSmallIcon, kSmallIcon), QStringLiteral("chevron-down"),
                  dyed.sign);
        right -= kSmallIcon + kGap;
    }
    if (!m_secondText.isEmpty()) {
        const Type second = isNext ? Type::ListStrong : Type::Body;
        const qreal width = std::ceil(widthOf(m_secondText, second));
        paintLine(painter, row(right - width, width, box.height()), m_secondText, second, dyed.words);
    }

    // From the left: the icon or the shade, then the words.
    if (!m_iconName.isEmpty()) {
        paintIcon(painter, row(left, sign, sign), m_iconName, dyed.sign);
        left += sign + kGap;
    }
    if (m_swatch.isValid()) {
        paintSwatch(painter, row(left, kIcon, kIcon), m_swatch);
        left += kIcon + kGap;
    }
    paintWords(painter, row(left, right - left, box.height()), words, dyed.words);
}

void Button::paintWords(QPainter& painter, const QRectF& box, Type type, const QColor& ink) const {
    if (m_kind != Kind::Next || widthOf(text(), type) <= box.width()) {
        paintLine(painter, box, text(), type, ink);
        return;
    }
    painter.setFont(fontOf(type));
    painter.setPen(ink);
    painter.drawText(box, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap, text());
}

void Button::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        if (!event->isAutoRepeat()) {
            click();
        }
        event->accept();
        return;
    }
    // Qt would go to the next button by arrow, wherever it is; arrows are the lists' and scroll what is
    // about.
    if (event->key() == Qt::Key_Up || event->key() == Qt::Key_Down || event->key() == Qt::Key_Left ||
        event->key() == Qt::Key_Right) {
        event->ignore();
        return;
    }
    QPushButton::keyPressEvent(event);
}

void Button::enterEvent(QEnterEvent* event) {
    QPushButton::enterEvent(event);
    update();
}

void Button::leaveEvent(QEvent* event) {
    QPushButton::leaveEvent(event);
    update();
}

} // namespace holdfast::app
