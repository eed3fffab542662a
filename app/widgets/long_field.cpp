// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/long_field.h"

#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QAbstractTextDocumentLayout>
#include <QFrame>
#include <QKeyEvent>
#include <QMimeData>
#include <QPainter>
#include <QPlainTextEdit>
#include <QTextDocument>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kTextPadding = 10;
constexpr int kFewestLines = 2;
constexpr int kMostLines = 5;

// Enter belongs to the form, and what is pasted comes as one line.
class OneLineText : public QPlainTextEdit {
public:
    using QPlainTextEdit::QPlainTextEdit;

protected:
    void keyPressEvent(QKeyEvent* event) override {
        if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
            event->ignore();
        else
            QPlainTextEdit::keyPressEvent(event);
    }
    void insertFromMimeData(const QMimeData* source) override {
        insertPlainText(source->text().simplified());
    }
};

} // namespace

LongField::LongField(const QString& accessibleName, QWidget* parent)
    : QWidget(parent)
    , m_editor(new OneLineText(this))
    , m_frame(new QWidget(this)) {
    m_editor->setFrameShape(QFrame::NoFrame);
    m_editor->setTabChangesFocus(true);
    m_editor->setWordWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    m_editor->setVerticalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    m_editor->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_editor->document()->setDocumentMargin(0);
    m_editor->setFont(fontOf(Type::Body));
    m_editor->setAccessibleName(accessibleName);
    m_editor->viewport()->setAutoFillBackground(false);
    m_frame->setAttribute(Qt::WA_TransparentForMouseEvents);
    m_frame->lower();
    giveFocusRing(m_editor, m_frame);
    setFocusProxy(m_editor);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(m_editor, &QPlainTextEdit::textChanged, this, [this] {
        arrange();
        if (!m_isQuiet)
            emit edited(text());
    });
    applyPalette();
}

LongField::~LongField() {
    m_editor->disconnect(this);
}

QString LongField::text() const {
    return m_editor->toPlainText();
}

void LongField::setText(const QString& text) {
    m_isQuiet = true;
    m_editor->setPlainText(text);
    m_isQuiet = false;
}

void LongField::setPlaceholder(const QString& placeholder) {
    m_editor->setPlaceholderText(placeholder);
}

void LongField::selectAll() {
    m_editor->selectAll();
}

QSize LongField::sizeHint() const {
    return {200, m_lines * lineHeight(Type::Body) + 2 * kTextPadding};
}

void LongField::arrange() {
    m_frame->setGeometry(rect());
    m_editor->setGeometry(rect().adjusted(kTextPadding, kTextPadding, -kTextPadding, -kTextPadding));
    // The layout of plain text counts its height in lines.
    const int lines = static_cast<int>(m_editor->document()->documentLayout()->documentSize().height());
    m_lines = std::clamp(lines, kFewestLines, kMostLines);
    updateGeometry();
    update();
}

void LongField::applyPalette() {
    QPalette dyed = m_editor->palette();
    dyed.setColor(QPalette::Base, Qt::transparent);
    dyed.setColor(QPalette::Text, tokens().ink);
    dyed.setColor(QPalette::PlaceholderText, tokens().ink3);
    dyed.setColor(QPalette::Highlight, tokens().woad);
    dyed.setColor(QPalette::HighlightedText, tokens().ink);
    m_editor->setPalette(dyed);
}

void LongField::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

void LongField::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange)
        applyPalette();
}

void LongField::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintBox(painter, QRectF(rect()), kButtonRadius, tokens().card, tokens().edge, 1.2);
}

} // namespace holdfast::app
