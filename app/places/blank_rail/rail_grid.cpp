#include "app/places/blank_rail/rail_grid.h"

#include "app/desk/formats.h"
#include "app/theme/drawings.h"
#include "app/theme/focus_ring.h"
#include "app/theme/icons.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"

#include <QFontMetricsF>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollArea>

namespace holdfast::app {

namespace {

constexpr int kHeadHeight = 36;
constexpr int kRowHeight = 62;
constexpr qreal kColourWidth = 134;
constexpr qreal kAllWidth = 92;

// A sign and a number; returns x behind it.
qreal paintCount(QPainter& painter, qreal x, qreal baseline, const QString& iconName, std::int64_t count,
                 Type type, const QColor& ink) {
    paintIcon(painter, QRectF(x, baseline - 13, 15, 15), iconName, ink);
    return paintRun(painter, {x + 17, baseline}, QString::number(count), type, ink) + 10;
}

} // namespace

RailColumns::RailColumns(qreal width, std::size_t sizes)
    : colour(kColourWidth)
    , each((width - kColourWidth - kAllWidth) / static_cast<qreal>(std::max<std::size_t>(1, sizes)))
    , all(width - kAllWidth) {}

RailHeads::RailHeads(QWidget* parent)
    : QWidget(parent) {
    setFixedHeight(kHeadHeight);
}

void RailHeads::show(const StyleRail* rail) {
    m_sizes.clear();
    if (rail)
        for (const std::string& size : rail->style->sizes)
            m_sizes << words(size);
    update();
}

void RailHeads::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    painter.fillRect(rect(), dyes.card);
    painter.fillRect(QRectF(0, height() - 1, width(), 1), dyes.thread);
    const RailColumns columns(width(), static_cast<std::size_t>(m_sizes.size()));
    paintLine(painter, QRectF(14, 0, columns.colour, height()), tr("Colour"), Type::SupportStrong, dyes.ink);
    for (int size = 0; size < m_sizes.size(); ++size)
        paintLine(painter, QRectF(columns.left(static_cast<std::size_t>(size)), 0, columns.each, height()),
                  m_sizes[size], Type::SupportStrong, dyes.ink, Qt::AlignHCenter);
    paintLine(painter, QRectF(columns.all, 0, kAllWidth, height()), tr("All"), Type::SupportStrong, dyes.ink,
              Qt::AlignHCenter);
}

RailGrid::RailGrid(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("railGrid"));
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    giveNoFocusRing(this);
    setAccessibleName(tr("Blanks by colour and size"));
}

void RailGrid::show(const StyleRail* rail, const std::map<RailSpot, std::int64_t>& inWash) {
    m_rows.clear();
    m_sizes.clear();
    m_inWash = inWash;
    if (rail) {
        m_style = rail->style->id;
        m_outline = words(rail->style->outline);
        m_sizes = rail->style->sizes;
        for (std::size_t colour = 0; colour < rail->cells.size(); ++colour)
            m_rows.push_back({rail->style->colours[colour], rail->cells[colour], rail->byColour[colour]});
    }
    m_row = std::clamp(m_row, 0, std::max(0, static_cast<int>(m_rows.size()) - 1));
    m_size = std::clamp(m_size, 0, std::max(0, static_cast<int>(m_sizes.size()) - 1));
    say();
    updateGeometry();
    update();
}

std::optional<RailSpot> RailGrid::current() const {
    if (m_rows.empty() || m_sizes.empty())
        return std::nullopt;
    return RailSpot{m_style, m_sizes[static_cast<std::size_t>(m_size)],
                    m_rows[static_cast<std::size_t>(m_row)].colour.id};
}

void RailGrid::setCurrent(const RailSpot& spot) {
    for (std::size_t row = 0; row < m_rows.size(); ++row)
        if (m_rows[row].colour.id == spot.colour)
            m_row = static_cast<int>(row);
    for (std::size_t size = 0; size < m_sizes.size(); ++size)
        if (m_sizes[size] == spot.size)
            m_size = static_cast<int>(size);
    say();
    update();
}

