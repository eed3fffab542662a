// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/blank_rail/rail_grid.h"

#include "app/desk/formats.h"
#include "app/places/blank_rail/rail_cell.h"
#include "app/places/blank_rail/rail_words.h"
#include "app/theme/drawings.h"
#include "app/theme/focus_ring.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollArea>
#include <QWheelEvent>

#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kGridAside = 12;
constexpr int kGarmentWide = 34;
constexpr int kGarmentHigh = 38;
constexpr int kNameLeft = kGridAside + kGarmentWide + 10;
constexpr qreal kWidestName = 140;
constexpr qreal kNarrowestSize = 56;

QString restWords(const RailCount& sum) {
    const std::int64_t rest = sum.unwashed + sum.drying;
    return rest > 0 ? QCoreApplication::translate("BlankRail", " + %1").arg(rest) : QString();
}

// The room for the sizes: what is scrolled out of it is not painted over the colours or the sums.
QRectF sizesBox(const RailColumns& columns, const QRectF& whole) {
    return {columns.colour, whole.top(), columns.room(), whole.height()};
}

} // namespace

RailHeads::RailHeads(QWidget* parent)
    : QWidget(parent) {
    setFixedHeight(lineHeight(Type::SupportStrong) + kSpace16);
}

void RailHeads::show(const StyleRail* rail) {
    m_sizes.clear();
    if (rail)
        for (const std::string& size : rail->style->sizes)
            m_sizes << words(size);
    update();
}

void RailHeads::setColumns(const RailColumns& columns) {
    m_columns = columns;
    update();
}

void RailHeads::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    painter.fillRect(rect(), dyes.card);
    paintLine(painter, QRectF(kGridAside, 0, m_columns.colour, height()), tr("Colour"), Type::SupportStrong,
              dyes.ink);
    paintLine(painter, QRectF(m_columns.sumsLeft(), 0, m_columns.all, height()), tr("All"),
              Type::SupportStrong, dyes.ink, Qt::AlignHCenter);
    painter.setClipRect(sizesBox(m_columns, QRectF(rect())));
    for (int size = 0; size < m_sizes.size(); ++size)
        paintLine(painter,
                  QRectF(m_columns.left(static_cast<std::size_t>(size)), 0, m_columns.each, height()),
                  m_sizes[size], Type::SupportStrong, dyes.ink, Qt::AlignHCenter);
    painter.setClipping(false);
    painter.fillRect(QRectF(0, height() - 1, width(), 1), dyes.thread);
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

RailColumns RailGrid::columnsIn(qreal width) const {
    qreal colour = widthOf(tr("Colour"), Type::SupportStrong) + kGridAside;
    qreal all = widthOf(tr("All"), Type::SupportStrong);
    qreal each = kNarrowestSize;
    for (const std::string& size : m_sizes)
        each = std::max(each, widthOf(words(size), Type::SupportStrong) + kSpace8);
    for (int row = 0; row < std::ssize(m_rows); ++row) {
        const Row& shown = m_rows[static_cast<std::size_t>(row)];
        const qreal name = widthOf(words(shown.colour.name), Type::SupportStrong);
        colour = std::max(colour, kNameLeft + std::min(name, kWidestName) + kSpace8);
        all = std::max({all,
                        widthOf(QString::number(shown.sum.washed), Type::BodyStrong) +
                            widthOf(restWords(shown.sum), Type::Small),
                        widthOf(reservedWords(shown.sum.reserved()), Type::Small)});
        for (int size = 0; size < std::ssize(m_sizes); ++size)
            each =
                std::max(each, cellWidth(shown.cells[static_cast<std::size_t>(size)], inWashAt(row, size)));
    }
    return RailColumns::in(width, m_sizes.size(), std::ceil(colour), std::ceil(all) + 2 * kSpace8,
                           std::ceil(each));
}

void RailGrid::setColumns(const RailColumns& columns) {
    m_columns = columns;
    update();
}

qreal RailGrid::shiftForCurrent() const {
    const qreal left = m_columns.each * m_size;
    return std::clamp(m_columns.shift, std::max<qreal>(0, left + m_columns.each - m_columns.room()), left);
}

