// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/choice_tile.h"

#include "app/theme/drawings.h"
#include "app/theme/focus_ring.h"
#include "app/theme/icons.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"
#include "app/theme/undyed_cloth.h"

#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kPictureHeight = 90;
constexpr int kStackedHeight = 62;
constexpr int kSwatchHeight = 64;
constexpr int kArtworkWidth = 53;
constexpr int kArtworkHeight = 48;
constexpr int kDisk = 34;
constexpr int kMarkGap = 10;
constexpr int kSegmentPadding = 15; // clear of the tick in the corner
constexpr int kSegmentTick = 14;
constexpr int kLineAbove = 7; // words of a plain list
constexpr int kLineMark = 4;  // the bar at its left that says chosen

int ceiled(qreal width) {
    return static_cast<int>(std::ceil(width));
}

} // namespace

ChoiceTile::ChoiceTile(Choice* choice, Choice::Shape shape, int at)
    : QRadioButton(choice)
    , m_choice(choice)
    , m_shape(shape)
    , m_at(at) {
    setAutoExclusive(false);
    setCursor(Qt::PointingHandCursor);
    setAttribute(Qt::WA_Hover);
    const bool keepsWidth = shape == Choice::Shape::Artwork || shape == Choice::Shape::Segment;
    setSizePolicy(keepsWidth ? QSizePolicy::Fixed : QSizePolicy::Expanding, QSizePolicy::Fixed);
    giveFocusRing(this);
    connect(this, &QAbstractButton::clicked, this, [this] { m_choice->choose(m_at); });
}

void ChoiceTile::setItem(const ChoiceItem& item) {
    m_item = item;
    setAccessibleName(item.text);
    QString told = item.second;
    for (const ChoiceMark& mark : item.marks) {
        told += (told.isEmpty() ? QString() : QStringLiteral(", ")) + mark.words;
    }
    setAccessibleDescription(told);
    if (m_shape == Choice::Shape::Artwork) {
        setToolTip(item.text);
    }
    setEnabled(item.isChoosable);
    updateGeometry();
    update();
}

void ChoiceTile::mark(bool isChosen) {
    setChecked(isChosen);
    update();
}

// What is chosen is the Choice's to say, not the button's own.
void ChoiceTile::nextCheckState() {}

qreal ChoiceTile::secondWidth() const {
    if (m_item.marks.isEmpty()) {
        return widthOf(m_item.second, Type::Small);
    }
    qreal wide = 0;
    for (const ChoiceMark& mark : m_item.marks) {
        wide += (wide > 0 ? kMarkGap : 0) + widthOf(mark.words, Type::Small) +
                (mark.iconName.isEmpty() ? 0 : kSmallIcon + 2);
    }
    return wide;
}

QSize ChoiceTile::sizeHint() const {
    switch (m_shape) {
    case Choice::Shape::Picture:
        return {std::max(76, ceiled(widthOf(m_item.text, Type::Small)) + 12), kPictureHeight};
    case Choice::Shape::Stacked:
        return {std::max(52, ceiled(std::max(widthOf(m_item.text, Type::ListStrong), secondWidth())) + 14),
                kStackedHeight};
    case Choice::Shape::Line:
        return {ceiled(std::max(widthOf(m_item.text, Type::BodyStrong), secondWidth())) + 3 * kSpace12,
                ceiled(lineHeight(Type::BodyStrong) + lineHeight(Type::Small)) + 2 * kLineAbove};
    case Choice::Shape::Swatch:
        return {8 + kDisk + 11 + ceiled(std::max(widthOf(m_item.text, Type::BodyStrong), secondWidth())) + 20,
                kSwatchHeight};
    case Choice::Shape::Artwork:
        return {kArtworkWidth, kArtworkHeight};
    case Choice::Shape::Segment:
        return {std::max(kTarget, ceiled(widthOf(m_item.text, Type::BodyStrong)) + 2 * kSegmentPadding),
                kTarget};
    }
    return {kTarget, kTarget};
}

QColor ChoiceTile::wordsInk() const {
    const Tokens& dyes = tokens();
    return m_item.isInStock && m_item.isChoosable ? dyes.ink : dyes.ink3;
}