QSize RailGrid::sizeHint() const {
    return {700, kRowHeight * static_cast<int>(m_rows.size())};
}

void RailGrid::paintEvent(QPaintEvent* event) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    const RailColumns columns(width(), m_sizes.size());
    painter.fillRect(rect(), dyes.card);
    painter.fillRect(QRectF(columns.all, 0, kAllWidth, height()), dyes.sunk);
    for (std::size_t row = 0; row < m_rows.size(); ++row) {
        const QRectF line(0, static_cast<qreal>(row) * kRowHeight, width(), kRowHeight);
        if (!line.intersects(QRectF(event->rect())))
            continue;
        paintColour(painter, line, m_rows[row]);
        for (std::size_t size = 0; size < m_sizes.size(); ++size) {
            const QRectF box(columns.left(size), line.top(), columns.each, kRowHeight);
            painter.fillRect(QRectF(box.left(), box.top(), 1, box.height()), dyes.thread);
            const auto chosen = m_inWash.find({m_style, m_sizes[size], m_rows[row].colour.id});
            paintCell(painter, box, m_rows[row].cells[size], chosen == m_inWash.end() ? 0 : chosen->second,
                      static_cast<int>(row) == m_row && static_cast<int>(size) == m_size);
        }
        const RailCount& sum = m_rows[row].sum;
        const QRectF all(columns.all, line.top(), kAllWidth, kRowHeight);
        const QString washed = QString::number(sum.washed);
        const QString rest =
            sum.unwashed + sum.drying > 0 ? tr(" + %1").arg(sum.unwashed + sum.drying) : QString();
        const qreal wide = widthOf(washed, Type::BodyStrong) + widthOf(rest, Type::Small);
        const qreal behind = paintRun(painter, {all.center().x() - wide / 2, all.top() + 27}, washed,
                                      Type::BodyStrong, dyes.ink);
        paintRun(painter, {behind, all.top() + 27}, rest, Type::Small, dyes.ink2);
        if (sum.kept() > 0)
            paintLine(painter, QRectF(all.left(), all.top() + 33, kAllWidth, 20),
                      tr("%1 kept").arg(sum.kept()), Type::Small, dyes.ink2, Qt::AlignHCenter);
        painter.fillRect(QRectF(0, line.bottom() - 1, width(), 1), dyes.thread);
    }
    // The current cell's frame lies over its neighbours' lines.
    if (!m_rows.empty() && !m_sizes.empty()) {
        const QRectF box(columns.left(static_cast<std::size_t>(m_size)), m_row * kRowHeight, columns.each + 1,
                         kRowHeight);
        paintOutline(painter, box, 0, hasFocus() ? dyes.indigo : dyes.edge, hasFocus() ? 3 : 2);
    }
}

void RailGrid::paintColour(QPainter& painter, const QRectF& box, const Row& row) const {
    const Tokens& dyes = tokens();
    paintGarment(painter, QRectF(12, box.top() + 12, 34, 38), m_outline, colourOf(row.colour.rgb));
    const QString name = QFontMetricsF(fontOf(Type::SupportStrong))
                             .elidedText(words(row.colour.name), Qt::ElideRight, kColourWidth - 62);
    paintLine(painter, QRectF(56, box.top(), kColourWidth - 60, box.height()), name, Type::SupportStrong,
              dyes.ink);
}

