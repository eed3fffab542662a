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

Type typeOf(KeyHint::Order order) {
    return order == KeyHint::Order::WordsThenKey ? Type::BodyStrong : Type::Small;
}

} // namespace

KeyHint::KeyHint(const QString& words, const QKeySequence& keys, Order order, QWidget* parent)
    : QWidget(parent)
    , m_keys(keys)
    , m_order(order) {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
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
    delete m_shortcut;
    m_shortcut = new QShortcut(m_keys, this);
    connect(m_shortcut, &QShortcut::activated, section, [this, section] {
        section->setFocus(Qt::ShortcutFocusReason);
        emit jumped();
    });
}

QSize KeyHint::sizeHint() const {
    qreal wide = widthOf(m_words, typeOf(m_order));
    if (!m_keys.isEmpty()) {
        wide += kBesideCap + keyCapSize(keyCapText(m_keys)).width();
    }
    return {static_cast<int>(std::ceil(wide)), std::max(kKeyCap, lineHeight(Type::Body))};
}

void KeyHint::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    const QRectF box(rect());
    const Type type = typeOf(m_order);
    const QString key = keyCapText(m_keys);
    const QSizeF cap = m_keys.isEmpty() ? QSizeF(0, 0) : keyCapSize(key);
    const bool isName = m_order == Order::WordsThenKey;
    const qreal words = std::ceil(widthOf(m_words, type));
    const qreal capLeft = isName ? words + kBesideCap : 0;
    const qreal wordsLeft = isName || cap.isEmpty() ? 0 : cap.width() + kBesideCap;
    if (!cap.isEmpty()) {
        paintKeyCap(painter, QRectF(QPointF(capLeft, box.center().y() - cap.height() / 2), cap), key,
                    dyes.ink);
    }
    paintLine(painter, QRectF(wordsLeft, 0, words, box.height()), m_words, type,
              isName ? dyes.ink : dyes.ink2);
}

} // namespace holdfast::app
