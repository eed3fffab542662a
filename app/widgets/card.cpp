// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/card.h"

#include "app/theme/icons.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"

#include <QBoxLayout>
#include <QPainter>
#include <QPainterPath>

#include <cmath>

namespace holdfast::app {

// The title row: icon, title, note; the card's own buttons; the count.
class CardTitle : public QWidget {
public:
    explicit CardTitle(QWidget* parent)
        : QWidget(parent)
        , m_row(new QHBoxLayout(this)) {
        m_row->setContentsMargins(kCardPadding, 0, kCardPadding, 1);
        m_row->setSpacing(kSpace8);
        m_row->addStretch(1);
        setFixedHeight(kCardTitleHeight);
    }

    void setCount(const QString& count) {
        m_count = count;
        const int room =
            count.isEmpty() ? 0 : static_cast<int>(std::ceil(widthOf(count, Type::Small))) + kSpace12;
        m_row->setContentsMargins(kCardPadding, 0, kCardPadding + room, 1);
        update();
    }

    QSize minimumSizeHint() const override {
        return {static_cast<int>(std::ceil(wordsWidth())) + m_row->minimumSize().width(), height()};
    }

    QHBoxLayout* row() const { return m_row; }

    QString title;
    QString iconName;
    QString note;
    Role ink = &Tokens::ink;

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        const Tokens& dyes = tokens();
        const QRectF line(0, 0, width(), height() - 1);
        qreal x = kCardPadding;
        if (!iconName.isEmpty()) {
            paintIcon(painter, QRectF(x - 2, line.center().y() - 11, 22, 22), iconName, dyes.*ink);
            x += kIcon + 8;
        }
        paintLine(painter, QRectF(x, 0, line.width() - x, line.height()), title, Type::CardTitle, dyes.ink);
        if (!note.isEmpty()) {
            x += widthOf(title, Type::CardTitle) + kSpace8;
            paintLine(painter, QRectF(x, 1, line.width() - x, line.height()), note, Type::Small, dyes.ink2);
        }
        if (!m_count.isEmpty()) {
            paintLine(painter, line.adjusted(0, 0, -kCardPadding, 0), m_count, Type::Small, dyes.ink2,
                      Qt::AlignRight);
        }
        painter.fillRect(QRectF(0, height() - 1, width(), 1), dyes.thread);
    }

private:
    qreal wordsWidth() const {
        qreal wide = widthOf(title, Type::CardTitle) + (iconName.isEmpty() ? 0 : kIcon + 8);
        if (!note.isEmpty()) {
            wide += kSpace8 + widthOf(note, Type::Small);
        }
        return wide;
    }

    QHBoxLayout* m_row;
    QString m_count;
};

// Lies above what the card holds and keeps its corners round, so that rows may reach the edges. The card is
// on the window's ground, so the ground is what the corners are filled with.
class CardCorners : public QWidget {
public:
    explicit CardCorners(QWidget* parent)
        : QWidget(parent) {
        setAttribute(Qt::WA_TransparentForMouseEvents);
        setAttribute(Qt::WA_NoSystemBackground);
        setFocusPolicy(Qt::NoFocus);
    }

    int openFrom = 0;
    int openTo = 0;

    // Only the frame and the corners belong to this widget, so that a row's repaint does not go through it.
    void cut() {
        const QRect all = rect();
        QRegion kept(all);
        kept -= QRegion(all.adjusted(1, kCardRadius, -1, -kCardRadius));
        kept -= QRegion(all.adjusted(kCardRadius, 1, -kCardRadius, -1));
        setMask(kept);
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        const Tokens& dyes = tokens();
        QPainterPath outside;
        outside.addRect(QRectF(rect()));
        QPainterPath inside;
        inside.addRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), kCardRadius, kCardRadius);
        painter.fillPath(outside - inside, dyes.ground);
        paintOutline(painter, QRectF(rect()), kCardRadius, dyes.thread, 1);
        if (openTo > openFrom) {
            painter.fillRect(QRectF(openFrom, 0, openTo - openFrom, 1), dyes.card);
        }
    }
};

Card::Card(QWidget* parent)
    : QWidget(parent) {
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(1, 1, 1, 1);
    whole->setSpacing(0);
    m_title = new CardTitle(this);
    m_title->hide();
    whole->addWidget(m_title);
    m_content = new QVBoxLayout;
    m_content->setContentsMargins(0, 0, 0, 0);
    m_content->setSpacing(0);
    whole->addLayout(m_content, 1);
    m_corners = new CardCorners(this);
}

Card::Card(const QString& title, QWidget* parent)
    : Card(parent) {
    setTitle(title);
}

void Card::setTitle(const QString& title, const QString& iconName) {
    m_title->title = title;
    m_title->iconName = iconName;
    m_title->setVisible(!title.isEmpty());
    m_title->updateGeometry();
    m_title->update();
    setAccessibleName(title);
}

void Card::setTitleInk(Role ink) {
    m_title->ink = ink;
    m_title->update();
}

void Card::setNote(const QString& note) {
    m_title->note = note;
    m_title->updateGeometry();
    m_title->update();
}

void Card::setCount(const QString& count) {
    m_title->setCount(count);
}

void Card::setTitleHeight(int height) {
    m_title->setFixedHeight(height);
}

void Card::showTitle(bool isShown) {
    m_title->setVisible(isShown && !m_title->title.isEmpty());
}

void Card::addToTitle(QWidget* widget) {
    m_title->row()->addWidget(widget, 0, Qt::AlignVCenter);
}

void Card::openTop(int from, int to) {
    m_corners->openFrom = from;
    m_corners->openTo = to;
    m_corners->update();
}

void Card::pad(int horizontal, int vertical, int spacing) {
    m_content->setContentsMargins(horizontal - 1, vertical - 1, horizontal - 1, vertical - 1);
    m_content->setSpacing(spacing);
}

void Card::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintBox(painter, QRectF(rect()), kCardRadius, tokens().card, tokens().thread, 1);
}

void Card::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    m_corners->setGeometry(rect());
    m_corners->cut();
    m_corners->raise();
}

bool Card::event(QEvent* event) {
    // What is put into the card later must stay below the corners.
    if (event->type() == QEvent::ChildPolished && m_corners != nullptr) {
        m_corners->raise();
    }
    return QWidget::event(event);
}

} // namespace holdfast::app
