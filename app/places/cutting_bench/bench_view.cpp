// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/bench_view.h"

#include "app/desk/formats.h"
#include "app/places/cutting_bench/bench_words.h"
#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollBar>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr std::int64_t kNudge = 1;
constexpr std::int64_t kLongNudge = 10;
constexpr int kScrollRoom = 28; // from the edge, while a decal is dragged
constexpr int kScrollBy = 16;

} // namespace

BenchView::BenchView(BenchModel& model, QWidget* parent)
    : QAbstractScrollArea(parent)
    , m_model(model)
    , m_painter(model) {
    setObjectName(QStringLiteral("bench"));
    setAccessibleName(tr("Cutting bench"));
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    viewport()->setMouseTracking(true);
    viewport()->setAutoFillBackground(false);
    horizontalScrollBar()->setSingleStep(40);
    verticalScrollBar()->setSingleStep(40);
    giveNoFocusRing(this); // it is painted about the decal
    connect(&m_model, &BenchModel::chosenChanged, this, [this] {
        showChosen();
        say();
        viewport()->update();
    });
    connect(&m_model, &BenchModel::offcutsChanged, viewport(), [this] {
        m_painter.forgetNumbers();
        viewport()->update();
    });
}

void BenchView::setWish(const CutFileWish& wish) {
    m_look.wish = wish;
    m_painter.forgetNumbers();
    viewport()->update();
}

void BenchView::layOut() {
    if (m_held && !m_model.lying(*m_held))
        leaveDrag();
    const bool hasNests = m_model.film() != nullptr && !m_model.nests().empty();
    const std::span<const Nest> nests =
        hasNests ? std::span<const Nest>(m_model.nests()) : std::span<const Nest>();
    // What scrolls needs room for its bar, which may make something else scroll.
    const QSize whole = size();
    m_scale = BenchScale(nests, whole);
    const int bar = horizontalScrollBar()->sizeHint().height();
    const bool scrollsAlong = m_scale.content().width() > whole.width();
    const bool scrollsDown = m_scale.content().height() > whole.height() - (scrollsAlong ? bar : 0);
    if (hasNests && (scrollsAlong || scrollsDown))
        m_scale = BenchScale(nests, whole - QSize(scrollsDown ? bar : 0, scrollsAlong ? bar : 0));
    const QSize room = whole - QSize(scrollsDown ? bar : 0, scrollsAlong ? bar : 0);
    horizontalScrollBar()->setRange(0, std::max(0, m_scale.content().width() - room.width()));
    horizontalScrollBar()->setPageStep(room.width());
    verticalScrollBar()->setRange(0, std::max(0, m_scale.content().height() - room.height()));
    verticalScrollBar()->setPageStep(room.height());
    m_painter.forgetNumbers();
    say();
    viewport()->update();
}

QPointF BenchView::origin() const {
    // Film that does not fill the room lies in its middle.
    const double spare = std::max(0, viewport()->height() - m_scale.content().height()) / 2.0;
    return {-static_cast<double>(horizontalScrollBar()->value()),
            std::min(spare, static_cast<double>(kSpace32)) - verticalScrollBar()->value()};
}

QRectF BenchView::rectOf(DecalId decal) const {
    for (std::size_t nest = 0; nest < m_scale.count(); ++nest)
        if (const NestedDecal* lies = m_model.nests()[nest].find(decal))
            return m_scale.rectOf(nest, lies->lies).translated(origin());
    return {};
}

std::optional<DecalId> BenchView::decalAt(QPointF at) const {
    const QPointF on = at - origin();
    for (std::size_t nest = 0; nest < m_scale.count(); ++nest)
        for (const NestedDecal& decal : m_model.nests()[nest].decals)
            if (m_scale.rectOf(nest, decal.box).contains(on))
                return decal.decal;
    return std::nullopt;
}