QColor ChoiceTile::secondInk() const {
    const Tokens& dyes = tokens();
    if (!m_item.isInStock || !m_item.isChoosable) {
        return dyes.ink3;
    }
    return isChecked() ? dyes.ink : dyes.ink2;
}

void ChoiceTile::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const QRectF box(rect());
    paintFrame(painter, box);
    switch (m_shape) {
    case Choice::Shape::Picture:
        paintPicture(painter, box);
        break;
    case Choice::Shape::Stacked:
        paintStacked(painter, box);
        break;
    case Choice::Shape::Line:
        paintListed(painter, box);
        break;
    case Choice::Shape::Swatch:
        paintShade(painter, box);
        break;
    case Choice::Shape::Artwork:
        if (!m_item.artwork.isEmpty()) {
            paintDecal(painter, QRectF(box.center().x() - 16, box.center().y() - 16, 32, 32), m_item.artwork,
                       wordsInk());
        } else {
            paintIcon(painter, QRectF(box.center().x() - 12, box.center().y() - 12, 24, 24), m_item.iconName,
                      wordsInk());
        }
        break;
    case Choice::Shape::Segment:
        paintLine(painter, box, m_item.text, Type::BodyStrong, wordsInk(), Qt::AlignHCenter);
        break;
    }
    if (isChecked() && m_shape != Choice::Shape::Line) {
        paintTick(painter, box);
    }
}

void ChoiceTile::paintFrame(QPainter& painter, const QRectF& box) const {
    const Tokens& dyes = tokens();
    const bool isHovered = underMouse() && isEnabled();
    if (m_shape == Choice::Shape::Line) {
        if (isChecked() || isHovered) {
            painter.fillRect(box, isChecked() ? dyes.woad : dyes.sunk);
        }
        painter.fillRect(QRectF(box.left(), box.bottom() - 1, box.width(), 1), dyes.thread);
        return;
    }
    if (isChecked()) {
        paintBox(painter, box, kButtonRadius, dyes.woad, dyes.indigo, 2, false);
        return;
    }
    // Words alone need an edge to be seen as something to choose.
    const bool isDashed = !m_item.isInStock || !m_item.isChoosable;
    const bool hasEdge = isHovered || m_shape == Choice::Shape::Segment;
    paintBox(painter, box, kButtonRadius, dyes.card, hasEdge ? dyes.edge : dyes.thread, 1.2, isDashed);
}

void ChoiceTile::paintListed(QPainter& painter, const QRectF& box) const {
    const QRectF first(box.left() + kSpace12, box.top() + kLineAbove, box.width() - 2 * kSpace12,
                       lineHeight(Type::BodyStrong));
    paintLine(painter, first, m_item.text, Type::BodyStrong, wordsInk());
    paintSecond(painter, QRectF(first.left(), first.bottom(), first.width(), lineHeight(Type::Small)));
    if (!isChecked()) {
        return;
    }
    painter.fillRect(QRectF(box.left(), box.top(), kLineMark, box.height() - 1), tokens().indigo);
    paintIcon(
        painter,
        QRectF(first.right() - kSmallIcon, first.center().y() - kSmallIcon / 2.0, kSmallIcon, kSmallIcon),
        QStringLiteral("tick"), tokens().indigo);
}

void ChoiceTile::paintPicture(QPainter& painter, const QRectF& box) const {
    const QRectF picture(box.center().x() - 30, box.top() + 6, 60, 58);
    if (!m_item.outline.isEmpty()) {
        const QColor cloth = m_item.shade.isValid() ? m_item.shade : undyedCloth();
        paintGarment(painter, picture, m_item.outline, cloth);
    } else if (!m_item.artwork.isEmpty()) {
        paintDecal(painter, picture.adjusted(10, 6, -10, -6), m_item.artwork, wordsInk());
    } else {
        paintIcon(painter, picture.adjusted(14, 14, -14, -14), m_item.iconName, wordsInk());
    }
    const QRectF line(box.left(), box.bottom() - 25, box.width(), lineHeight(Type::Small));
    paintLine(painter, line, m_item.text, Type::Small, secondInk(), Qt::AlignHCenter);
}

void ChoiceTile::paintStacked(QPainter& painter, const QRectF& box) const {
    const QRectF first(box.left(), box.top() + 11, box.width(), lineHeight(Type::ListStrong));
    paintLine(painter, first, m_item.text, Type::ListStrong, wordsInk(), Qt::AlignHCenter);
    const QRectF second(box.center().x() - secondWidth() / 2, first.bottom() - 2, secondWidth(),
                        lineHeight(Type::Small));
    paintSecond(painter, second);
}

