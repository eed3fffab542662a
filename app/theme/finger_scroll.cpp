// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/theme/finger_scroll.h"

#include "app/theme/style.h"

#include <QAbstractButton>
#include <QAbstractScrollArea>
#include <QAbstractSlider>
#include <QApplication>
#include <QLineEdit>
#include <QMouseEvent>
#include <QPointingDevice>
#include <QScrollBar>
#include <QScroller>
#include <QScrollerProperties>
#include <QWidget>
#include <QWindow>

#include <cmath>
#include <utility>

namespace holdfast::app {

namespace {

constexpr int kRestsStill = 300;  // milliseconds, after which a button goes down under the finger
constexpr int kFarAway = -10'000; // where a release lets nothing happen

bool isByFinger(const QMouseEvent& event) {
    return event.pointingDevice() != nullptr &&
           event.pointingDevice()->type() == QInputDevice::DeviceType::TouchScreen;
}

QWidget* widgetAt(const QWindow* window, const QPoint& at) {
    for (QWidget* top : QApplication::topLevelWidgets())
        if (top->windowHandle() == window) {
            QWidget* child = top->childAt(at);
            return child != nullptr ? child : top;
        }
    return nullptr;
}

bool canScroll(const QScrollBar& bar, Qt::ScrollBarPolicy policy) {
    return policy != Qt::ScrollBarAlwaysOff && bar.maximum() > bar.minimum();
}

// The bar that a push in this direction moves, if it can.
const QScrollBar* barFor(const QAbstractScrollArea& area, const QPoint& by) {
    const bool isAcross = std::abs(by.x()) > std::abs(by.y());
    const QScrollBar* bar = isAcross ? area.horizontalScrollBar() : area.verticalScrollBar();
    return canScroll(*bar, isAcross ? area.horizontalScrollBarPolicy() : area.verticalScrollBarPolicy())
               ? bar
               : nullptr;
}

bool canGoOn(const QScrollBar& bar, int by) {
    return by < 0 ? bar.value() < bar.maximum() : bar.value() > bar.minimum();
}

QScroller* scrollerOf(QWidget* viewport) {
    const bool isNew = !QScroller::hasScroller(viewport);
    QScroller* scroller = QScroller::scroller(viewport);
    if (!isNew)
        return scroller;
    QScrollerProperties properties = scroller->scrollerProperties();
    // It stops at its ends, as everything here does, and goes one way at a time.
    for (const auto metric :
         {QScrollerProperties::HorizontalOvershootPolicy, QScrollerProperties::VerticalOvershootPolicy})
        properties.setScrollMetric(metric, QVariant::fromValue(QScrollerProperties::OvershootAlwaysOff));
    properties.setScrollMetric(QScrollerProperties::AxisLockThreshold, 1.0);
    properties.setScrollMetric(QScrollerProperties::DragStartDistance, 0.0);
    scroller->setScrollerProperties(properties);
    return scroller;
}

} // namespace

FingerScroll::FingerScroll() {
    m_restsStill.setSingleShot(true);
    m_restsStill.setInterval(kRestsStill);
    connect(&m_restsStill, &QTimer::timeout, this, [this] {
        if (m_state != State::Waiting || m_hasStopped || qobject_cast<QAbstractButton*>(m_touched) == nullptr)
            return;
        m_state = State::Pressing;
        deliver();
    });
}

FingerScroll::~FingerScroll() = default;

void FingerScroll::install() {
    static QPointer<FingerScroll> installed;
    if (!installed.isNull())
        return;
    installed = new FingerScroll;
    installed->setParent(qApp);
    qApp->installEventFilter(installed);
}

bool FingerScroll::eventFilter(QObject* watched, QEvent* event) {
    const bool isOfPointer =
        event->type() == QEvent::MouseButtonPress || event->type() == QEvent::MouseMove ||
        event->type() == QEvent::MouseButtonRelease || event->type() == QEvent::MouseButtonDblClick;
    if (!isOfPointer || m_isDelivering || !watched->isWindowType())
        return false;
    const auto& mouse = *static_cast<QMouseEvent*>(event);
    if (!isByFinger(mouse))
        return false;
    switch (event->type()) {
    case QEvent::MouseButtonPress:
        return press(static_cast<QWindow*>(watched), mouse);
    case QEvent::MouseButtonDblClick: // right after its press
        return waitOn(mouse);
    case QEvent::MouseMove:
        return move(mouse);
    default:
        return release(mouse);
    }
}

bool FingerScroll::press(QWindow* window, const QMouseEvent& event) {
    endTouch();
    QWidget* popup = QApplication::activePopupWidget();
    if (event.button() != Qt::LeftButton || (popup != nullptr && popup->windowHandle() != window))
        return false;
    m_from = event.globalPosition().toPoint();
    m_window = window;
    m_touched = widgetAt(window, event.position().toPoint());
    collectAreas(m_touched);
    if (m_areas.empty())
        return false;
    for (const auto& area : m_areas)
        if (QScroller::hasScroller(area->viewport()) &&
            QScroller::scroller(area->viewport())->state() == QScroller::Scrolling) {
            QScroller::scroller(area->viewport())->stop();
            m_hasStopped = true;
        }
    m_state = State::Waiting;
    m_restsStill.start();
    return waitOn(event);
}

bool FingerScroll::waitOn(const QMouseEvent& event) {
    if (m_state == State::Waiting)
        m_waiting.emplace_back(event.clone());
    return m_state != State::Idle;
}

// What scrolls about the widget, unless the widget or something about it takes the drag for itself.
void FingerScroll::collectAreas(QWidget* touched) {
    for (QWidget* at = touched; at != nullptr; at = at->parentWidget()) {
        const auto* draggable = dynamic_cast<const Draggable*>(at);
        if (qobject_cast<QAbstractSlider*>(at) != nullptr ||
            (draggable != nullptr && draggable->isGrippedAt(m_from))) {
            m_areas.clear();
            return;
        }
        m_isText = m_isText || qobject_cast<QLineEdit*>(at) != nullptr || isTextEditor(at);
        auto* area = qobject_cast<QAbstractScrollArea*>(at->parentWidget());
        const bool isViewport = area != nullptr && area->viewport() == at;
        if (isViewport && (canScroll(*area->verticalScrollBar(), area->verticalScrollBarPolicy()) ||
                           canScroll(*area->horizontalScrollBar(), area->horizontalScrollBarPolicy())))
            m_areas.emplace_back(area);
        if (at->isWindow())
            return;
    }
}

// The nearest that can go on in this direction, or else the nearest that scrolls along this axis at all.
QAbstractScrollArea* FingerScroll::areaThatMoves(const QPoint& by) const {
    const int along = std::abs(by.x()) > std::abs(by.y()) ? by.x() : by.y();
    QAbstractScrollArea* atItsEnd = nullptr;
    for (const auto& area : m_areas) {
        const QScrollBar* bar = area.isNull() ? nullptr : barFor(*area, by);
        if (bar == nullptr)
            continue;
        if (canGoOn(*bar, along))
            return area;
        if (atItsEnd == nullptr)
            atItsEnd = area;
    }
    return atItsEnd;
}

bool FingerScroll::move(const QMouseEvent& event) {
    if (m_state == State::Idle)
        return false;
    if (m_state == State::Scrolling)
        push(event);
    if (m_state == State::Scrolling || m_state == State::Spent)
        return true;
    const QPoint by = event.globalPosition().toPoint() - m_from;
    if (by.manhattanLength() < QApplication::startDragDistance())
        return true;
    if (m_isText && std::abs(by.x()) > std::abs(by.y())) {
        deliver();
        endTouch();
        return false;
    }
    QAbstractScrollArea* area = areaThatMoves(by);
    if (m_state == State::Pressing && !m_window.isNull()) {
        // The button was not meant after all.
        const QPointF away(kFarAway, kFarAway);
        QMouseEvent lifted(QEvent::MouseButtonRelease, away, away, away, Qt::LeftButton, Qt::NoButton,
                           event.modifiers(), event.pointingDevice());
        const bool wasDelivering = std::exchange(m_isDelivering, true);
        QCoreApplication::sendEvent(m_window, &lifted);
        m_isDelivering = wasDelivering;
    }
    m_restsStill.stop();
    m_state = area != nullptr ? State::Scrolling : State::Spent;
    if (area == nullptr)
        return true;
    m_pushed = area->viewport();
    const quint64 begun = !m_waiting.empty() ? m_waiting.front()->timestamp() : event.timestamp();
    scrollerOf(m_pushed)->handleInput(QScroller::InputPress, m_pushed->mapFromGlobal(m_from),
                                      static_cast<qint64>(begun));
    push(event);
    return true;
}

void FingerScroll::push(const QMouseEvent& event) {
    if (m_pushed.isNull())
        return;
    const auto input = event.type() == QEvent::MouseMove ? QScroller::InputMove : QScroller::InputRelease;
    scrollerOf(m_pushed)->handleInput(input, m_pushed->mapFromGlobal(event.globalPosition()),
                                      static_cast<qint64>(event.timestamp()));
}

bool FingerScroll::release(const QMouseEvent& event) {
    const bool isTap = m_state == State::Waiting && !m_hasStopped;
    const bool isTaken = m_state != State::Idle && m_state != State::Pressing && !isTap;
    if (m_state == State::Scrolling)
        push(event);
    else if (isTap)
        deliver();
    endTouch();
    return isTaken;
}

// The press that waited, as it came: the widget below gets the keyboard by it, as by any click.
void FingerScroll::deliver() {
    const auto waiting = std::exchange(m_waiting, {});
    const bool wasDelivering = std::exchange(m_isDelivering, true);
    for (const auto& event : waiting)
        if (!m_window.isNull())
            qApp->notify(m_window, event.get());
    m_isDelivering = wasDelivering;
}

void FingerScroll::endTouch() {
    m_state = State::Idle;
    m_isText = false;
    m_areas.clear();
    m_waiting.clear();
    m_hasStopped = false;
    m_restsStill.stop();
    m_pushed = nullptr;
}

} // namespace holdfast::app