void RailGrid::paintCell(QPainter& painter, const QRectF& box, const RailCount& count, std::int64_t inWash,
                         bool isCurrent) const {
    const Tokens& dyes = tokens();
    const bool isShort = count.isShort() > 0;
    if (isShort)
        painter.fillRect(box.adjusted(1, 0, 0, -1), dyes.madderTint);
    else if (isCurrent && hasFocus())
        painter.fillRect(box.adjusted(1, 0, 0, -1), dyes.woad);
    if (count.all() == 0 && !isShort) {
        paintLine(painter, box, tr("none"), Type::Small, dyes.ink3, Qt::AlignHCenter);
        return;
    }
    const qreal baseline = box.top() + 27;
    const QColor washedInk = count.washed > 0 ? dyes.green : dyes.ink3;
    paintIcon(painter, QRectF(box.left() + 8, baseline - 14, 16, 16), QStringLiteral("washed"), washedInk);
    const qreal behind = paintRun(painter, {box.left() + 26, baseline}, QString::number(count.washed),
                                  Type::Value, count.washed > 0 ? dyes.ink : dyes.ink3);
    if (count.unwashed > 0)
        paintCount(painter, std::max(behind + 8, box.right() - 38), baseline, QStringLiteral("unwashed"),
                   count.unwashed, Type::Support, dyes.ink2);

    const qreal second = box.top() + 49;
    qreal x = box.left() + 9;
    if (isShort) {
        paintIcon(painter, QRectF(x, second - 13, 15, 15), QStringLiteral("hold"), dyes.madder);
        x = paintRun(painter, {x + 18, second}, tr("%1 short").arg(count.isShort()), Type::SmallStrong,
                     dyes.madder) +
            8;
    } else if (count.kept() > 0) {
        x = paintRun(painter, {x, second}, tr("%1 kept").arg(count.kept()), Type::Small, dyes.ink2) + 8;
    }
    // What is in the tub is said before what dries: the cell is too narrow for both, the card at the right is
    // not.
    if (inWash > 0 && x + 34 < box.right())
        paintCount(painter, box.right() - 38, second, QStringLiteral("plus"), inWash, Type::SmallStrong,
                   dyes.indigo);
    else if (count.drying > 0 && x + 34 < box.right())
        paintCount(painter, box.right() - 38, second, QStringLiteral("wash"), count.drying, Type::Small,
                   dyes.ink2);
}

void RailGrid::mousePressEvent(QMouseEvent* event) {
    const RailColumns columns(width(), m_sizes.size());
    const int row = static_cast<int>(event->position().y() / kRowHeight);
    const int size = static_cast<int>((event->position().x() - columns.colour) / columns.each);
    if (row < 0 || row >= std::ssize(m_rows) || size < 0 || size >= std::ssize(m_sizes) ||
        event->position().x() < columns.colour)
        return;
    m_row = row;
    m_size = size;
    move(0, 0);
}

void RailGrid::mouseDoubleClickEvent(QMouseEvent* event) {
    mousePressEvent(event);
    emit addAsked();
}

void RailGrid::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Up:
        move(-1, 0);
        return;
    case Qt::Key_Down:
        move(1, 0);
        return;
    case Qt::Key_Left:
        move(0, -1);
        return;
    case Qt::Key_Right:
        move(0, 1);
        return;
    case Qt::Key_Home:
        move(0, -m_size);
        return;
    case Qt::Key_End:
        move(0, static_cast<int>(m_sizes.size()));
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        emit addAsked();
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void RailGrid::move(int rows, int sizes) {
    m_row = std::clamp(m_row + rows, 0, std::max(0, static_cast<int>(m_rows.size()) - 1));
    m_size = std::clamp(m_size + sizes, 0, std::max(0, static_cast<int>(m_sizes.size()) - 1));
    for (QWidget* above = parentWidget(); above; above = above->parentWidget())
        if (auto* area = qobject_cast<QScrollArea*>(above)) {
            area->ensureVisible(width() / 2, m_row * kRowHeight + kRowHeight / 2, 0, kRowHeight / 2);
            break;
        }
    say();
    update();
    emit moved();
}

void RailGrid::say() {
    if (m_rows.empty() || m_sizes.empty())
        return;
    const Row& row = m_rows[static_cast<std::size_t>(m_row)];
    const RailCount& count = row.cells[static_cast<std::size_t>(m_size)];
    setAccessibleDescription(
        tr("%1, %2: %3 washed, %4 unwashed, %5 drying, %6 kept, %7 short")
            .arg(words(row.colour.name), words(m_sizes[static_cast<std::size_t>(m_size)]))
            .arg(count.washed)
            .arg(count.unwashed)
            .arg(count.drying)
            .arg(count.kept())
            .arg(count.isShort()));
}

void RailGrid::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    update();
}

void RailGrid::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    update();
}

} // namespace holdfast::app
