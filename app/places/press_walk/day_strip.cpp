// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/day_strip.h"

#include "app/desk/formats.h"
#include "app/places/press_walk/late_words.h"
#include "app/places/press_walk/promised_aside.h"
#include "app/places/press_walk/text_lines.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kTop = 10;
constexpr int kGapBelow = 12;
constexpr int kLane = 17;
constexpr int kAxis = 20;
constexpr int kWords = 24;     // one line of them
constexpr int kWordsLine = 18; // each further one
constexpr qreal kNames = 92;
constexpr int kSayingAt = 14;
constexpr qreal kTickRoom = 64; // an hour's word needs this much

} // namespace

DayStrip::DayStrip(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("dayStrip"));
    setAccessibleName(tr("The day as a strip"));
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

void DayStrip::show(std::shared_ptr<const ReckonedShop> shop, const Walk& walk) {
    m_shop = std::move(shop);
    m_lanes.clear();
    const bool hasMany = std::ranges::count(m_shop->facts.presses, false, &Press::isRetired) > 1;
    const auto hasWork = [&](const Press& press) {
        return std::ranges::any_of(walk.runs, [&](const WalkRun& run) { return run.press == press.id; });
    };
    for (const Press& press : m_shop->facts.presses)
        if (!press.isRetired || hasWork(press))
            m_lanes.push_back({hasMany ? words(press.name) : tr("Platen"), Resource::Platen, press.id});
    m_lanes.push_back({tr("Hands"), Resource::Hands, {}});
    m_lanes.push_back({tr("Cooling rack"), Resource::Rack, {}});

    m_begins = m_shop->now.instant;
    m_ends = std::max(m_shop->plan.ends, m_begins + std::chrono::minutes{30});
    m_late.clear();
    for (const QString& line : {lateWords(*m_shop, walk), promisedAside(*m_shop, walk).what})
        if (!line.isEmpty())
            m_late << line;
    m_lateGarments.clear();
    for (const WalkRun& run : walk.runs)
        for (const WalkEntry& entry : run.entries)
            if (entry.late.count() > 0)
                m_lateGarments.insert(entry.garment);
    setAccessibleDescription(m_late.isEmpty() ? tr("Nothing will be late.") : saying());
    updateGeometry();
    update();
}

QSize DayStrip::sizeHint() const {
    return {600, kTop + kLane * static_cast<int>(m_lanes.size()) + kAxis + wordsHeight() + kGapBelow};
}

int DayStrip::wordsHeight() const {
    return kWords + static_cast<int>(std::max<qsizetype>(0, lines().size() - 1)) * kWordsLine;
}

QStringList DayStrip::lines() const {
    QStringList lines;
    for (const QString& said : m_late)
        lines << brokenLines(said, Type::SmallStrong, std::max(width(), kLeastWidth) - 2 * kSayingAt);
    return lines;
}

// In another width the words take other lines.
void DayStrip::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (event->size().width() != event->oldSize().width())
        updateGeometry();
}

qreal DayStrip::placeOf(Instant when, const QRectF& axis) const {
    const auto whole = static_cast<qreal>((m_ends - m_begins).count());
    const auto part = static_cast<qreal>((when - m_begins).count());
    return axis.left() + axis.width() * std::clamp(part / whole, 0.0, 1.0);
}