void ChoiceTile::paintShade(QPainter& painter, const QRectF& box) const {
    const QRectF disk(box.left() + 8, box.center().y() - kDisk / 2.0, kDisk, kDisk);
    if (!m_item.outline.isEmpty()) {
        paintGarment(painter, disk.adjusted(-2, -3, 2, 3), m_item.outline, m_item.shade);
    } else if (m_item.shade.isValid()) {
        paintSwatch(painter, disk, m_item.shade, kDisk / 2.0);
    } else {
        paintIcon(painter, disk.adjusted(6, 6, -6, -6), m_item.iconName, wordsInk());
    }
    const qreal left = disk.right() + 11;
    const bool hasSecond = !m_item.marks.isEmpty() || !m_item.second.isEmpty();
    const qreal top = hasSecond ? box.top() + 11 : box.center().y() - 12;
    paintLine(painter, QRectF(left, top, box.right() - left, 24), m_item.text, Type::BodyStrong, wordsInk());
    paintSecond(painter, QRectF(left, top + 23, box.right() - left, lineHeight(Type::Small)));
}

void ChoiceTile::paintSecond(QPainter& painter, const QRectF& line) const {
    if (m_item.marks.isEmpty()) {
        paintLine(painter, line, m_item.second, Type::Small, secondInk());
        return;
    }
    const Tokens& dyes = tokens();
    qreal x = line.left();
    for (const ChoiceMark& mark : m_item.marks) {
        if (!mark.iconName.isEmpty()) {
            paintIcon(painter, QRectF(x, line.center().y() - kSmallIcon / 2.0, kSmallIcon, kSmallIcon),
                      mark.iconName, m_item.isInStock ? dyes.*mark.ink : dyes.ink3);
            x += kSmallIcon + 2;
        }
        paintLine(painter, QRectF(x, line.top(), line.right() - x, line.height()), mark.words, Type::Small,
                  secondInk());
        x += widthOf(mark.words, Type::Small) + kMarkGap;
    }
}

// The corner that says chosen: round where the tile is, and where it meets the woad.
void ChoiceTile::paintTick(QPainter& painter, const QRectF& box) const {
    const bool isSegment = m_shape == Choice::Shape::Segment;
    const bool isSmall = m_shape == Choice::Shape::Stacked || m_shape == Choice::Shape::Artwork;
    const QSizeF tabSize = isSegment ? QSizeF(kSegmentTick, kSegmentTick)
                           : isSmall ? QSizeF(18, 17)
                                     : QSizeF(21, 20);
    const QRectF corner(QPointF(box.right() - tabSize.width(), box.top()), tabSize);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    QPainterPath tile;
    tile.addRoundedRect(box, kButtonRadius, kButtonRadius);
    QPainterPath tab;
    tab.addRoundedRect(corner.adjusted(0, -kButtonRadius, kButtonRadius, 0), 7, 7);
    painter.fillPath(tile.intersected(tab), tokens().indigo);
    painter.restore();
    const qreal size = isSegment ? 12 : isSmall ? 14 : 16;
    paintIcon(painter, QRectF(corner.center().x() - size / 2, corner.center().y() - size / 2, size, size),
              QStringLiteral("tick"), tokens().onIndigo);
}

void ChoiceTile::keyPressEvent(QKeyEvent* event) {
    const int key = event->key();
    if (event->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier)) {
        event->ignore();
        return;
    }
    switch (key) {
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down:
    case Qt::Key_Home:
    case Qt::Key_End:
        m_choice->moveFrom(m_at, key);
        return;
    case Qt::Key_Space:
        m_choice->choose(m_at);
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        // Enter on what is chosen already belongs to the place ("Enter takes the order").
        if (isChecked()) {
            event->ignore();
        } else {
            m_choice->choose(m_at);
        }
        return;
    default:
        break;
    }
    if (key >= Qt::Key_1 && key <= Qt::Key_9 && key - Qt::Key_1 < m_choice->items().size()) {
        m_choice->choose(key - Qt::Key_1);
        return;
    }
    event->ignore();
}

} // namespace holdfast::app
