// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/promise_block.h"

#include "app/desk/formats.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/text_runs.h"
#include "app/theme/tokens.h"

#include <QPainter>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kLeastWidth = 260;
constexpr double kPromisePadding = 14;
constexpr double kPromiseTop = 9;
constexpr double kDot = 5.5;
constexpr double kBelowDot = 9; // where the words of a stop begin
constexpr double kBetweenStops = 6;
constexpr double kSign = 24;
constexpr double kTextLeft = kPromisePadding + 30;
constexpr std::size_t kMostStops = 6;

// Two lines of small words close together.
int stopStep() {
    return lineHeight(Type::Small) - 3;
}

} // namespace

PromiseBlock::PromiseBlock(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("promise"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void PromiseBlock::show(const PromiseShown& shown) {
    m_shown = shown;
    m_stops.clear();
    m_day.clear();
    m_hour.clear();
    if (shown.promise && shown.leavesDayOpen.isEmpty()) {
        const LocalDate ready = dateOf(shown.promise->readyAt);
        m_day = ready == shown.today ? tr("Ready today") : tr("Ready %1").arg(day(ready));
        m_hour = tr("from %1").arg(clock(shown.promise->readyAt));
        readPath(*shown.promise);
    }
    const QString told = toldWords().join(QStringLiteral(", "));
    setAccessibleName(told);
    setToolTip(m_stops.empty() ? QString() : told);
    if (m_room == Room::Lowest)
        updateGeometry();
    update();
}

void PromiseBlock::readPath(const Promise& promise) {
    for (const PromiseStep& step : promise.path)
        m_stops.push_back({words(step.words), words(step.when), step.stage == PromiseStage::Ready,
                           step.stage == PromiseStage::Cut});
    // Seven stops have no room for their words; that it is cut goes without saying before the press.
    if (m_stops.size() > kMostStops)
        std::erase_if(m_stops, [](const Stop& stop) { return stop.isCut; });
}

QStringList PromiseBlock::toldWords() const {
    QStringList told;
    if (!m_day.isEmpty())
        told = {m_day, m_hour, m_shown.answer, m_shown.dayWaitsFor, m_shown.stillOpen};
    else if (m_shown.promise)
        told = {tr("No day yet"), m_shown.leavesDayOpen};
    else
        told = {m_shown.lack};
    for (const Stop& stop : m_stops)
        told.append(stop.what + u' ' + stop.when);
    told.removeAll(QString());
    return told;
}

QSize PromiseBlock::minimumSizeHint() const {
    return {kLeastWidth, sizeHint().height()};
}

void PromiseBlock::setRoom(Room room) {
    m_room = room;
    updateGeometry();
    update();
}

int PromiseBlock::pathTop() const {
    const int lines = m_room != Room::Whole ? lineHeight(Type::Value)
                                            : lineHeight(Type::Number) + 2 + lineHeight(Type::Value);
    return static_cast<int>(kPromiseTop) + lines + 15;
}

QString PromiseBlock::wordsBelow() const {
    if (m_day.isEmpty())
        return m_shown.promise ? m_shown.leavesDayOpen : m_shown.lack;
    const QString rest = m_shown.dayWaitsFor.isEmpty() ? m_shown.stillOpen : m_shown.dayWaitsFor;
    return m_shown.answer.isEmpty() || rest.isEmpty() ? m_shown.answer + rest
                                                      : m_shown.answer + QStringLiteral(" · ") + rest;
}

// The customer waits for the answer: it comes first, and alone where there is no room for both.
QString PromiseBlock::lineBelow(double wide, Type type) const {
    const QString all = wordsBelow();
    return m_shown.answer.isEmpty() || widthOf(all, type) <= wide ? all : m_shown.answer;
}

int PromiseBlock::heightOfWords() const {
    const bool hasLine = !m_day.isEmpty() || m_shown.promise;
    const int line = hasLine ? lineHeight(Type::Value) + 2 : 0;
    const int left = static_cast<int>(hasLine ? kTextLeft : kPromisePadding);
    const QRect room(0, 0, std::max(width(), kLeastWidth) - left - static_cast<int>(kPromisePadding), 1000);
    const QString below = wordsBelow();
    return line +
           (below.isEmpty()
                ? 0
                : QFontMetrics(fontOf(Type::Support)).boundingRect(room, Qt::TextWordWrap, below).height());
}

void PromiseBlock::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (m_room == Room::Lowest)
        updateGeometry();
}

QSize PromiseBlock::sizeHint() const {
    if (m_room == Room::Lowest)
        return {300, 2 * static_cast<int>(kPromiseTop) + heightOfWords()};
    if (m_room == Room::Lower) // the day, and two lines of what it waits for or why there is none
        return {300, static_cast<int>(kPromiseTop) + lineHeight(Type::Value) + 2 * lineHeight(Type::Small) +
                         kSpace8};
    return {300, pathTop() + static_cast<int>(kBelowDot) + stopStep() + lineHeight(Type::Small) + kSpace8};
}

void PromiseBlock::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    const QRectF box(rect());
    if (!m_day.isEmpty()) {
        paintDay(painter);
        return;
    }
    if (m_shown.promise) {
        paintOpen(painter);
        return;
    }
    paintBox(painter, box, kButtonRadius, {}, dyes.thread, 1.2, true);
    painter.setFont(fontOf(Type::Support));
    painter.setPen(dyes.ink2);
    painter.drawText(box.adjusted(kPromisePadding, kPromiseTop, -kPromisePadding, -kPromiseTop),
                     Qt::TextWordWrap | Qt::AlignHCenter | Qt::AlignVCenter, m_shown.lack);
}