QString BenchView::emptyWords() const {
    if (!m_model.film())
        return {};
    if (m_model.isBeingLaid())
        return beingLaidWords();
    if (!m_model.onBench().problem.empty())
        return words(m_model.onBench().problem);
    if (m_model.film()->waiting.empty())
        return tr("Nothing of this film may be cut yet: see Waiting for why.");
    if (m_model.onBench().wish.leftOut.size() >= m_model.film()->waiting.size())
        return tr("Everything is left out. Put back what is to be cut.");
    return tr("Nothing fits on the rolls there are: see On no roll for why.");
}

void BenchView::paintEvent(QPaintEvent*) {
    QPainter painter(viewport());
    painter.fillRect(viewport()->rect(), tokens().bench);
    if (m_scale.count() == 0) {
        painter.setFont(fontOf(Type::Body));
        painter.setPen(tokens().ink);
        painter.drawText(viewport()->rect().adjusted(kSpace32, kSpace32, -kSpace32, -kSpace32),
                         Qt::AlignCenter | Qt::TextWordWrap, emptyWords());
        return;
    }
    m_look.hasKeyboard = hasFocus();
    painter.translate(origin());
    m_painter.paint(painter, m_scale, m_look, QRectF(viewport()->rect()).translated(-origin()));
}

bool BenchView::viewportEvent(QEvent* event) {
    if (event->type() == QEvent::Resize) {
        layOut();
        // From its head on, as far as the chosen decal lets it.
        verticalScrollBar()->setValue(0);
        showChosen();
    }
    return QAbstractScrollArea::viewportEvent(event);
}

void BenchView::resizeEvent(QResizeEvent* event) {
    QAbstractScrollArea::resizeEvent(event);
    layOut();
}

// ── the hand ──────────────────────────────────────────────────────────────────────────────────────────

bool BenchView::isGrippedAt(const QPoint& onScreen) const {
    return decalAt(viewport()->mapFromGlobal(onScreen)).has_value();
}

void BenchView::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton)
        return;
    const auto decal = decalAt(event->position());
    if (!decal) {
        turnOffcutAt(event->position());
        return;
    }
    m_model.choose(*decal);
    if (m_model.isBeingLaid()) {
        emit refused(beingLaidWords());
        return;
    }
    m_held = decal;
    m_heldFrom = placeOf(*m_model.lying(*decal));
    m_pressed = event->position();
}

bool BenchView::turnOffcutAt(QPointF at) {
    const QPointF on = at - origin();
    for (std::size_t nest = 0; nest < m_scale.count(); ++nest) {
        const Nest& lies = m_model.nests()[nest];
        for (const FilmArea& offcut : lies.offcuts)
            if (m_scale.rectOf(nest, offcut).contains(on)) {
                m_model.setKeepsOffcut(lies.roll, offcut, !m_model.keepsOffcut(lies.roll, offcut));
                return true;
            }
    }
    return false;
}

void BenchView::mouseMoveEvent(QMouseEvent* event) {
    const QPointF at = event->position();
    if (!m_held) {
        viewport()->setCursor(decalAt(at) ? Qt::OpenHandCursor : Qt::ArrowCursor);
        return;
    }
    if (!isDragging()) {
        if ((at - m_pressed).manhattanLength() < QApplication::startDragDistance())
            return;
        viewport()->setCursor(Qt::ClosedHandCursor);
        m_look.dragged = DraggedDecal{*m_held, m_heldFrom, {}};
        emit dragBegun();
    }
    dragTo(at);
}