std::int64_t RailGrid::inWashAt(int row, int size) const {
    const auto chosen = m_inWash.find(
        {m_style, m_sizes[static_cast<std::size_t>(size)], m_rows[static_cast<std::size_t>(row)].colour.id});
    return chosen == m_inWash.end() ? 0 : chosen->second;
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
    return {700, cellHeight() * static_cast<int>(m_rows.size())};
}

void RailGrid::paintEvent(QPaintEvent* event) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    painter.fillRect(rect(), dyes.card);
    painter.fillRect(QRectF(m_columns.sumsLeft(), 0, m_columns.all, height()), dyes.sunk);
    for (int row = 0; row < std::ssize(m_rows); ++row) {
        const QRectF line(0, static_cast<qreal>(row) * cellHeight(), width(), cellHeight());
        if (!line.intersects(QRectF(event->rect())))
            continue;
        const Row& shown = m_rows[static_cast<std::size_t>(row)];
        paintColour(painter, line, shown);
        paintSizes(painter, row, line);
        paintSum(painter, QRectF(m_columns.sumsLeft(), line.top(), m_columns.all, line.height()), shown.sum);
        painter.fillRect(QRectF(0, line.bottom() - 1, width(), 1), dyes.thread);
    }
    paintFrame(painter);
}

void RailGrid::paintSizes(QPainter& painter, int row, const QRectF& line) const {
    painter.save();
    painter.setClipRect(sizesBox(m_columns, line));
    for (int size = 0; size < std::ssize(m_sizes); ++size) {
        const auto at = static_cast<std::size_t>(size);
        const QRectF box(m_columns.left(at), line.top(), m_columns.each, line.height());
        painter.fillRect(QRectF(box.left(), box.top(), 1, box.height()), tokens().thread);
        paintCell(painter, box, m_rows[static_cast<std::size_t>(row)].cells[at], inWashAt(row, size),
                  hasFocus() && row == m_row && size == m_size);
    }
    painter.restore();
}

void RailGrid::paintSum(QPainter& painter, const QRectF& box, const RailCount& sum) const {
    const Tokens& dyes = tokens();
    const QString washed = QString::number(sum.washed);
    const QString rest = restWords(sum);
    const qreal strong = widthOf(washed, Type::BodyStrong);
    const qreal wide = strong + widthOf(rest, Type::Small);
    const qreal above = (box.height() - lineHeight(Type::Value) - lineHeight(Type::Small)) / 2;
    const QRectF first(box.center().x() - wide / 2, box.top() + above, wide, lineHeight(Type::Value));
    paintLine(painter, first, washed, Type::BodyStrong, dyes.ink);
    paintLine(painter, first.adjusted(strong, 0, 0, 0), rest, Type::Small, dyes.ink2);
    if (sum.reserved() > 0)
        paintLine(painter, QRectF(box.left(), first.bottom(), box.width(), lineHeight(Type::Small)),
                  reservedWords(sum.reserved()), Type::Small, dyes.ink2, Qt::AlignHCenter);
}

// The current cell's frame lies over its neighbours' lines.
void RailGrid::paintFrame(QPainter& painter) const {
    if (m_rows.empty() || m_sizes.empty())
        return;
    painter.setClipRect(sizesBox(m_columns, QRectF(rect())).adjusted(0, 0, 1, 0));
    const QRectF box(m_columns.left(static_cast<std::size_t>(m_size)), m_row * cellHeight(),
                     m_columns.each + 1, cellHeight());
    paintOutline(painter, box, 0, hasFocus() ? tokens().indigo : tokens().edge, hasFocus() ? 3 : 2);
}

void RailGrid::paintColour(QPainter& painter, const QRectF& box, const Row& row) const {
    const Tokens& dyes = tokens();
    paintGarment(painter,
                 QRectF(kGridAside, box.center().y() - kGarmentHigh / 2.0, kGarmentWide, kGarmentHigh),
                 m_outline, colourOf(row.colour.rgb));
    const qreal room = m_columns.colour - kNameLeft - kSpace4;
    paintLine(painter, QRectF(kNameLeft, box.top(), room, box.height()),
              fitted(words(row.colour.name), Type::SupportStrong, room), Type::SupportStrong, dyes.ink);
}