void DayStrip::paintAxis(QPainter& painter, const QRectF& axis) const {
    const Tokens& dyes = tokens();
    const qreal perHour = axis.width() * 3600 / static_cast<qreal>((m_ends - m_begins).count());
    // Ticks at steps that a clock has, as many as there is room to name.
    int minutes = 15;
    for (const int step : {15, 30, 60, 120, 240, 480, 1440}) {
        minutes = step;
        if (perHour * step / 60 >= kTickRoom)
            break;
    }
    const LocalTime local = m_shop->now.toLocal(m_begins);
    LocalTime tick = LocalTime{dateOf(local)};
    const std::chrono::minutes step{minutes};
    tick += step * (std::chrono::floor<std::chrono::minutes>(local - tick) / step + 1);
    for (; m_shop->now.toInstant(tick) <= m_ends; tick += step) {
        if (m_shop->now.toLocal(m_shop->now.toInstant(tick)) != tick)
            continue; // the clock is put forward over it
        const qreal x = placeOf(m_shop->now.toInstant(tick), axis);
        painter.fillRect(QRectF(x, axis.top(), 1, axis.height() + 4), dyes.thread);
        paintLine(painter, QRectF(x - 30, axis.bottom() + 3, 60, 16), clock(tick), Type::Small, dyes.ink2,
                  Qt::AlignHCenter);
    }
    const auto hours = m_shop->facts.settings.hoursOn(m_shop->now.today());
    if (!hours)
        return;
    const Instant closes = m_shop->now.toInstant(m_shop->now.today() + hours->closes);
    if (closes > m_begins && closes < m_ends) {
        const qreal x = placeOf(closes, axis);
        painter.fillRect(QRectF(x - 1, axis.top() - 4, 2, axis.height() + 8), dyes.madder);
        paintLine(painter, QRectF(x + 5, axis.top() - 6, 90, 14), tr("closing"), Type::SmallStrong,
                  dyes.madder);
    }
}

void DayStrip::paintLane(QPainter& painter, const Lane& lane, const QRectF& box) const {
    const Tokens& dyes = tokens();
    painter.fillRect(box.adjusted(0, box.height() / 2 - 0.5, 0, -box.height() / 2 + 0.5), dyes.thread);
    for (const PlannedSpan& span : m_shop->plan.spans) {
        if (span.resource != lane.resource || (lane.press && span.press != *lane.press))
            continue;
        const qreal left = placeOf(span.begins, box);
        const qreal right = std::max(left + 1.5, placeOf(span.ends, box));
        const QRectF bar(left, box.top() + 3, right - left, box.height() - 6);
        switch (lane.resource) {
        case Resource::Platen:
            painter.fillRect(bar, dyes.indigo);
            // What will be late is underlined; the words below name it.
            if (m_lateGarments.contains(span.garment))
                painter.fillRect(QRectF(bar.left(), bar.bottom(), bar.width(), 3), dyes.weld);
            break;
        case Resource::Hands:
            painter.fillRect(bar, dyes.edge);
            break;
        case Resource::Rack:
            painter.fillRect(bar, dyes.woad);
            paintOutline(painter, bar, 0, dyes.indigo, 1);
            break;
        }
    }
}

void DayStrip::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    paintBox(painter, QRectF(rect()).adjusted(0, 0, 0, -kGapBelow), kCardRadius, dyes.card, dyes.thread);
    if (!m_shop)
        return;
    const QRectF axis(kNames + 16, kTop, width() - kNames - 44, kLane * static_cast<int>(m_lanes.size()));
    paintAxis(painter, axis);
    qreal y = axis.top();
    for (const Lane& lane : m_lanes) {
        const QRectF name(14, y, kNames - 6, kLane);
        paintLine(painter, name,
                  QFontMetricsF(fontOf(Type::Small)).elidedText(lane.name, Qt::ElideRight, name.width()),
                  Type::Small, dyes.ink2);
        paintLane(painter, lane, QRectF(axis.left(), y, axis.width(), kLane));
        y += kLane;
    }
    QRectF foot(kSayingAt, height() - kGapBelow - wordsHeight(), width() - 2 * kSayingAt, kWords - 4);
    if (m_late.isEmpty())
        paintLine(painter, foot, tr("Nothing will be late if this plan is kept."), Type::SmallStrong,
                  dyes.green);
    for (const QString& line : lines()) {
        paintLine(painter, foot, line, Type::SmallStrong, dyes.weld);
        foot.translate(0, kWordsLine);
    }
}

} // namespace holdfast::app