// No day: why, and what is needed first.
void PromiseBlock::paintOpen(QPainter& painter) const {
    const Tokens& dyes = tokens();
    const QRectF box(rect());
    paintBox(painter, box, kButtonRadius, dyes.madderTint, {});
    const double high = lineHeight(Type::Value);
    paintIcon(painter, QRectF(kPromisePadding - 2, kPromiseTop + (high - kSign) / 2, kSign, kSign),
              QStringLiteral("hold"), dyes.madder);
    paintLine(painter, QRectF(kTextLeft, kPromiseTop, box.width() - kTextLeft, high), tr("No day yet"),
              Type::Value, dyes.madder);
    painter.setFont(fontOf(m_room == Room::Lower ? Type::Small : Type::Support));
    painter.setPen(dyes.ink);
    painter.drawText(
        QRectF(kTextLeft, kPromiseTop + high + 2, box.width() - kTextLeft - kPromisePadding, box.height()),
        Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop, withRunsApart(m_shown.leavesDayOpen));
}

void PromiseBlock::paintDay(QPainter& painter) const {
    const Tokens& dyes = tokens();
    const QRectF box(rect());
    const bool waits = !m_shown.dayWaitsFor.isEmpty();
    paintBox(painter, box, kButtonRadius, waits ? dyes.weldTint : dyes.greenTint, {});
    paintIcon(painter, QRectF(kPromisePadding - 2, 12, kSign, kSign),
              waits ? QStringLiteral("caution") : QStringLiteral("ready"), waits ? dyes.weld : dyes.green);
    const Type large = m_room != Room::Whole ? Type::Value : Type::Number;
    const QRectF first(kTextLeft, kPromiseTop, box.width() - kTextLeft, lineHeight(large));
    paintLine(painter, first, m_day, large, dyes.ink);
    if (m_room == Room::Whole) {
        const QRectF second(first.left(), first.bottom() + 2, first.width(), lineHeight(Type::Value));
        paintLine(painter, second, m_hour, Type::Value, dyes.ink);
        const QRectF beside = second.adjusted(widthOf(m_hour, Type::Value) + kSpace8, 1, 0, 1);
        paintLine(painter, beside, lineBelow(beside.width() - kPromisePadding, Type::Small), Type::Small,
                  dyes.ink2);
        paintPath(painter, pathTop());
        return;
    }
    paintLine(painter, first.adjusted(widthOf(m_day, large) + kSpace8, 1, 0, 1), m_hour, Type::Support,
              dyes.ink);
    // What the day waits for, or what is not chosen yet, comes before the path to it.
    const QRectF below(kTextLeft, first.bottom(), first.width() - kPromisePadding,
                       box.bottom() - first.bottom());
    const QString beside = lineBelow(below.width(), Type::Support);
    if (m_room == Room::Lowest) {
        painter.setFont(fontOf(Type::Support));
        painter.setPen(dyes.ink);
        painter.drawText(below.translated(0, 2), Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop,
                         wordsBelow());
    } else if (waits || ((m_room == Room::Lower || m_stops.empty()) && !beside.isEmpty()))
        paintLine(painter, below, beside, Type::Support, dyes.ink);
    else if (m_room == Room::Lower)
        paintPathWords(painter, below);
    else
        paintPath(painter, pathTop());
}

// "cut today, press today, rest 24 h"
void PromiseBlock::paintPathWords(QPainter& painter, const QRectF& room) const {
    QStringList stops;
    for (const Stop& stop : m_stops)
        if (!stop.isReady)
            stops.append(stop.what + u' ' + stop.when);
    painter.setFont(fontOf(Type::Small));
    painter.setPen(tokens().ink);
    painter.drawText(room, Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop, stops.join(QStringLiteral(", ")));
}

void PromiseBlock::paintPath(QPainter& painter, double top) const {
    if (m_stops.empty())
        return;
    const Tokens& dyes = tokens();
    const double first = kPromisePadding + kDot;
    const double last = width() - kPromisePadding - 22;
    const auto xOf = [&](std::size_t stop) {
        return m_stops.size() == 1 ? last
                                   : first + (last - first) * static_cast<double>(stop) /
                                                 static_cast<double>(m_stops.size() - 1);
    };
    const bool waits = !m_shown.dayWaitsFor.isEmpty();
    const QColor thread = waits ? dyes.weld : dyes.green;
    paintRunningStitch(painter, QPointF(first, top), QPointF(last, top), thread, 3);
    double taken = 0; // by the words of the stops before
    for (std::size_t at = 0; at < m_stops.size(); ++at) {
        const Stop& stop = m_stops[at];
        const QPointF centre(xOf(at), top);
        painter.setPen(QPen(thread, 2));
        painter.setBrush(stop.isReady ? thread : waits ? dyes.weldTint : dyes.greenTint);
        painter.drawEllipse(centre, kDot, kDot);
        // The outer ones keep to the edges; the others are below their dot, clear of each other.
        const double wide = std::max(widthOf(stop.what, Type::Small), widthOf(stop.when, Type::Small)) + 2;
        const double below = std::min(centre.x() - wide / 2, width() - kPromisePadding + 6 - wide);
        const double left = at == 0 ? kPromisePadding - 1 : std::max(below, taken + kBetweenStops);
        taken = left + wide;
        const Qt::Alignment across = at == 0 ? Qt::AlignLeft : Qt::AlignHCenter;
        const QRectF line(left, top + kBelowDot, wide, lineHeight(Type::Small));
        paintLine(painter, line, stop.what, Type::Small, dyes.ink, across);
        paintLine(painter, line.translated(0, stopStep()), stop.when, Type::Small, dyes.ink2, across);
    }
}

} // namespace holdfast::app
