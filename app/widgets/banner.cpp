// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/banner.h"

#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/text_runs.h"
#include "app/theme/type.h"
#include "app/widgets/button.h"

#include <QPainter>
#include <QTextLayout>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kTextLeft = 38;
constexpr int kTextRight = 12;
constexpr int kTextTop = 8;
constexpr int kSign = 18;
constexpr qreal kLeastBeside = 200; // for words next to an action, where they take several lines

QString iconOf(Tone tone) {
    switch (tone) {
    case Tone::Held:
        return QStringLiteral("hold");
    case Tone::Caution:
        return QStringLiteral("caution");
    case Tone::Ready:
        return QStringLiteral("done");
    case Tone::Working:
        return QStringLiteral("clock");
    case Tone::Plain:
        return QStringLiteral("tag");
    }
    return {};
}

} // namespace

Banner::Banner(QWidget* parent)
    : QWidget(parent)
    , m_target(kTarget) {
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

Banner::Banner(Tone tone, const QString& lead, const QString& text, QWidget* parent)
    : Banner(parent) {
    set(tone, lead, text);
}

void Banner::set(Tone tone, const QString& lead, const QString& text, const QString& iconName) {
    m_tone = tone;
    m_lead = lead;
    m_text = text;
    m_iconName = iconName.isEmpty() ? iconOf(tone) : iconName;
    setAccessibleName(lead + QStringLiteral(" ") + text);
    arrange();
}

void Banner::setAction(const QString& words, const QString& iconName) {
    if (words.isEmpty()) {
        if (m_action) {
            m_action->hide();
            m_action->deleteLater(); // it may be what was pressed
        }
        m_action = nullptr;
        m_actionKey = {};
    } else {
        if (m_action == nullptr) {
            m_action = new Button(words, Button::Kind::Plain, this);
            m_action->setObjectName(QStringLiteral("bannerAction"));
            m_action->setTargetHeight(m_target);
            connect(m_action, &QAbstractButton::clicked, this, &Banner::acted);
            m_action->show();
        }
        m_action->setText(words);
        m_action->setIconName(iconName);
    }
    arrange();
}

void Banner::setActionKey(const QKeySequence& key) {
    if (!m_action || m_actionKey == key)
        return;
    m_actionKey = key;
    m_action->setKey(key);
    arrange();
}

void Banner::setTargetHeight(int height) {
    m_target = height;
    if (m_action)
        m_action->setTargetHeight(height);
    arrange();
}

qreal Banner::layText(QTextLayout& layout, qreal width) const {
    const QString between = m_lead.isEmpty() || m_text.isEmpty() ? QString() : QStringLiteral(" ");
    const QString lead = withRunsApart(m_lead);
    layout.setText(lead + between + withRunsApart(m_text));
    layout.setFont(fontOf(Type::Support));
    QTextCharFormat strong;
    strong.setFont(fontOf(Type::SupportStrong));
    layout.setFormats({{0, static_cast<int>(lead.size()), strong}});
    const qreal line = lineHeight(Type::Support);
    qreal height = 0;
    layout.beginLayout();
    for (QTextLine laid = layout.createLine(); laid.isValid(); laid = layout.createLine()) {
        laid.setLineWidth(std::max(width, 40.0));
        laid.setPosition(QPointF(0, height + (line - laid.height()) / 2));
        height += line;
    }
    layout.endLayout();
    return std::max(height, line);
}

qreal Banner::naturalWidth() const {
    const qreal gap = m_lead.isEmpty() || m_text.isEmpty() ? 0 : widthOf(QStringLiteral(" "), Type::Support);
    return std::ceil(widthOf(m_lead, Type::SupportStrong) + gap + widthOf(m_text, Type::Support)) + 1;
}

qreal Banner::wordsHeight(qreal width) const {
    QTextLayout layout;
    return std::ceil(layText(layout, width));
}

qreal Banner::roomBeside(int width) const {
    return width - kTextLeft - kSpace12 - m_action->sizeHint().width() - kSpace8;
}

// The action is at the right where all words fit on one line next to it, or where that is lower than having
// it below them.
bool Banner::hasActionBeside(int width) const {
    if (m_action == nullptr)
        return false;
    const qreal room = roomBeside(width);
    if (naturalWidth() <= room)
        return true;
    return room >= kLeastBeside && std::max<qreal>(wordsHeight(room), m_target) <
                                       wordsHeight(width - kTextLeft - kTextRight) + m_target + kSpace12;
}

int Banner::heightForWidth(int width) const {
    if (hasActionBeside(width))
        return std::max(m_target + 2 * kSpace8,
                        2 * kTextTop + static_cast<int>(wordsHeight(roomBeside(width))));
    const int below = m_action == nullptr ? 0 : m_target + kSpace12;
    return 2 * kTextTop + static_cast<int>(wordsHeight(width - kTextLeft - kTextRight)) + below;
}

QSize Banner::sizeHint() const {
    const int wide = width() > 40 ? width() : 320;
    return {wide, heightForWidth(wide)};
}

QSize Banner::minimumSizeHint() const {
    const int least = m_action == nullptr ? 120 : kTextLeft + m_action->sizeHint().width() + kTextRight;
    return {std::max(120, least), 2 * kTextTop + lineHeight(Type::Support)};
}

void Banner::arrange() {
    if (m_action != nullptr) {
        const QSize size(m_action->sizeHint().width(), m_target);
        const QPoint beside(width() - kSpace8 - size.width(), (height() - m_target) / 2);
        const QPoint below(kTextLeft, height() - m_target - kSpace12);
        m_action->setGeometry(QRect(hasActionBeside(width()) ? beside : below, size));
    }
    updateGeometry();
    update();
}

void Banner::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

void Banner::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const QColor ink = toneInk(m_tone);
    paintBox(painter, QRectF(rect()), kButtonRadius, toneGround(m_tone), {});
    const bool isBeside = hasActionBeside(width());
    QTextLayout layout;
    const qreal words = layText(layout, isBeside ? std::min(naturalWidth(), roomBeside(width()))
                                                 : width() - kTextLeft - kTextRight);
    // Short banners that were given more height keep their words in the middle; others start at the top.
    const qreal top = m_action == nullptr || isBeside ? std::round((height() - words) / 2) : kTextTop;
    const qreal line = lineHeight(Type::Support);
    paintIcon(painter, QRectF(11, top + (line - kSign) / 2, kSign, kSign), m_iconName, ink);
    painter.setPen(ink);
    layout.draw(&painter, QPointF(kTextLeft, top));
}

} // namespace holdfast::app