void RailGrid::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    emit resized();
}

// Turned sideways, or with Shift, the wheel moves the sizes.
void RailGrid::wheelEvent(QWheelEvent* event) {
    const QPoint turned = event->angleDelta();
    const int by = turned.x() != 0 ? turned.x() : event->modifiers() & Qt::ShiftModifier ? turned.y() : 0;
    if (by == 0)
        event->ignore();
    else
        emit sidewaysAsked(by);
}

bool RailGrid::putCurrentAt(QPointF at) {
    const int row = static_cast<int>(at.y() / cellHeight());
    if (at.x() < m_columns.colour || at.x() >= m_columns.sumsLeft() || row >= std::ssize(m_rows))
        return false;
    const int size = static_cast<int>((at.x() - m_columns.left(0)) / m_columns.each);
    if (size >= std::ssize(m_sizes))
        return false;
    m_row = row;
    m_size = size;
    move(0, 0);
    return true;
}

void RailGrid::mousePressEvent(QMouseEvent* event) {
    putCurrentAt(event->position());
}

void RailGrid::mouseDoubleClickEvent(QMouseEvent* event) {
    if (putCurrentAt(event->position()))
        emit openAsked();
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
        emit openAsked();
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void RailGrid::move(int rows, int sizes) {
    m_row = std::clamp(m_row + rows, 0, std::max(0, static_cast<int>(m_rows.size()) - 1));
    m_size = std::clamp(m_size + sizes, 0, std::max(0, static_cast<int>(m_sizes.size()) - 1));
    bringIntoView();
    say();
    update();
    emit moved();
}

// In every area that it scrolls in: the rail's own, and the place where that is too low for both cards.
void RailGrid::bringIntoView() {
    const QPoint middle(width() / 2, m_row * cellHeight() + cellHeight() / 2);
    for (QWidget* above = parentWidget(); above; above = above->parentWidget())
        if (auto* area = qobject_cast<QScrollArea*>(above)) {
            const QPoint at = mapTo(area->widget(), middle);
            area->ensureVisible(at.x(), at.y(), 0, cellHeight() / 2 + kSpace4);
        }
}

// Where the keyboard is in it, for what brings it into view.
QVariant RailGrid::inputMethodQuery(Qt::InputMethodQuery query) const {
    if (query == Qt::ImCursorRectangle)
        return QRect(0, m_row * cellHeight(), width(), cellHeight());
    return QWidget::inputMethodQuery(query);
}

void RailGrid::say() {
    if (partCount() > 0)
        setAccessibleDescription(partName(currentPart()));
    sayCurrentPart();
}

QString RailGrid::partName(int cell) const {
    const Row& row = m_rows[static_cast<std::size_t>(cell / inRow())];
    const auto size = static_cast<std::size_t>(cell % inRow());
    const RailCount& count = row.cells[size];
    return tr("%1, %2: %3 washed, %4 unwashed, %5 drying, %6 reserved, %7 short")
        .arg(words(row.colour.name), words(m_sizes[size]))
        .arg(count.washed)
        .arg(count.unwashed)
        .arg(count.drying)
        .arg(count.reserved())
        .arg(count.isShort());
}

QRect RailGrid::partBox(int cell) const {
    const int row = cell / inRow();
    const QRectF line(0, row * cellHeight(), width(), cellHeight());
    const qreal left = m_columns.left(static_cast<std::size_t>(cell % inRow()));
    return QRectF(left, line.top(), m_columns.each, line.height())
        .intersected(sizesBox(m_columns, line))
        .toAlignedRect();
}

int RailGrid::currentPart() const {
    return partCount() > 0 ? m_row * inRow() + m_size : -1;
}

void RailGrid::moveToPart(int cell) {
    move(cell / inRow() - m_row, cell % inRow() - m_size);
}

void RailGrid::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    bringIntoView();
    sayCurrentPart();
    update();
}

void RailGrid::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    update();
}

} // namespace holdfast::app