void BenchView::dragTo(QPointF at) {
    const int scrolledFrom = horizontalScrollBar()->value();
    if (at.x() > viewport()->width() - kScrollRoom)
        horizontalScrollBar()->setValue(scrolledFrom + kScrollBy);
    else if (at.x() < kScrollRoom)
        horizontalScrollBar()->setValue(scrolledFrom - kScrollBy);
    // What scrolled away under the hand is as if the hand had gone that far.
    m_pressed.rx() -= horizontalScrollBar()->value() - scrolledFrom;
    const QPointF by = at - m_pressed;
    DecalPin wanted = m_heldFrom;
    wanted.along += m_scale.lengthOf(by.x());
    wanted.across += m_scale.lengthOf(by.y());
    if (const auto place = m_model.freePlace(*m_held, wanted))
        m_look.dragged->place = *place;
    m_look.dragged->wanted = rectOf(*m_held).translated(-origin()).translated(by);
    viewport()->update();
}

void BenchView::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton || !m_held)
        return;
    const auto dragged = m_look.dragged;
    leaveDrag();
    if (dragged)
        m_model.moveTo(dragged->decal, dragged->place);
}

void BenchView::leaveDrag() {
    m_held.reset();
    m_look.dragged.reset();
    viewport()->setCursor(Qt::ArrowCursor);
    viewport()->update();
}

// ── the keyboard ──────────────────────────────────────────────────────────────────────────────────────

void BenchView::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && isDragging()) {
        leaveDrag();
        return;
    }
    if (event->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) {
        event->ignore();
        return;
    }
    const std::int64_t by = event->modifiers() & Qt::ShiftModifier ? kLongNudge : kNudge;
    Millimetres along;
    Millimetres across;
    switch (event->key()) {
    case Qt::Key_Left:
        along.value = -by;
        break;
    case Qt::Key_Right:
        along.value = by;
        break;
    case Qt::Key_Up:
        across.value = -by;
        break;
    case Qt::Key_Down:
        across.value = by;
        break;
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        if (const auto chosen = m_model.chosen())
            m_model.leaveOut(*chosen);
        return;
    default:
        event->ignore();
        return;
    }
    if (!m_model.chosen())
        m_model.chooseNext(1);
    else if (!m_model.nudge(along, across))
        emit refused(m_model.isBeingLaid() ? beingLaidWords() : tr("There is no room that way."));
}

bool BenchView::focusNextPrevChild(bool next) {
    if (m_model.chooseNext(next ? 1 : -1))
        return true;
    return QAbstractScrollArea::focusNextPrevChild(next);
}

void BenchView::focusInEvent(QFocusEvent* event) {
    QAbstractScrollArea::focusInEvent(event);
    if (!m_model.chosen())
        m_model.chooseNext(event->reason() == Qt::BacktabFocusReason ? -1 : 1);
    viewport()->update();
}

void BenchView::focusOutEvent(QFocusEvent* event) {
    QAbstractScrollArea::focusOutEvent(event);
    viewport()->update();
}

void BenchView::showChosen() {
    const auto chosen = m_model.chosen();
    if (!chosen)
        return;
    const QRectF lies = rectOf(*chosen);
    const auto reach = [](QScrollBar* bar, double low, double high, int room) {
        if (low < kBenchRulerLeft)
            bar->setValue(bar->value() + static_cast<int>(low) - kBenchRulerLeft);
        else if (high > room - kSpace16)
            bar->setValue(bar->value() + static_cast<int>(high) - room + kSpace16);
    };
    reach(horizontalScrollBar(), lies.left(), lies.right(), viewport()->width());
    reach(verticalScrollBar(), lies.top(), lies.bottom(), viewport()->height());
}

void BenchView::say() {
    const auto chosen = m_model.chosen();
    const NestedDecal* lies = chosen ? m_model.lying(*chosen) : nullptr;
    if (!lies) {
        setAccessibleDescription(emptyWords());
        return;
    }
    setAccessibleDescription((lies->isPinned ? tr("%1, at %2, %3 mm, pinned") : tr("%1, at %2, %3 mm"))
                                 .arg(decalTitle(m_model.facts(), m_model.decal(*chosen)))
                                 .arg(lies->lies.along.value)
                                 .arg(lies->lies.across.value));
}

} // namespace holdfast::app
