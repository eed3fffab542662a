// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/field.h"

#include "app/theme/focus_ring.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QFocusEvent>
#include <QFontMetricsF>
#include <QLineEdit>
#include <QMouseEvent>
#include <QPainter>
#include <QShortcut>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kLeastHeight = 44;
constexpr int kPadding = 12;
constexpr int kInsideGap = 8;
constexpr int kShortestEditor = 44;

// So that the cursor is at the beginning, and that is what is seen of a long text.
void selectFromItsEnd(QLineEdit& editor) {
    const auto all = static_cast<int>(editor.text().size());
    editor.setSelection(all, -all);
}

class FieldEditor : public QLineEdit {
public:
    using QLineEdit::QLineEdit;

protected:
    void focusInEvent(QFocusEvent* event) override {
        QLineEdit::focusInEvent(event);
        if (event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason)
            selectFromItsEnd(*this);
    }
    void focusOutEvent(QFocusEvent* event) override {
        QLineEdit::focusOutEvent(event);
        if (event->reason() != Qt::ActiveWindowFocusReason && event->reason() != Qt::PopupFocusReason)
            setCursorPosition(0);
    }
};

int fieldHeight() {
    return std::max(kLeastHeight, lineHeight(Type::BodyStrong) + 2 * kPadding);
}

int wholePixels(qreal width) {
    return static_cast<int>(std::ceil(width));
}

} // namespace

Field::Field(const QString& label, QWidget* parent)
    : QWidget(parent)
    , m_label(label)
    , m_editor(new FieldEditor(this))
    , m_frame(new QWidget(this)) {
    m_editor->setFrame(false);
    updateFontWeight();
    m_editor->setAccessibleName(label);
    m_frame->setAttribute(Qt::WA_TransparentForMouseEvents);
    m_frame->lower();
    giveFocusRing(m_editor, m_frame);
    setFocusProxy(m_editor);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setCursor(Qt::IBeamCursor);
    connect(m_editor, &QLineEdit::textChanged, this, &Field::updateFontWeight);
    connect(m_editor, &QLineEdit::textEdited, this, &Field::edited);
    connect(m_editor, &QLineEdit::editingFinished, this, &Field::finished);
    connect(m_editor, &QLineEdit::returnPressed, this, &Field::accepted);
    applyPalette();
}

// A line that has the keyboard when it goes says that editing is finished; nobody is left to hear it.
Field::~Field() {
    m_editor->disconnect(this);
}

QString Field::text() const {
    return m_editor->text();
}

void Field::setText(const QString& text) {
    m_editor->setText(text);
    if (!m_editor->hasFocus())
        m_editor->setCursorPosition(0); // a text too long for the line shows its beginning
}

void Field::setLabel(const QString& label) {
    m_label = label;
    m_editor->setAccessibleName(label);
    arrange();
}

void Field::setPlaceholder(const QString& placeholder) {
    m_editor->setPlaceholderText(placeholder);
    if (m_label.isEmpty()) {
        m_editor->setAccessibleName(placeholder);
    }
}

void Field::setSuffix(const QString& suffix) {
    m_suffix = suffix;
    arrange();
}

void Field::setIconName(const QString& iconName) {
    m_iconName = iconName;
    arrange();
}

void Field::setRightAligned(bool isRightAligned) {
    m_editor->setAlignment(isRightAligned ? Qt::AlignRight | Qt::AlignVCenter
                                          : Qt::AlignLeft | Qt::AlignVCenter);
}

void Field::setReadOnly(bool isReadOnly) {
    m_editor->setReadOnly(isReadOnly);
    update();
}

void Field::setError(const QString& words) {
    m_error = words;
    m_editor->setAccessibleDescription(words);
    arrange();
}

void Field::setKey(const QKeySequence& keys) {
    showKey(keys);
    delete m_shortcut;
    m_shortcut = nullptr;
    if (!keys.isEmpty()) {
        m_shortcut = new QShortcut(keys, this);
        connect(m_shortcut, &QShortcut::activated, this, [this] {
            m_editor->setFocus(Qt::ShortcutFocusReason);
            selectAll();
        });
    }
}

void Field::showKey(const QKeySequence& keys) {
    m_keyText = keyCapText(keys);
    arrange();
}

void Field::selectAll() {
    selectFromItsEnd(*m_editor);
}

// Bold once text is typed.
void Field::updateFontWeight() {
    m_editor->setFont(fontOf(m_editor->text().isEmpty() ? Type::Body : Type::BodyStrong));
}

QRect Field::frame() const {
    return {0, 0, width(), fieldHeight()};
}

