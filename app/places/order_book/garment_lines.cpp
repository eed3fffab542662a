#include "app/places/order_book/garment_lines.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/places/order_book/where_it_is.h"
#include "app/theme/drawings.h"
#include "app/theme/focus_ring.h"
#include "app/theme/icons.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"

#include <QFontMetricsF>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

namespace holdfast::app {

namespace {

constexpr int kPlain = 60;
constexpr int kWithFreeing = 88;
constexpr qreal kPad = 16;
constexpr qreal kPicture = 40;
constexpr qreal kWordsAt = 72;

QString fitted(const QString& text, Type type, qreal width) {
    return QFontMetricsF(fontOf(type)).elidedText(text, Qt::ElideRight, width);
}

} // namespace

GarmentLines::GarmentLines(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("garmentLines"));
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    giveNoFocusRing(this);
    setAccessibleName(tr("Garments of the order"));
}

void GarmentLines::show(const OrderView& view) {
    m_view = view;
    m_lines.clear();
    const ShopFacts& facts = view.shop->facts;
    for (const Garment* garment : view.garments()) {
        const WhereWords where = whereIsGarment(*view.shop, *garment);
        Line line{garment,
                  garmentName(facts, *garment),
                  decalWords(*garment),
                  moneyBare(garment->price, facts.settings.currency),
                  where.words,
                  where.iconName,
                  {},
                  where.tone == Tone::Plain ? &Tokens::ink2 : toneRole(where.tone),
                  std::nullopt,
                  {}};
        if (const Finding* hold = view.shop->of(garment->id).firstHold(); hold && !hold->frees.empty()) {
            line.act = hold->frees.front();
            line.free = words(freeingWords(hold->frees.front()));
            line.matter = Matter::of(*hold, *garment);
        }
        m_lines.push_back(std::move(line));
    }
    m_current = std::clamp(m_current, 0, std::max(0, static_cast<int>(m_lines.size()) - 1));
    say();
    updateGeometry();
    update();
}

std::optional<GarmentId> GarmentLines::current() const {
    if (m_lines.empty())
        return std::nullopt;
    return m_lines[static_cast<std::size_t>(m_current)].garment->id;
}

int GarmentLines::heightOf(const Line& line) const {
    return line.act ? kWithFreeing : kPlain;
}

QSize GarmentLines::sizeHint() const {
    int height = 0;
    for (const Line& line : m_lines)
        height += heightOf(line);
    return {360, height};
}

int GarmentLines::lineAt(QPoint at) const {
    int top = 0;
    for (std::size_t line = 0; line < m_lines.size(); ++line) {
        top += heightOf(m_lines[line]);
        if (at.y() < top)
            return static_cast<int>(line);
    }
    return -1;
}

QRectF GarmentLines::freeBox(std::size_t line) const {
    qreal top = 0;
    for (std::size_t each = 0; each < line; ++each)
        top += heightOf(m_lines[each]);
    const qreal wide = widthOf(m_lines[line].free, Type::SupportStrong) + 20 +
                       (static_cast<int>(line) == m_current ? keyCapSize(tr("Enter")).width() + 8 : 0);
    return {kWordsAt - 4, top + 56, wide, 26};
}

void GarmentLines::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    qreal top = 0;
    for (std::size_t at = 0; at < m_lines.size(); ++at) {
        const Line& line = m_lines[at];
        const QRectF box(0, top, width(), heightOf(line));
        const bool isCurrent = hasFocus() && static_cast<int>(at) == m_current;
        painter.fillRect(box, isCurrent ? dyes.woad : dyes.card);
        painter.fillRect(QRectF(0, box.bottom() - 1, width(), 1), dyes.thread);
        paintGarment(painter, QRectF(kPad, top + 8, kPicture, 44),
                     outlineName(m_view->shop->facts, *line.garment),
                     clothOf(m_view->shop->facts, *line.garment));

        const QRectF upper(kWordsAt, top + 9, width() - kWordsAt - kPad, 22);
        const QRectF lower(kWordsAt, top + 31, upper.width(), 20);
        paintLine(painter, upper, line.price, Type::BodyStrong, dyes.ink, Qt::AlignRight);
        const QString number = garmentNumber(m_view->shop->facts, *line.garment) + u' ';
        const qreal behind =
            paintRun(painter, {upper.left(), upper.bottom() - 6}, number, Type::BodyStrong, dyes.ink);
        const qreal nameRoom = upper.right() - widthOf(line.price, Type::BodyStrong) - 12 - behind;
        paintRun(painter, {behind, upper.bottom() - 6}, fitted(line.name, Type::Body, nameRoom), Type::Body,
                 dyes.ink);

        const Type whereType = line.whereInk == &Tokens::ink2 ? Type::Small : Type::SmallStrong;
        const qreal whereWide = widthOf(line.where, whereType);
        paintLine(painter, lower, line.where, whereType, dyes.*line.whereInk, Qt::AlignRight);
        paintIcon(painter, QRectF(lower.right() - whereWide - 20, lower.center().y() - 8, 16, 16),
                  line.whereIcon, dyes.*line.whereInk);
        const qreal decalRoom = lower.width() - whereWide - 32;
        if (decalRoom > 40)
            paintLine(painter, lower, fitted(line.decals, Type::Small, decalRoom), Type::Small, dyes.ink2);
        if (line.act) {
            const QRectF free = freeBox(at);
            paintBox(painter, free, kChipRadius, dyes.card, dyes.edge);
            paintLine(painter, free.adjusted(10, 0, 0, 0), line.free, Type::SupportStrong, dyes.indigo);
            if (static_cast<int>(at) == m_current) {
                const QSizeF cap = keyCapSize(tr("Enter"));
                paintKeyCap(painter,
                            QRectF(free.right() - cap.width() - 3, free.center().y() - cap.height() / 2,
                                   cap.width(), cap.height()),
                            tr("Enter"), dyes.ink2);
            }
        }
        top += heightOf(line);
    }
}

void GarmentLines::mousePressEvent(QMouseEvent* event) {
    const int line = lineAt(event->pos());
    if (line < 0)
        return;
    m_current = line;
    say();
    update();
    if (m_lines[static_cast<std::size_t>(line)].act &&
        freeBox(static_cast<std::size_t>(line)).contains(event->position()))
        freeCurrent();
}

void GarmentLines::keyPressEvent(QKeyEvent* event) {
    const int last = static_cast<int>(m_lines.size()) - 1;
    switch (event->key()) {
    case Qt::Key_Up:
    case Qt::Key_Down:
        m_current = std::clamp(m_current + (event->key() == Qt::Key_Up ? -1 : 1), 0, std::max(0, last));
        say();
        update();
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        freeCurrent();
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void GarmentLines::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    update();
}

void GarmentLines::freeCurrent() {
    if (m_lines.empty())
        return;
    const Line& line = m_lines[static_cast<std::size_t>(m_current)];
    if (line.act)
        emit freeAsked(*line.act, line.matter);
}

void GarmentLines::say() {
    if (m_lines.empty())
        return;
    const Line& line = m_lines[static_cast<std::size_t>(m_current)];
    setAccessibleDescription(line.name + u' ' + line.decals + u' ' + line.where + u' ' + line.free);
}

} // namespace holdfast::app