QRect Field::errorBox(int width) const {
    if (m_error.isEmpty()) {
        return {};
    }
    const QFontMetricsF metrics(fontOf(Type::SmallStrong));
    const int left = kSmallIcon + 6;
    const QRectF words = metrics.boundingRect(QRectF(0, 0, std::max(width - left, kShortestEditor), 1000),
                                              Qt::TextWordWrap, m_error);
    const int lines = std::max(1, static_cast<int>(std::lround(words.height() / metrics.lineSpacing())));
    return {left, fieldHeight() + 6, width - left, lines * lineHeight(Type::SmallStrong)};
}

QSize Field::sizeHint() const {
    const int wide = std::max(width(), minimumSizeHint().width());
    const int below = m_error.isEmpty() ? 0 : errorBox(wide).bottom() + 1 - fieldHeight();
    return {minimumSizeHint().width() + 60, fieldHeight() + below};
}

QSize Field::minimumSizeHint() const {
    int wide = 2 * kPadding + kShortestEditor;
    if (!m_label.isEmpty()) {
        wide += wholePixels(widthOf(m_label, Type::Small)) + kInsideGap;
    }
    if (!m_iconName.isEmpty()) {
        wide += kIcon + kInsideGap;
    }
    if (!m_suffix.isEmpty()) {
        wide += wholePixels(widthOf(m_suffix, Type::Support)) + kInsideGap;
    }
    if (!m_keyText.isEmpty()) {
        wide += wholePixels(keyCapSize(m_keyText).width()) + kInsideGap;
    }
    return {wide, fieldHeight()};
}

void Field::arrange() {
    const QRect framed = frame();
    m_frame->setGeometry(framed);
    int left = kPadding;
    int right = framed.width() - kPadding;
    if (!m_iconName.isEmpty()) {
        left += kIcon + kInsideGap;
    }
    if (!m_label.isEmpty()) {
        left += wholePixels(widthOf(m_label, Type::Small)) + kInsideGap;
    }
    if (!m_keyText.isEmpty()) {
        right -= wholePixels(keyCapSize(m_keyText).width()) + kInsideGap;
    }
    if (!m_suffix.isEmpty()) {
        right -= wholePixels(widthOf(m_suffix, Type::Support)) + kInsideGap;
    }
    // A line edit keeps two pixels of margin of its own on each side.
    m_editor->setGeometry(left - 2, 2, std::max(right - left, 8) + 4, fieldHeight() - 4);
    updateGeometry();
    update();
}

void Field::applyPalette() {
    QPalette dyed = m_editor->palette();
    dyed.setColor(QPalette::Text, tokens().ink);
    dyed.setColor(QPalette::PlaceholderText, tokens().ink3);
    dyed.setColor(QPalette::Highlight, tokens().woad);
    dyed.setColor(QPalette::HighlightedText, tokens().ink);
    m_editor->setPalette(dyed);
}

void Field::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

void Field::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        applyPalette();
    }
    if (event->type() == QEvent::EnabledChange) {
        update();
    }
}

void Field::mousePressEvent(QMouseEvent* event) {
    if (frame().contains(event->position().toPoint())) {
        m_editor->setFocus(Qt::MouseFocusReason);
    }
}

void Field::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    const QRectF framed(frame());
    const bool isWrong = !m_error.isEmpty();
    const bool canEdit = isEnabled() && !m_editor->isReadOnly();
    paintBox(painter, framed, kButtonRadius, canEdit ? dyes.card : dyes.sunk,
             isWrong ? dyes.madder : dyes.edge, isWrong ? 2 : 1.2, !canEdit);
    const auto row = [&](qreal x, qreal width, qreal high) {
        return QRectF(x, framed.center().y() - high / 2, width, high);
    };
    qreal left = kPadding;
    if (!m_iconName.isEmpty()) {
        paintIcon(painter, row(left, kIcon, kIcon), m_iconName, dyes.ink);
        left += kIcon + kInsideGap;
    }
    paintLine(painter, row(left, framed.width(), framed.height()), m_label, Type::Small, dyes.ink2);
    qreal right = framed.right() - kPadding;
    if (!m_keyText.isEmpty()) {
        const QSizeF cap = keyCapSize(m_keyText);
        paintKeyCap(painter, row(right - cap.width(), cap.width(), cap.height()), m_keyText, dyes.ink);
        right -= std::ceil(cap.width()) + kInsideGap;
    }
    if (!m_suffix.isEmpty()) {
        paintLine(painter, row(0, right, framed.height()), m_suffix, Type::Support, dyes.ink2,
                  Qt::AlignRight);
    }
    if (isWrong) {
        const QRect words = errorBox(width());
        paintIcon(painter, QRectF(0, words.top() + 1, kSmallIcon, kSmallIcon), QStringLiteral("caution"),
                  dyes.madder);
        painter.setFont(fontOf(Type::SmallStrong));
        painter.setPen(dyes.madder);
        painter.drawText(QRectF(words), Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop, m_error);
    }
}

} // namespace holdfast::app
